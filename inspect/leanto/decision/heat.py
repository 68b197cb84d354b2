"""What it costs the owner that a kept lining lets more heat through than a gutted wall would.

extra U = reach / R kept + (1 - reach) / R as it is - 1 / R gutted
dollars = area x extra U x degree-hours x years / 3,412 x dollars per kWh

Both R hold films, faces and framing. Blown fill does not reach every closed bay; what it does not
reach stays as it is. A flow of 3,412 Btu an hour is one kilowatt.
"""

from __future__ import annotations

from collections.abc import Mapping
from datetime import date

from leanto.building.model import Building
from leanto.building.surface import Surface
from leanto.decision.hidden import HeatTerms
from leanto.money import Spread
from leanto.reckon.basis import Basis
from leanto.reckon.envelope import Part, parts
from leanto.record.walk import Walk
from leanto.trade.heat_loss import BTUH_PER_WATT

_BTU_PER_KWH = BTUH_PER_WATT * 1000


def heat_losses(
    building: Building,
    surfaces: Mapping[str, Surface],
    walk: Walk,
    as_of: date,
    terms: HeatTerms | None,
) -> dict[str, Spread]:
    """By surface id, the money that goes with the heat over the owner's years.

    Empty when the building is not to be heated, or when nothing is known of the price of heat.
    """
    if terms is None or not building.to_be_heated:
        return {}
    basis = Basis.of(building, surfaces, {}, walk, as_of)
    shells = {
        (block.id, part.name): part for block in building.blocks for part in parts(basis, block)
    }
    return {
        surface.id: heat_lost(part, surface.net_area_sqft, terms)
        for surface in surfaces.values()
        if (part := shells.get((surface.block, surface.name))) is not None
    }


def heat_lost(part: Part, area_sqft: float, terms: HeatTerms) -> Spread:
    """Dollars over the owner's years for one surface, against the same surface gutted."""
    extra = extra_u(part, terms.reached_closed)
    hours, price = terms.degree_hours, terms.usd_per_kwh
    kwh_per_degree_hour = area_sqft * extra * terms.years / _BTU_PER_KWH
    return Spread.of(
        kwh_per_degree_hour * float(hours.low * price.low),
        kwh_per_degree_hour * float(hours.likely * price.likely),
        kwh_per_degree_hour * float(hours.high * price.high),
    )


def extra_u(part: Part, reached: float) -> float:
    """Btu an hour, sq ft and deg F that go through a kept surface on top; never below zero."""
    kept = reached / part.kept + (1 - reached) / part.as_it_is
    return max(0.0, kept - 1 / part.gutted)
