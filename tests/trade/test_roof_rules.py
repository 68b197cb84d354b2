"""Rules for roof coverings where something is not known or two rules meet."""

from __future__ import annotations

import pytest

from leanto.trade.coverings import coverings_table
from leanto.trade.outcome import Outcome
from leanto.trade.roof_rules import (
    RoofAction,
    check_deck,
    check_recover,
    check_slope,
    patch_or_replace,
)


@pytest.mark.parametrize(("rise", "told"), [(2, True), (3.9, True), (4, False)])
def test_low_shingles_are_told_of_the_doubled_underlayment(rise: float, told: bool) -> None:
    check = check_slope("asphalt-strip", rise)
    assert any("doubled" in reason for reason in check.reasons) is told


@pytest.mark.parametrize(
    ("layers", "soaked", "decayed"), [(None, False, False), (1, None, False), (1, False, None)]
)
def test_a_roof_not_looked_at_is_undecided(
    layers: int | None, soaked: bool | None, decayed: bool | None
) -> None:
    check = check_recover("asphalt-strip", layers, soaked, decayed)
    assert check.outcome is Outcome.UNDECIDED


def test_one_reason_to_strip_decides_though_others_are_unknown() -> None:
    check = check_recover("asphalt-strip", 2, None, None)
    assert check.outcome is Outcome.FAILS
    assert check.reasons == ("There are 2 layers already.",)


def test_a_roof_that_carries_itself_ignores_layers_but_not_rot() -> None:
    over = check_recover("slate", 3, False, False, carries_itself=True)
    assert over.outcome is Outcome.PASSES
    rotten = check_recover("slate", 3, False, True, carries_itself=True)
    assert rotten.outcome is Outcome.FAILS


@pytest.mark.parametrize(("wet_pct", "outcome"), [(25, Outcome.PASSES), (25.1, Outcome.UNDECIDED)])
def test_a_widely_wet_roof_is_asked_about(wet_pct: float, outcome: Outcome) -> None:
    check = check_recover("asphalt-strip", 1, False, False, wet_pct=wet_pct)
    assert check.outcome is outcome


@pytest.mark.parametrize(
    ("covering", "solid", "outcome"),
    [
        ("asphalt-strip", True, Outcome.PASSES),
        ("asphalt-strip", False, Outcome.FAILS),
        ("asphalt-strip", None, Outcome.UNDECIDED),
        ("metal-lapped", False, Outcome.PASSES),
    ],
)
def test_deck_under_a_covering(covering: str, solid: bool | None, outcome: Outcome) -> None:
    assert check_deck(covering, solid).outcome is outcome


# Shares of 5 and 25 percent and three quarters of life: common practice, no source.
@pytest.mark.parametrize(
    ("lost_pct", "past_repair", "used", "action"),
    [
        (4.9, False, 0.9, RoofAction.PATCH),
        (4.9, True, 0.1, RoofAction.REPLACE),
        (5, False, 0.74, RoofAction.PATCH),
        (5, False, 0.75, RoofAction.REPLACE),
        (5, None, 0.5, RoofAction.UNDECIDED),
        (5, False, None, RoofAction.UNDECIDED),
        (24.9, False, 0.5, RoofAction.PATCH),
        (25, False, 0.1, RoofAction.REPLACE),
    ],
)
def test_patch_or_replace(
    lost_pct: float, past_repair: bool | None, used: float | None, action: RoofAction
) -> None:
    assert patch_or_replace("asphalt-strip", lost_pct, past_repair, used).action is action


def test_an_unknown_covering_is_refused_with_the_known_ones() -> None:
    with pytest.raises(ValueError, match="asphalt-strip"):
        check_slope("thatch", 12)


@pytest.mark.parametrize("name", sorted(coverings_table().coverings))
def test_every_covering_can_be_judged(name: str) -> None:
    assert check_slope(name, 12).reasons
    assert check_recover(name, 1, False, False).sources
    assert patch_or_replace(name, 50, None, None).action is RoofAction.REPLACE
