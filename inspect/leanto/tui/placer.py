"""A rectangle on a surface that is moved and sized by keys, from framing member to member."""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import replace

from leanto.building.rectangle import Rectangle
from leanto.building.surface import Surface

FINE_STEP_FT = 0.5
COARSE_STEP_FT = 1.0
"""Where no members stand across, the rectangle moves in such steps."""
_FINE_UP_TO_FT = 10.0
_SAME_FT = 1e-6

MOVES = {"left": (-1, 0), "right": (1, 0), "up": (0, 1), "down": (0, -1)}
SIZES = {
    "shift+left": (-1, 0),
    "shift+right": (1, 0),
    "shift+up": (0, 1),
    "shift+down": (0, -1),
    # Shift with an arrow does not get through everywhere, as in the Linux console.
    "n": (-1, 0),
    "w": (1, 0),
    "h": (0, 1),
    "l": (0, -1),
}
WHOLE = "a"
KEYS = frozenset({*MOVES, *SIZES, WHOLE})


class Placer:
    """Holds the rectangle; every key leaves it on the surface."""

    def __init__(self, surface: Surface, zone: Rectangle) -> None:
        self.surface = surface
        self.zone = zone
        self._across = stops_ft(surface, across=True)
        self._upright = stops_ft(surface, across=False)

    def press(self, key: str) -> None:
        """Moves, sizes or spreads the rectangle; any other key does nothing."""
        if key in MOVES:
            right, up = MOVES[key]
            self._move(right, up)
        elif key.lower() in SIZES:
            wider, higher = SIZES[key.lower()]
            self._size(wider, higher)
        elif key.lower() == WHOLE:
            self.zone = Rectangle(0.0, 0.0, self.surface.width_ft, self.surface.height_ft)

    def _move(self, right: int, up: int) -> None:
        zone = self.zone
        self.zone = replace(
            zone,
            left_ft=_moved(zone.left_ft, zone.width_ft, right, self._across),
            bottom_ft=_moved(zone.bottom_ft, zone.height_ft, up, self._upright),
        )

    def _size(self, wider: int, higher: int) -> None:
        zone = self.zone
        left, width = _sized(zone.left_ft, zone.width_ft, wider, self._across)
        bottom, height = _sized(zone.bottom_ft, zone.height_ft, higher, self._upright)
        self.zone = Rectangle(left, bottom, width, height)


def stops_ft(surface: Surface, *, across: bool) -> tuple[float, ...]:
    """Where edges come to lie along one direction: at members, or in steps; the ends always."""
    length = surface.width_ft if across else surface.height_ft
    grid = surface.grid
    if grid is not None and (grid.runs == "up") == across:
        inner: Sequence[float] = grid.positions_ft
    else:
        step = FINE_STEP_FT if length <= _FINE_UP_TO_FT else COARSE_STEP_FT
        inner = [number * step for number in range(1, math.ceil(length / step))]
    within = (at for at in inner if _SAME_FT < at < length - _SAME_FT)
    return (0.0, *within, length)


def _moved(low: float, size: float, by: int, stops: Sequence[float]) -> float:
    """The lower edge at the next stop that way, as far as the whole size stays inside."""
    if by == 0:
        return low
    return max(0.0, min(_next(low, by, stops), stops[-1] - size))


def _sized(low: float, size: float, by: int, stops: Sequence[float]) -> tuple[float, float]:
    """Lower edge and size with the upper edge at its next stop; at the end the lower one gives."""
    high = low + size
    if by > 0 and high >= stops[-1] - _SAME_FT:
        low = _next(low, -1, stops)
    elif by:
        high = _next(high, by, stops)
    return (low, high - low) if high - low > _SAME_FT else (low, size)


def _next(at: float, by: int, stops: Sequence[float]) -> float:
    if by > 0:
        return next((stop for stop in stops if stop > at + _SAME_FT), stops[-1])
    return next((stop for stop in reversed(stops) if stop < at - _SAME_FT), stops[0])
