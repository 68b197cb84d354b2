"""Two pieces beside each other, with as much as one column each."""

from __future__ import annotations

from typing import Any

from reportlab.platypus import Flowable, TableStyle
from reportlab.platypus import Table as PdfTable

from leanto.reports.pdf_style import cell_font

GAP_PT = 14.0


def column_width_pt(width_pt: float) -> float:
    """The width of one of the two columns."""
    return (width_pt - GAP_PT) / 2


def two_beside(left: list[Flowable], right: list[Flowable], width_pt: float) -> PdfTable:
    """A row of two columns; the right one may be empty."""
    column = column_width_pt(width_pt)
    return bare_row([left, "", right or ""], [column, GAP_PT, column])


def bare_row(cells: list[Any], widths: list[float], *commands: tuple[Any, ...]) -> PdfTable:
    """A row without lines or padding, each cell a list of pieces."""
    plain = [
        ("VALIGN", (0, 0), (-1, -1), "TOP"),
        ("LEFTPADDING", (0, 0), (-1, -1), 0),
        ("RIGHTPADDING", (0, 0), (-1, -1), 0),
        ("TOPPADDING", (0, 0), (-1, -1), 0),
        ("BOTTOMPADDING", (0, 0), (-1, -1), 0),
    ]
    return PdfTable(
        [cells],
        colWidths=widths,
        style=TableStyle([cell_font(), *plain, *commands]),
        spaceAfter=8,
        hAlign="LEFT",
    )
