"""The range of a total as a bar, with the budget against it."""

from __future__ import annotations

from reportlab.lib.colors import white
from reportlab.platypus import Flowable

from leanto.money import format_usd, round_to
from leanto.reports.blocks import RangeBar
from leanto.reports.fonts import Face, Typesetter, width_pt
from leanto.reports.pdf_style import ACCENT, GRAY, INK, LIGHT, PALE
from leanto.reports.pdf_text import draw_text

_BAR_PT, _BASE_PT, _SIZE_PT = 12.0, 20.0, 8.0


class RangeDrawing(Flowable):
    """Low to high as a pale bar, the part from one half to four in five dark."""

    def __init__(self, bar: RangeBar, width_pt: float, setter: Typesetter) -> None:
        super().__init__()
        self._bar, self._setter = bar, setter
        self.width = width_pt
        self.height = 58.0 if bar.budget is None else 70.0
        self._base = self.height - 58.0 + _BASE_PT
        self._end = max(bar.high, bar.budget or 0.0, 1.0)

    def wrap(self, available_width: float, available_height: float) -> tuple[float, float]:
        return self.width, self.height

    def draw(self) -> None:
        canvas, bar, base = self.canv, self._bar, self._base
        canvas.setStrokeColor(LIGHT)
        canvas.setLineWidth(0.5)
        canvas.setFillColor(white)
        canvas.rect(0, base, self.width, _BAR_PT, fill=1)
        low, p50, p80, high = (self._at(x) for x in (bar.low, bar.p50, bar.p80, bar.high))
        canvas.setFillColor(PALE)
        canvas.setStrokeColor(GRAY)
        canvas.rect(low, base, high - low, _BAR_PT, fill=1)
        canvas.setFillColor(ACCENT)
        canvas.rect(p50, base, p80 - p50, _BAR_PT, fill=1)
        above = base + _BAR_PT + 5
        end = self._text(p50 - 2, above, f"half stay under {_usd(bar.p50)}", "right", Face.BOLD)
        self._text(
            max(p80 + 2, end + 8), above, f"four in five under {_usd(bar.p80)}", "left", Face.BOLD
        )
        said = f"at the very least {_usd(bar.low)}, at the very most {_usd(bar.high)}"
        if bar.budget is not None:
            self._budget(bar.budget)
        self._text(low, base - (10 if bar.budget is None else 21), said, "left")

    def _budget(self, budget: float) -> None:
        canvas, at = self.canv, self._at(budget)
        canvas.setStrokeColor(INK)
        canvas.setLineWidth(1.4)
        canvas.line(at, self._base - 10, at, self._base + _BAR_PT + 3)
        to_left = at > self.width / 2
        text, align = f"budget {format_usd(budget)}", "right" if to_left else "left"
        self._text(at + (-3 if to_left else 3), self._base - 10, text, align, Face.BOLD)

    def _text(self, x: float, y: float, text: str, align: str, face: Face = Face.REGULAR) -> float:
        """Draws a text at a point, moved to stay within the width; returns where it ends."""
        width = width_pt(self._setter.line(text, face), _SIZE_PT)
        left = x - width if align == "right" else x
        left = min(max(0.0, left), self.width - width)
        draw_text(self.canv, left, y, text, self._setter, _SIZE_PT, face)
        return left + width

    def _at(self, amount: float) -> float:
        return self.width * amount / self._end


def _usd(amount: float) -> str:
    return format_usd(round_to(amount, 10))
