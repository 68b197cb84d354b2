"""A sketch of a surface with its numbered zones: plain lines and rectangles, no ink yet."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass

from leanto.building import polygon
from leanto.building.rectangle import Rectangle
from leanto.building.surface import PlacedOpening, Point, Surface

Line = tuple[Point, Point]


@dataclass(frozen=True, slots=True)
class SketchZone:
    """A zone as it is drawn."""

    number: int
    """As it stands in the list beside the sketch."""
    label: str
    rectangle: Rectangle
    mark: str
    """The condition in a word, such as ``failed``, so that color never says it alone."""


@dataclass(frozen=True, slots=True)
class Sketch:
    """What is drawn of one surface, in feet from its bottom left."""

    surface: str
    """The surface's id."""
    title: str
    width_ft: float
    height_ft: float
    outline: tuple[Point, ...]
    openings: tuple[PlacedOpening, ...]
    covered: tuple[Rectangle, ...]
    member_lines: tuple[Line, ...]
    """Center lines of the framing members, from edge to edge of the outline."""
    zones: tuple[SketchZone, ...]


def sketch_of(surface: Surface, zones: Iterable[SketchZone] = ()) -> Sketch:
    """The sketch of a surface; zones are cut at its box and stand in the order of their numbers."""
    drawn = (_cut(zone, surface) for zone in zones)
    return Sketch(
        surface=surface.id,
        title=surface.name,
        width_ft=surface.width_ft,
        height_ft=surface.height_ft,
        outline=surface.outline,
        openings=surface.openings,
        covered=surface.covered,
        member_lines=_member_lines(surface),
        zones=tuple(sorted((zone for zone in drawn if zone), key=lambda zone: zone.number)),
    )


def _cut(zone: SketchZone, surface: Surface) -> SketchZone | None:
    whole = zone.rectangle
    left, right = max(0.0, whole.left_ft), min(surface.width_ft, whole.right_ft)
    bottom, top = max(0.0, whole.bottom_ft), min(surface.height_ft, whole.top_ft)
    if left >= right or bottom >= top:
        return None
    rectangle = Rectangle(left, bottom, right - left, top - bottom)
    return SketchZone(zone.number, zone.label, rectangle, zone.mark)


def _member_lines(surface: Surface) -> tuple[Line, ...]:
    if surface.grid is None:
        return ()
    runs_up = surface.grid.runs == "up"
    lines: list[Line] = []
    for at in surface.grid.positions_ft:
        span = polygon.crossing_ft(surface.outline, at, axis=0 if runs_up else 1)
        if span and span[0] < span[1]:
            low, high = span
            lines.append(((at, low), (at, high)) if runs_up else ((low, at), (high, at)))
    return tuple(lines)
