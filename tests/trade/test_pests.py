"""Pests: signs that contradict, activity, and the order of work."""

from __future__ import annotations

import pytest

from leanto.trade.pest_table import pest_table
from leanto.trade.pests import (
    Activity,
    check_clearance,
    identify_pest,
    judge_activity,
    order_pest_work,
)

KINDS = sorted(pest_table().kinds)


def test_soil_in_galleries_rules_ants_out() -> None:
    kinds = [match.kind for match in identify_pest({"coarse-shavings", "soil-in-galleries"})]
    assert kinds == ["subterranean-termite"]


def test_a_hole_alone_may_fit_more_than_one_kind() -> None:
    kinds = {match.kind for match in identify_pest(set(), hole_in=1 / 8, hole_shape="round")}
    assert kinds == {"anobiid-beetle", "bostrichid-beetle"}


def test_the_better_fit_comes_first() -> None:
    matches = identify_pest({"packed-dust", "rotten-wood"}, hole_in=0.07)
    assert [match.kind for match in matches] == ["wood-weevil"]
    matches = identify_pest({"packed-dust"}, hole_in=0.2)
    assert [match.kind for match in matches] == ["bostrichid-beetle"]


def test_softwood_rules_true_powderpost_beetles_out() -> None:
    assert not identify_pest({"flour-dust", "softwood"}, hole_in=0.05)


def test_no_signs_fit_no_kind() -> None:
    assert identify_pest(set()) == ()


def test_an_unknown_sign_is_refused() -> None:
    with pytest.raises(ValueError, match="claw-marks"):
        identify_pest({"claw-marks"})


@pytest.mark.parametrize(
    ("kind", "signs", "days", "renewed", "activity"),
    [
        ("subterranean-termite", {"live-insects"}, 0, None, Activity.ACTIVE),
        ("subterranean-termite", {"tube-mended"}, 0, None, Activity.ACTIVE),
        ("subterranean-termite", {"soil-tubes"}, 0, None, Activity.UNDECIDED),
        ("subterranean-termite", {"soil-tubes"}, 13, False, Activity.UNDECIDED),
        ("subterranean-termite", {"soil-tubes"}, 14, False, Activity.OLD),
        # powder alone is no proof
        ("anobiid-beetle", {"fresh-pale-dust"}, 0, None, Activity.UNDECIDED),
        ("anobiid-beetle", {"fresh-pale-dust", "sharp-edged-holes"}, 0, None, Activity.ACTIVE),
        ("anobiid-beetle", set(), 89, False, Activity.UNDECIDED),
        ("anobiid-beetle", set(), 90, False, Activity.OLD),
        ("anobiid-beetle", set(), 10, True, Activity.ACTIVE),
        ("mouse", {"fresh-droppings"}, 0, None, Activity.ACTIVE),
        ("mouse", {"nests-in-fill"}, 7, False, Activity.OLD),
    ],
)
def test_activity(
    kind: str, signs: set[str], days: int, renewed: bool | None, activity: Activity
) -> None:
    assert judge_activity(kind, signs, days, renewed).activity is activity


def test_an_undecided_verdict_says_when_to_look_again() -> None:
    verdict = judge_activity("anobiid-beetle", {"fresh-pale-dust"}, days_watched=30)
    assert verdict.recheck_days == 60
    assert any("no proof" in reason for reason in verdict.reasons)


def test_old_never_clears_the_building() -> None:
    reasons = judge_activity("mouse", set(), 30, renewed=False).reasons
    assert any("does not clear" in reason for reason in reasons)


def test_treatment_comes_before_repair_and_closing_up_last() -> None:
    steps = order_pest_work(
        "subterranean-termite", Activity.ACTIVE, is_damaged=True, bears_load=True
    )
    assert [step.by for step in steps] == ["licensed pest firm", "carpenter", "contractor"]
    assert [step.order for step in steps] == [1, 2, 3]
    assert "engineer" in steps[1].what


def test_damp_is_cured_before_ants_are_treated() -> None:
    steps = order_pest_work("carpenter-ant", Activity.UNDECIDED, is_damaged=False, bears_load=False)
    assert "damp" in steps[0].what
    assert "Inspect" in steps[1].what
    assert steps[2].what.startswith("Treat")


def test_old_harmless_signs_ask_for_nothing() -> None:
    assert order_pest_work("mouse", Activity.OLD, is_damaged=False, bears_load=False) == ()


@pytest.mark.parametrize("kind", KINDS)
def test_treatment_stands_before_repair_for_every_kind(kind: str) -> None:
    steps = order_pest_work(kind, Activity.ACTIVE, is_damaged=True, bears_load=False)
    words = [step.what for step in steps]
    treat = next(i for i, word in enumerate(words) if word.startswith("Treat"))
    assert treat < words.index("Replace damaged wood.") < words.index("Close up.")


def test_buried_wood_fails() -> None:
    check = check_clearance("sill-to-soil", -2)
    assert check.outcome == "does not pass"
    assert "-2 in." in check.reasons[0]
