"""Hatching that tells zones apart in gray print: one pattern for each word."""

from __future__ import annotations

from collections.abc import Iterator

from reportlab.pdfgen.canvas import Canvas

from leanto.reports.strokes import STROKES

Box = tuple[float, float, float, float]
"""Left, bottom, width and height in points."""
_STEP_PT = 5.0


def hatch(canvas: Canvas, box: Box, mark: str) -> None:
    """Draws a zone in the present stroke color: crossed for failed, slanted for worn or work,
    level lines for no access, and no more than its frame for any other mark."""
    left, bottom, width, height = box
    canvas.saveState()
    path = canvas.beginPath()
    path.rect(left, bottom, width, height)
    canvas.clipPath(path, stroke=0, fill=0)
    canvas.setLineWidth(0.5)
    for line in lines_of(mark, box):
        canvas.line(*line)
    canvas.restoreState()
    canvas.setLineWidth(1.1)
    canvas.rect(left, bottom, width, height)


def lines_of(mark: str, box: Box) -> Iterator[Box]:
    """The lines of a mark's hatching, each from x, y to x, y; they are cut at the box."""
    for pattern in STROKES.get(mark, ""):
        yield from _lines(pattern, box)


def _lines(pattern: str, box: Box) -> Iterator[Box]:
    """The ends of the lines that fill a box, from its left to its right edge and beyond."""
    left, bottom, width, height = box
    if pattern == "-":
        for step in range(1, int(height / _STEP_PT) + 1):
            yield left, bottom + step * _STEP_PT, left + width, bottom + step * _STEP_PT
        return
    for step in range(int((width + height) / _STEP_PT) + 1):
        start = left - height + step * _STEP_PT
        low, high = (bottom, bottom + height) if pattern == "/" else (bottom + height, bottom)
        yield start, low, start + height, high
