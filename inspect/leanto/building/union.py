"""What rectangles cover together, each part once, however they overlap."""

from __future__ import annotations

from bisect import bisect_right
from collections.abc import Iterable, Sequence
from itertools import pairwise

from leanto.building.rectangle import Rectangle

Span = tuple[float, float]
"""From where to where, in feet."""

SAME_FT = 1e-6
"""Edges closer than this are one edge: far finer than a tape reads, far coarser than rounding."""


def disjoint(
    rectangles: Iterable[Rectangle], holes: Iterable[Rectangle] = ()
) -> tuple[Rectangle, ...]:
    """Rectangles that cover the same ground, less the holes, without overlapping.

    The answer depends on the ground covered only, not on the order or on how it was cut up:
    it is cut at every x where the upright cross-section changes.
    """
    solid, empty = list(rectangles), list(holes)
    xs = _distinct(x for r in [*solid, *empty] for x in (r.left_ft, r.right_ft))
    ys = _distinct(y for r in [*solid, *empty] for y in (r.bottom_ft, r.top_ft))
    covering = [_snapped(r, xs, ys) for r in solid]
    cutting = [_snapped(r, xs, ys) for r in empty]
    strips = [(strip, _less(_at(strip, covering), _at(strip, cutting))) for strip in pairwise(xs)]
    return _joined(strips)


def merged(spans: Iterable[Span]) -> list[Span]:
    """The spans in order, those that touch or overlap made one."""
    together: list[Span] = []
    for low, high in sorted(spans):
        if together and low <= together[-1][1] + SAME_FT:
            together[-1] = (together[-1][0], max(high, together[-1][1]))
        else:
            together.append((low, high))
    return together


def length_ft(spans: Iterable[Span]) -> float:
    """The length that the spans cover together."""
    return sum(high - low for low, high in merged(spans))


def _distinct(values: Iterable[float]) -> list[float]:
    distinct: list[float] = []
    for value in sorted(values):
        if not distinct or value > distinct[-1] + SAME_FT:
            distinct.append(value)
    return distinct


def _snapped(rectangle: Rectangle, xs: Sequence[float], ys: Sequence[float]) -> tuple[Span, Span]:
    def on(grid: Sequence[float], value: float) -> float:
        return grid[bisect_right(grid, value) - 1]

    return (
        (on(xs, rectangle.left_ft), on(xs, rectangle.right_ft)),
        (on(ys, rectangle.bottom_ft), on(ys, rectangle.top_ft)),
    )


def _at(strip: Span, snapped: Iterable[tuple[Span, Span]]) -> list[Span]:
    return merged(
        upright
        for level, upright in snapped
        if level[0] <= strip[0] and strip[1] <= level[1] and upright[0] < upright[1]
    )


def _less(spans: Iterable[Span], holes: Sequence[Span]) -> list[Span]:
    left: list[Span] = []
    for low, high in spans:
        for hole_low, hole_high in holes:
            if low < hole_low < high:
                left.append((low, hole_low))
            if hole_low < high:
                low = max(low, hole_high)
        if low < high:
            left.append((low, high))
    return left


def _joined(strips: Iterable[tuple[Span, list[Span]]]) -> tuple[Rectangle, ...]:
    """Neighboring strips with the same span made one rectangle."""
    done: list[Rectangle] = []
    running: dict[Span, float] = {}
    end = 0.0
    for (left, right), spans in strips:
        for span in [span for span in running if span not in spans]:
            done.append(_rectangle(running.pop(span), left, span))
        for span in spans:
            running.setdefault(span, left)
        end = right
    done += [_rectangle(left, end, span) for span, left in running.items()]
    return tuple(sorted(done))


def _rectangle(left: float, right: float, span: Span) -> Rectangle:
    return Rectangle(left, span[0], right - left, span[1] - span[0])
