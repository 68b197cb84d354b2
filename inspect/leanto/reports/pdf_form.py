"""Forms in the PDF: boxes that can be typed into, set in the cells of a table."""

from __future__ import annotations

from collections.abc import Callable
from typing import Any

from reportlab.lib.colors import Color, HexColor
from reportlab.platypus import Flowable, TableStyle
from reportlab.platypus import Table as PdfTable

from leanto.reports.blocks import Band, Field, FormTable
from leanto.reports.fonts import Face, Typesetter
from leanto.reports.pdf_style import ACCENT, GRAY, INK, LIGHT, PALE, cell_font, cell_style
from leanto.reports.pdf_table import PAD, Command, band_cells, widths_pt
from leanto.reports.pdf_text import paragraph

_TYPED: Color = HexColor("#f2f7f7")
"""Light enough that gray print leaves it white."""
_LINE_PT, _ROOM_PT = 11.0, 5.0
_FONT, _SIZE_PT = "Helvetica", 8
"""One of the few fonts that every reader of PDF files brings along."""


class FieldBox(Flowable):
    """A box of the document's form, as wide as its cell."""

    def __init__(self, field: Field) -> None:
        super().__init__()
        self._field = field
        self.height = _LINE_PT * field.lines + _ROOM_PT

    def wrap(self, available_width: float, available_height: float) -> tuple[float, float]:
        self.width = available_width
        return self.width, self.height

    def draw(self) -> None:
        field = self._field
        flags = {"readOnly": field.fixed, "multiline": field.lines > 1}
        textfield: Callable[..., None] = self.canv.acroForm.textfield  # its stubs know whole points
        textfield(
            name=field.name,
            tooltip=field.label,
            value=field.value,
            fieldFlags=" ".join(flag for flag, is_set in flags.items() if is_set),
            width=self.width,
            height=self.height,
            relative=True,
            maxlen=None,
            fontName=_FONT,
            fontSize=_SIZE_PT,
            fillColor=PALE if field.fixed else _TYPED,
            borderColor=LIGHT if field.fixed else GRAY,
            textColor=INK,
            borderWidth=0.5,
        )


def form_table(table: FormTable, width_pt: float, setter: Typesetter) -> PdfTable:
    """The table over the whole width, its titles repeated on every page."""
    last = len(table.columns) - 1
    rows: list[list[Any]] = []
    commands: list[Command] = [*PAD]
    has_titles = any(column.title for column in table.columns)
    if has_titles:
        rows.append(
            [paragraph(c.title, cell_style(c.align, Face.BOLD), setter) for c in table.columns]
        )
        commands.append(("LINEBELOW", (0, 0), (-1, 0), 0.9, ACCENT))
    for row in table.rows:
        at = len(rows)
        if isinstance(row, Band):
            rows.append(band_cells(row, last, setter))
            commands += [
                ("SPAN", (0, at), (last, at)),
                ("BACKGROUND", (0, at), (-1, at), PALE),
                ("NOSPLIT", (0, at), (-1, min(at + 1, len(table.rows) - 1 + has_titles))),
            ]
        else:
            rows.append(
                [
                    FieldBox(cell)
                    if isinstance(cell, Field)
                    else paragraph(
                        cell, cell_style(column.align, Face.REGULAR), setter, small_rest=True
                    )
                    for cell, column in zip(row, table.columns, strict=True)
                ]
            )
        commands.append(("LINEBELOW", (0, at), (-1, at), 0.3, LIGHT))
    return PdfTable(
        rows,
        colWidths=widths_pt(table.columns, width_pt),
        style=TableStyle([cell_font(), *commands]),
        repeatRows=int(has_titles),
        spaceBefore=2,
        spaceAfter=8,
        hAlign="LEFT",
    )
