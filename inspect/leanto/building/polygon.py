"""Plane geometry of convex outlines, counterclockwise, in feet.

Every outline of a building's surfaces is convex, so clipping by a rectangle is exact.
"""

from __future__ import annotations

import math
from collections.abc import Sequence
from itertools import pairwise

from leanto.building.rectangle import Rectangle
from leanto.building.surface import Point

Outline = Sequence[Point]


def area_sqft(outline: Outline) -> float:
    """The area inside the outline (shoelace formula); zero for fewer than three points."""
    doubled = sum(a[0] * b[1] - b[0] * a[1] for a, b in _edges(outline))
    return doubled / 2


def perimeter_ft(outline: Outline) -> float:
    """The length all around the outline."""
    return sum(math.dist(a, b) for a, b in _edges(outline))


def size_ft(outline: Outline) -> tuple[float, float]:
    """(width, height) of the box that starts at the origin and just holds the outline."""
    return max(x for x, _ in outline), max(y for _, y in outline)


def clipped(outline: Outline, rectangle: Rectangle) -> tuple[Point, ...]:
    """The part of the outline inside the rectangle; empty when they do not meet.

    Sutherland-Hodgman: the outline is cut by one side of the rectangle after the other.
    """
    points = list(outline)
    points = _beyond(points, 0, rectangle.left_ft, 1)
    points = _beyond(points, 0, rectangle.right_ft, -1)
    points = _beyond(points, 1, rectangle.bottom_ft, 1)
    return tuple(_beyond(points, 1, rectangle.top_ft, -1))


def clipped_area_sqft(outline: Outline, rectangle: Rectangle) -> float:
    """The area of the rectangle's part that lies inside the outline."""
    return max(0.0, area_sqft(clipped(outline, rectangle)))


def holds(outline: Outline, rectangle: Rectangle, slack_ft: float = 0.0) -> bool:
    """True when no corner of the rectangle is more than ``slack_ft`` outside the outline."""
    return all(
        _distance_inside_ft(a, b, corner) >= -slack_ft
        for a, b in _edges(outline)
        for corner in rectangle.corners
    )


def crossing_ft(outline: Outline, at_ft: float, *, axis: int) -> tuple[float, float] | None:
    """From where to where the line at x (axis 0) or y (axis 1) = ``at_ft`` is inside; None outside.

    The two ends are measured along the line.
    """
    along = 1 - axis
    met: list[float] = []
    for a, b in _edges(outline):
        low, high = sorted((a[axis], b[axis]))
        if not low <= at_ft <= high:
            continue
        if low == high:
            met += [a[along], b[along]]
        else:
            share = (at_ft - a[axis]) / (b[axis] - a[axis])
            met.append(a[along] + share * (b[along] - a[along]))
    return (min(met), max(met)) if met else None


def _edges(outline: Outline) -> list[tuple[Point, Point]]:
    return list(pairwise([*outline, outline[0]])) if outline else []


def _beyond(points: list[Point], axis: int, bound_ft: float, sign: int) -> list[Point]:
    """The part of the outline on one side of a line across the axis."""
    kept: list[Point] = []
    for a, b in _edges(points):
        a_inside, b_inside = (sign * (point[axis] - bound_ft) for point in (a, b))
        if a_inside >= 0:
            kept.append(a)
        if (a_inside < 0) != (b_inside < 0):
            share = a_inside / (a_inside - b_inside)
            kept.append((a[0] + share * (b[0] - a[0]), a[1] + share * (b[1] - a[1])))
    return kept


def _distance_inside_ft(a: Point, b: Point, point: Point) -> float:
    """How far the point lies to the left of the edge, which is inside; negative outside."""
    cross = (b[0] - a[0]) * (point[1] - a[1]) - (b[1] - a[1]) * (point[0] - a[0])
    return cross / math.dist(a, b)
