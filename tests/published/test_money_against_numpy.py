"""Shares, contributions and swings, against general-purpose statistics libraries.

scipy.stats.beta and triang, SciPy reference guide; numpy.cov, NumPy reference guide.
"""

from __future__ import annotations

import numpy as np
import pytest
from scipy import stats

from leanto.cost.bad_share import sliced
from leanto.cost.contingency import shares_of_spread
from leanto.cost.risk import HiddenRisk, OwnRisk, SharedRisk
from leanto.cost.triangle import Triangle
from leanto.decision.unseen import Unseen

SHARED = SharedRisk(Triangle(0.8, 1, 1.3), Triangle(0.85, 1, 1.35), Triangle(0.9, 1, 1.2))
LINES = {
    "roof": OwnRisk(Triangle(800, 1000, 1600), Triangle(300, 400, 900)),
    "wall": OwnRisk(Triangle(2000, 2500, 4000), Triangle(10, 20, 60)),
}
P, A, B, ALL_BAD = 0.4, 1.4, 4.2, 6000.0


@pytest.mark.published("scipy and numpy", "library")
@pytest.mark.parametrize(
    ("a", "b"), [(1.4, 4.2), (1.0, 1.0), (50.0, 50.0), (1.0, 50.0), (2.0, 1.2)]
)
def test_slices_are_the_middle_quantiles_of_scipys_beta(a: float, b: float) -> None:
    found, reference = sliced(a, b), stats.beta(a, b)
    middles = [reference.ppf((index + 0.5) / 256) for index in range(256)]
    assert found == pytest.approx(middles, abs=3e-4)
    assert np.mean(found) == pytest.approx(reference.mean(), abs=1e-6)


@pytest.mark.published("scipy and numpy", "library")
def test_contributions_are_numpys_covariances() -> None:
    rng, draws = np.random.default_rng(11), 400_000

    def triangular(t: Triangle, u: np.ndarray) -> np.ndarray:
        c = (t.likely - t.low) / (t.high - t.low)
        return np.asarray(stats.triang(c, loc=t.low, scale=t.high - t.low).ppf(u))

    wages, crew, prices = (
        triangular(t, rng.random(draws)) for t in (SHARED.wages, SHARED.crew, SHARED.prices)
    )
    parts = {}
    for name, line in LINES.items():
        u = rng.random(draws)
        parts[name] = wages * crew * triangular(line.labor, u) + prices * triangular(
            line.materials, u
        )
    damage = (rng.random(draws) < P) * rng.beta(A, B, draws) * ALL_BAD
    parts["wall"] = parts["wall"] + wages * damage
    total = sum(parts.values())
    unseen = Unseen(P, A, B)
    found = shares_of_spread(
        LINES.items(),
        [("wall", HiddenRisk(unseen.mean * ALL_BAD, unseen.variance * ALL_BAD**2))],
        SHARED,
    )
    for name, part in parts.items():
        expected = np.cov(part, total)[0, 1] / np.var(total)
        assert found[name] == pytest.approx(expected, abs=0.005)
