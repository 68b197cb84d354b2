"""Old wiring: looked at, not touched."""

from __future__ import annotations

import math
from collections.abc import Sequence
from itertools import pairwise

from leanto.demo.pictures.canvas import Canvas, Color, Point
from leanto.demo.pictures.marks import tape
from leanto.demo.pictures.materials import (
    FIBERBOARD,
    RAW_WOOD,
    RED_PAINT,
    WHITEWASH,
    boards,
    grass,
    soil,
)

COPPER: Color = (196, 112, 62)
CLOTH: Color = (74, 62, 52)
BLACK: Color = (22, 20, 18)


def gnawed_cable(canvas: Canvas) -> None:
    boards(canvas, (124, 96, 68), 150, upright=False, gap=8)
    boards(canvas, RAW_WOOD, 400, box=(820, 0, 1060, 900))
    path = [(x, 430 + 46 * math.sin(x / 210)) for x in range(-20, 1240, 20)]
    canvas.smear(
        [[*((x, y + 20) for x, y in path), *((x, y + 66) for x, y in path[::-1])]],
        (30, 24, 18),
        0.8,
        12,
    )
    _cloth(canvas, path, 58)
    x, y = 470, 430 + 46 * math.sin(470 / 210)
    canvas.pen.polygon(canvas.ragged((x, y), (120, 44), 0.3), fill=(198, 186, 158))
    for by in (-13, 14):
        canvas.pen.line((x - 105, y + by, x + 105, y + by + 6), fill=(52, 44, 40), width=20)
        canvas.pen.line((x - 62, y + by, x + 54, y + by + 5), fill=COPPER, width=13)
        canvas.pen.line((x - 56, y + by - 3, x + 48, y + by + 2), fill=(240, 176, 126), width=3)
    for _ in range(60):
        a, b = canvas.dice.gauss(x, 100), canvas.dice.gauss(y, 40)
        canvas.pen.line(
            (a, b, a + canvas.dice.uniform(-18, 18), b + canvas.dice.uniform(-14, 14)),
            fill=canvas.near((150, 134, 108), 24),
            width=3,
        )
    for _ in range(34):
        a, b = canvas.dice.gauss(560, 220), canvas.dice.uniform(650, 730)
        canvas.pen.line((a, b, a + 21, b + canvas.dice.uniform(-8, 8)), fill=(28, 24, 20), width=10)
    tape(canvas, 120, 790, 12, 56)
    canvas.shade((0.9, 1.0, 0.8, 0.84))


def fuse_box(canvas: Canvas) -> None:
    boards(canvas, WHITEWASH, 96, bead=True)
    pen = canvas.pen
    canvas.smear([[(346, 106), (896, 106), (896, 806), (346, 806)]], (50, 46, 42), 0.7, 18)
    _cloth(canvas, [(430, y) for y in range(-10, 120, 10)], 36)
    _cloth(canvas, [(720, y) for y in range(-10, 120, 10)], 36)
    pen.rectangle((330, 84, 870, 780), fill=(84, 90, 92))
    pen.rectangle((352, 106, 848, 758), fill=(64, 68, 70))
    pen.rectangle((380, 130, 820, 300), fill=(38, 40, 42))
    pen.rectangle((540, 160, 660, 270), fill=(28, 28, 30))
    pen.rectangle((575, 176, 625, 220), fill=(176, 152, 96))
    for row in range(2):
        for column in range(2):
            x, y = 480 + 240 * column, 410 + 200 * row
            pen.ellipse((x - 84, y - 84, x + 84, y + 84), fill=(34, 34, 36))
            if (row, column) == (1, 1):
                pen.ellipse((x - 60, y - 60, x + 60, y + 60), fill=(12, 12, 12))
                pen.ellipse((x - 24, y - 24, x + 24, y + 24), fill=(168, 132, 62))
                continue
            pen.ellipse((x - 66, y - 66, x + 66, y + 66), fill=(196, 176, 128))
            pen.ellipse((x - 46, y - 46, x + 46, y + 46), fill=(122, 142, 138))
            pen.polygon(
                [(x - 30, y - 6), (x + 30, y - 12), (x + 30, y + 4), (x - 30, y + 10)],
                fill=(70, 70, 66),
            )
    canvas.grain(0.22, (6, 6), (330, 84, 870, 780))
    canvas.blot((380, 740), (90, 60), (150, 84, 40), 0.9, blur=14, ragged=0.3)
    canvas.blot((840, 120), (60, 90), (150, 84, 40), 0.8, blur=14, ragged=0.3)
    tape(canvas, 950, 84, 14, 48, upright=True)
    canvas.shade((1.0, 0.92, 0.86, 0.78))


