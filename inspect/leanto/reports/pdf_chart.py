"""Charts in the PDF: shapes by reportlab.graphics, words in the fonts of the report."""

from __future__ import annotations

from collections.abc import Callable
from typing import Literal

from reportlab.graphics import renderPDF
from reportlab.graphics.shapes import STATE_DEFAULTS, Drawing, Line, PolyLine, Rect, Shape
from reportlab.lib.colors import Color
from reportlab.platypus import Flowable

from leanto.money import format_usd, round_to
from leanto.reports.chart_blocks import (
    BothSpreads,
    Chart,
    CourseBar,
    CourseChart,
    CourseSpread,
    SpreadChart,
    SwingChart,
)
from leanto.reports.chart_text import spread_in_words
from leanto.reports.fonts import Face, Typesetter, base_font
from leanto.reports.pdf_style import ACCENT, GRAY, INK, LIGHT, PALE
from leanto.reports.pdf_text import draw_text

Align = Literal["left", "center", "right"]
_SIZE_PT = 7.5
_ROW_PT, _BAR_PT = 15.0, 8.0
_LABEL_PT, _USD_PT = 190.0, 48.0
_SPREAD_HIGH_PT, _BELOW_PT, _ABOVE_PT = 96.0, 14.0, 30.0
_COURSE_PT = 34.0
_BOTH_HIGH_PT, _KEY_PT = 84.0, 12.0


