"""What makes lines move together: local wages, the crew, material prices, hidden damage.

total = wages x (crew x sum of labor + sum of hidden damage) + prices x sum of materials

Each line's labor and materials rise and fall together, since both follow its quantity. Lines are
independent of each other but for the three shared factors; without those the total would look far
narrower than it is.
"""

from __future__ import annotations

import math
from collections.abc import Iterable
from dataclasses import dataclass
from typing import Protocol

from leanto.cost.estimate import CostLine
from leanto.cost.price import Factors, Three
from leanto.cost.triangle import Triangle


class Shape(Protocol):
    """An amount that is not known exactly, by its first two moments."""

    @property
    def mean(self) -> float: ...
    @property
    def variance(self) -> float: ...
    @property
    def mean_square(self) -> float: ...


class LineShapes(Protocol):
    @property
    def labor(self) -> Shape: ...
    @property
    def materials(self) -> Shape: ...


class SharedShapes(Protocol):
    @property
    def wages(self) -> Shape: ...
    @property
    def crew(self) -> Shape: ...
    @property
    def prices(self) -> Shape: ...


@dataclass(frozen=True, slots=True)
class OwnRisk:
    """One line at likely wages, crew and prices, with overhead and profit."""

    labor: Triangle
    materials: Triangle
    """Materials and haul."""
    key: str = ""
    """The repair item's id; it starts the line's random numbers, see ``cost.simulation``."""


@dataclass(frozen=True, slots=True)
class HiddenRisk:
    """Damage that may come up: the mean and variance of its cost at likely wages."""

    mean: float
    variance: float


@dataclass(frozen=True, slots=True)
class SharedRisk:
    """Factors around 1 that act on every line."""

    wages: Triangle
    crew: Triangle
    prices: Triangle


def own_risk(line: CostLine) -> OwnRisk:
    """The line's own spread: its hours at the likely wage, its materials and haul.

    The wage's range is taken off here, as all lines share it.
    """
    likely = float(line.labor.likely)
    hours = Triangle.of(line.labor_hours)
    scale = likely / hours.likely if hours.likely > 0 else 0.0
    labor = (
        Triangle(hours.low * scale, likely, hours.high * scale)
        if scale
        else Triangle(likely, likely, likely)
    )
    return OwnRisk(labor, Triangle.of(line.materials + line.haul), line.item.id)


def shared_risk(factors: Factors) -> SharedRisk:
    """Wages by the mean range over the trades; crew and prices as written."""
    ratios = [
        (float(w.low / w.likely), float(w.high / w.likely))
        for w in (wage.hourly_usd for wage in factors.wages)
        if w.likely > 0
    ]
    low = sum(ratio for ratio, _ in ratios) / len(ratios) if ratios else 1.0
    high = sum(ratio for _, ratio in ratios) / len(ratios) if ratios else 1.0
    return SharedRisk(Triangle(low, 1.0, high), _factor(factors.crew), _factor(factors.prices))


@dataclass(frozen=True, slots=True)
class Moments:
    """Mean and variance of the total, in dollars and dollars squared."""

    mean: float
    variance: float


def moments(
    lines: Iterable[LineShapes], hidden: Iterable[HiddenRisk], shared: SharedShapes
) -> Moments:
    """Mean and variance of the total in closed form.

    For independent factors f and sums s: E[f s] = E[f] E[s] and E[(f s)^2] = E[f^2] E[s^2].
    """
    lines, hidden = tuple(lines), tuple(hidden)
    labor = Moments(
        sum(line.labor.mean for line in lines), sum(line.labor.variance for line in lines)
    )
    materials = Moments(
        sum(line.materials.mean for line in lines), sum(line.materials.variance for line in lines)
    )
    crewed = _times(labor, shared.crew)
    work = Moments(
        crewed.mean + sum(risk.mean for risk in hidden),
        crewed.variance + sum(risk.variance for risk in hidden),
    )
    paid, bought = _times(work, shared.wages), _times(materials, shared.prices)
    together = sum(_covariance(line.labor, line.materials) for line in lines)
    covariance = together * shared.crew.mean * shared.wages.mean * shared.prices.mean
    return Moments(paid.mean + bought.mean, paid.variance + bought.variance + 2 * covariance)


def _times(amount: Moments, factor: Shape) -> Moments:
    mean = amount.mean * factor.mean
    square = (amount.variance + amount.mean**2) * factor.mean_square
    return Moments(mean, max(0.0, square - mean**2))


def _covariance(one: Shape, other: Shape) -> float:
    """Of two amounts that follow one random number: taken as fully correlated, which two
    triangles of different lean are but for a hair."""
    return math.sqrt(one.variance * other.variance)


def _factor(three: Three) -> Triangle:
    return Triangle(float(three.low), float(three.likely), float(three.high))
