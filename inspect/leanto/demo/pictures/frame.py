"""The frame near the ground, the floor, and a wall with nothing wrong."""

from __future__ import annotations

from collections.abc import Sequence
from itertools import pairwise

from leanto.demo.pictures.canvas import Canvas, Color, Point
from leanto.demo.pictures.marks import awl, tape
from leanto.demo.pictures.materials import (
    CREAM,
    OLD_WOOD,
    RAW_WOOD,
    RED_PAINT,
    STONE,
    boards,
    grass,
    soil,
)

ROT: Color = (110, 64, 34)


def rotten_sill(canvas: Canvas) -> None:
    boards(canvas, RED_PAINT, 128, box=(0, 0, 1200, 330))
    canvas.smear([[(0, 330), (1200, 330), (1200, 386), (0, 386)]], (24, 20, 18), 0.9, 10)
    boards(canvas, (140, 104, 70), 190, box=(0, 372, 1200, 690), upright=False)
    _cubes(canvas, 150, 400, 900, 676)
    for left, right in ((0, 360), (420, 800), (860, 1200)):
        stone = canvas.ragged(((left + right) / 2, 800), ((right - left) / 1.9, 110), 0.09)
        canvas.pen.polygon(stone, fill=canvas.near(STONE, 14))
    canvas.grain(0.25, (8, 8), (0, 690, 1200, 900))
    awl(canvas, 700, 540, 70)
    tape(canvas, 120, 716, 16, 42)
    canvas.shade((0.95, 1.0, 0.84, 0.9))


def soft_stud_feet(canvas: Canvas) -> None:
    boards(canvas, (112, 88, 62), 140, upright=False, gap=8)
    for x in (160, 740):
        canvas.smear(
            [[(x + 210, 0), (x + 270, 0), (x + 270, 700), (x + 210, 700)]], (24, 20, 16), 0.85, 14
        )
        boards(canvas, RAW_WOOD, 400, box=(x, 0, x + 216, 700))
        canvas.blot((x + 108, 640), (150, 230), (86, 56, 32), 0.85, blur=40)
        _cubes(canvas, x + 6, 480, x + 210, 720)
    boards(canvas, OLD_WOOD, 200, box=(0, 690, 1200, 820), upright=False)
    canvas.blot((560, 750), (560, 60), (60, 40, 24), 0.8, blur=24)
    boards(canvas, (120, 94, 68), 90, box=(0, 820, 1200, 900), upright=False)
    tape(canvas, 460, 110, 14, 42, upright=True)
    canvas.shade((0.9, 1.0, 0.75, 0.85))


def soft_floor(canvas: Canvas) -> None:
    boards(canvas, (158, 122, 84), 112, upright=False, gap=7, nails=400)
    canvas.blot((560, 440), (360, 250), (92, 66, 42), 0.8, blur=50)
    hole = canvas.ragged((560, 450), (180, 92), 0.28)
    canvas.pen.polygon(hole, fill=(20, 15, 10))
    for x, y in hole[::3]:
        for _ in range(3):
            canvas.pen.line(
                (
                    x,
                    y,
                    x + (560 - x) * canvas.dice.uniform(0.1, 0.4),
                    y + canvas.dice.uniform(-16, 16),
                ),
                fill=canvas.near((150, 106, 62), 24),
                width=9,
            )
    tape(canvas, 320, 700, 16, 42)
    canvas.shade((1.0, 0.9, 0.86, 0.78))


def rotten_window_sill(canvas: Canvas) -> None:
    boards(canvas, RED_PAINT, 128)
    pen = canvas.pen
    pen.rectangle((200, 0, 1000, 560), fill=(222, 216, 202))
    for left in (250, 620):
        pen.rectangle((left, 0, left + 330, 500), fill=(92, 112, 122))
        pen.polygon(
            [(left + 60, 0), (left + 170, 0), (left + 20, 460), (left, 400)], fill=(138, 158, 168)
        )
    canvas.grain(0.12, (4, 90), (200, 0, 1000, 560))
    pen.polygon([(150, 560), (1050, 560), (1090, 660), (110, 660)], fill=(206, 198, 182))
    pen.rectangle((110, 660, 1090, 700), fill=(160, 150, 134))
    for _ in range(46):
        x, y = canvas.dice.uniform(130, 1060), canvas.dice.uniform(520, 690)
        size = canvas.dice.uniform(12, 46)
        pen.polygon(
            canvas.ragged((x, y), (size, size * 0.45), 0.4), fill=canvas.near((132, 104, 74), 18)
        )
    pen.polygon(canvas.ragged((270, 650), (150, 46), 0.3), fill=(52, 34, 22))
    for y in range(616, 690, 18):
        pen.line((160, y, 380, y + canvas.dice.uniform(-8, 8)), fill=(112, 72, 42), width=7)
    canvas.blot((300, 800), (200, 130), (70, 40, 32), 0.7, blur=26)
    awl(canvas, 380, 650, 40)
    canvas.shade((1.0, 0.95, 0.85, 0.8))


