"""The distribution of a total, against general-purpose statistics libraries.

scipy.stats.triang, SciPy reference guide; numpy.random.Generator.triangular and beta, NumPy
reference guide. The three triangular rows with printed quantiles are computed from the textbook
quantile formula.
"""

from __future__ import annotations

import math

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st
from scipy import stats

from leanto.cost.pert import Pert, pert_range
from leanto.cost.range import range_of
from leanto.cost.risk import HiddenRisk, OwnRisk, SharedRisk, moments
from leanto.cost.simulation import Distribution, HiddenDraw, simulate
from leanto.cost.triangle import Triangle
from leanto.decision.unseen import Unseen
from leanto.money import Spread

ONE = Triangle(1, 1, 1)
ALONE = SharedRisk(ONE, ONE, ONE)
SHARED = SharedRisk(Triangle(0.8, 1, 1.3), Triangle(0.85, 1, 1.35), Triangle(0.9, 1, 1.2))
LINES = [
    OwnRisk(Triangle(100 + i, 150 + 2 * i, 300 + 5 * i), Triangle(40, 60 + i, 140 + i))
    for i in range(40)
]
_points = st.tuples(*[st.integers(0, 100_000)] * 3).map(sorted)


def _reference(points: tuple[float, float, float]) -> stats.rv_continuous:
    low, likely, high = points
    return stats.triang((likely - low) / (high - low), loc=low, scale=high - low)


@pytest.mark.published("scipy and numpy", "library")
@given(_points.filter(lambda p: p[2] > p[0]), st.floats(0.001, 0.999))
def test_a_triangle_is_scipys_triang(points: list[int], u: float) -> None:
    triangle, reference = Triangle(*points), _reference((points[0], points[1], points[2]))
    assert triangle.mean == pytest.approx(reference.mean(), abs=1e-6)
    assert triangle.variance == pytest.approx(reference.var(), rel=1e-6, abs=1e-3)
    assert triangle.quantile(u) == pytest.approx(reference.ppf(u), rel=1e-6, abs=1e-3)


@pytest.mark.published("Sums by hand", "by hand")
@pytest.mark.parametrize(
    ("points", "p10", "p50", "p80", "p90"),
    [
        ((800, 1000, 1600), 926.491, 1110.102, 1290.161, 1380.911),
        ((9000, 10000, 12000), 9547.723, 10267.949, 10904.555, 11225.403),
        ((10, 20, 60), 17.0711, 28.3772, 40.0, 45.8579),
        ((5, 8, 14), 6.6432, 8.8038, 10.7137, 11.6762),
    ],
)
def test_quantiles_of_a_triangle(
    points: tuple[float, float, float], p10: float, p50: float, p80: float, p90: float
) -> None:
    triangle = Triangle(*points)
    found = [triangle.quantile(u) for u in (0.1, 0.5, 0.8, 0.9)]
    assert found == pytest.approx([p10, p50, p80, p90], abs=0.001)


@pytest.mark.published("scipy and numpy", "library")
@given(_points.filter(lambda p: p[2] > p[0]))
def test_the_smooth_shape_is_scipys_beta(points: list[int]) -> None:
    """scipy.stats.beta on [a, b], SciPy reference guide; weights 1, 4, 1."""
    low, likely, high = points
    lean = 4 * (likely - low) / (high - low)
    reference = stats.beta(1 + lean, 5 - lean, loc=low, scale=high - low)
    pert = Pert(*points)
    assert pert.mean == pytest.approx(reference.mean(), rel=1e-9)
    assert pert.variance == pytest.approx(reference.var(), rel=1e-6, abs=1e-9)


@pytest.mark.published("Worked tables of three-point estimates, course pages", "seen")
@pytest.mark.parametrize(
    ("points", "mean"),
    [
        ((5, 8, 14), 8.5),
        ((4, 8, 13), 8.17),
        ((1, 10, 17), 9.67),
        ((6, 10, 13), 9.83),
        ((7, 7, 12), 7.83),
    ],
)
def test_published_three_point_estimates(points: tuple[float, float, float], mean: float) -> None:
    assert Pert(*points).mean == pytest.approx(mean, abs=0.005)


@pytest.mark.published("Sums by hand", "by hand")
@pytest.mark.parametrize(
    ("points", "triangle", "smooth"),
    [
        # Variances computed from the textbook formulas.
        ((800, 1000, 1600), 28888.889, 20317.460),
        ((10, 20, 60), 116.6667, 75.0),
        ((5, 8, 14), 3.5, 2.75),
        ((2, 3, 5), 0.3889, 0.30556),
    ],
)
def test_variances_of_both_shapes(
    points: tuple[float, float, float], triangle: float, smooth: float
) -> None:
    assert Triangle(*points).variance == pytest.approx(triangle, rel=2e-4)
    assert Pert(*points).variance == pytest.approx(smooth, rel=2e-4)


@pytest.mark.published("Sums by hand", "by hand")
def test_three_independent_lines_have_the_spread_of_the_textbook_formula() -> None:
    """Their likely amounts come to 3,900, their means to 4,500; normal P80 by the sum of the
    variances 4,900.7; the P80 of the single lines come to 5,170.6 and do not add up."""
    lines = [Triangle(800, 1000, 1600), Triangle(2000, 2500, 4000), Triangle(300, 400, 900)]
    deviations = [math.sqrt(line.variance) for line in lines]
    assert deviations == pytest.approx([169.967, 424.918, 131.233], abs=0.001)
    assert sum(line.quantile(0.8) for line in lines) == pytest.approx(5170.6, abs=0.1)
    total = simulate([OwnRisk(line, Triangle(0, 0, 0)) for line in lines], [], ALONE).total
    assert total.mean == pytest.approx(4500, rel=0.005)
    assert float(np.std(total.values)) == pytest.approx(math.hypot(*deviations), rel=0.03)
    assert total.at(0.8) == pytest.approx(4900.7, rel=0.01)


