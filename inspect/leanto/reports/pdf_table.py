"""Tables in the PDF: titles repeated on every page, bands, feet, boxes to write in."""

from __future__ import annotations

from typing import Any

from reportlab.platypus import Table as PdfTable
from reportlab.platypus import TableStyle

from leanto.reports.blocks import Band, Column, Facts, Table
from leanto.reports.fonts import Face, Typesetter
from leanto.reports.pdf_style import (
    ACCENT,
    GRAY,
    INK,
    LIGHT,
    PAGE_HEIGHT_PT,
    PALE,
    cell_font,
    cell_style,
    style,
)
from leanto.reports.pdf_text import paragraph

Command = tuple[Any, ...]
_HIGHEST_ROW_PT = 500.0
_BESIDE_PT = 4
PAD: list[Command] = [
    ("VALIGN", (0, 0), (-1, -1), "TOP"),
    ("LEFTPADDING", (0, 0), (-1, -1), _BESIDE_PT),
    ("RIGHTPADDING", (0, 0), (-1, -1), _BESIDE_PT),
    ("TOPPADDING", (0, 0), (-1, -1), 2.5),
    ("BOTTOMPADDING", (0, 0), (-1, -1), 3),
]


def pdf_table(table: Table, width_pt: float, setter: Typesetter) -> PdfTable:
    """The table over the whole width; a row too high for a page is split in itself."""
    last = len(table.columns) - 1
    titles = [
        paragraph(column.title, cell_style(column.align, Face.BOLD, table.small), setter)
        for column in table.columns
    ]
    rows: list[list[Any]] = [titles]
    commands = [*PAD, ("LINEBELOW", (0, 0), (-1, 0), 0.9, ACCENT)]
    for row in (*table.rows, *table.foot):
        at = len(rows)
        if isinstance(row, Band):
            rows.append(band_cells(row, last, setter))
            split = last - 2 if row.amount and last > 2 else last
            commands += [
                ("SPAN", (0, at), (split, at)),
                ("BACKGROUND", (0, at), (-1, at), PALE),
                ("LINEBELOW", (0, at), (-1, at), 0.4, LIGHT),
            ]
            if split < last:
                commands.append(("SPAN", (split + 1, at), (last, at)))
        else:
            face = Face.BOLD if at > len(table.rows) else Face.REGULAR
            rows.append(
                [
                    paragraph(
                        cell, cell_style(column.align, face, table.small), setter, small_rest=True
                    )
                    for cell, column in zip(row, table.columns, strict=True)
                ]
            )
            commands.append(("LINEBELOW", (0, at), (-1, at), 0.3, LIGHT))
            commands += [
                ("BOX", (c, at), (c, at), 0.5, GRAY)
                for c, column in enumerate(table.columns)
                if column.blank
            ]
    if table.foot:
        first = len(table.rows) + 1
        commands.append(("LINEABOVE", (0, first), (-1, first), 0.9, INK))
        commands.append(("NOSPLIT", (0, max(1, first - 1)), (-1, -1)))
    return _table(rows, widths_pt(table.columns, width_pt), commands, repeat=1)


def facts_table(facts: Facts, width_pt: float, setter: Typesetter) -> PdfTable:
    """Labels in gray at the left, values beside them."""
    rows = [
        [
            paragraph(label, style("label"), setter),
            paragraph(value, style("value"), setter, small_rest=True),
        ]
        for label, value in facts.pairs
    ]
    commands = [*PAD, ("LINEBELOW", (0, 0), (-1, -1), 0.3, LIGHT)]
    return _table(rows, [width_pt * 0.24, width_pt * 0.76], commands, repeat=0)


def band_cells(band: Band, last: int, setter: Typesetter) -> list[Any]:
    """The cells of a band across the columns 0 to ``last``."""
    cells: list[Any] = [""] * (last + 1)
    cells[0] = paragraph(band.text, cell_style("left", Face.BOLD), setter)
    if band.amount and last > 2:
        cells[last - 1] = paragraph(band.amount, cell_style("right", Face.BOLD), setter)
    return cells


def widths_pt(columns: tuple[Column, ...], width_pt: float) -> list[float]:
    """The width of each column of a table that is so wide."""
    shares = sum(column.share for column in columns)
    return [width_pt * column.share / shares for column in columns]


def _table(
    rows: list[list[Any]], widths: list[float], commands: list[Command], repeat: int
) -> PdfTable:
    too_high = any(
        cell and cell.wrap(width - 2 * _BESIDE_PT, PAGE_HEIGHT_PT)[1] > _HIGHEST_ROW_PT
        for row in rows
        for cell, width in zip(row, widths, strict=True)
    )
    return PdfTable(
        rows,
        colWidths=widths,
        style=TableStyle([cell_font(), *commands]),
        repeatRows=repeat,
        splitByRow=1,
        splitInRow=int(too_high),
        spaceBefore=2,
        spaceAfter=8,
        hAlign="LEFT",
    )
