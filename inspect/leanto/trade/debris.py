"""Weight and loose volume of what is stripped, and the loads it makes.

Published densities differ by a factor of two and more, so every amount is a range. A container is
full by room or by weight, whichever comes first.
"""

from __future__ import annotations

import math
from collections.abc import Mapping
from dataclasses import dataclass
from typing import Literal

from leanto.source import Source
from leanto.trade.counting import whole_units
from leanto.trade.debris_table import debris_sources, debris_table, find_container, find_debris

LB_PER_TON = 2000.0
CUFT_PER_CY = 27.0

OUTBUILDING_SOLID_SHARE = 0.33
OUTBUILDING_SOURCE = Source("FEMA 325, Debris Management Guide", place="outbuildings formula")


@dataclass(frozen=True, slots=True)
class Spread:
    """An amount from low to high."""

    low: float
    high: float

    def __add__(self, other: Spread) -> Spread:
        return Spread(self.low + other.low, self.high + other.high)


@dataclass(frozen=True, slots=True)
class DebrisPile:
    """Weight in pounds and loose volume in cubic yards of what was stripped."""

    weight_lb: Spread
    volume_cy: Spread
    sources: tuple[Source, ...]


@dataclass(frozen=True, slots=True)
class Haul:
    """Loads of one kind of container that take a pile away."""

    container: str
    low_loads: int
    high_loads: int
    governed_by: Literal["volume", "weight"]
    """What fills the container in the heavier case."""
    reasons: tuple[str, ...]
    sources: tuple[Source, ...]


def debris_weight_lb(material: str, quantity: float) -> Spread:
    """Weight of a quantity in the unit of its material, such as sq ft, board foot or square."""
    if not math.isfinite(quantity) or quantity < 0:
        raise ValueError(f"quantity must be zero or more: {quantity}")
    weights = find_debris(material).weights
    return Spread(
        quantity * min(row.low_lb for row in weights),
        quantity * max(row.high_lb for row in weights),
    )


def loose_density_lb_per_cy(material: str) -> Spread:
    """Weight of a loose cubic yard, from the lowest to the highest source."""
    densities = debris_table().densities[find_debris(material).loose]
    return Spread(
        min(row.low_lb_per_cy for row in densities),
        max(row.high_lb_per_cy for row in densities),
    )


def debris_pile(quantities: Mapping[str, float]) -> DebrisPile:
    """Weight and loose volume of several materials, each in its own unit."""
    weight_lb, volume_cy = Spread(0.0, 0.0), Spread(0.0, 0.0)
    sources: list[Source] = []
    for material, quantity in quantities.items():
        weight = debris_weight_lb(material, quantity)
        density = loose_density_lb_per_cy(material)
        weight_lb += weight
        volume_cy += Spread(weight.low / density.high, weight.high / density.low)
        sources.extend(debris_sources(material))
    return DebrisPile(weight_lb, volume_cy, tuple(dict.fromkeys(sources)))


def haul(pile: DebrisPile, container: str, fill: float | None = None) -> Haul:
    """Loads by room and by weight, the more of the two.

    The low count takes the least debris and the highest weight limit, the high count the
    opposite. `fill` is the share of the container that debris really fills, 0.85 by default.
    """
    box, table = find_container(container), debris_table()
    share = table.fill.share if fill is None else fill
    if not 0 < share <= 1:
        raise ValueError(f"fill must lie between 0 and 1: {share}")
    room_cy = box.volume_cy * share
    low = max(
        whole_units(pile.volume_cy.low / room_cy),
        whole_units(pile.weight_lb.low / box.high_limit_lb),
    )
    by_volume = pile.volume_cy.high / room_cy
    by_weight = pile.weight_lb.high / box.low_limit_lb
    reasons = (
        f"By room {by_volume:.2f} loads of {room_cy:.1f} cu yd.",
        f"By weight {by_weight:.2f} loads of {box.low_limit_lb:,.0f} lb.",
    )
    return Haul(
        container,
        low,
        whole_units(max(by_volume, by_weight)),
        "weight" if by_weight > by_volume else "volume",
        reasons,
        (table.cite(box), table.cite(table.fill)),
    )


def tons(weight_lb: float) -> float:
    """Short tons of a weight in pounds."""
    return weight_lb / LB_PER_TON


def outbuilding_debris_cy(length_ft: float, width_ft: float, height_ft: float) -> float:
    """Cubic yards a whole outbuilding makes when it is pulled down: L x W x H x 0.33 / 27."""
    if min(length_ft, width_ft, height_ft) < 0:
        raise ValueError("sizes must be zero or more")
    return length_ft * width_ft * height_ft * OUTBUILDING_SOLID_SHARE / CUFT_PER_CY
