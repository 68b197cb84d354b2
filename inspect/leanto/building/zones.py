"""Zones to work: rectangles on a surface, widened to the framing and never counted twice."""

from __future__ import annotations

from collections.abc import Iterable

from leanto.building import polygon
from leanto.building.kinds import PlaceKind
from leanto.building.rectangle import Rectangle
from leanto.building.surface import FramingGrid, Surface
from leanto.building.union import SAME_FT, Span, disjoint, length_ft
from leanto.errors import LeantoError
from leanto.quantities import format_ft_in

SLACK_FT = 1 / 96
"""An eighth of an inch, what a tape is read to: a zone this far outside is taken as inside."""


class ZoneError(LeantoError):
    """A zone that does not lie on its surface."""


def check_zone(zone: Rectangle, surface: Surface) -> None:
    """Nothing for a zone on the surface; ZoneError with the surface's size for any other."""
    remedy = (
        f"{surface.name} is {format_ft_in(surface.width_ft)} wide and "
        f"{format_ft_in(surface.height_ft)} high."
    )
    if past := _past_edges(zone, surface):
        raise ZoneError(f"The zone runs {' and '.join(past)}.", remedy)
    if polygon.clipped_area_sqft(surface.outline, zone) <= SLACK_FT**2:
        raise ZoneError("The zone lies wholly outside the sloping edge.", remedy)
    if any(polygon.holds(part.corners, zone, SLACK_FT) for part in surface.covered):
        raise ZoneError(
            "The zone lies where another block stands against this wall.",
            "Enter it on the wall's inside face.",
        )


def widen(zone: Rectangle, surface: Surface, extra_ft: float = 0.0) -> Rectangle:
    """The zone grown by ``extra_ft`` all around, then out to the next framing members.

    It grows to members along the grid only, and stays in the surface's box, whose edges count
    as members. Widening again changes nothing. The zone must have passed ``check_zone``.
    """
    across = _inside_box(zone.left_ft - extra_ft, zone.right_ft + extra_ft, surface.width_ft)
    upright = _inside_box(zone.bottom_ft - extra_ft, zone.top_ft + extra_ft, surface.height_ft)
    if surface.grid and surface.grid.runs == "up":
        across = _to_members(across, surface.grid, surface.width_ft)
    elif surface.grid:
        upright = _to_members(upright, surface.grid, surface.height_ft)
    return Rectangle(across[0], upright[0], across[1] - across[0], upright[1] - upright[0])


def united(rectangles: Iterable[Rectangle]) -> tuple[Rectangle, ...]:
    """Rectangles without overlap that cover the same ground, whatever order they came in."""
    return disjoint(rectangles)


def union_area_sqft(rectangles: Iterable[Rectangle], surface: Surface | None = None) -> float:
    """The area that the rectangles cover together, overlaps once.

    With a surface, only what is really there: inside its outline, without openings and without
    parts that another block covers.
    """
    if surface is None:
        return sum(part.area_sqft for part in disjoint(rectangles))
    holes = [*(opening.rectangle for opening in surface.openings), *surface.covered]
    parts = disjoint(rectangles, holes)
    return sum(polygon.clipped_area_sqft(surface.outline, part) for part in parts)


def union_width_ft(rectangles: Iterable[Rectangle]) -> float:
    """The level length that the rectangles cover together; gaps between them don't count."""
    return length_ft((zone.left_ft, zone.right_ft) for zone in rectangles)


def union_height_ft(rectangles: Iterable[Rectangle]) -> float:
    """The upright length that the rectangles cover together; gaps between them don't count."""
    return length_ft((zone.bottom_ft, zone.top_ft) for zone in rectangles)


def members_in(rectangles: Iterable[Rectangle], grid: FramingGrid | None) -> int:
    """How many members the rectangles touch, those at their edges too; none without framing."""
    return len(_spans_on_members(rectangles, grid))


def member_length_ft(rectangles: Iterable[Rectangle], grid: FramingGrid | None) -> float:
    """The length of all members within the rectangles, overlaps once; none without framing."""
    return sum(length_ft(spans) for spans in _spans_on_members(rectangles, grid))


def _spans_on_members(
    rectangles: Iterable[Rectangle], grid: FramingGrid | None
) -> list[list[Span]]:
    """For each member touched, the spans along it."""
    if grid is None:
        return []
    sides = [((zone.left_ft, zone.right_ft), (zone.bottom_ft, zone.top_ft)) for zone in rectangles]
    if grid.runs == "across":
        sides = [(upright, across) for across, upright in sides]
    on_members = (
        [along for (low, high), along in sides if low - SAME_FT <= at <= high + SAME_FT]
        for at in grid.positions_ft
    )
    return [spans for spans in on_members if spans]


def _inside_box(low: float, high: float, limit_ft: float) -> Span:
    return max(0.0, low), min(limit_ft, high)


def _to_members(span: Span, grid: FramingGrid, limit_ft: float) -> Span:
    stops = (0.0, *grid.positions_ft, limit_ft)
    low = max(stop for stop in stops if stop <= span[0] + SAME_FT)
    high = min(stop for stop in stops if stop >= span[1] - SAME_FT)
    return low, high


def _past_edges(zone: Rectangle, surface: Surface) -> list[str]:
    low, high, left, right = _EDGES.get(surface.kind, _WALL_EDGES)
    excess = (
        (-zone.left_ft, left),
        (zone.right_ft - surface.width_ft, right),
        (-zone.bottom_ft, low),
        (zone.top_ft - surface.height_ft, high),
    )
    return [f"{format_ft_in(by)} past {edge}" for by, edge in excess if by > SLACK_FT]


_WALL_EDGES = ("the bottom", "the top", "the left end", "the right end")
_PLAN_EDGES = ("the south edge", "the north edge", "the west edge", "the east edge")
_EDGES = {
    PlaceKind.ROOF: ("the eave", "the top", "the left end", "the right end"),
    PlaceKind.CEILING: _PLAN_EDGES,
    PlaceKind.FLOOR: _PLAN_EDGES,
}
"""What the low, high, left and right edges of a surface are called."""
