"""Pests, gaps, wood above soil; lead and asbestos before anything is disturbed."""

from __future__ import annotations

from collections.abc import Callable
from typing import Any

import pytest

from leanto.reckon import asked
from leanto.reckon.model import Reckoning
from leanto.reckon.pests import DUST_SIGN, PEST_KINDS
from leanto.trade.pest_table import find_pest, pest_table

Figures = Callable[[Reckoning], dict[str, str]]


def test_every_named_pest_and_sign_is_in_the_table() -> None:
    for kind in asked.PESTS.values():
        assert find_pest(kind).label
    assert set(DUST_SIGN.values()) <= pest_table().signs
    assert tuple(pest_table().kinds) == PEST_KINDS


@pytest.mark.parametrize(
    ("size_in", "dust", "kind"),
    [
        # Wood Handbook, Table 14-2: holes of 1/32 to 1/16 in. and flour, 1/16 to 1/8 and grit.
        (0.05, "like flour", "lyctid-beetle"),
        (0.1, "gritty", "anobiid-beetle"),
        (0.25, "packed tight", "bostrichid-beetle"),
        (0.07, "packed tight", "wood-weevil"),
        (0.3, "like flour", "not certain"),
    ],
)
def test_beetles_by_hole_and_dust(case: Any, size_in: float, dust: str, kind: str) -> None:
    key = case.answer("main.floor", "pin-holes", hole_size_in=size_in, dust_kind=dust)
    one = case.one(f"pest@{key}")
    assert one.facts["pest_kind"] == kind
    if kind == "not certain":
        assert one.verdict == "kind not certain"


@pytest.mark.parametrize(
    ("measures", "fits", "sure"),
    [
        # Holes of 1/16 in. are those of three beetles: without the dust nobody can tell.
        ({"hole_size_in": 0.0625}, 3, "a tie"),
        ({"dust_kind": "gritty"}, 1, "1 sign for it"),
        ({"hole_size_in": 0.1, "dust_kind": "gritty"}, 1, "2 signs for it"),
        ({"hole_size_in": 0.9}, 0, "not at all"),
    ],
)
def test_a_tie_and_no_fit_are_told_as_such(
    case: Any, figures: Figures, measures: dict[str, float | str], fits: int, sure: str
) -> None:
    key = case.answer("main.floor", "pin-holes", **measures)
    one = case.one(f"pest@{key}")
    assert figures(one)["How sure"].startswith(sure)
    assert (one.verdict == "kind not certain") is (fits != 1)
    if fits != 1:
        assert one.facts["pest_kind"] == "not certain"
        assert any("A pest firm names the kind" in reason for reason in one.reasons)
    if fits:
        assert len(figures(one)["Fits"].split(", ")) >= fits


@pytest.mark.parametrize(
    ("item", "kind"),
    [
        ("soil-tubes", "subterranean-termite"),
        ("ants", "carpenter-ant"),
        ("bee-holes", "carpenter-bee"),
    ],
)
def test_an_item_that_names_its_pest(case: Any, item: str, kind: str) -> None:
    key = case.answer("main.south.outside", item, "worn")
    assert case.one(f"pest@{key}").facts == {"pest_kind": kind, "pest_activity": "undecided"}


def test_live_animals_settle_whether_it_is_active(case: Any) -> None:
    key = case.answer("main.south.outside", "soil-tubes", is_active=1.0)
    assert case.one(f"pest@{key}").facts["pest_activity"] == "active"


@pytest.mark.parametrize(
    ("length_in", "kind"), [(0.2, "mouse"), (0.6, "rat"), (0.35, "not certain")]
)
def test_rodents_by_their_droppings(case: Any, length_in: float, kind: str) -> None:
    key = case.answer("main.floor", "rodents", dropping_length_in=length_in)
    assert case.one(f"pest@{key}").facts["pest_kind"] == kind


def test_a_sound_answer_is_no_pest(case: Any) -> None:
    case.answer("main.south.outside", "soil-tubes", "sound")
    assert not [id_ for id_ in case.reckoned() if id_.startswith("pest")]


