"""The rafter check: one more layer, snow, slope, ties and drifts."""

from __future__ import annotations

from dataclasses import dataclass, replace

import pytest

from leanto.trade.framing_check import FramingCheck, Verdict
from leanto.trade.framing_member import Member
from leanto.trade.rafter_check import check_rafters

RAFTER = Member(1.5, 5.5, 16, species="spruce_pine_fir", grade="no_2", graded=True)


@dataclass(frozen=True)
class Roof:
    """A gable roof in the snow; each test changes what it is about."""

    run_in: float = 110
    rise_in_12: float = 6
    existing_psf: float = 6
    added_psf: float = 2
    snow_psf: float | None = 50
    ceiling: bool = False
    ridge_held: bool = False
    tied: bool | None = True
    drift: bool = False

    def check(self, member: Member = RAFTER) -> FramingCheck:
        return check_rafters(
            member,
            self.run_in,
            self.rise_in_12,
            existing_psf=self.existing_psf,
            added_psf=self.added_psf,
            ground_snow_psf=self.snow_psf,
            ceiling_attached=self.ceiling,
            ridge_held=self.ridge_held,
            tied=self.tied,
            below_higher_roof=self.drift,
        )


@pytest.mark.parametrize(
    ("roof", "allowed_in"),
    [
        # Printed: 9-9 for 50 psf snow, 8-5 for 70, 14-4 for 20 psf roof live load.
        (Roof(snow_psf=50), 117),
        (Roof(snow_psf=70), 101),
        (Roof(snow_psf=0), 172),
        (Roof(snow_psf=10), 172),
    ],
    ids=["50 psf", "70 psf", "no snow", "little snow"],
)
def test_the_greater_of_live_load_and_snow_governs(roof: Roof, allowed_in: float) -> None:
    assert roof.check().allowed_in == allowed_in


@pytest.mark.parametrize(("run_in", "verdict"), [(117, Verdict.PASSES), (118, Verdict.FAILS)])
def test_verdict_on_each_side_of_the_printed_span(run_in: float, verdict: Verdict) -> None:
    assert Roof(run_in=run_in, rise_in_12=3).check().verdict is verdict


@pytest.mark.parametrize(
    ("roof", "words"),
    [
        (Roof(run_in=90, snow_psf=None), "ground snow load of this place is not known"),
        (Roof(run_in=60, snow_psf=70.1), "tables stop at 70"),
        (Roof(run_in=60, existing_psf=19), "tables stop at 20"),
        (Roof(run_in=60, drift=True), "drifts"),
        (Roof(run_in=60, rise_in_12=2.9), "carried as a beam"),
        (Roof(run_in=60, tied=False), "Nothing ties"),
        (Roof(run_in=60, tied=None), "It was not seen what ties"),
    ],
    ids=["snow unknown", "deep snow", "heavy", "drift", "low slope", "no ties", "ties not seen"],
)
def test_what_the_table_does_not_cover_goes_to_an_engineer(roof: Roof, words: str) -> None:
    check = roof.check()
    assert check.verdict is Verdict.ENGINEER
    assert any(words in reason for reason in check.reasons)


@pytest.mark.parametrize(
    "roof",
    [
        Roof(run_in=60, snow_psf=70),
        Roof(run_in=60, existing_psf=18, rise_in_12=3),
        Roof(run_in=60, rise_in_12=3),
        Roof(run_in=60, rise_in_12=2, ridge_held=True),
        Roof(run_in=60, tied=False, ridge_held=True),
    ],
    ids=["70 psf", "20 psf", "3 in 12", "low but held", "held, no ties"],
)
def test_the_same_within_what_the_table_covers_passes(roof: Roof) -> None:
    assert roof.check().verdict is Verdict.PASSES


def test_snow_not_known_still_fails_what_fails_without_it() -> None:
    check = Roof(run_in=173, snow_psf=None).check()
    assert check.verdict is Verdict.FAILS
    assert any("building department" in question for question in check.questions)


def test_one_more_layer_can_turn_the_answer() -> None:
    before = Roof(run_in=113, rise_in_12=3, existing_psf=12, added_psf=0)
    after = replace(before, added_psf=4)
    assert before.check().verdict is Verdict.PASSES
    assert after.check().verdict is Verdict.FAILS


def test_a_ceiling_on_the_rafters_asks_for_stiffness() -> None:
    """Hem-fir 2x4 at 12 in. under 20 psf live, 10 psf dead: 9 ft 2 in. printed at L/240."""
    member = Member(1.5, 3.5, 12, species="hem_fir", grade="no_2", graded=True)
    bare = Roof(snow_psf=0, run_in=90)
    lined = replace(bare, ceiling=True)
    assert lined.check(member).allowed_in == 110
    assert (bare.check(member).allowed_in or 0) > 110


def test_weight_along_a_steep_slope_that_would_fail_asks_an_engineer() -> None:
    """12 psf of roof at 12 in 12 is 17 psf of plan; at 3 in 12 it hardly changes."""
    steep = Roof(run_in=112, rise_in_12=12, existing_psf=12, added_psf=0, snow_psf=50)
    flat = replace(steep, rise_in_12=3)
    assert flat.check().verdict is Verdict.PASSES
    check = steep.check()
    assert check.verdict is Verdict.ENGINEER
    assert any("psf of plan" in reason for reason in check.reasons)


def test_reasons_tell_what_was_taken_for_the_loads() -> None:
    reasons = " ".join(Roof(run_in=60).check().reasons)
    for part in (
        "tables start at 10 psf",
        "16 psf live (International Residential Code, 2018, Table R301.6)",
        "35 psf",
        "taken whole",
    ):
        assert part in reasons
    assert "safe" not in reasons.lower()


def test_impossible_loads_are_refused() -> None:
    with pytest.raises(ValueError, match="zero or more"):
        Roof(added_psf=-1).check()
    with pytest.raises(ValueError, match="zero or more"):
        Roof(snow_psf=-1).check()