@pytest.mark.published("Own rule", "own")
def test_the_smooth_range_is_narrower_than_that_of_triangles() -> None:
    plain = Spread.of(0, 1, 1_000_000)
    triangles, smooth = (f(plain, LINES, [], SHARED) for f in (range_of, pert_range))
    assert smooth.p80 - smooth.p50 < triangles.p80 - triangles.p50
    assert smooth.mean < triangles.mean  # these lines lean to the dear side


@pytest.mark.published("Own rule", "own")
@given(_points)
def test_slices_keep_the_mean(points: list[int]) -> None:
    slices = Triangle(*points).sliced()
    assert sum(slices) / len(slices) == pytest.approx(Triangle(*points).mean, abs=1e-6)


def _numpy_total(lines: list[OwnRisk], hidden: list[HiddenDraw], shared: SharedRisk) -> np.ndarray:
    """The same model, drawn by numpy."""
    rng, draws = np.random.default_rng(7), 200_000

    def triangular(t: Triangle) -> np.ndarray:
        if t.low == t.high:
            return np.full(draws, t.low)
        return np.asarray(_reference((t.low, t.likely, t.high)).ppf(rng.random(draws)))

    labor, materials = np.zeros(draws), np.zeros(draws)
    for line in lines:
        u = rng.random(draws)
        labor += _reference((line.labor.low, line.labor.likely, line.labor.high)).ppf(u)
        own = line.materials
        materials += _reference((own.low, own.likely, own.high)).ppf(u)
    damage = np.zeros(draws)
    for one in hidden:
        damage += (rng.random(draws) < one.p) * rng.beta(one.a, one.b, draws) * one.all_bad_usd
    work = triangular(shared.crew) * labor + damage
    return triangular(shared.wages) * work + triangular(shared.prices) * materials


@pytest.mark.published("scipy and numpy", "library")
@pytest.mark.parametrize("shared", [ALONE, SHARED], ids=["independent", "shared"])
@pytest.mark.parametrize(
    "hidden", [[], [HiddenDraw(0.3, 1.4, 4.2, 9000)] * 3], ids=["nothing hidden", "hidden"]
)
def test_the_simulation_draws_what_numpy_draws(
    shared: SharedRisk, hidden: list[HiddenDraw]
) -> None:
    reference = _numpy_total(LINES, hidden, shared)
    total = simulate(LINES, hidden, shared).total
    assert total.mean == pytest.approx(float(reference.mean()), rel=0.004)
    for probability in (0.1, 0.5, 0.8, 0.9):
        expected = float(np.quantile(reference, probability))
        assert total.at(probability) == pytest.approx(expected, rel=0.01)


@pytest.mark.published("scipy and numpy", "library")
def test_mean_and_variance_in_closed_form_agree_with_the_draws() -> None:
    hidden = [HiddenDraw(0.3, 1.4, 4.2, 9000)] * 3
    unseen = Unseen(0.3, 1.4, 4.2)
    risks = [HiddenRisk(unseen.mean * 9000, unseen.variance * 9000**2)] * 3
    total = simulate(LINES, hidden, SHARED).total
    exact = moments(LINES, risks, SHARED)
    assert exact.mean == pytest.approx(total.mean, rel=0.004)
    assert exact.variance == pytest.approx(float(np.var(total.values)), rel=0.06)


@pytest.mark.published("Own rule", "own")
def test_the_quick_range_is_near_the_drawn_one() -> None:
    hidden = [HiddenDraw(0.3, 1.4, 4.2, 9000)] * 3
    unseen = Unseen(0.3, 1.4, 4.2)
    risks = [HiddenRisk(unseen.mean * 9000, unseen.variance * 9000**2)] * 3
    plain = Spread.of(0, 1, 1_000_000)
    quick, drawn = range_of(plain, LINES, risks, SHARED), simulate(LINES, hidden, SHARED).total
    for probability, value in ((0.1, quick.p10), (0.5, quick.p50), (0.8, quick.p80)):
        assert value == pytest.approx(drawn.at(probability), rel=0.03)


@pytest.mark.published("Own rule", "own")
def test_shared_factors_widen_the_total() -> None:
    alone, shared = simulate(LINES, [], ALONE).total, simulate(LINES, [], SHARED).total
    assert shared.at(0.9) - shared.at(0.1) > 2 * (alone.at(0.9) - alone.at(0.1))


@pytest.mark.published("Own rule", "own")
def test_the_same_seed_draws_the_same() -> None:
    assert simulate(LINES[:5], [], SHARED) == simulate(LINES[:5], [], SHARED)


@pytest.mark.published("Own rule", "own")
@given(st.lists(st.tuples(_points, _points), min_size=1, max_size=6), st.floats(0, 1))
def test_percentiles_never_cross_and_contingency_is_never_negative(
    pairs: list[tuple[list[int], list[int]]], p: float
) -> None:
    lines = [OwnRisk(Triangle(*one), Triangle(*other)) for one, other in pairs]
    total: Distribution = simulate(lines, [HiddenDraw(p, 1.4, 4.2, 5000)], SHARED, draws=200).total
    assert total.at(0.1) <= total.at(0.5) <= total.at(0.8) <= total.at(0.9)
    assert total.contingency >= 0
