"""Where a zone lies in its block: a box in feet from the southwest corner of the floor.

Good enough to tell near from far: walls have no thickness here, and a roof lies flat over its
room with its overhangs shared out evenly.
"""

from __future__ import annotations

import math
from collections.abc import Mapping
from dataclasses import dataclass

from leanto.building.kinds import PlaceKind, Side
from leanto.building.rectangle import Rectangle
from leanto.building.surface import Surface

Span = tuple[float, float]


@dataclass(frozen=True, slots=True)
class Box:
    """Feet eastward, northward and upward."""

    block: str
    east: Span
    north: Span
    up: Span

    @property
    def middle(self) -> tuple[float, float]:
        """The middle as seen from above."""
        return sum(self.east) / 2, sum(self.north) / 2


def box_of(zone: Rectangle, surface: Surface, surfaces: Mapping[str, Surface]) -> Box | None:
    """The box of a zone of the surface; None when the block's floor is not at hand."""
    floor = surfaces.get(f"{surface.block}.floor")
    if floor is None:
        return None
    room = (floor.width_ft, floor.height_ft)
    across, upright = (zone.left_ft, zone.right_ft), (zone.bottom_ft, zone.top_ft)
    match surface.kind:
        case PlaceKind.FLOOR:
            return Box(surface.block, across, upright, (0.0, 0.0))
        case PlaceKind.CEILING:
            height = _room_height_ft(surface.block, surfaces)
            return Box(surface.block, across, upright, (height, height))
        case PlaceKind.WALL_OUTSIDE:
            return _at_wall(surface, room, across, (0.0, 0.0), upright)
        case PlaceKind.WALL_INSIDE:
            seen_outside = (surface.width_ft - across[1], surface.width_ft - across[0])
            return _at_wall(surface, room, seen_outside, (0.0, 0.0), upright)
        case PlaceKind.ROOF:
            return _at_slope(surface, room, across, upright, surfaces)
    return None


def horizontal_gap_ft(one: Box, other: Box) -> float:
    """The gap as seen from above; 0 when one lies over the other."""
    return math.hypot(_gap(one.east, other.east), _gap(one.north, other.north))


def slope_gap_ft(slope: Side, leak: Box, wetted: Box) -> float:
    """The gap between a leak in a slope and a place below it: water runs down to the eave.

    Sideways it counts in full, and so it does where the leak lies nearer to the eave; uphill of
    the place it counts nothing.
    """
    match slope:
        case Side.SOUTH:
            aside, back = _gap(leak.east, wetted.east), wetted.north[0] - leak.north[1]
        case Side.NORTH:
            aside, back = _gap(leak.east, wetted.east), leak.north[0] - wetted.north[1]
        case Side.WEST:
            aside, back = _gap(leak.north, wetted.north), wetted.east[0] - leak.east[1]
        case Side.EAST:
            aside, back = _gap(leak.north, wetted.north), leak.east[0] - wetted.east[1]
    return math.hypot(aside, max(0.0, back))


def drop_ft(high: Box, low: Box) -> float:
    """How far ``high`` lies clear above ``low``; 0 when it does not."""
    return max(0.0, high.up[0] - low.up[1])


def _gap(one: Span, other: Span) -> float:
    return max(0.0, one[0] - other[1], other[0] - one[1])


def _at_wall(
    surface: Surface, room: tuple[float, float], across: Span, inward: Span, up: Span
) -> Box | None:
    """A place ``across`` from the left of a side seen from outside and ``inward`` of it."""
    east, north = room
    match surface.side:
        case Side.SOUTH:
            plan = across, inward
        case Side.NORTH:
            plan = _turned(across, east), _turned(inward, north)
        case Side.EAST:
            plan = _turned(inward, east), across
        case Side.WEST:
            plan = inward, _turned(across, north)
        case _:
            return None
    return Box(surface.block, *plan, up)


def _turned(span: Span, length_ft: float) -> Span:
    return length_ft - span[1], length_ft - span[0]


def _at_slope(
    surface: Surface,
    room: tuple[float, float],
    across: Span,
    upslope: Span,
    surfaces: Mapping[str, Surface],
) -> Box | None:
    along, deep = room if surface.side in (Side.NORTH, Side.SOUTH) else (room[1], room[0])
    level = 1 / math.hypot(1.0, (surface.pitch_in_12 or 0.0) / 12)
    is_only = not any(
        other.kind is PlaceKind.ROOF and other.block == surface.block and other.id != surface.id
        for other in surfaces.values()
    )
    run = surface.height_ft * level
    eave = (run - deep) / 2 if is_only else run - deep / 2
    rake = (surface.width_ft - along) / 2
    height = _room_height_ft(surface.block, surfaces)
    return _at_wall(
        surface,
        room,
        (across[0] - rake, across[1] - rake),
        (upslope[0] * level - eave, upslope[1] * level - eave),
        (height, height),
    )


def _room_height_ft(block: str, surfaces: Mapping[str, Surface]) -> float:
    """That of the lowest inside wall."""
    return min(
        (s.height_ft for s in surfaces.values() if (s.block, s.kind) == (block, _INSIDE)),
        default=0.0,
    )


_INSIDE = PlaceKind.WALL_INSIDE
