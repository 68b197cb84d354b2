"""A surface drawn to scale: outline, framing, openings, numbered zones, dimensions, scale bar."""

from __future__ import annotations

from collections.abc import Iterable

from reportlab.lib.colors import white
from reportlab.pdfgen.canvas import Canvas
from reportlab.platypus import Flowable

from leanto.building.rectangle import Rectangle
from leanto.building.sketch import Sketch, SketchZone
from leanto.building.surface import PlacedOpening
from leanto.quantities import format_ft_in, shown
from leanto.reports.fonts import Face, Typesetter
from leanto.reports.pdf_badge import Badges
from leanto.reports.pdf_hatch import hatch
from leanto.reports.pdf_style import ACCENT, GRAY, INK, LIGHT, PALE
from leanto.reports.pdf_text import draw_text

_LEFT_PT, _RIGHT_PT, _TOP_PT, _BOTTOM_PT = 30.0, 10.0, 8.0, 32.0
_BAR = (1, 2, 5, 10, 20, 50)
_BAR_PT = 36.0
_LABEL_PT = 6.2


class SketchDrawing(Flowable):
    """A sketch that fits a width and a height in points."""

    def __init__(
        self,
        sketch: Sketch,
        widest_pt: float,
        highest_pt: float,
        largest_scale: float,
        setter: Typesetter,
    ) -> None:
        """``largest_scale`` is in points to the foot."""
        super().__init__()
        self._sketch, self._setter = sketch, setter
        self._scale = min(
            (widest_pt - _LEFT_PT - _RIGHT_PT) / sketch.width_ft,
            (highest_pt - _TOP_PT - _BOTTOM_PT) / sketch.height_ft,
            largest_scale,
        )
        self.width = widest_pt
        self.height = sketch.height_ft * self._scale + _TOP_PT + _BOTTOM_PT

    def wrap(self, available_width: float, available_height: float) -> tuple[float, float]:
        return self.width, self.height

    def draw(self) -> None:
        canvas, sketch = self.canv, self._sketch
        canvas.saveState()
        canvas.translate(_LEFT_PT, _BOTTOM_PT)
        self._fill_outline(canvas)
        self._draw_framing(canvas)
        for rectangle in sketch.covered:
            self._draw_covered(canvas, rectangle)
        self._stroke_outline(canvas)
        for opening in sketch.openings:
            self._draw_opening(canvas, opening)
        self._draw_zones(canvas, sketch.zones)
        self._draw_dimensions(canvas)
        self._draw_scale_bar(canvas)
        canvas.restoreState()

    def _pt(self, feet: float) -> float:
        return feet * self._scale

    def _box(self, rectangle: Rectangle) -> tuple[float, float, float, float]:
        """Left, bottom, width and height in points."""
        return (
            self._pt(rectangle.left_ft),
            self._pt(rectangle.bottom_ft),
            self._pt(rectangle.width_ft),
            self._pt(rectangle.height_ft),
        )

    def _outline(self, canvas: Canvas, fill: int, stroke: int) -> None:
        path = canvas.beginPath()
        first, *rest = self._sketch.outline
        path.moveTo(self._pt(first[0]), self._pt(first[1]))
        for point in rest:
            path.lineTo(self._pt(point[0]), self._pt(point[1]))
        path.close()
        canvas.drawPath(path, stroke=stroke, fill=fill)

    def _fill_outline(self, canvas: Canvas) -> None:
        canvas.setFillColor(white)
        self._outline(canvas, fill=1, stroke=0)

    def _stroke_outline(self, canvas: Canvas) -> None:
        canvas.setStrokeColor(INK)
        canvas.setLineWidth(1.2)
        self._outline(canvas, fill=0, stroke=1)

    def _draw_framing(self, canvas: Canvas) -> None:
        canvas.setStrokeColor(LIGHT)
        canvas.setLineWidth(0.4)
        for (left, bottom), (right, top) in self._sketch.member_lines:
            canvas.line(self._pt(left), self._pt(bottom), self._pt(right), self._pt(top))

    def _draw_covered(self, canvas: Canvas, rectangle: Rectangle) -> None:
        left, bottom, width, height = self._box(rectangle)
        canvas.setFillColor(PALE)
        canvas.setStrokeColor(GRAY)
        canvas.setLineWidth(0.5)
        canvas.setDash(2, 2)
        canvas.rect(left, bottom, width, height, fill=1)
        canvas.setDash()
        if width > 30 and height > 12:
            self._label(canvas, left + width / 2, bottom + height - 8, "hidden")

    def _draw_opening(self, canvas: Canvas, opening: PlacedOpening) -> None:
        left, bottom, width, height = self._box(opening.rectangle)
        canvas.setFillColor(white)
        canvas.setStrokeColor(GRAY)
        canvas.setLineWidth(0.8)
        canvas.rect(left, bottom, width, height, fill=1)
        canvas.setStrokeColor(LIGHT)
        canvas.setLineWidth(0.4)
        canvas.line(left, bottom, left + width, bottom + height)
        canvas.line(left, bottom + height, left + width, bottom)
        named = f"{opening.id} {opening.kind}" if width > 34 else opening.id
        self._label(canvas, left + width / 2, bottom + height / 2, named)

    def _label(self, canvas: Canvas, x_pt: float, y_pt: float, text: str) -> None:
        """A small text centered on a point."""
        draw_text(canvas, x_pt, y_pt - 2, text, self._setter, _LABEL_PT, align="center", color=GRAY)

    def _draw_zones(self, canvas: Canvas, zones: Iterable[SketchZone]) -> None:
        for zone in zones:
            canvas.setStrokeColor(ACCENT)
            hatch(canvas, self._box(zone.rectangle), zone.mark)
        width, height = self._pt(self._sketch.width_ft), self._pt(self._sketch.height_ft)
        badges = Badges(self._setter, (-_LEFT_PT, -4.0, width + _RIGHT_PT, height + _TOP_PT))
        for zone in zones:
            badges.place(canvas, zone.label, self._box(zone.rectangle))

    def _draw_dimensions(self, canvas: Canvas) -> None:
        """Width below and height at the left, with ticks."""
        width, height = self._pt(self._sketch.width_ft), self._pt(self._sketch.height_ft)
        canvas.setStrokeColor(GRAY)
        canvas.setLineWidth(0.5)
        canvas.line(0, -8, width, -8)
        canvas.line(-8, 0, -8, height)
        for at in (0.0, width):
            canvas.line(at, -11, at, -5)
        for at in (0.0, height):
            canvas.line(-11, at, -5, at)
        size = 6.8
        text = format_ft_in(self._sketch.width_ft)
        draw_text(canvas, width / 2, -17, text, self._setter, size, align="center", color=GRAY)
        canvas.saveState()
        canvas.translate(-11, height / 2)
        canvas.rotate(90)
        text = format_ft_in(self._sketch.height_ft)
        draw_text(canvas, 0, 3, text, self._setter, size, align="center", color=GRAY)
        canvas.restoreState()

    def _draw_scale_bar(self, canvas: Canvas) -> None:
        """A bar of a round number of feet or meters, one half dark."""
        metric = shown().is_metric
        round_ft = {amount / 0.3048 if metric else amount: amount for amount in _BAR}
        feet = min(round_ft, key=lambda ft: abs(self._pt(ft) - _BAR_PT))
        length, bottom = self._pt(feet), -27.0
        canvas.setStrokeColor(INK)
        canvas.setLineWidth(0.5)
        canvas.setFillColor(INK)
        canvas.rect(0, bottom, length / 2, 2.6, fill=1)
        canvas.setFillColor(white)
        canvas.rect(length / 2, bottom, length / 2, 2.6, fill=1)
        text = f"{round_ft[feet]} {'m' if metric else 'ft'}"
        draw_text(canvas, length + 4, bottom - 1, text, self._setter, 6.2, color=GRAY)


class Legend(Flowable):
    """What the hatchings stand for."""

    def __init__(self, marks: Iterable[str], width_pt: float, setter: Typesetter) -> None:
        super().__init__()
        self._marks, self._setter = tuple(marks), setter
        self.width, self.height = width_pt, 18.0

    def wrap(self, available_width: float, available_height: float) -> tuple[float, float]:
        return self.width, self.height

    def draw(self) -> None:
        canvas, at = self.canv, 0.0
        for mark in self._marks:
            canvas.setStrokeColor(ACCENT)
            hatch(canvas, (at, 3.0, 20.0, 10.0), mark)
            at += 25 + draw_text(canvas, at + 25, 5, mark, self._setter, 7.5, Face.BOLD) + 16
        said = "thin lines: framing · crossed boxes: openings · gray: hidden by another part"
        draw_text(canvas, at, 5, said, self._setter, 7.5, color=GRAY)
