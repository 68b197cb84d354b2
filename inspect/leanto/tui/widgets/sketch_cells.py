"""A sketch drawn in character cells: outline, openings, framing, zones by number. Pure."""

from __future__ import annotations

import math
from dataclasses import dataclass
from enum import Enum, auto

from leanto.building.rectangle import Rectangle
from leanto.building.sketch import Sketch

CELL_SHAPE = 2.0
"""A cell is about twice as high as it is wide."""


class Ink(Enum):
    """What a cell shows, so that a screen can color it."""

    BLANK = auto()
    EDGE = auto()
    MEMBER = auto()
    COVERED = auto()
    OPENING = auto()
    ZONE = auto()
    PLACED = auto()
    """The rectangle that is being placed."""


@dataclass(frozen=True, slots=True)
class Cell:
    char: str
    ink: Ink


_THIN_FT = 1e-6
_BLANK = Cell(" ", Ink.BLANK)


def sketch_cells(
    sketch: Sketch, columns: int, rows: int, placed: Rectangle | None = None
) -> list[list[Cell]]:
    """Lines of cells, top first, that fit into the given columns and rows; none if too small.

    ``placed`` is a rectangle that is not entered yet; it lies over everything else.
    """
    if columns < 6 or rows < 4:
        return []
    scale = _Scale.fitting(sketch, columns - 2, rows - 2)
    # The surface itself, without the frame of one cell around it.
    inside = [[_BLANK] * scale.columns for _ in range(scale.rows)]
    for (left, low), (right, high) in sketch.member_lines:
        # A line is a box that is as thin as can be.
        upright = high > low
        width_ft, height_ft = max(right - left, _THIN_FT), max(high - low, _THIN_FT)
        member = Cell(":" if upright else ".", Ink.MEMBER)
        _fill(inside, scale, Rectangle(left, low, width_ft, height_ft), member)
    for hidden in sketch.covered:
        _fill(inside, scale, hidden, Cell("#", Ink.COVERED))
    for opening in sketch.openings:
        _fill(inside, scale, opening.rectangle, Cell(" ", Ink.OPENING))
        _write(inside, scale, opening.rectangle, opening.id, Ink.OPENING)
    for zone in sketch.zones:
        digit = str(zone.number)
        _fill(inside, scale, zone.rectangle, Cell(digit[-1], Ink.ZONE))
        if len(digit) > 1:
            _write(inside, scale, zone.rectangle, digit, Ink.ZONE)
    if placed is not None:
        _fill(inside, scale, placed, Cell("*", Ink.PLACED))
    return _framed(inside, sketch, scale)


@dataclass(frozen=True, slots=True)
class _Scale:
    columns: int
    rows: int
    ft_per_column: float
    ft_per_row: float

    @classmethod
    def fitting(cls, sketch: Sketch, columns: int, rows: int) -> _Scale:
        ft_per_column = max(sketch.width_ft / columns, sketch.height_ft / (rows * CELL_SHAPE))
        used_columns = max(1, min(columns, round(sketch.width_ft / ft_per_column)))
        used_rows = max(1, min(rows, round(sketch.height_ft / (ft_per_column * CELL_SHAPE))))
        return cls(
            used_columns, used_rows, sketch.width_ft / used_columns, sketch.height_ft / used_rows
        )

    def columns_of(self, left_ft: float, right_ft: float) -> range:
        return _steps(left_ft / self.ft_per_column, right_ft / self.ft_per_column, self.columns)

    def rows_of(self, low_ft: float, high_ft: float) -> range:
        """Row numbers from the top."""
        from_below = _steps(low_ft / self.ft_per_row, high_ft / self.ft_per_row, self.rows)
        return range(self.rows - from_below.stop, self.rows - from_below.start)


def _steps(low: float, high: float, limit: int) -> range:
    """The cells from ``low`` to ``high``, rounded to whole ones; always at least one."""
    first = min(max(math.floor(low + 0.5), 0), limit - 1)
    if high - low < 0.5:
        first = min(max(math.floor(low), 0), limit - 1)
    last = max(first + 1, min(math.floor(high + 0.5), limit))
    return range(first, last)


def _fill(cells: list[list[Cell]], scale: _Scale, box: Rectangle, cell: Cell) -> None:
    for row in scale.rows_of(box.bottom_ft, box.top_ft):
        for column in scale.columns_of(box.left_ft, box.right_ft):
            cells[row][column] = cell


def _write(cells: list[list[Cell]], scale: _Scale, box: Rectangle, text: str, ink: Ink) -> None:
    """The text in the middle of the box, as far as it fits."""
    rows = scale.rows_of(box.bottom_ft, box.top_ft)
    columns = scale.columns_of(box.left_ft, box.right_ft)
    text = text[: len(columns)]
    start = columns.start + (len(columns) - len(text)) // 2
    for offset, char in enumerate(text):
        cells[rows[len(rows) // 2]][start + offset] = Cell(char, ink)


def _framed(inside: list[list[Cell]], sketch: Sketch, scale: _Scale) -> list[list[Cell]]:
    """The cells within the outline, with the outline drawn around them."""
    spans = [_columns_at(sketch, scale, row) for row in range(scale.rows)]
    lines = [_edge_line(spans[0], scale.columns)]
    for row, span in enumerate(spans):
        above, below = spans[max(row - 1, 0)], spans[min(row + 1, len(spans) - 1)]
        line = [_BLANK] * (scale.columns + 2)
        for column in span:
            line[column + 1] = inside[row][column]
        slopes_left = below.start < span.start or above.start > span.start
        slopes_right = below.stop > span.stop or above.stop < span.stop
        line[span.start] = Cell("/" if slopes_left else "|", Ink.EDGE)
        line[span.stop + 1] = Cell("\\" if slopes_right else "|", Ink.EDGE)
        lines.append(line)
    return [*lines, _edge_line(spans[-1], scale.columns)]


def _columns_at(sketch: Sketch, scale: _Scale, row: int) -> range:
    """The columns within the outline in a row."""
    span = _level_span(sketch, (scale.rows - row - 0.5) * scale.ft_per_row)
    return scale.columns_of(*(span or (0.0, sketch.width_ft)))


def _edge_line(span: range, columns: int) -> list[Cell]:
    line = [_BLANK] * (columns + 2)
    for column in range(span.start, span.stop + 2):
        line[column] = Cell("-", Ink.EDGE)
    line[span.start] = line[span.stop + 1] = Cell("+", Ink.EDGE)
    return line


def _level_span(sketch: Sketch, height_ft: float) -> tuple[float, float] | None:
    """Where the outline lies at a height, from its left edge to its right one."""
    crossings = []
    corners = sketch.outline
    for (x1, y1), (x2, y2) in zip(corners, (*corners[1:], corners[0]), strict=True):
        if min(y1, y2) <= height_ft < max(y1, y2):
            crossings.append(x1 + (x2 - x1) * (height_ft - y1) / (y2 - y1))
    return (min(crossings), max(crossings)) if len(crossings) > 1 else None
