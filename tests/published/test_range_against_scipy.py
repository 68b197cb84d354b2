"""The range of a total, against a general-purpose statistics library.

scipy.stats.triang and scipy.stats.norm, SciPy reference guide; and the formula for the variance of
a sum of correlated variables, Var = sum of var_i + 2 x sum of rho x sd_i x sd_j (any text).
"""

from __future__ import annotations

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st
from scipy import stats

from leanto.cost.range import range_of, triangular_mean, triangular_sd
from leanto.money import Spread

_amounts = st.tuples(*[st.integers(0, 100_000)] * 3).map(sorted)


@given(points=_amounts.filter(lambda p: p[2] > p[0]))
def test_mean_and_deviation_of_a_triangular_line(points: list[int]) -> None:
    low, likely, high = points
    reference = stats.triang((likely - low) / (high - low), loc=low, scale=high - low)
    spread = Spread.of(low, likely, high)
    assert triangular_mean(spread) == pytest.approx(reference.mean(), abs=1e-6)
    assert triangular_sd(spread) == pytest.approx(reference.std(), rel=1e-6, abs=1e-3)


@pytest.mark.parametrize("correlation", [0.0, 0.25, 0.5, 1.0])
def test_percentiles_of_three_correlated_lines(correlation: float) -> None:
    points = [(800, 1000, 1600), (2000, 2500, 4000), (300, 400, 900)]
    sds = np.array(
        [stats.triang((m - a) / (b - a), loc=a, scale=b - a).std() for a, m, b in points]
    )
    matrix = np.full((3, 3), correlation) + np.eye(3) * (1 - correlation)
    sd = float(np.sqrt(sds @ matrix @ sds))
    ours = range_of([Spread.of(*p) for p in points], correlation)
    assert ours.mean == pytest.approx(4500)
    assert ours.p80 == pytest.approx(stats.norm(4500, sd).ppf(0.8), abs=0.01)
    assert ours.p10 == pytest.approx(stats.norm(4500, sd).ppf(0.1), abs=0.01)


def test_a_simulation_of_independent_lines_agrees() -> None:
    rng = np.random.default_rng(20260101)
    points = [(100 + i, 150 + 2 * i, 300 + 5 * i) for i in range(40)]
    draws = sum(rng.triangular(a, m, b, 200_000) for a, m, b in points)
    ours = range_of([Spread.of(*p) for p in points], 0.0)
    for probability, value in ((10, ours.p10), (50, ours.p50), (80, ours.p80), (90, ours.p90)):
        assert value == pytest.approx(float(np.percentile(draws, probability)), rel=0.003)


@given(st.lists(_amounts, min_size=0, max_size=12), st.floats(0, 1))
def test_percentiles_never_cross_and_stay_between_low_and_high(
    points: list[list[int]], correlation: float
) -> None:
    ours = range_of([Spread.of(*p) for p in points], correlation)
    assert ours.low <= ours.p10 <= ours.p50 <= ours.p80 <= ours.p90 <= ours.high
    assert ours.contingency >= 0
