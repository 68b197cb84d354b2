"""A table as plain text: columns side by side, or cell below cell where there is no room."""

from __future__ import annotations

from collections.abc import Iterator

from leanto.reports.blocks import Align, Band, Row, Table
from leanto.reports.characters import columns, printable
from leanto.reports.text_wrap import wrapped

_GAP = 2
_NARROWEST = 12
"""A wrapped column is no use under this width."""


def table_lines(table: Table, width: int) -> Iterator[str]:
    """The lines of a table; columns that are filled in by hand are left out."""
    kept = [at for at, column in enumerate(table.columns) if not column.blank]
    titles = tuple(table.columns[at].title for at in kept)
    rows = [row if isinstance(row, Band) else _only(row, kept) for row in table.rows]
    foot = [_only(row, kept) for row in table.foot]
    cells = [row for row in (*rows, *foot) if not isinstance(row, Band)]
    widths = _widths((titles, *cells), width)
    if widths is None:
        yield from _stacked(titles, [*rows, *foot], width)
        return
    aligns = [table.columns[at].align for at in kept]
    rule = "-" * (sum(widths) + _GAP * (len(widths) - 1))
    yield from _side_by_side(titles, widths, aligns)
    yield rule
    for row in rows:
        if isinstance(row, Band):
            yield from _band(row, len(rule))
        else:
            yield from _side_by_side(row, widths, aligns)
    if foot:
        yield rule
    for row in foot:
        yield from _side_by_side(row, widths, aligns)


def _only(row: Row, kept: list[int]) -> Row:
    return tuple(row[at] for at in kept)


def _widths(rows: tuple[Row, ...], width: int) -> list[int] | None:
    """A width for every column: as wide as its widest cell, the widest columns cut to fit.

    None when that leaves a column too narrow to read.
    """
    wanted = [
        max((columns(line) for cell in cells for line in printable(cell).split("\n")), default=0)
        for cells in zip(*rows, strict=True)
    ]
    given = list(wanted)
    room = width - _GAP * (len(given) - 1)
    while sum(given) > room:
        widest = given.index(max(given))
        if given[widest] <= _NARROWEST:
            return None
        given[widest] -= 1
    return given


def _side_by_side(row: Row, widths: list[int], aligns: list[Align]) -> Iterator[str]:
    cells = [wrapped(cell, width) for cell, width in zip(row, widths, strict=True)]
    for at in range(max(map(len, cells))):
        pieces = [
            _aligned(lines[at] if at < len(lines) else "", width, align)
            for lines, width, align in zip(cells, widths, aligns, strict=True)
        ]
        yield (" " * _GAP).join(pieces).rstrip()


def _aligned(text: str, width: int, align: Align) -> str:
    spare = max(0, width - columns(text))
    before = {"left": 0, "center": spare // 2, "right": spare}[align]
    return " " * before + text + " " * (spare - before)


def _band(band: Band, width: int) -> Iterator[str]:
    *lines, last = wrapped(band.text, width)
    yield from lines
    spare = width - columns(last) - columns(band.amount)
    yield f"{last}{' ' * max(2, spare)}{band.amount}" if band.amount else last


def _stacked(titles: Row, rows: list[Row | Band], width: int) -> Iterator[str]:
    """Every row as a small list, titles before the cells."""
    for row in rows:
        if isinstance(row, Band):
            yield from ("", *_band(row, width))
            continue
        first = "- "
        for title, cell in zip(titles, row, strict=True):
            if cell:
                named = f"{title}: {'; '.join(cell.splitlines())}"
                yield from wrapped(named, width, first=first, rest="    ")
                first = "  "
