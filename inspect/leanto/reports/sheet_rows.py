"""Rows of a sheet, each cell with its look: fixed, to be written in, a heading, or reckoned."""

from __future__ import annotations

from collections.abc import Sequence
from decimal import Decimal
from enum import Enum
from math import ceil

from openpyxl.cell.cell import Cell
from openpyxl.styles import Alignment, Border, Font, PatternFill, Protection, Side
from openpyxl.utils import get_column_letter
from openpyxl.worksheet.page import PageMargins
from openpyxl.worksheet.properties import PageSetupProperties
from openpyxl.worksheet.worksheet import Worksheet

from leanto.reports.cell_text import cell_text

ACCENT, _GRAY, _LIGHT, _PALE, _TYPED = "24555C", "5C5C5C", "B9B9B9", "EFEFEC", "FFF9E3"
_FONT, _SIZE = "Arial", 10.0
_LINE = Side("thin", color=_LIGHT)
_MONEY = "#,##0.00"
_LINE_PT = 15.0
_LETTERS_IN_WIDTH, _SMALL_LETTERS_IN_WIDTH = 1.05, 1.5
"""Letters for each unit of a column's width; a little too few leaves room."""

Value = str | int | float | Decimal | None


class Look(Enum):
    EMPTY = "empty"
    PLAIN = "plain"
    ID = "id"
    """For programs more than for people."""
    HEAD = "head"
    WORDS = "words"
    """A bidder writes words in it."""
    PRICE = "price"
    """A bidder writes an amount in it."""
    SUM = "sum"
    """An amount that nobody writes in."""


class Rows:
    """Writes a sheet from the top; texts are made harmless on the way."""

    def __init__(self, sheet: Worksheet, widths: Sequence[float]) -> None:
        self.sheet, self._widths = sheet, widths
        self.last = 0
        """The number of the last row."""
        for at, width in enumerate(widths, start=1):
            sheet.column_dimensions[get_column_letter(at)].width = width

    def put(self, values: Sequence[Value], looks: Sequence[Look]) -> int:
        """A row below the last one, as high as its longest text needs; returns its number."""
        self.last += 1
        lines = 1
        for at, (value, look) in enumerate(zip(values, looks, strict=True), start=1):
            cell = self.cell(at)
            if look is not Look.EMPTY:
                _dress(cell, look)
            if isinstance(value, str):
                if text := cell_text(value):
                    cell.value, cell.data_type = text, "s"
                    letters = _SMALL_LETTERS_IN_WIDTH if look is Look.ID else _LETTERS_IN_WIDTH
                    room = max(1.0, self._widths[at - 1] * letters)
                    lines = max(lines, ceil(len(text) / room))
            elif value is not None:
                cell.value = value
        if looks[0] is not Look.HEAD:
            self.height(_LINE_PT * lines)
        return self.last

    def say(self, text: str, size: float = _SIZE, bold: bool = False) -> None:
        """A line of text across the sheet."""
        self.last += 1
        cell = self.cell(1)
        cell.value, cell.data_type = cell_text(text), "s"
        cell.font = Font(_FONT, size, bold, color=ACCENT if bold else None)

    def tell(self, text: str, columns: int) -> None:
        """A paragraph over the first ``columns`` columns, as high as it needs."""
        self.last += 1
        cell = self.cell(1)
        cell.value, cell.data_type = cell_text(text), "s"
        cell.font, cell.alignment = Font(_FONT, _SIZE), Alignment("left", "top", wrap_text=True)
        self.sheet.merge_cells(
            start_row=self.last, end_row=self.last, start_column=1, end_column=columns
        )
        room = max(1.0, sum(self._widths[:columns]) * _LETTERS_IN_WIDTH)
        self.height(_LINE_PT * ceil(len(text) / room))

    def wrap(self) -> None:
        """Lets the texts of the last row run over several lines, such as long titles."""
        lines = 1
        for at, width in enumerate(self._widths, start=1):
            cell = self.cell(at)
            if isinstance(cell.value, str):
                cell.alignment = Alignment(cell.alignment.horizontal, "top", wrap_text=True)
                lines = max(lines, ceil(len(cell.value) / max(1.0, width * 0.9)))
        self.height(_LINE_PT * lines)

    def skip(self) -> None:
        self.last += 1

    def cell(self, column: int, row: int = 0) -> Cell:
        """A cell of the last row, or of ``row``."""
        cell = self.sheet.cell(row or self.last, column)
        assert isinstance(cell, Cell)
        return cell

    def formula(self, column: int, text: str, row: int = 0, number_format: str = _MONEY) -> None:
        """A formula of ours in a cell; no text from outside may come into it."""
        cell = self.cell(column, row)
        cell.value, cell.number_format = text, number_format
        cell.alignment = Alignment("right", "top")

    def height(self, points: float) -> None:
        self.sheet.row_dimensions[self.last].height = points

    def freeze(self) -> None:
        """Keeps everything down to the last row on the screen, and that row on every page."""
        self.sheet.freeze_panes = self.cell(1, self.last + 1)
        self.sheet.print_title_rows = f"{self.last}:{self.last}"

    def finish(self, *, protect: bool = True) -> None:
        """Fits the sheet to the width of a page, and protects it without a password."""
        protection, page = self.sheet.protection, self.sheet.page_setup
        if protect:
            protection.sheet, protection.formatColumns, protection.formatRows = True, False, False
        page.orientation, page.paperSize = "landscape", self.sheet.PAPERSIZE_LETTER
        page.fitToWidth, page.fitToHeight = 1, 0
        self.sheet.page_margins = PageMargins(0.4, 0.4, 0.5, 0.5, 0.2, 0.2)
        self.sheet.sheet_properties.pageSetUpPr = PageSetupProperties(fitToPage=True)
        self.sheet.sheet_view.showGridLines = False


def _dress(cell: Cell, look: Look) -> None:
    words = look in (Look.PLAIN, Look.ID, Look.WORDS)
    across = "left" if words else None
    cell.alignment = Alignment(across, "top", wrap_text=look is not Look.HEAD)
    cell.border = Border(bottom=_LINE)
    small = look is Look.ID
    cell.font = Font(
        _FONT, 8 if small else _SIZE, look is Look.HEAD, color=_GRAY if small else None
    )
    if look is Look.HEAD:
        cell.fill = PatternFill("solid", fgColor=_PALE)
    if look in (Look.PRICE, Look.SUM):
        cell.number_format = _MONEY
    if look in (Look.PRICE, Look.WORDS):
        cell.fill = PatternFill("solid", fgColor=_TYPED)
        cell.border = Border(_LINE, _LINE, _LINE, _LINE)
        cell.protection = Protection(locked=False)
