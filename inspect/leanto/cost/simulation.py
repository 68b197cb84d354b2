"""The distribution of a total, drawn with a fixed seed.

Each line's triangle is cut in 256 equally likely slices and a random byte picks one, which is what
keeps ten thousand draws of three hundred lines fast in plain Python. A line's key starts its random
numbers, so a line is drawn alike in every scope that holds it: two scopes differ by what is
different in them and by nothing else, and the order of lines changes nothing.
"""

from __future__ import annotations

import random
from bisect import bisect_right
from collections.abc import Callable, Iterable, Iterator, Sequence
from dataclasses import dataclass, replace
from functools import lru_cache
from itertools import repeat
from operator import add, mul, sub
from typing import Any

from leanto.cost.bad_share import sliced
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
    """At likely wages."""
    key: str = ""
    """The surface; both courses of one surface meet the same damage in each draw."""


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

    def share_under(self, amount: float) -> float:
        """The share of the draws at or under an amount, 0 to 1."""
        return bisect_right(self.values, amount) / len(self.values)


@dataclass(frozen=True, slots=True)
class Simulated:
    total: Distribution
    labor: Distribution
    """Labor, with the hidden damage."""
    materials: Distribution


@dataclass(frozen=True, slots=True)
class Draws:
    """A scope as it was drawn; lines and damage can be put to it and taken from it again."""

    wages: Sequence[float]
    crew: Sequence[float]
    prices: Sequence[float]
    work: Sequence[complex]
    """Labor as the real part and materials as the imaginary one, before the shared factors: one
    addition instead of two."""
    damage: Sequence[float]
    """Hidden damage at likely wages."""
    seed: int

    @classmethod
    def none(cls, shared: SharedRisk, *, draws: int = DRAWS, seed: int = SEED) -> Draws:
        """Nothing drawn yet but the shared factors, which depend on the seed alone."""
        return cls(
            wages=_factor_draws(shared.wages, draws, seed, "wages"),
            crew=_factor_draws(shared.crew, draws, seed, "crew"),
            prices=_factor_draws(shared.prices, draws, seed, "prices"),
            work=[0j] * draws,
            damage=[0.0] * draws,
            seed=seed,
        )

    def plus(self, lines: Iterable[OwnRisk] = (), hidden: Iterable[HiddenDraw] = ()) -> Draws:
        """With these lines and this damage on top."""
        return self._changed(add, lines, hidden)

    def minus(self, lines: Iterable[OwnRisk] = (), hidden: Iterable[HiddenDraw] = ()) -> Draws:
        """Without lines and damage that were put to it with the same keys."""
        return self._changed(sub, lines, hidden)

    def labor(self) -> Iterator[float]:
        """Labor with the hidden damage, draw by draw."""
        crewed = map(mul, [value.real for value in self.work], self.crew)
        return map(mul, map(add, crewed, self.damage), self.wages)

    def materials(self) -> Iterator[float]:
        return map(mul, [value.imag for value in self.work], self.prices)

    def totals(self) -> list[float]:
        """The total of each draw, in the order drawn."""
        return list(map(add, self.labor(), self.materials()))

    def total(self) -> Distribution:
        return Distribution(tuple(sorted(self.totals())))

    def simulated(self) -> Simulated:
        labor, materials = list(self.labor()), list(self.materials())
        return Simulated(
            Distribution(tuple(sorted(map(add, labor, materials)))),
            Distribution(tuple(sorted(labor))),
            Distribution(tuple(sorted(materials))),
        )

    def _changed(
        self,
        change: Callable[[Any, Any], Any],
        lines: Iterable[OwnRisk],
        hidden: Iterable[HiddenDraw],
    ) -> Draws:
        work, damage, draws = self.work, self.damage, len(self.work)
        for line in _keyed(lines):
            slices = list(map(complex, line.labor.sliced(), line.materials.sliced()))
            picks = _source(self.seed, f"line {line.key}").randbytes(draws)
            work = list(map(change, work, map(slices.__getitem__, picks)))
        for one in _keyed(hidden):
            shares = _share_draws(one.p, one.a, one.b, draws, self.seed, f"hidden {one.key}")
            damage = list(map(change, damage, map(mul, shares, repeat(one.all_bad_usd))))
        return replace(self, work=work, damage=damage)


def simulate(
    lines: Iterable[OwnRisk],
    hidden: Iterable[HiddenDraw],
    shared: SharedRisk,
    *,
    draws: int = DRAWS,
    seed: int = SEED,
) -> Simulated:
    """The distributions of the total, its labor and its materials."""
    return Draws.none(shared, draws=draws, seed=seed).plus(lines, hidden).simulated()


def _source(seed: int, key: str) -> random.Random:
    """Random numbers of their own for each key; the same on every machine."""
    return random.Random(f"{seed} {key}")


def _keyed(risks: Iterable[Any]) -> list[Any]:
    """In order of their keys; those without one, or with one that was there, get a number."""
    seen: set[str] = set()
    keyed = []
    for index, risk in enumerate(risks):
        named = risk if risk.key and risk.key not in seen else replace(risk, key=f"#{index}")
        seen.add(named.key)
        keyed.append(named)
    return sorted(keyed, key=lambda risk: str(risk.key))


@lru_cache(maxsize=16)
def _factor_draws(factor: Triangle, draws: int, seed: int, key: str) -> tuple[float, ...]:
    """One draw from each of as many equally likely slices as there are draws, shuffled."""
    values = [factor.quantile((index + 0.5) / draws) for index in range(draws)]
    _source(seed, key).shuffle(values)
    return tuple(values)


@lru_cache(maxsize=64)  # both courses of a surface, and every step of a plan, ask for the same
def _share_draws(
    p: float, a: float, b: float, draws: int, seed: int, key: str
) -> tuple[float, ...]:
    """Nothing in the share 1 - p of the draws, a Beta share in the others."""
    source = _source(seed, key)
    hit = source.sample(range(draws), round(p * draws))
    slices = sliced(a, b)
    shares = [0.0] * draws
    for index, pick in zip(hit, source.randbytes(len(hit)), strict=True):
        shares[index] = slices[pick]
    return tuple(shares)
