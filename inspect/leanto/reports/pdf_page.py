"""The page: head and foot, and a canvas that knows at the end how many pages there were."""

from __future__ import annotations

from typing import Any

from reportlab.pdfgen.canvas import Canvas
from reportlab.platypus import BaseDocTemplate

from leanto.reports.blocks import INVENTED, Report
from leanto.reports.fonts import Face, Typesetter, base_font
from leanto.reports.pdf_style import (
    ACCENT,
    BOTTOM_PT,
    GRAY,
    LIGHT,
    MARGIN_PT,
    PAGE_HEIGHT_PT,
    PAGE_WIDTH_PT,
)
from leanto.reports.pdf_text import draw_text

_SIZE_PT = 7.5
_TOTAL = "page-total"
_TOTAL_WIDTH_PT = 16.0


class CountingCanvas(Canvas):
    """A canvas whose pages may show the page total before it is known.

    Pages draw a form by name; the form is made when the last page is done.
    """

    def __init__(self, *arguments: Any, **options: Any) -> None:
        # Else every page starts in a font that is not in the file.
        options["initialFontName"] = base_font(Face.REGULAR)
        super().__init__(*arguments, **options)
        self.page_total = 0
        self.setter = Typesetter()

    def showPage(self) -> None:
        self.page_total += 1
        super().showPage()

    def save(self) -> None:
        """Makes the form of the page total, then the file."""
        if self.page_total:
            self.beginForm(_TOTAL)
            draw_text(self, 0, 0, str(self.page_total), self.setter, _SIZE_PT, color=GRAY)
            self.endForm()
        super().save()


class PageFurniture:
    """Draws what stands at the head and foot of the pages."""

    def __init__(self, report: Report, setter: Typesetter) -> None:
        self._report, self._setter = report, setter

    def first(self, canvas: Canvas, document: BaseDocTemplate) -> None:
        """A band of color above the title, and the foot."""
        canvas.saveState()
        canvas.setFillColor(ACCENT)
        canvas.rect(MARGIN_PT, PAGE_HEIGHT_PT - 44, PAGE_WIDTH_PT - 2 * MARGIN_PT, 4, 0, 1)
        self._foot(canvas)
        canvas.restoreState()

    def later(self, canvas: Canvas, document: BaseDocTemplate) -> None:
        canvas.saveState()
        y, right = PAGE_HEIGHT_PT - 40, PAGE_WIDTH_PT - MARGIN_PT
        kind = self._report.kind
        if self._report.invented:
            kind = f"{kind} · {INVENTED}"
        width = draw_text(canvas, right, y, kind, self._setter, _SIZE_PT, align="right", color=GRAY)
        room = right - MARGIN_PT - width - 20
        draw_text(canvas, MARGIN_PT, y, self._report.title, self._setter, _SIZE_PT, room_pt=room)
        canvas.setStrokeColor(LIGHT)
        canvas.setLineWidth(0.5)
        canvas.line(MARGIN_PT, y - 5, right, y - 5)
        self._foot(canvas)
        canvas.restoreState()

    def _foot(self, canvas: Canvas) -> None:
        y, right = BOTTOM_PT - 24, PAGE_WIDTH_PT - MARGIN_PT
        canvas.setStrokeColor(LIGHT)
        canvas.setLineWidth(0.5)
        canvas.line(MARGIN_PT, y + 11, right, y + 11)
        said = (
            f"{INVENTED}. {self._report.footer}" if self._report.invented else self._report.footer
        )
        draw_text(canvas, MARGIN_PT, y, said, self._setter, _SIZE_PT, color=GRAY, room_pt=400)
        page = f"Page {canvas.getPageNumber()} of "
        at = right - _TOTAL_WIDTH_PT
        draw_text(canvas, at, y, page, self._setter, _SIZE_PT, align="right", color=GRAY)
        canvas.saveState()
        canvas.translate(at + 2, y)
        canvas.doForm(_TOTAL)
        canvas.restoreState()
