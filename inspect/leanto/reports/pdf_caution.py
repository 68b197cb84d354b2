"""A caution as a box with a warning sign, so that it is not read over."""

from __future__ import annotations

from reportlab.lib.colors import white
from reportlab.platypus import Flowable
from reportlab.platypus import Table as PdfTable

from leanto.reports.blocks import Caution
from leanto.reports.fonts import Face, Typesetter
from leanto.reports.pdf_pairs import bare_row
from leanto.reports.pdf_style import INK, PALE, style
from leanto.reports.pdf_text import draw_text, paragraph

_SIGN_PT = 16.0


class Sign(Flowable):
    """A dark triangle with an exclamation mark."""

    def __init__(self, setter: Typesetter) -> None:
        super().__init__()
        self._setter = setter
        self.width, self.height = _SIGN_PT, _SIGN_PT * 0.9

    def wrap(self, available_width: float, available_height: float) -> tuple[float, float]:
        return self.width, self.height

    def draw(self) -> None:
        path = self.canv.beginPath()
        path.moveTo(0, 0)
        path.lineTo(self.width, 0)
        path.lineTo(self.width / 2, self.height)
        path.close()
        self.canv.setFillColor(INK)
        self.canv.drawPath(path, stroke=0, fill=1)
        draw_text(
            self.canv, self.width / 2, 1.8, "!", self._setter, 9.5, Face.BOLD, "center", white
        )


def caution_box(caution: Caution, width_pt: float, setter: Typesetter) -> PdfTable:
    text = [
        paragraph(caution.title, style("cell bold"), setter),
        paragraph(caution.text, style("value"), setter),
    ]
    if caution.who:
        text.append(paragraph(f"Who must act: {caution.who}", style("cell bold"), setter))
    return bare_row(
        [[Sign(setter)], text],
        [34, width_pt - 34],
        ("BACKGROUND", (0, 0), (-1, -1), PALE),
        ("LINEBEFORE", (0, 0), (0, -1), 3, INK),
        ("LEFTPADDING", (0, 0), (0, 0), 11),
        ("RIGHTPADDING", (1, 0), (1, 0), 6),
        ("TOPPADDING", (0, 0), (-1, -1), 5),
        ("BOTTOMPADDING", (0, 0), (-1, -1), 6),
    )
