"""The allowance of each repair item: hours, wages, materials, waste, haul, markup, minimum."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import replace
from decimal import Decimal

from leanto.cost.estimate import CostLine
from leanto.cost.price import Factors, Price, Three, Wage
from leanto.money import Spread, exact, format_usd
from leanto.remembered import remembered
from leanto.scope.item import RepairItem
from leanto.scope.mark import Mark
from leanto.scope.work import Trade, Work

Amount = tuple[float, float, bool]
"""The quantity, what is bought for it, and whether access is poor."""
_MOST_AMOUNTS = 200


def spread_of(three: Three) -> Spread:
    return Spread(three.low, three.likely, three.high)


def price_lines(
    items: Iterable[RepairItem], prices: Mapping[str, Price], factors: Factors
) -> tuple[CostLine, ...]:
    """A cost line for each repair item; the lines of one work share one minimum charge.

    A line that the owner does costs materials and haul without overhead and profit, and no visit.
    """
    lines = plain_lines(items, prices, factors)
    totals: dict[str, Decimal] = {}
    for line in lines:
        if line.item.mark is not Mark.BY_OWNER:
            work = line.item.work.id
            totals[work] = totals.get(work, Decimal(0)) + line.total.likely
    return tuple(
        by_owner(line, factors)
        if line.item.mark is Mark.BY_OWNER
        else _at_least_minimum(line, totals[line.item.work.id])
        for line in lines
    )


def plain_lines(
    items: Iterable[RepairItem], prices: Mapping[str, Price], factors: Factors
) -> tuple[CostLine, ...]:
    """A cost line for each repair item, without minimum charges."""
    wages = {wage.trade: wage for wage in factors.wages}
    return tuple(_line(item, prices[item.work.id], factors, wages) for item in items)


def _line(
    item: RepairItem, price: Price, factors: Factors, wages: Mapping[Trade, Wage]
) -> CostLine:
    known = _known(price, factors, item.work)
    amount = (item.quantity, item.bought, item.poor_access)
    if amount not in known:
        if len(known) >= _MOST_AMOUNTS:
            known.clear()
        known[amount] = _priced(item, price, factors, wages)
    return replace(known[amount], item=item)


@remembered(1000)
def _known(price: Price, factors: Factors, work: Work) -> dict[Amount, CostLine]:
    """Lines of the work that were priced before, by their amount; none at first."""
    return {}


def _priced(
    item: RepairItem, price: Price, factors: Factors, wages: Mapping[Trade, Wage]
) -> CostLine:
    quantity = exact(item.quantity)
    hours = spread_of(price.hours).scaled(quantity)
    if item.poor_access:
        hours = _times(hours, factors.poor_access)
    wage = wages[item.work.trade].hourly_usd
    on_top = factors.burden * factors.region
    labor = _times(hours, wage).scaled(on_top)
    with_tax = 1 + factors.sales_tax_pct / 100
    materials = spread_of(price.materials_usd).scaled(exact(item.bought) * with_tax)
    haul = spread_of(factors.haul_usd_per_lb).scaled(price.debris_lb * quantity)
    markup = _markup(factors)
    total = (labor + materials + haul).scaled(markup)
    access = ", through an opened patch" if item.poor_access else ""
    explanation = (
        f"{_number(hours.likely)} h at {format_usd(wage.likely, cents=True)} x {factors.burden} "
        f"burden x {factors.region} region{access} = {format_usd(labor.likely)} labor; "
        f"{_number(item.bought)} {item.work.unit} bought = {format_usd(materials.likely)} "
        f"materials with {factors.sales_tax_pct} % tax; {format_usd(haul.likely)} haul; "
        f"x {markup.normalize()} overhead and profit = {format_usd(total.likely)}"
    )
    return CostLine(
        item=item,
        price=price,
        labor_hours=hours,
        labor=labor.scaled(markup),
        materials=materials.scaled(markup),
        haul=haul.scaled(markup),
        total=total,
        explanation=explanation,
    )


def planned(hours: Spread, materials: Spread, trade: Trade, factors: Factors) -> Spread:
    """What hours of a trade and materials before tax come to, overhead and profit included."""
    wage = next(wage for wage in factors.wages if wage.trade is trade).hourly_usd
    labor = _times(hours, wage).scaled(factors.burden * factors.region)
    taxed = materials.scaled(1 + factors.sales_tax_pct / 100)
    return (labor + taxed).scaled(_markup(factors))


def _markup(factors: Factors) -> Decimal:
    return (1 + factors.overhead_pct / 100) * (1 + factors.profit_pct / 100)


def by_owner(line: CostLine, factors: Factors) -> CostLine:
    """The line without labor, overhead and profit; what that saves stands beside it."""
    markup = _markup(factors)
    materials, haul = _over(line.materials, markup), _over(line.haul, markup)
    return replace(
        line,
        labor_hours=Spread.zero(),
        labor=Spread.zero(),
        materials=materials,
        haul=haul,
        total=materials + haul,
        explanation=f"{line.explanation}; by owner: no labor, overhead and profit, about "
        f"{_number(line.labor_hours.likely)} h of your own = "
        f"{format_usd(materials.likely + haul.likely)}",
        saved=line.labor + _over(line.materials + line.haul, markup).scaled(markup - 1),
        own_hours=line.labor_hours,
    )


def _over(spread: Spread, divisor: Decimal) -> Spread:
    return Spread(spread.low / divisor, spread.likely / divisor, spread.high / divisor)


def _at_least_minimum(line: CostLine, likely_of_work: Decimal) -> CostLine:
    """The line lifted so that all lines of its work together reach the minimum charge.

    What is missing is the visit itself, so it is added to labor in all three points.
    """
    minimum = line.price.minimum_usd
    if likely_of_work >= minimum or likely_of_work <= 0:
        return line
    missing = (minimum - likely_of_work) * line.total.likely / likely_of_work
    top_up = Spread(missing, missing, missing)
    return replace(
        line,
        labor=line.labor + top_up,
        total=line.total + top_up,
        explanation=f"{line.explanation}; lifted to the minimum charge of {format_usd(minimum)}",
    )


def _times(spread: Spread, three: Three) -> Spread:
    """Low times low, likely times likely, high times high: the widest it can be."""
    return Spread(spread.low * three.low, spread.likely * three.likely, spread.high * three.high)


def _number(value: Decimal | float) -> str:
    return f"{float(value):,.1f}"
