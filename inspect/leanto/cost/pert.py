"""The smooth three-point shape (PERT) in place of a triangle: how much the shape itself matters.

Beta(1 + 4 (m - a)/(b - a), 1 + 4 (b - m)/(b - a)) on [a, b]. Its mean is (a + 4 m + b) / 6, its
variance (mean - a)(b - mean) / 7. The often printed ((b - a) / 6)^2 is a rule of thumb for it.

Malcolm, Roseboom, Clark and Fazar, "Application of a Technique for Research and Development
Program Evaluation", Operations Research 7(5), 1959 (from memory).
"""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass

from leanto.cost.estimate import Range
from leanto.cost.range import range_of
from leanto.cost.risk import HiddenRisk, OwnRisk, SharedRisk
from leanto.cost.triangle import Triangle
from leanto.money import Spread


@dataclass(frozen=True, slots=True)
class Pert:
    """low <= likely <= high, as plain numbers; the likely amount weighs four times."""

    low: float
    likely: float
    high: float

    @classmethod
    def of(cls, triangle: Triangle) -> Pert:
        return cls(triangle.low, triangle.likely, triangle.high)

    @property
    def mean(self) -> float:
        return (self.low + 4 * self.likely + self.high) / 6

    @property
    def variance(self) -> float:
        return (self.mean - self.low) * (self.high - self.mean) / 7

    @property
    def mean_square(self) -> float:
        return self.variance + self.mean**2


@dataclass(frozen=True, slots=True)
class PertLine:
    labor: Pert
    materials: Pert


@dataclass(frozen=True, slots=True)
class PertShared:
    wages: Pert
    crew: Pert
    prices: Pert


def pert_range(
    total: Spread,
    lines: Iterable[OwnRisk],
    hidden: Iterable[HiddenRisk],
    shared: SharedRisk,
) -> Range:
    """The range of a total as ``range_of`` has it, every triangle made smooth."""
    return range_of(
        total,
        [PertLine(Pert.of(line.labor), Pert.of(line.materials)) for line in lines],
        hidden,
        PertShared(Pert.of(shared.wages), Pert.of(shared.crew), Pert.of(shared.prices)),
    )
