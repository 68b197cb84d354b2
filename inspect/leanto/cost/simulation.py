"""The distribution of a total, drawn with a fixed seed.

Each line's triangle is cut in 256 equally likely slices and a random byte picks one, which is what
keeps ten thousand draws of three hundred lines fast in plain Python.
"""

from __future__ import annotations

import random
from collections.abc import Sequence
from dataclasses import dataclass
from operator import add, mul

from leanto.cost.risk import OwnRisk, SharedRisk
from leanto.cost.triangle import Triangle

DRAWS = 10_000
SEED = 1938


@dataclass(frozen=True, slots=True)
class HiddenDraw:
    """Damage that may come up: with chance p a Beta(a, b) share of its cost if all is bad."""

    p: float
    a: float
    b: float
    all_bad_usd: float


@dataclass(frozen=True, slots=True)
class Distribution:
    """Sorted draws."""

    values: tuple[float, ...]

    def at(self, probability: float) -> float:
        """The value that is not passed with this probability."""
        index = min(len(self.values) - 1, max(0, round(probability * len(self.values)) - 1))
        return self.values[index]

    @property
    def mean(self) -> float:
        return sum(self.values) / len(self.values)

    @property
    def contingency(self) -> float:
        """P80 less P50; never negative."""
        return self.at(0.8) - self.at(0.5)


@dataclass(frozen=True, slots=True)
class Simulated:
    total: Distribution
    labor: Distribution
    """Labor, with the hidden damage."""
    materials: Distribution


def simulate(
    lines: Sequence[OwnRisk],
    hidden: Sequence[HiddenDraw],
    shared: SharedRisk,
    *,
    draws: int = DRAWS,
    seed: int = SEED,
) -> Simulated:
    """The distributions of the total, its labor and its materials."""
    labor, materials = draw_costs(lines, hidden, shared, draws=draws, seed=seed)
    total = sorted(map(add, labor, materials))
    return Simulated(
        Distribution(tuple(total)),
        Distribution(tuple(sorted(labor))),
        Distribution(tuple(sorted(materials))),
    )


def draw_costs(
    lines: Sequence[OwnRisk],
    hidden: Sequence[HiddenDraw],
    shared: SharedRisk,
    *,
    draws: int = DRAWS,
    seed: int = SEED,
) -> tuple[list[float], list[float]]:
    """Labor (with hidden damage) and materials of each draw, in the order drawn.

    Two scopes drawn with one seed share the factors of each draw.
    """
    source = random.Random(seed)
    wages = _factor_draws(shared.wages, draws, source)
    crew = _factor_draws(shared.crew, draws, source)
    prices = _factor_draws(shared.prices, draws, source)
    # A complex number carries labor and materials through one addition instead of two.
    both = [0j] * draws
    for line in lines:
        slices = list(map(complex, line.labor.sliced(), line.materials.sliced()))
        both = list(map(add, both, map(slices.__getitem__, source.randbytes(draws))))
    labor = list(map(mul, [value.real for value in both], crew))
    materials = [value.imag for value in both]
    for damage in hidden:
        labor = list(map(add, labor, _hidden_draws(damage, draws, source)))
    return list(map(mul, labor, wages)), list(map(mul, materials, prices))


def _factor_draws(factor: Triangle, draws: int, source: random.Random) -> list[float]:
    """One draw from each of as many equally likely slices as there are draws, shuffled."""
    values = [factor.quantile((index + 0.5) / draws) for index in range(draws)]
    source.shuffle(values)
    return values


def _hidden_draws(damage: HiddenDraw, draws: int, source: random.Random) -> list[float]:
    """Nothing in the share 1 - p of the draws, a Beta share of the full cost in the others."""
    count = round(damage.p * draws)
    hit = [damage.all_bad_usd * source.betavariate(damage.a, damage.b) for _ in range(count)]
    values = hit + [0.0] * (draws - count)
    source.shuffle(values)
    return values
