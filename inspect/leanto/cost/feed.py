"""Allowances for the ways of running a feed, so that they can be laid side by side."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass
from decimal import Decimal

from leanto.cost.build_up import planned, spread_of
from leanto.cost.feed_materials import FeedMaterials, WireRow
from leanto.cost.price import Factors, Price, Three
from leanto.money import Spread, exact
from leanto.scope.work import Trade, Work
from leanto.trade.wiring.feed_need import FeedNeed, Supply
from leanto.trade.wiring.feed_variants import Alternative, feed_alternatives
from leanto.trade.wiring.feeder import Feeder
from leanto.trade.wiring.separate_building import is_one_circuit

TRENCH = "feed-trench"
ENDS = "feeder-ends"
PANEL = "new-subpanel"
SHUT_OFF = "building-disconnect"
RODS = "ground-rods"


@dataclass(frozen=True, slots=True)
class FeedPart:
    """A part of a feed and its allowance."""

    name: str
    allowance: Spread


@dataclass(frozen=True, slots=True)
class FeedWay:
    """One alternative with what it is likely to cost."""

    alternative: Alternative
    parts: tuple[FeedPart, ...] = ()
    total: Spread | None = None
    """None where the tables do not size it, or a price is missing."""
    missing: tuple[str, ...] = ()
    """What no price was found for."""


@dataclass(frozen=True, slots=True)
class FeedPrices:
    """Everything that a feed is priced by."""

    materials: FeedMaterials
    works: Mapping[str, Work]
    prices: Mapping[str, Price]
    factors: Factors


def feed_ways(need: FeedNeed, prices: FeedPrices) -> tuple[FeedWay, ...]:
    """Every alternative for a need with its allowance, in the order of the alternatives."""
    return tuple(priced(one, prices) for one in feed_alternatives(need))


def least(ways: Iterable[FeedWay]) -> FeedWay | None:
    """The likely cheapest of those that carry the whole load within the advice; else None."""
    fit = [way for way in ways if way.total is not None and way.alternative.answers_the_plan]
    return min(fit, key=_likely, default=None)


def _likely(way: FeedWay) -> Decimal:
    assert way.total is not None
    return way.total.likely


def priced(alternative: Alternative, prices: FeedPrices) -> FeedWay:
    """The alternative with the allowance of every part, or with what has no price."""
    feeder = alternative.feeder
    if not isinstance(feeder, Feeder):
        return FeedWay(alternative)
    parts: list[FeedPart] = []
    missing: list[str] = []
    for name, amount in _parts(feeder, prices):
        if amount is None:
            missing.append(name)
        else:
            parts.append(FeedPart(name, amount))
    total = None if missing else Spread.total(part.allowance for part in parts)
    return FeedWay(alternative, tuple(parts), total, tuple(missing))


def _parts(feeder: Feeder, prices: FeedPrices) -> Iterator[tuple[str, Spread | None]]:
    """Every part by its name; None for a part without a price."""
    feet = feeder.need.one_way_ft
    yield "wire and ground", _wire(feeder, prices)
    if feeder.conduit_size is not None:
        yield f"{feeder.conduit_size} in. conduit", _conduit(feeder.conduit_size, feet, prices)
    depth = feeder.trench_in / prices.materials.trench_priced_in
    yield f"trench of {feeder.trench_in} in.", _work(TRENCH, feet * depth, prices)
    yield "both ends", _work(ENDS, 1, prices)
    if is_one_circuit(feeder):
        yield "shut-off", _work(SHUT_OFF, 1, prices)
    else:
        yield "panel with shut-off", _work(PANEL, 1, prices)
        yield "ground rods", _work(RODS, 1, prices)
    if feeder.need.supply is Supply.V480:
        yield "two transformers", _transformers(feeder, prices)


def _wire(feeder: Feeder, prices: FeedPrices) -> Spread | None:
    table, feet = prices.materials, feeder.need.one_way_ft
    rows = {row.size: row for row in table.wires}
    usd, hours = Decimal(0), Decimal(0)
    for size, count in ((feeder.conductor.size, feeder.need.supply.wires), (feeder.ground.size, 1)):
        row = rows.get(size)
        each = _usd(row, feeder.way.metal) if row else None
        if row is None or each is None:
            return None
        usd += each * count
        hours += exact(row.pull_hours) * count
    factor = exact(table.cable_factor) if feeder.way.is_cable else Decimal(1)
    return _amount(hours * exact(feet), usd * factor * exact(feet), prices)


def _usd(row: WireRow, metal: str) -> Decimal | None:
    return row.copper_usd if metal == "copper" else row.aluminum_usd


def _conduit(size: str, feet: float, prices: FeedPrices) -> Spread | None:
    for row in prices.materials.conduits:
        if row.size == size:
            return _amount(exact(row.lay_hours) * exact(feet), row.usd * exact(feet), prices)
    return None


def _transformers(feeder: Feeder, prices: FeedPrices) -> Spread | None:
    kva = feeder.need.design_a * feeder.need.supply.volts / 1000
    fitting = [row for row in prices.materials.transformers if row.kva >= kva]
    if not fitting:
        return None
    one = min(fitting, key=lambda row: row.kva)
    table = prices.materials
    hours = _times(exact(one.hours) * 2, table.hours_range)
    return planned(
        hours, _times(one.usd * 2, table.materials_range), Trade.ELECTRICIAN, prices.factors
    )


def _amount(hours: Decimal, usd: Decimal, prices: FeedPrices) -> Spread:
    table = prices.materials
    waste = 1 + table.waste_pct / 100
    return planned(
        _times(hours, table.hours_range),
        _times(usd * waste, table.materials_range),
        Trade.ELECTRICIAN,
        prices.factors,
    )


def _work(work_id: str, quantity: float, prices: FeedPrices) -> Spread | None:
    """So much of a work of the library, at least its minimum charge."""
    price, work = prices.prices.get(work_id), prices.works.get(work_id)
    if price is None or work is None:
        return None
    amount = planned(
        spread_of(price.hours).scaled(exact(quantity)),
        spread_of(price.materials_usd).scaled(exact(quantity)),
        work.trade,
        prices.factors,
    )
    return Spread(*(max(price.minimum_usd, x) for x in (amount.low, amount.likely, amount.high)))


def _times(amount: Decimal, three: Three) -> Spread:
    return spread_of(three).scaled(amount)
