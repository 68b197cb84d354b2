"""Roof lives against published surveys and studies."""

from __future__ import annotations

import pytest

from leanto.trade.outcome import Outcome
from leanto.trade.roof_life import life_left, service_life

# National Association of Home Builders study: asphalt 20, fiber cement 25, shakes 30, slate and
# tile 50 and more. Survey of mean lives: organic asphalt 14.7, fiberglass 17.7, EPDM 14.2, slate
# 60. Improvement article: metal 40 to 80. Preservation Brief 4: slate 40 to 60. How-to article and
# roofer's list: roll roofing 5 to 10. Observer's table: built-up 15 to 25. All seen.
LIVES = [
    ("asphalt-strip", 14.7, 20),
    ("asphalt-laminated", 17.7, 20),
    ("metal-lapped", 40, 80),
    ("wood-shake", 30, 30),
    ("fiber-cement", 25, 25),
    ("slate", 40, None),
    ("tile", 50, None),
    ("single-ply", 14.2, 14.2),
    ("mineral-roll", 5, 10),
    ("built-up", 15, 25),
]


@pytest.mark.published("Roof life surveys and HUD 1-24", "seen")
@pytest.mark.parametrize(("covering", "low", "high"), LIVES)
def test_range_spans_the_sources(covering: str, low: float, high: float | None) -> None:
    life = service_life(covering)
    assert life is not None
    assert (life.low, life.high) == (low, high)


# HUD reference guide 1-24: two years of life wanted. Seen.
@pytest.mark.published("Roof life surveys and HUD 1-24", "seen")
@pytest.mark.parametrize(
    ("age", "outcome"),
    [
        ((12.7, 12.7), Outcome.PASSES),
        ((12.8, 12.8), Outcome.UNDECIDED),
        ((18, 18), Outcome.UNDECIDED),
        ((18.1, 18.1), Outcome.FAILS),
    ],
)
def test_two_years_are_wanted(age: tuple[float, float], outcome: Outcome) -> None:
    assert life_left("asphalt-strip", age, "sound").wanted is outcome
