"""The estimate: all lines, their sums, and the range of the total."""

from __future__ import annotations

from collections.abc import Iterable, Mapping

from leanto.cost.build_up import price_lines
from leanto.cost.estimate import Estimate
from leanto.cost.price import Factors, Price
from leanto.cost.range import range_of
from leanto.cost.risk import HiddenRisk, own_risk, shared_risk
from leanto.money import Spread
from leanto.scope.item import Scope


def estimate_scope(
    scope: Scope,
    prices: Mapping[str, Price],
    factors: Factors,
    hidden: Iterable[tuple[Spread, HiddenRisk]] = (),
) -> Estimate:
    """The allowance of a scope; ``hidden`` is the damage that is likely to come up later.

    The range covers the lines and the hidden damage; the sums cover the lines alone.
    """
    lines = price_lines(scope.items, prices, factors)
    later = tuple(hidden)
    total = Spread.total(line.total for line in lines)
    hidden_total = Spread.total(spread for spread, _ in later)
    return Estimate(
        lines=lines,
        labor=Spread.total(line.labor for line in lines),
        materials=Spread.total(line.materials for line in lines),
        haul=Spread.total(line.haul for line in lines),
        total=total,
        hidden=hidden_total,
        range=range_of(
            total + hidden_total,
            [own_risk(line) for line in lines],
            [risk for _, risk in later],
            shared_risk(factors),
        ),
        labor_hours=Spread.total(line.labor_hours for line in lines),
        debris_lb=sum(float(line.price.debris_lb) * line.item.quantity for line in lines),
        alternates=price_lines(scope.alternates, prices, factors),
    )
