"""The look of the PDF: page, colors, type; grays and accent read well in gray print."""

from __future__ import annotations

from functools import cache
from typing import Literal

from reportlab.lib.colors import Color, HexColor
from reportlab.lib.pagesizes import LETTER
from reportlab.lib.styles import ParagraphStyle

from leanto.reports.blocks import Align
from leanto.reports.fonts import Face, base_font

PAGE_WIDTH_PT, PAGE_HEIGHT_PT = LETTER
MARGIN_PT = 54.0
TOP_PT = 62.0
BOTTOM_PT = 58.0
TEXT_WIDTH_PT = PAGE_WIDTH_PT - 2 * MARGIN_PT

INK: Color = HexColor("#1c1c1c")
GRAY: Color = HexColor("#5c5c5c")
LIGHT: Color = HexColor("#b9b9b9")
PALE: Color = HexColor("#efefec")
ACCENT: Color = HexColor("#24555c")

_SMALL_PT, _SMALL_LEADING_PT = 6.9, 8.5
_ALIGNMENTS: dict[Align, Literal[0, 1, 2]] = {"left": 0, "center": 1, "right": 2}


@cache
def style(name: str) -> ParagraphStyle:
    """One of the paragraph styles by name."""
    return _styles()[name]


@cache
def cell_style(align: Align, face: Face, small: bool = False) -> ParagraphStyle:
    """The style of table cells."""
    base = style("cell" if face is Face.REGULAR else "cell bold")
    size, leading = (_SMALL_PT, _SMALL_LEADING_PT) if small else (base.fontSize, base.leading)
    name = f"{base.name} {align} {size}"
    return ParagraphStyle(name, base, alignment=_ALIGNMENTS[align], fontSize=size, leading=leading)


@cache
def _styles() -> dict[str, ParagraphStyle]:
    regular, bold = base_font(Face.REGULAR), base_font(Face.BOLD)
    body = ParagraphStyle(
        "body",
        fontName=regular,
        bulletFontName=regular,
        fontSize=9.5,
        leading=13,
        textColor=INK,
        spaceAfter=5,
    )
    strong = ParagraphStyle("strong", body, fontName=bold)
    cell = ParagraphStyle("cell", body, fontSize=7.8, leading=9.8, spaceAfter=0)

    def heading(name: str, size: float, before: float, after: float) -> ParagraphStyle:
        return ParagraphStyle(
            name,
            strong,
            fontSize=size,
            leading=size * 1.25,
            spaceBefore=before,
            spaceAfter=after,
            keepWithNext=1,
        )

    styles = (
        body,
        strong,
        ParagraphStyle("lead", body, fontSize=11, leading=14.5, spaceAfter=5),
        ParagraphStyle("note", body, fontSize=8, leading=10.5, textColor=GRAY, spaceAfter=5),
        ParagraphStyle("kind", strong, fontSize=9.5, textColor=ACCENT, spaceAfter=2),
        ParagraphStyle("title", strong, fontSize=21, leading=26, spaceAfter=1),
        ParagraphStyle("subtitle", body, fontSize=11, leading=14, textColor=GRAY, spaceAfter=6),
        heading("heading 1", 15, 16, 6),
        heading("heading 2", 11.5, 10, 4),
        heading("heading 3", 9.5, 8, 3),
        ParagraphStyle("bullet", body, leftIndent=12, bulletIndent=2, spaceAfter=2.5),
        ParagraphStyle(
            "entry title", strong, fontSize=9.2, leading=11.8, spaceAfter=1, keepWithNext=1
        ),
        ParagraphStyle("entry line", body, fontSize=7.6, leading=9.6, textColor=GRAY, spaceAfter=1),
        ParagraphStyle("entry body", body, fontSize=8.5, leading=10.9, spaceAfter=1.5),
        ParagraphStyle("caption", body, fontSize=7.5, leading=9.5, textColor=GRAY, spaceAfter=0),
        cell,
        ParagraphStyle("cell bold", cell, fontName=bold),
        ParagraphStyle("label", cell, fontSize=8.5, leading=11, textColor=GRAY),
        ParagraphStyle("value", cell, fontSize=8.5, leading=11),
    )
    return {one.name: one for one in styles}


def cell_font() -> tuple[str, tuple[int, int], tuple[int, int], str]:
    """The command for a table's cells, which else name a font that is not in the file."""
    return ("FONTNAME", (0, 0), (-1, -1), base_font(Face.REGULAR))
