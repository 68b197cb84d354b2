"""What moves the total most: each driver taken from its P10 to its P90, the others at their mean.

total = wages x (crew x sum of labor + sum of hidden damage) + prices x sum of materials

is a straight line in each of its factors, so the total's swing is exact and needs no draws:

- wages:    (W90 - W10) x (mean crew x L + H)
- crew:     (C90 - C10) x mean wages x L
- prices:   (P90 - P10) x M
- a trade's wage against its likely one: (w90 - w10) x mean crew x its labor
- a line:   mean wages x mean crew x (l90 - l10) + mean prices x (m90 - m10)
- hidden damage of a surface: mean wages x (x90 - x10) x its cost if all is bad

Wages of single trades are part of the wages as a whole: their swings do not add to it.
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from enum import StrEnum

from leanto.cost.bad_share import sliced
from leanto.cost.estimate import CostLine
from leanto.cost.price import Factors
from leanto.cost.risk import OwnRisk, own_risk, shared_risk
from leanto.cost.simulation import HiddenDraw
from leanto.cost.triangle import SLICES, Triangle

LOW, HIGH = 0.1, 0.9


class DriverKind(StrEnum):
    SHARED = "shared factor"
    WAGE = "trade wage"
    LINE = "line"
    HIDDEN = "hidden damage"


@dataclass(frozen=True, slots=True)
class Driver:
    """One thing that is not known exactly, and what it does to the total."""

    kind: DriverKind
    key: str
    """The repair item, the surface, the trade, or the name of the factor."""
    low_usd: float
    """Expected total with the driver at its P10 and everything else at its mean."""
    high_usd: float

    @property
    def swing_usd(self) -> float:
        return self.high_usd - self.low_usd


def sensitivity(
    lines: Sequence[CostLine], hidden: Iterable[HiddenDraw], factors: Factors
) -> tuple[Driver, ...]:
    """Every driver that moves the total, the largest swing first."""
    model = _Model([own_risk(line) for line in lines], tuple(hidden), factors)
    drivers = [
        *model.shared_drivers(),
        *model.wage_drivers(lines),
        *model.line_drivers(),
        *model.hidden_drivers(),
    ]
    moving = [driver for driver in drivers if driver.swing_usd > 1e-9]
    return tuple(sorted(moving, key=lambda one: (-one.swing_usd, one.kind, one.key)))


def share_at(damage: HiddenDraw, probability: float) -> float:
    """The bad share that is not passed with this probability: 0 up to 1 - p."""
    if probability <= 1 - damage.p:
        return 0.0
    rest = (probability - (1 - damage.p)) / damage.p
    return sliced(damage.a, damage.b)[min(SLICES - 1, int(rest * SLICES))]


class _Model:
    """The means that each driver is measured against."""

    def __init__(
        self, risks: Sequence[OwnRisk], hidden: Sequence[HiddenDraw], factors: Factors
    ) -> None:
        self._risks, self._hidden, self._factors = risks, hidden, factors
        shared = shared_risk(factors)
        self._wages, self._crew, self._prices = shared.wages, shared.crew, shared.prices
        self._labor = sum(risk.labor.mean for risk in risks)
        self._materials = sum(risk.materials.mean for risk in risks)
        self._damage = sum(_mean_damage(one) for one in hidden)

    @property
    def _mean(self) -> float:
        return self._total(self._wages.mean, self._crew.mean, self._prices.mean)

    def _total(self, wages: float, crew: float, prices: float) -> float:
        return wages * (crew * self._labor + self._damage) + prices * self._materials

    def shared_drivers(self) -> Iterable[Driver]:
        wages, crew, prices = self._wages, self._crew, self._prices
        for key, ends in (
            ("wages", [(wages.quantile(u), crew.mean, prices.mean) for u in (LOW, HIGH)]),
            ("crew", [(wages.mean, crew.quantile(u), prices.mean) for u in (LOW, HIGH)]),
            ("prices", [(wages.mean, crew.mean, prices.quantile(u)) for u in (LOW, HIGH)]),
        ):
            low, high = (self._total(*end) for end in ends)
            yield Driver(DriverKind.SHARED, key, low, high)

    def wage_drivers(self, lines: Sequence[CostLine]) -> Iterable[Driver]:
        by_trade: dict[str, float] = {}
        for line, risk in zip(lines, self._risks, strict=True):
            trade = line.item.work.trade
            by_trade[trade] = by_trade.get(trade, 0.0) + risk.labor.mean
        for wage in self._factors.wages:
            usd, likely = wage.hourly_usd, float(wage.hourly_usd.likely)
            if likely <= 0 or wage.trade not in by_trade:
                continue
            ratio = Triangle(float(usd.low) / likely, 1.0, float(usd.high) / likely)
            paid = self._crew.mean * by_trade[wage.trade]
            yield self._moved(
                DriverKind.WAGE,
                wage.trade,
                paid * (ratio.quantile(LOW) - ratio.mean),
                paid * (ratio.quantile(HIGH) - ratio.mean),
            )

    def line_drivers(self) -> Iterable[Driver]:
        for risk in self._risks:
            low, high = (
                self._wages.mean * self._crew.mean * (risk.labor.quantile(u) - risk.labor.mean)
                + self._prices.mean * (risk.materials.quantile(u) - risk.materials.mean)
                for u in (LOW, HIGH)
            )
            yield self._moved(DriverKind.LINE, risk.key, low, high)

    def hidden_drivers(self) -> Iterable[Driver]:
        for one in self._hidden:
            low, high = (
                self._wages.mean * (share_at(one, u) * one.all_bad_usd - _mean_damage(one))
                for u in (LOW, HIGH)
            )
            yield self._moved(DriverKind.HIDDEN, one.key, low, high)

    def _moved(self, kind: DriverKind, key: str, low: float, high: float) -> Driver:
        return Driver(kind, key, self._mean + low, self._mean + high)


def _mean_damage(one: HiddenDraw) -> float:
    return one.p * one.a / (one.a + one.b) * one.all_bad_usd
