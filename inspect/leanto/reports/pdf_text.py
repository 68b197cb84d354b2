"""The one door for text into the PDF: escaped, split into fonts, never read as markup."""

from __future__ import annotations

from functools import cache
from typing import Literal
from xml.sax.saxutils import escape

from reportlab.lib.colors import Color
from reportlab.lib.styles import ParagraphStyle
from reportlab.pdfgen.canvas import Canvas
from reportlab.platypus import Paragraph
from reportlab.platypus.paraparser import ParaFrag

from leanto.reports.fonts import Face, Run, Typesetter, base_font, width_pt
from leanto.reports.pdf_style import GRAY, INK

SMALLER = 0.88
"""The size of the lines after the first, where they are printed smaller."""
_LINES = 40


class _BrokenOnce(Paragraph):
    """A paragraph that is broken into lines once for a width: tables ask for its size often."""

    _known: tuple[float, tuple[float, float]] | None = None

    def wrap(self, available_width: float, available_height: float) -> tuple[float, float]:
        known = self._known
        if known is None or known[0] != available_width or not hasattr(self, "blPara"):
            known = (available_width, super().wrap(available_width, available_height))
            self._known = known
        return known[1]


def paragraph(
    text: str,
    style: ParagraphStyle,
    setter: Typesetter,
    bullet: str | None = None,
    small_rest: bool = False,
    marks: tuple[str, ...] = (),
) -> Paragraph:
    """A paragraph of plain text; line feeds start new lines.

    With ``small_rest`` every line after the first is printed smaller and gray. ``marks`` stand
    first, white on dark.
    """
    face = Face.BOLD if style.fontName == base_font(Face.BOLD) else Face.REGULAR
    first, _, rest = text.partition("\n") if small_rest else (text, "", "")
    markup = _markup(first, style.fontName, face, setter)
    if rest:
        small = _markup(rest, base_font(Face.REGULAR), Face.REGULAR, setter)
        size = style.fontSize * SMALLER
        name, gray = base_font(Face.REGULAR), f"#{GRAY.hexval()[2:]}"
        markup += f'<br/><font name="{name}" size="{size:.2f}" color="{gray}">{small}</font>'
    for mark in reversed(marks):
        word = _markup(mark.upper(), style.fontName, face, setter)
        dark = f"#{INK.hexval()[2:]}"
        markup = f'<font backColor="{dark}" color="white">\u00a0{word}\u00a0</font> {markup}'
    if "<" in markup or "&" in markup or markup != " ".join(markup.split()) or not markup:
        return _BrokenOnce(markup, style, bulletText=bullet)
    return _BrokenOnce("", style, bulletText=bullet, frags=[_plain(style).clone(text=markup)])


@cache
def _plain(style: ParagraphStyle) -> ParaFrag:
    """A piece of text in the style; reading it from markup takes as long as drawing it."""
    frag: ParaFrag = Paragraph("x", style).frags[0]
    return frag


def paragraphs(text: str, style: ParagraphStyle, setter: Typesetter) -> list[Paragraph]:
    """The text in paragraphs of few lines each: one of thousands of lines is slow to break."""
    lines = text.splitlines() or [""]
    return [
        paragraph("\n".join(lines[at : at + _LINES]), style, setter)
        for at in range(0, len(lines), _LINES)
    ]


def draw_text(
    canvas: Canvas,
    x_pt: float,
    y_pt: float,
    text: str,
    setter: Typesetter,
    size_pt: float,
    face: Face = Face.REGULAR,
    align: Literal["left", "center", "right"] = "left",
    color: Color = INK,
    room_pt: float | None = None,
) -> float:
    """Draws one line of text at a point and returns its width; cut with dots to fit ``room_pt``."""
    runs = fitted(setter.line(text, face), size_pt, room_pt)
    width = width_pt(runs, size_pt)
    at = x_pt - {"left": 0.0, "center": width / 2, "right": width}[align]
    canvas.setFillColor(color)
    for run in runs:
        canvas.setFont(run.font, size_pt)
        canvas.drawString(at, y_pt, run.text)
        at += width_pt((run,), size_pt)
    return width


def fitted(runs: tuple[Run, ...], size_pt: float, room_pt: float | None) -> tuple[Run, ...]:
    """The runs, cut with dots at the end when they are wider than the room."""
    if room_pt is None or width_pt(runs, size_pt) <= room_pt:
        return runs
    dots = Run(base_font(Face.REGULAR), "…")
    kept = list(runs)
    while kept and width_pt((*kept, dots), size_pt) > room_pt:
        last = kept.pop()
        if shorter := last.text[:-1]:
            kept.append(Run(last.font, shorter))
    return (*kept, dots)


def _markup(text: str, base: str, face: Face, setter: Typesetter) -> str:
    return "<br/>".join(
        "".join(_run(run, base) for run in line) for line in setter.lines(text, face)
    )


def _run(run: Run, base: str) -> str:
    text = escape(run.text)
    return text if run.font == base else f'<font name="{run.font}">{text}</font>'
