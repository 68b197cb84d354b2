"""A form as plain text: its boxes as lines to write on."""

from __future__ import annotations

from collections.abc import Iterator

from leanto.reports.blocks import Band, Field, FormTable, Table
from leanto.reports.text_table import table_lines

_BOX = "_" * 10


def form_lines(form: FormTable, width: int) -> Iterator[str]:
    """The lines of a form, laid out as those of a table."""
    rows = tuple(
        row if isinstance(row, Band) else tuple(_cell(cell) for cell in row) for row in form.rows
    )
    yield from table_lines(Table(form.columns, rows), width)


def _cell(cell: str | Field) -> str:
    return cell if isinstance(cell, str) else cell.value or _BOX