def high_ground(canvas: Canvas) -> None:
    boards(canvas, RED_PAINT, 110, box=(0, 0, 1200, 640))
    canvas.smear([[(0, 430), (1200, 470), (1200, 660), (0, 640)]], (70, 52, 44), 0.8, 34)
    canvas.blot((300, 600), (420, 60), (74, 98, 56), 0.7, blur=18, stain=False)
    soil(canvas, 600)
    grass(canvas, 610, 260, 120)
    tape(canvas, 760, 240, 9, 42, upright=True)
    canvas.shade((0.95, 1.0, 0.84, 0.9))


def splash_trench(canvas: Canvas) -> None:
    boards(canvas, RED_PAINT, 110, box=(0, 0, 1200, 470))
    canvas.smear([[(0, 250), (1200, 230), (1200, 500), (0, 500)]], (96, 78, 64), 0.75, 40)
    for _ in range(420):
        x, y = canvas.dice.uniform(0, 1200), 470 - abs(canvas.dice.gauss(0, 110))
        size = canvas.dice.uniform(2, 8)
        canvas.pen.ellipse((x, y, x + size, y + size * 1.4), fill=canvas.near((92, 74, 56), 16))
    canvas.pen.rectangle((0, 470, 1200, 500), fill=(40, 32, 26))
    soil(canvas, 500)
    trench = [
        (0, 690),
        (300, 672),
        (700, 690),
        (1200, 676),
        (1200, 760),
        (800, 778),
        (300, 764),
        (0, 776),
    ]
    canvas.smear([trench], (56, 44, 34), 0.9, 14)
    canvas.pen.polygon(
        [(80, 716), (520, 704), (900, 718), (1110, 712), (900, 744), (420, 748)],
        fill=(128, 134, 134),
    )
    canvas.pen.line((180, 720, 620, 716), fill=(206, 212, 212), width=5)
    grass(canvas, 830, 90, 60)
    tape(canvas, 980, 520, 5, 42, upright=True)
    canvas.shade((0.9, 1.0, 0.84, 0.9))


def sound_wall(canvas: Canvas) -> None:
    boards(canvas, CREAM, 96, bead=True, nails=430)
    canvas.pen.rectangle((0, 800, 1200, 836), fill=(204, 190, 156))
    canvas.pen.line((0, 800, 1200, 800), fill=(240, 230, 206), width=5)
    boards(canvas, (158, 122, 84), 64, box=(0, 836, 1200, 900), upright=False)
    tape(canvas, 640, 120, 16, 42, upright=True)
    canvas.shade((1.0, 1.0, 0.92, 0.88))


def _cubes(canvas: Canvas, left: float, top: float, right: float, bottom: float) -> None:
    """Wood that has shrunk and cracked into brown cubes."""
    middle, reach = ((left + right) / 2, (top + bottom) / 2), (right - left, bottom - top)
    edge = canvas.ragged(middle, (reach[0] / 2, reach[1] / 2), 0.10)
    canvas.smear([edge], (120, 80, 50), 0.9, 24)
    canvas.pen.polygon(edge, fill=ROT)
    y, rows = top, []
    while y < bottom + 30:
        rows.append(
            [(x, y + canvas.dice.uniform(-7, 7)) for x in range(round(left), round(right), 22)]
        )
        y += canvas.dice.uniform(26, 44)
    for upper, lower in pairwise(rows):
        at = canvas.dice.randrange(0, 2)
        while at < len(upper) - 1:
            wide = canvas.dice.randrange(1, 4)
            end = min(len(upper) - 1, at + wide)
            cube = [*upper[at : end + 1], *lower[at : end + 1][::-1]]
            if _within(cube, edge):
                deep = canvas.dice.random() < 0.12
                canvas.pen.polygon(cube, fill=(30, 18, 10) if deep else canvas.near(ROT, 24))
                canvas.pen.line(
                    [*cube, cube[0]], fill=(26, 15, 9), width=canvas.dice.choice((3, 5, 7))
                )
            at = end
    canvas.grain(0.35, (18, 4), (left, top, right, bottom))


def _within(shape: Sequence[Point], edge: Sequence[Point]) -> bool:
    """Whether the middle of the shape lies inside the ragged edge."""
    x = sum(a for a, _ in shape) / len(shape)
    y = sum(b for _, b in shape) / len(shape)
    inside = False
    for (ax, ay), (bx, by) in zip(edge, [*edge[1:], edge[0]], strict=True):
        if (ay > y) != (by > y) and x < ax + (bx - ax) * (y - ay) / (by - ay):
            inside = not inside
    return inside
