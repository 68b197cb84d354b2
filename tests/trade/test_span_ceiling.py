"""The ceiling check: insulation, storage, plaster, a stair."""

from __future__ import annotations

import pytest

from leanto.trade.ceiling_check import check_ceiling
from leanto.trade.framing_check import Verdict
from leanto.trade.framing_member import Member

JOIST = Member(1.5, 5.5, 24, species="spruce_pine_fir", grade="no_2", graded=True)


@pytest.mark.parametrize(
    ("storage", "clear_height_in", "span_in", "verdict"),
    [
        # Printed limits: 14 ft 9 in. without storage, 10 ft 6 in. with it.
        (False, None, 177, Verdict.PASSES),
        (False, 41.0, 177, Verdict.PASSES),
        (False, None, 178, Verdict.FAILS),
        (False, 42.0, 177, Verdict.FAILS),
        (True, None, 126, Verdict.PASSES),
        (True, None, 127, Verdict.FAILS),
    ],
)
def test_insulation_and_storage(
    storage: bool, clear_height_in: float | None, span_in: float, verdict: Verdict
) -> None:
    check = check_ceiling(JOIST, span_in, storage=storage, clear_height_in=clear_height_in)
    assert check.verdict is verdict


def test_plaster_asks_for_a_stiffer_ceiling() -> None:
    soft = check_ceiling(JOIST, 120, storage=False)
    plaster = check_ceiling(JOIST, 120, storage=False, plaster=True)
    assert soft.allowed_in == 177
    assert plaster.allowed_in == pytest.approx(177 * (240 / 360) ** (1 / 3), abs=1)
    assert any("R301.7" in reason for reason in plaster.reasons)


def test_a_fixed_stair_makes_it_a_floor() -> None:
    """The 30 psf floor table prints 8 ft 11 in. for this joist."""
    check = check_ceiling(JOIST, 107, storage=False, fixed_stair=True)
    assert (check.allowed_in, check.verdict) == (107, Verdict.PASSES)


@pytest.mark.parametrize(
    ("dead_psf", "verdict"), [(10.0, Verdict.PASSES), (10.1, Verdict.ENGINEER)]
)
def test_a_ceiling_heavier_than_the_tables_asks_an_engineer(
    dead_psf: float, verdict: Verdict
) -> None:
    assert check_ceiling(JOIST, 96, storage=True, dead_psf=dead_psf).verdict is verdict


def test_a_light_ceiling_counts_as_the_tables_do() -> None:
    light = check_ceiling(JOIST, 96, storage=True, dead_psf=3)
    assert light.allowed_in == 126
    assert any("tables start at 10 psf" in reason for reason in light.reasons)
    with pytest.raises(ValueError, match="dead_psf"):
        check_ceiling(JOIST, 96, storage=True, dead_psf=-1)


def test_joists_that_tie_rafters_bring_their_own_caution() -> None:
    tie = check_ceiling(JOIST, 96, storage=False)
    free = check_ceiling(JOIST, 96, storage=False, ties_rafters=False)
    assert any("tie the rafters" in question for question in tie.questions)
    assert len(tie.cautions) == len(free.cautions) + 1
    assert not free.questions