def joint_in_the_air(canvas: Canvas) -> None:
    canvas.pen.rectangle((0, 0, 1200, 900), fill=FIBERBOARD)
    canvas.grain(0.14, (4, 4))
    canvas.smear([[(300, 420), (900, 420), (900, 560), (300, 560)]], (90, 78, 60), 0.6, 26)
    _cloth(canvas, [(x, 380 + 40 * math.sin(x / 150)) for x in range(-10, 500, 10)], 44)
    _cloth(canvas, [(x, 380 - 30 * math.sin(x / 160)) for x in range(640, 1220, 10)], 44)
    lamp = [(590 + 8 * math.sin(y / 40), y) for y in range(420, 700, 8)]
    _cloth(canvas, lamp, 30)
    for x in range(430, 730, 26):
        high = 56 + canvas.dice.uniform(-10, 16)
        canvas.pen.ellipse((x - 34, 388 - high, x + 40, 388 + high), fill=canvas.near(BLACK, 12))
        canvas.pen.line(
            (x - 20, 388 - high + 6, x + 14, 388 + high - 8), fill=(66, 62, 60), width=4
        )
    canvas.pen.rectangle((540, 690, 640, 770), fill=(46, 38, 32))
    canvas.pen.ellipse((530, 750, 650, 890), fill=(232, 226, 196))
    canvas.pen.ellipse((560, 780, 600, 830), fill=(252, 250, 236))
    canvas.shade((0.86, 0.96, 0.8, 0.9))


def old_receptacle(canvas: Canvas) -> None:
    boards(canvas, WHITEWASH, 96, bead=True)
    pen = canvas.pen
    canvas.smear([[(406, 146), (826, 146), (826, 786), (406, 786)]], (60, 56, 50), 0.7, 18)
    pen.rounded_rectangle((390, 124, 800, 764), 26, fill=(92, 56, 36))
    for y in (300, 590):
        pen.rounded_rectangle((470, y - 104, 720, y + 104), 84, fill=(58, 34, 22))
        for x in (545, 645):
            pen.rectangle((x - 11, y - 52, x + 11, y + 44), fill=(12, 8, 6))
    pen.ellipse((578, 428, 612, 462), fill=(190, 170, 110))
    pen.line((584, 452, 606, 438), fill=(90, 74, 40), width=6)
    crack = [(390, 690), (470, 660), (520, 690), (600, 640), (650, 764)]
    pen.line(crack, fill=(16, 10, 8), width=11)
    pen.polygon([(650, 764), (600, 640), (720, 690), (800, 764)], fill=(14, 10, 8))
    canvas.blot((600, 560), (130, 120), (30, 22, 16), 0.75, blur=30)
    tape(canvas, 910, 124, 6, 106, upright=True)
    canvas.shade((1.0, 0.94, 0.86, 0.8))


def cable_from_soil(canvas: Canvas) -> None:
    boards(canvas, RED_PAINT, 110, box=(0, 0, 1200, 640))
    soil(canvas, 620)
    path: list[Point] = [(560 + 20 * math.sin(y / 90), y) for y in range(0, 660, 12)]
    path += [(560 + t * 4, 660 + 52 * math.sin(t / 22)) for t in range(0, 90, 6)]
    canvas.smear(
        [[*((x + 22, y) for x, y in path), *((x + 50, y) for x, y in path[::-1])]],
        (40, 26, 20),
        0.7,
        10,
    )
    _sheath(canvas, path, (196, 190, 176), 40)
    for y in (210, 480):
        canvas.pen.line((520, y, 622, y - 10), fill=(150, 150, 150), width=12)
    for y in (300, 326, 352):
        x = 560 + 20 * math.sin(y / 90)
        canvas.pen.line((x - 20, y, x + 20, y + 9), fill=(70, 64, 58), width=4)
    canvas.pen.ellipse((520, -34, 640, 40), fill=BLACK)
    grass(canvas, 650, 130, 70)
    tape(canvas, 800, 170, 11, 42, upright=True)
    canvas.shade((1.0, 0.95, 0.86, 0.9))


def _cloth(canvas: Canvas, path: Sequence[Point], thick: int) -> None:
    """A woven jacket."""
    canvas.pen.line(path, fill=(40, 34, 30), width=thick, joint="curve")
    canvas.pen.line(path, fill=CLOTH, width=thick - 8, joint="curve")
    canvas.pen.line([(x, y - thick * 0.14) for x, y in path], fill=(104, 90, 76), width=thick // 4)
    for (x, y), (to_x, to_y) in pairwise(path):
        long = math.hypot(to_x - x, to_y - y) or 1
        across_x, across_y = -(to_y - y) / long, (to_x - x) / long
        half = thick / 2 - 5
        canvas.pen.line(
            (
                x + across_x * half,
                y + across_y * half,
                to_x - across_x * half,
                to_y - across_y * half,
            ),
            fill=(128, 112, 92),
            width=3,
        )


def _sheath(canvas: Canvas, path: Sequence[Point], color: Color, thick: int) -> None:
    """A smooth jacket."""
    canvas.pen.line(path, fill=(96, 90, 80), width=thick, joint="curve")
    canvas.pen.line(path, fill=color, width=thick - 8, joint="curve")
    canvas.pen.line([(x - thick * 0.15, y) for x, y in path], fill=(232, 228, 218), width=5)
