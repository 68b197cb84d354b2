"""Numbers on a sketch, set so that none covers another."""

from __future__ import annotations

from collections.abc import Iterator

from reportlab.lib.colors import white
from reportlab.pdfgen.canvas import Canvas

from leanto.reports.fonts import Face, Typesetter, width_pt
from leanto.reports.pdf_hatch import Box
from leanto.reports.pdf_style import INK
from leanto.reports.pdf_text import draw_text

_SIZE_PT = 6.8
_LINE_PT = 8.2
_IN_LINE = 4
"""So many numbers stand beside each other."""


class Badges:
    """Places one badge after the other within the bounds, each clear of those before."""

    def __init__(self, setter: Typesetter, bounds: Box) -> None:
        """``bounds`` are left, bottom, right and top."""
        self._setter, self._bounds = setter, bounds
        self._taken: list[Box] = []

    def place(self, canvas: Canvas, label: str, zone: Box) -> None:
        """Draws the badge on its zone where there is room, else near it with a line to it."""
        box = self.box_for(label, zone)
        left, bottom, width, height = box
        middle = zone[0] + zone[2] / 2, zone[1] + zone[3] / 2
        canvas.setStrokeColor(INK)
        canvas.setLineWidth(0.6)
        if not _holds(box, middle):
            canvas.line(left + width / 2, bottom + height / 2, *middle)
        canvas.setFillColor(white)
        canvas.roundRect(left, bottom, width, height, 4, fill=1)
        for at, line in enumerate(_lines(label), start=1):
            y = bottom + height - at * _LINE_PT + 0.8
            draw_text(
                canvas, left + width / 2, y, line, self._setter, _SIZE_PT, Face.BOLD, "center"
            )

    def box_for(self, label: str, zone: Box) -> Box:
        """The box of the badge for a zone; it is taken from then on."""
        lines = _lines(label)
        widest = max(width_pt(self._setter.line(line, Face.BOLD), _SIZE_PT) for line in lines)
        box = self._free_box(zone, 6 + widest, 2.5 + _LINE_PT * len(lines))
        self._taken.append(box)
        return box

    def _free_box(self, zone: Box, width: float, height: float) -> Box:
        boxes = [self._kept_in(box) for box in _candidates(zone, width, height)]
        return next((box for box in boxes if not any(_meet(box, t) for t in self._taken)), boxes[0])

    def _kept_in(self, box: Box) -> Box:
        left, bottom, right, top = self._bounds
        x = min(max(box[0], left), max(left, right - box[2]))
        y = min(max(box[1], bottom), max(bottom, top - box[3]))
        return x, y, box[2], box[3]


def _lines(label: str) -> list[str]:
    numbers = label.split(", ")
    return [", ".join(numbers[at : at + _IN_LINE]) for at in range(0, len(numbers), _IN_LINE)]


def _candidates(zone: Box, width: float, height: float) -> Iterator[Box]:
    """The middle of the zone, its quarters, then rings around it, wider and wider."""
    left, bottom, across, up = zone
    x, y = left + across / 2 - width / 2, bottom + up / 2 - height / 2
    for reach in (0.0, 0.25, 0.5):
        for dx, dy in _COMPASS:
            yield x + dx * across * reach, y + dy * up * reach, width, height
    for ring in range(1, 8):
        for dx, dy in _COMPASS:
            out_x = dx * (across / 2 + width / 2 + 3) * ring
            out_y = dy * (up / 2 + height / 2 + 3) * ring
            yield x + out_x, y + out_y, width, height


_COMPASS = ((0, 1), (1, 0), (-1, 0), (0, -1), (1, 1), (-1, 1), (1, -1), (-1, -1))


def _meet(one: Box, other: Box) -> bool:
    return (
        one[0] < other[0] + other[2]
        and other[0] < one[0] + one[2]
        and one[1] < other[1] + other[3]
        and other[1] < one[1] + one[3]
    )


def _holds(box: Box, point: tuple[float, float]) -> bool:
    return box[0] <= point[0] <= box[0] + box[2] and box[1] <= point[1] <= box[1] + box[3]