class ChartDrawing(Flowable):
    """One chart over the width of the text."""

    def __init__(self, chart: Chart, width_pt: float, setter: Typesetter) -> None:
        super().__init__()
        self._chart, self._setter = chart, setter
        self.width = width_pt
        match chart:
            case SwingChart():
                self.height = _ROW_PT * len(chart.bars) + 4
            case SpreadChart():
                self.height = _SPREAD_HIGH_PT + _BELOW_PT + _ABOVE_PT
            case CourseChart():
                self.height = _COURSE_PT * len(chart.surfaces) + 14
            case BothSpreads():
                self.height = _BOTH_HIGH_PT + _BELOW_PT + 2 * _KEY_PT

    def wrap(self, available_width: float, available_height: float) -> tuple[float, float]:
        return self.width, self.height

    def draw(self) -> None:
        shapes: list[Shape] = []
        words: list[Callable[[], None]] = []
        match self._chart:
            case SwingChart() as chart:
                self._swings(chart, shapes, words)
            case SpreadChart() as chart:
                self._spread(chart, shapes, words)
            case CourseChart() as chart:
                self._courses(chart, shapes, words)
            case BothSpreads() as chart:
                self._both(chart, shapes, words)
        # Drawings start in this font, with text or without; the library's own is not embedded.
        STATE_DEFAULTS["fontName"] = base_font(Face.REGULAR)
        drawing = Drawing(self.width, self.height)
        for shape in shapes:
            drawing.add(shape)
        renderPDF.draw(drawing, self.canv, 0, 0)
        for write in words:
            write()

    def _swings(
        self, chart: SwingChart, shapes: list[Shape], words: list[Callable[[], None]]
    ) -> None:
        left, right = _LABEL_PT + _USD_PT, self.width - _USD_PT
        low, high = chart.ends_usd
        per_usd = (right - left) / (high - low or 1.0)

        def at(usd: float) -> float:
            return left + (usd - low) * per_usd

        for row, bar in enumerate(chart.bars):
            base = self.height - _ROW_PT * (row + 1)
            begin, end = at(bar.low_usd), at(bar.high_usd)
            shapes.append(_rect(begin, base, end - begin, _BAR_PT, ACCENT))
            text = base + 1.5
            words += [
                self._word(0, text, bar.label, room_pt=_LABEL_PT - 4),
                self._word(begin - 3, text, _usd(bar.low_usd), "right", color=GRAY),
                self._word(end + 3, text, _usd(bar.high_usd), color=GRAY),
            ]
        middle = at(chart.middle_usd)
        shapes.append(_line(middle, 0, middle, self.height - 2, INK, 0.8))

    def _spread(
        self, chart: SpreadChart, shapes: list[Shape], words: list[Callable[[], None]]
    ) -> None:
        step, most = self.width / len(chart.counts), max(chart.counts) or 1
        top = _BELOW_PT + _SPREAD_HIGH_PT
        for index, count in enumerate(chart.counts):
            high = _SPREAD_HIGH_PT * count / most
            if high > 0:
                shapes.append(_rect(index * step, _BELOW_PT, step * 0.92, high, LIGHT))
        shapes.append(_line(0, _BELOW_PT, self.width, _BELOW_PT, GRAY, 0.6))
        words += [
            self._word(0, 2, _usd(chart.low_usd), color=GRAY),
            self._word(self.width, 2, _usd(chart.high_usd), "right", color=GRAY),
        ]
        for level, mark in enumerate(chart.marks):
            x = self.width * chart.at(mark.usd)
            head = top + 4 + 9 * (level % 3)
            shapes.append(_line(x, _BELOW_PT, x, head + 6, INK, 1.0))
            to_left = x > self.width * 0.75
            text = f"{mark.label} {_usd(mark.usd)}"
            gap = -3 if to_left else 3
            words.append(self._word(x + gap, head, text, "right" if to_left else "left", Face.BOLD))

    def _courses(
        self, chart: CourseChart, shapes: list[Shape], words: list[Callable[[], None]]
    ) -> None:
        left, right = _LABEL_PT, self.width - _USD_PT
        per_usd = (right - left) / chart.end_usd
        for row, (name, keep, gut) in enumerate(chart.surfaces):
            top = self.height - _COURSE_PT * row
            words.append(self._word(0, top - 14, name, face=Face.BOLD, room_pt=_LABEL_PT - 40))
            for bar, base in ((keep, top - 16), (gut, top - 28)):
                words.append(self._word(left - 6, base + 1.5, bar.label, "right", color=GRAY))
                shapes += _course(bar, left, per_usd, base)
                end = left + bar.p90 * per_usd + 3
                words.append(self._word(end, base + 1.5, _usd(bar.p50), color=GRAY))
        said = "pale: one in ten to nine in ten; dark: one half to four in five; figure: one half"
        words.append(self._word(left, 2, said, color=GRAY))

    def _both(
        self, chart: BothSpreads, shapes: list[Shape], words: list[Callable[[], None]]
    ) -> None:
        """Keep as pale bars, gut as an outline over them; dark ticks at both halves."""
        step, keep, gut = self.width / len(chart.keep.counts), chart.keep, chart.gut
        for index, high in enumerate(_heights(keep, chart.most)):
            if high > 0:
                shapes.append(_rect(index * step, _BELOW_PT, step * 0.92, high, LIGHT))
        outline = [0.0, _BELOW_PT]
        for index, high in enumerate(_heights(gut, chart.most)):
            outline += [index * step, _BELOW_PT + high, (index + 1) * step, _BELOW_PT + high]
        outline += [self.width, _BELOW_PT]
        shapes.append(PolyLine(outline, strokeColor=ACCENT, strokeWidth=1.3))
        shapes.append(_line(0, _BELOW_PT, self.width, _BELOW_PT, GRAY, 0.6))
        for one, color in ((keep, GRAY), (gut, ACCENT)):
            x = self.width * chart.at(one.p50)
            shapes.append(_line(x, _BELOW_PT - 4, x, _BELOW_PT + 8, color, 1.6))
        top = self.height - _KEY_PT
        shapes.append(_rect(0, top + 1, 12, 7, LIGHT))
        shapes.append(_line(0, top - _KEY_PT + 4, 12, top - _KEY_PT + 4, ACCENT, 1.3))
        words += [
            self._word(17, top + 2, spread_in_words(keep)),
            self._word(17, top - _KEY_PT + 2, spread_in_words(gut)),
            self._word(0, 2, _usd(chart.low_usd), color=GRAY),
            self._word(self.width, 2, _usd(chart.high_usd), "right", color=GRAY),
        ]

    def _word(
        self,
        x: float,
        y: float,
        text: str,
        align: Align = "left",
        face: Face = Face.REGULAR,
        color: Color = INK,
        room_pt: float | None = None,
    ) -> Callable[[], None]:
        """A text that is drawn after the shapes."""

        def write() -> None:
            draw_text(self.canv, x, y, text, self._setter, _SIZE_PT, face, align, color, room_pt)

        return write


def _heights(one: CourseSpread, most: int) -> list[float]:
    return [_BOTH_HIGH_PT * count / most for count in one.counts]


def _course(bar: CourseBar, left: float, per_usd: float, base: float) -> list[Shape]:
    p10, p50, p80, p90 = (left + usd * per_usd for usd in (bar.p10, bar.p50, bar.p80, bar.p90))
    return [
        _rect(p10, base, p90 - p10, _BAR_PT, PALE, GRAY),
        _rect(p50, base, p80 - p50, _BAR_PT, ACCENT),
    ]


def _rect(
    x: float, y: float, width: float, height: float, fill: Color, stroke: Color | None = None
) -> Shape:
    shape = Rect(x, y, max(0.4, width), height)
    shape.fillColor, shape.strokeColor, shape.strokeWidth = fill, stroke, 0.4
    return shape


def _line(x0: float, y0: float, x1: float, y1: float, color: Color, width: float) -> Shape:
    return Line(x0, y0, x1, y1, strokeColor=color, strokeWidth=width)


def _usd(amount: float) -> str:
    return format_usd(round_to(amount, 10))
