"""A workbook as a file: the same bytes for the same content, reckoned when it is opened."""

from __future__ import annotations

from datetime import date
from io import BytesIO

from openpyxl import Workbook

from leanto.reports.cell_text import cell_text
from leanto.reports.fixed_zip import fixed_workbook


def saved_workbook(book: Workbook, title: str, day: date) -> bytes:
    """The file, dated to the day of what it tells."""
    book.properties.creator = "leanto"
    book.properties.title = cell_text(title)
    book.calculation.fullCalcOnLoad = True
    written = BytesIO()
    book.save(written)
    return fixed_workbook(written.getvalue(), day)
