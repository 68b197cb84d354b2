"""Allowances: what the repair items are likely to cost, with how each figure came about."""

from __future__ import annotations

from dataclasses import dataclass

from leanto.cost.price import Price
from leanto.money import NOTHING, Spread
from leanto.scope.item import RepairItem


@dataclass(frozen=True, slots=True)
class CostLine:
    """The allowance for one repair item."""

    item: RepairItem
    price: Price
    labor_hours: Spread
    labor: Spread
    materials: Spread
    haul: Spread
    total: Spread
    """Labor, materials and haul with overhead and profit, at least the minimum charge."""
    explanation: str
    """The build-up in words, with its figures."""
    saved: Spread = NOTHING
    """What a contractor would cost on top, for a line that the owner does."""
    own_hours: Spread = NOTHING
    """Hours that the owner puts in, at a tradesman's pace."""


@dataclass(frozen=True, slots=True)
class Range:
    """The range of a total."""

    low: float
    """Sum of every line's low; practically never met."""
    likely: float
    """Sum of the likely values; usually under the mean."""
    high: float
    mean: float
    p10: float
    p50: float
    p80: float
    p90: float

    @property
    def contingency(self) -> float:
        """P80 less P50."""
        return self.p80 - self.p50


@dataclass(frozen=True, slots=True)
class Estimate:
    lines: tuple[CostLine, ...]
    labor: Spread
    materials: Spread
    haul: Spread
    total: Spread
    """Of the lines; labor, materials and haul add up to it."""
    hidden: Spread
    """What kept linings are likely to bring up later, at change-order prices; not in ``total``."""
    range: Range
    """Of the lines and the hidden damage together."""
    labor_hours: Spread
    """Paid ones."""
    debris_lb: float
    alternates: tuple[CostLine, ...] = ()
    """Priced apart; in no sum."""

    @property
    def saved(self) -> Spread:
        """What the lines by the owner save."""
        return Spread.total(line.saved for line in self.lines)

    @property
    def own_hours(self) -> Spread:
        return Spread.total(line.own_hours for line in self.lines)
