"""Quantities of zones: the damaged places of a surface, widened, united, then measured."""

from __future__ import annotations

import math
from collections.abc import Iterable

from leanto.building.rectangle import Rectangle
from leanto.building.surface import Surface
from leanto.building.zones import (
    member_length_ft,
    members_in,
    union_area_sqft,
    union_height_ft,
    union_width_ft,
    united,
    widen,
)
from leanto.quantities import Unit
from leanto.rules.model import Take
from leanto.scope.work import Work

_NOISE = 1e-6
"""Floating noise that must not buy one more sheet."""


def whole(surface: Surface) -> Rectangle:
    """The box round a surface."""
    return Rectangle(0.0, 0.0, surface.width_ft, surface.height_ft)


def widened_union(
    zones: Iterable[tuple[Rectangle | None, float]], surface: Surface
) -> tuple[Rectangle, ...]:
    """The zones of a surface, each with feet to grow by, widened to the framing and united.

    A zone of None stands for the whole surface.
    """
    return united(
        [
            whole(surface) if zone is None else widen(zone, surface, extra_ft)
            for zone, extra_ft in zones
        ]
    )


def taken(take: Take, zones: tuple[Rectangle, ...], surface: Surface) -> float:
    """The quantity of united zones: sq ft, lin ft or members, by ``take``."""
    match take:
        case Take.AREA:
            return union_area_sqft(zones, surface)
        case Take.WIDTH:
            return union_width_ft(zones)
        case Take.HEIGHT:
            return union_height_ft(zones)
        case Take.MEMBERS:
            return float(members_in(zones, surface.grid)) if surface.grid else 0.0
        case Take.MEMBER_LENGTH:
            return member_length_ft(zones, surface.grid) if surface.grid else 0.0
        case Take.SURFACE:
            return surface.net_area_sqft
        case Take.PERIMETER:
            return surface.perimeter_ft


def in_words(take: Take, zones: tuple[Rectangle, ...]) -> str:
    """How a taken quantity came about."""
    places = "one zone" if len(zones) == 1 else f"{len(zones)} zones without overlap"
    return {
        Take.AREA: f"area of {places}, widened to the framing",
        Take.WIDTH: f"length along {places}, widened to the framing",
        Take.HEIGHT: f"height of {places}",
        Take.MEMBERS: f"members in {places}, widened to the framing",
        Take.MEMBER_LENGTH: f"length of the members in {places}",
        Take.SURFACE: "whole surface, less openings",
        Take.PERIMETER: "around the whole surface",
    }[take]


def bought(work: Work, quantity: float) -> tuple[float, int | None]:
    """What is bought for a net quantity: with waste, in whole purchases or whole pieces.

    Returns the amount in the unit of the work, and the number of purchases when the work names one.
    """
    amount = with_waste(work, quantity)
    if work.purchase is not None:
        count = math.ceil(amount / work.purchase.size - _NOISE)
        return count * work.purchase.size, count
    if work.unit is Unit.EACH:
        return float(math.ceil(amount - _NOISE)), None
    return amount, None


def with_waste(work: Work, quantity: float) -> float:
    return quantity * (1 + work.waste_pct / 100)
