"""What the invented building is made of, as it is drawn: boards, shingles, brick, steel, soil."""

from __future__ import annotations

import math

from leanto.demo.pictures.canvas import WHOLE, Box, Canvas, Color

CREAM: Color = (222, 210, 178)
WHITEWASH: Color = (226, 222, 210)
GRAY_WOOD: Color = (150, 142, 130)
RED_PAINT: Color = (150, 66, 52)
RAW_WOOD: Color = (196, 158, 108)
OLD_WOOD: Color = (150, 112, 74)
FIBERBOARD: Color = (206, 192, 162)
SOIL: Color = (104, 82, 60)
STONE: Color = (142, 138, 130)


def boards(
    canvas: Canvas,
    color: Color,
    wide: float,
    *,
    box: Box = WHOLE,
    upright: bool = True,
    bead: bool = False,
    gap: int = 5,
    nails: float = 0,
) -> None:
    """Boards side by side, each of its own shade; ``nails`` is the distance of the nail rows."""
    left, top, right, bottom = box
    pen, end = canvas.pen, right if upright else bottom
    at = left if upright else top
    while at < end:
        stop = min(end, at + wide)
        shade = canvas.near(color, 11)
        part = (at, top, stop, bottom) if upright else (left, at, right, stop)
        pen.rectangle(part, fill=shade)
        at = stop
    fine, coarse = ((4, 260), (26, 500)) if upright else ((260, 4), (500, 26))
    canvas.grain(0.17, fine, box)
    canvas.grain(0.10, coarse, box)
    dark, light = _scaled(color, 0.42), _scaled(color, 1.08)
    at = left if upright else top
    while at < end:
        seams = [(at, gap, dark), (at + gap, 2, light)]
        if bead:
            seams += [(at + wide / 2, 3, dark), (at + wide / 2 + 4, 3, light)]
        for seam, thick, shade in seams:
            if upright and seam < right:
                pen.line((seam, top, seam, bottom), fill=shade, width=thick)
            elif not upright and seam < bottom:
                pen.line((left, seam, right, seam), fill=shade, width=thick)
        row = (top if upright else left) + nails / 2
        while nails and row < (bottom if upright else right):
            for share in (0.25, 0.75):
                x, y = (at + share * wide, row) if upright else (row, at + share * wide)
                if left < x < right - 8 and top < y < bottom - 8:
                    pen.ellipse((x - 4, y - 4, x + 4, y + 4), fill=_scaled(color, 0.4))
            row += nails
        at += wide


def shingle_slope(
    canvas: Canvas, color: Color, tab: float, course: float, *, lift: float = 0, box: Box = WHOLE
) -> list[tuple[float, float]]:
    """Courses of tabs seen square on; ``lift`` (0 to 1) curls them. Gives where each tab ends."""
    left, top, right, bottom = box
    pen, ends = canvas.pen, []
    pen.rectangle(box, fill=_scaled(color, 0.5))
    rows = math.ceil((bottom - top) / course) + 1
    for row in range(rows):
        foot = top + (row + 1) * course
        at = left - (tab / 2 if row % 2 else 0)
        while at < right:
            shade = canvas.near(color, 14)
            up = lift * canvas.dice.uniform(0.2, 1) * course * 0.30
            side = lift * canvas.dice.uniform(0.0, 1) * 10
            shape = [
                (at + 3, foot - course),
                (at + tab - 3, foot - course),
                (at + tab - 3 - side, foot - up * canvas.dice.uniform(0.3, 1)),
                (at + tab / 2, foot),
                (at + 3 + side, foot - up),
            ]
            pen.polygon([(x, y + 8) for x, y in shape], fill=_scaled(color, 0.3))
            pen.polygon(shape, fill=shade)
            if up > course * 0.1:
                pen.line(shape[2:], fill=_scaled(color, 1.45), width=5)
            ends.append((at + tab / 2, foot))
            at += tab
    canvas.grain(0.30, (3, 3), box)
    return ends


def bricks(canvas: Canvas, color: Color, long: float, high: float, box: Box) -> None:
    """Brickwork with light joints."""
    left, top, right, bottom = box
    canvas.pen.rectangle(box, fill=(176, 168, 154))
    for row in range(math.ceil((bottom - top) / high)):
        y = top + row * high
        at = left - (long / 2 if row % 2 else 0)
        while at < right:
            brick = (max(left, at + 4), y + 4, min(right, at + long - 4), min(bottom, y + high - 4))
            if brick[2] > brick[0] and brick[3] > brick[1]:
                canvas.pen.rectangle(brick, fill=canvas.near(color, 18))
            at += long
    canvas.grain(0.22, (5, 5), box)


def corrugated(canvas: Canvas, color: Color, wave: float, box: Box = WHOLE) -> None:
    """Corrugated sheet whose waves run up."""
    left, top, right, bottom = box
    for x in range(round(left), round(right)):
        light = 0.78 + 0.30 * math.sin(math.tau * (x - left) / wave)
        canvas.pen.line((x, top, x, bottom), fill=_scaled(color, light))
    canvas.grain(0.10, (30, 60), box)


def soil(canvas: Canvas, top: float, box_left: float = 0, box_right: float = 1200) -> None:
    """Bare ground with pebbles, from a wavy upper edge down."""
    edge = [
        (x, top + 9 * math.sin(x / 61) + canvas.dice.uniform(-7, 7))
        for x in range(round(box_left), round(box_right) + 12, 12)
    ]
    canvas.pen.polygon([*edge, (box_right, 900), (box_left, 900)], fill=SOIL)
    for _ in range(170):
        x, y = canvas.dice.uniform(box_left, box_right), canvas.dice.uniform(top + 16, 900)
        size = canvas.dice.uniform(3, 13)
        canvas.pen.ellipse((x, y, x + size * 1.5, y + size), fill=canvas.near((120, 104, 84), 28))
    canvas.grain(0.30, (7, 7), (box_left, top + 12, box_right, 900))


def grass(canvas: Canvas, foot: float, blades: int, high: float) -> None:
    """Blades of grass that stand along a line."""
    for _ in range(blades):
        x = canvas.dice.uniform(0, 1200)
        y = foot + canvas.dice.uniform(-6, 26)
        tip = (x + canvas.dice.uniform(-28, 28), y - canvas.dice.uniform(0.4, 1) * high)
        canvas.pen.line((x, y, *tip), fill=canvas.near((92, 118, 58), 26), width=4)


def _scaled(color: Color, by: float) -> Color:
    red, green, blue = (max(0, min(255, round(part * by))) for part in color)
    return red, green, blue