def test_treatment_goes_before_repair(case: Any, figures: Figures) -> None:
    key = case.answer("main.south.outside", "soil-tubes", is_active=1.0)
    steps = [text for label, text in figures(case.one(f"pest@{key}")).items() if "Step" in label]
    assert steps[0].startswith("Treat")
    assert steps[-1] == "Close up."


@pytest.mark.parametrize(
    ("gap_in", "verdict"),
    [(0.2, "too narrow for mice"), (0.25, "lets in mice"), (0.5, "lets in mice and rats")],
)
def test_what_a_gap_lets_in(case: Any, gap_in: float, verdict: str) -> None:
    key = case.answer("main.south.outside", "entry-holes", gap_size_in=gap_in)
    assert case.one(f"gap@{key}").verdict == verdict


@pytest.mark.parametrize(
    ("station", "item", "gap_in", "verdict"),
    [
        ("main.south.outside", "soil-gap", 6.0, "passes by the table"),
        ("main.south.outside", "soil-gap", 5.9, "does not pass"),
        ("main.floor", "crawl-space", 18.0, "passes by the table"),
        ("main.floor", "crawl-space", 17.0, "does not pass"),
    ],
)
def test_wood_above_soil(case: Any, station: str, item: str, gap_in: float, verdict: str) -> None:
    key = case.answer(station, item, "worn", gap_to_soil_in=gap_in)
    assert case.one(f"clearance@{key}").facts["clearance_check"] == verdict


@pytest.mark.parametrize(
    ("year", "answer", "verdict"),
    [
        (1977, None, "test first"),
        (1978, None, "not suspect by its year and kind"),
        (1938, "worn", "test first"),
        (1938, "sound", "not suspect by the walk"),
    ],
)
def test_old_paint(case: Any, year: int, answer: str | None, verdict: str) -> None:
    case.facts = {"year_built": year}
    if answer:
        case.answer("site", "lead-paint", answer)
    one = case.one("lead@site")
    assert one.verdict == verdict
    assert one.facts["lead_area_over_limit"] is False


@pytest.mark.parametrize(
    ("station", "item", "zone", "over"),
    [
        ("main.south.inside", "lining-state", (0, 0, 3, 2), False),
        ("main.south.inside", "lining-state", (0, 0, 3, 2.1), True),
        ("main.south.outside", "cladding", (0, 0, 10, 2), False),
        ("main.south.outside", "cladding", (0, 0, 10, 2.1), True),
    ],
)
def test_zones_against_the_limits_of_the_rule(
    case: Any, station: str, item: str, zone: tuple[float, float, float, float], over: bool
) -> None:
    case.answer(station, item, zone=zone)
    assert case.one("lead@site").facts["lead_area_over_limit"] is over


def test_zones_of_one_room_add_up_and_a_window_always_counts(case: Any) -> None:
    case.answer("main.south.inside", "lining-state", zone=(0, 0, 2, 2))
    case.answer("main.east.inside", "lining-state", zone=(0, 0, 2, 2))
    assert case.one("lead@site").facts["lead_inside_sqft"] == pytest.approx(8)
    case.observations.clear()
    case.answer("main.south.outside", "window-wood", "failed")
    assert case.one("lead@site").facts["lead_area_over_limit"] is True


@pytest.mark.parametrize(
    ("year", "lining", "ceiling", "suspect"),
    [
        (1938, "beaded board", "fiberboard", True),
        (1938, "beaded board", "board", False),
        (1980, "gypsum board", "board", True),
        (1981, "gypsum board", "gypsum board", False),
    ],
)
def test_material_that_may_hold_asbestos(
    case: Any, year: int, lining: str, ceiling: str, suspect: bool
) -> None:
    case.facts = {"year_built": year}
    case.main = {"walls": {"lining": lining}, "ceiling": {"lining": ceiling}}
    one = case.one("asbestos@site")
    assert one.facts["asbestos_suspect"] is suspect
    assert (one.verdict == "test first") is suspect


def test_a_paper_clears_a_surface(case: Any) -> None:
    assert case.one("asbestos@site").facts["asbestos_suspect"] is True
    case.answer("main.ceiling", "suspect-lining", "sound")
    assert case.one("asbestos@site").facts["asbestos_suspect"] is False
