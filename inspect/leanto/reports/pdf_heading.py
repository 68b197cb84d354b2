"""A heading that enters itself in the outline of the document."""

from __future__ import annotations

from reportlab.platypus import Flowable

from leanto.reports.blocks import Heading
from leanto.reports.characters import printable
from leanto.reports.fonts import Typesetter
from leanto.reports.pdf_style import ACCENT, style
from leanto.reports.pdf_text import paragraph


class PdfHeading(Flowable):
    """The heading's text, with a line below it on level one."""

    def __init__(
        self, heading: Heading, number: int, outline_level: int | None, setter: Typesetter
    ) -> None:
        """``number`` is the heading's place in the report, from 1; None keeps it out of the
        outline."""
        super().__init__()
        look = style(f"heading {heading.level}")
        self._heading, self._key = heading, f"heading-{number}"
        self._outline_level = outline_level
        self._text = paragraph(heading.text, look, setter)
        self._line_pt = 4.0 if heading.level == 1 else 0.0
        self.spaceBefore, self.spaceAfter = look.spaceBefore, look.spaceAfter

    def getSpaceBefore(self) -> float:
        return self.spaceBefore

    def getSpaceAfter(self) -> float:
        return self.spaceAfter

    def wrap(self, available_width: float, available_height: float) -> tuple[float, float]:
        _, height = self._text.wrap(available_width, available_height)
        self.width, self.height = available_width, height + self._line_pt
        return self.width, self.height

    def draw(self) -> None:
        self._text.drawOn(self.canv, 0, self._line_pt)
        if self._line_pt:
            self.canv.setStrokeColor(ACCENT)
            self.canv.setLineWidth(1.2)
            self.canv.line(0, 0, self.width, 0)
        if self._outline_level is not None:
            self.canv.bookmarkHorizontal(self._key, 0, self.height + 6)
            title = printable(self._heading.text)
            self.canv.addOutlineEntry(title, self._key, self._outline_level, closed=False)
