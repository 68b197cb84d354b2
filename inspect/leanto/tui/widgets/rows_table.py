"""A table of rows that can be sorted and narrowed down, as wide as its screen."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import dataclass
from typing import Literal

from textual.content import Content
from textual.message import Message
from textual.widgets import DataTable

from leanto.tui.shown import visible

Order = tuple[float | str, ...]


@dataclass(frozen=True, slots=True)
class Column:
    title: str
    width: int
    """In cells; 0 takes what the others leave."""
    align: Literal["left", "right"] = "left"
    from_width: int = 0
    """The column is left out where the table is narrower than this."""
    shorten: Callable[[str, int], str] | None = None
    """Makes a text fit a number of cells, in all rows as soon as one of them needs it; without
    it the end is cut off."""


@dataclass(frozen=True, slots=True)
class Row:
    key: str
    cells: tuple[str, ...]
    """Plain text for every column, shown or not."""
    orders: tuple[Order, ...] = ()
    """What the row is sorted by, in each of the table's sortings after the first."""
    search: str = ""
    """What the filter looks at besides the cells."""
    is_heading: bool = False
    """Heads the rows below it; left out as soon as these are sorted or narrowed down."""
    style: str = ""


class RowsTable(DataTable[Content]):
    """Rows as given, then by each of the sortings in turn; only those that hold the filter's words.

    The cursor stays on its row through all of it.
    """

    DEFAULT_CSS = """
    RowsTable { height: 1fr; scrollbar-size-vertical: 1; overflow-x: hidden; }
    """

    class Changed(Message):
        """Another choice of rows is shown."""

    def __init__(self) -> None:
        super().__init__(cursor_type="row", cell_padding=0, zebra_stripes=False)
        self._columns: tuple[Column, ...] = ()
        self._rows: tuple[Row, ...] = ()
        self._sortings: tuple[str, ...] = ("",)
        self._sorting = 0
        self._filter = ""
        self._shown: tuple[Row, ...] = ()
        self._width = 0

    def fill(self, columns: Sequence[Column], rows: Sequence[Row], sortings: Sequence[str]) -> None:
        """Show the rows. ``sortings`` names the given order first, then one for each of a row's
        ``orders``."""
        if tuple(columns) != self._columns:
            self._sorting, self._filter = 0, ""
            self._shown = ()
        self._columns, self._rows, self._sortings = tuple(columns), tuple(rows), tuple(sortings)
        self._draw()

    @property
    def sorting(self) -> str:
        return self._sortings[self._sorting]

    @property
    def filter_text(self) -> str:
        return self._filter

    @property
    def counts(self) -> tuple[int, int]:
        """(rows shown, rows there are), headings not counted."""
        shown, there = (
            sum(not row.is_heading for row in rows) for rows in (self._shown, self._rows)
        )
        return shown, there

    @property
    def selected(self) -> Row | None:
        """The row under the cursor; None on a heading and in an empty table."""
        if not 0 <= self.cursor_row < len(self._shown):
            return None
        row = self._shown[self.cursor_row]
        return None if row.is_heading else row

    def next_sorting(self) -> None:
        self._sorting = (self._sorting + 1) % len(self._sortings)
        self._draw()

    def narrow_down(self, words: str) -> None:
        """Show the rows that hold every one of the words."""
        self._filter = words
        self._draw()

    def step(self, by: int) -> bool:
        """Move the cursor over headings to another row; False at the end."""
        at = self.cursor_row + by
        while 0 <= at < len(self._shown):
            if not self._shown[at].is_heading:
                self.move_cursor(row=at)
                return True
            at += by
        return False

    def stay(self, at: int) -> None:
        """Put the cursor where it was, on whatever row stands there now."""
        self.move_cursor(row=max(0, min(at, len(self._shown) - 1)))
        if self.selected is None and not self.step(1):
            self.step(-1)

    def action_cursor_up(self) -> None:
        self.step(-1)

    def action_cursor_down(self) -> None:
        self.step(1)

    def on_resize(self) -> None:
        if self.size.width != self._width:
            self._draw()

    def _draw(self) -> None:
        self._width = self.size.width
        if not self._width:
            return
        before = self.selected
        at = self.cursor_row if before else 0
        self._shown = self._chosen()
        shown = [i for i, column in enumerate(self._columns) if column.from_width <= self._width]
        widths = self._widths(shown)
        self.clear(columns=True)
        for index in shown:
            column = self._columns[index]
            title = f"{column.title:>{widths[index]}}" if column.align == "right" else column.title
            self.add_column(title, width=widths[index] + 1, key=str(index))
        shortened = {i for i in shown if self._is_tight(i, widths[i])}
        for row in self._shown:
            cells = (_cell(row, i, self._columns[i], widths[i], i in shortened) for i in shown)
            self.add_row(*cells, key=row.key)
        if self._shown:
            keys = [row.key for row in self._shown]
            known = before is not None and before.key in keys
            self.move_cursor(row=keys.index(before.key) if before and known else min(at, len(keys)))
            if self.selected is None:
                self.step(1)
        self.post_message(self.Changed())

    def _chosen(self) -> tuple[Row, ...]:
        words = self._filter.casefold().split()
        rows = [row for row in self._rows if all(word in _searched(row) for word in words)]
        if self._sorting:
            rows.sort(key=lambda row: row.orders[self._sorting - 1] if row.orders else ())
        if self._sorting or words:
            return tuple(row for row in rows if not row.is_heading)
        return tuple(rows)

    def _is_tight(self, index: int, width: int) -> bool:
        """True when the column can be shortened and a text in it has to be."""
        has_way = self._columns[index].shorten is not None
        return has_way and any(Content(row.cells[index]).cell_length > width for row in self._shown)

    def _widths(self, shown: Sequence[int]) -> dict[int, int]:
        """Every column followed by a gap; the scrollbar takes one cell."""
        fixed = sum(self._columns[index].width + 1 for index in shown)
        rest = max(8, self._width - 1 - fixed)
        return {index: self._columns[index].width or rest for index in shown}


def _cell(row: Row, index: int, column: Column, width: int, is_tight: bool) -> Content:
    text = visible(row.cells[index]).replace("\n", " ")
    if is_tight and column.shorten is not None:
        text = column.shorten(text, width)
    cell = Content.styled(text, row.style).truncate(width, ellipsis=True)
    spare = width - cell.cell_length
    return cell.pad_left(spare) if column.align == "right" and spare > 0 else cell


def _searched(row: Row) -> str:
    return "\n".join((*row.cells, row.search)).casefold()
