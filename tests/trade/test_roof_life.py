"""Years left as a range."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from leanto.trade.coverings import coverings_table
from leanto.trade.outcome import Outcome
from leanto.trade.roof_life import NO_PROMISE, SeenCondition, YearRange, life_left

COVERINGS = sorted(coverings_table().coverings)


@pytest.mark.parametrize(
    ("age", "seen", "low", "high"),
    [
        # three-tab strips: 14.7 to 20 years
        ((10, 10), "sound", 4.7, 10),
        ((8, 12), "sound", 2.7, 12),
        ((25, 25), "sound", 0, 0),
        (None, "sound", 0, 20),
        ((0, 0), "worn", 10, 10),
        ((15, 15), "worn", 0, 5),
        (None, "worn", 0, 10),
        ((10, 10), None, 0, 10),
        ((3, 3), "failed", 0, 0),
        (None, "failed", 0, 0),
    ],
)
def test_years_left(
    age: tuple[float, float] | None, seen: SeenCondition | None, low: float, high: float
) -> None:
    years = life_left("asphalt-strip", age, seen).years
    assert years is not None
    assert years.low == pytest.approx(low)
    assert years.high == pytest.approx(high)


def test_a_life_without_an_upper_end_stays_open() -> None:
    assert life_left("tile", (40, 40), "sound").years == YearRange(10, None)
    assert life_left("tile", (40, 40), "worn").years == YearRange(10, 25)
    assert life_left("tile", (60, 60), "sound").wanted is Outcome.UNDECIDED


def test_used_share_runs_from_the_longest_to_the_shortest_life() -> None:
    used = life_left("asphalt-strip", (10, 10), "sound").used
    assert used is not None
    assert used == pytest.approx((10 / 20, 10 / 14.7))


def test_a_range_says_that_it_is_no_promise_and_cites_its_sources() -> None:
    left = life_left("metal-lapped", (30, 40), "worn")
    assert NO_PROMISE in left.reasons
    assert any(source.mark == "common practice, no source" for source in left.sources)


def test_an_age_that_runs_backward_is_refused() -> None:
    with pytest.raises(ValueError, match="age"):
        life_left("slate", (20, 10), "sound")


@given(st.sampled_from(COVERINGS), st.floats(0, 120), st.floats(0, 40))
def test_a_wider_age_only_widens_the_range(covering: str, age: float, doubt: float) -> None:
    sharp = life_left(covering, (age, age), "sound").years
    wide = life_left(covering, (age, age + doubt), "sound").years
    assert sharp is not None
    assert wide is not None
    assert wide.low <= sharp.low
    assert wide.high == sharp.high


@given(st.sampled_from(COVERINGS), st.floats(0, 120))
def test_worse_to_look_at_never_lasts_longer(covering: str, age: float) -> None:
    highs = []
    conditions: tuple[SeenCondition, ...] = ("sound", "worn", "failed")
    for seen in conditions:
        years = life_left(covering, (age, age), seen).years
        assert years is not None
        highs.append(float("inf") if years.high is None else years.high)
        assert years.low <= highs[-1]
    assert highs == sorted(highs, reverse=True)
