"""Water inside: stains, rings, tide lines, mold, a meter reading."""

from __future__ import annotations

from leanto.demo.pictures.canvas import Canvas, Color
from leanto.demo.pictures.marks import meter, tape
from leanto.demo.pictures.materials import FIBERBOARD, RAW_WOOD, WHITEWASH, boards

BROWN: Color = (150, 100, 46)
DARK_BROWN: Color = (104, 64, 26)


def stain_on_boards(canvas: Canvas) -> None:
    boards(canvas, WHITEWASH, 96, bead=True)
    canvas.blot((520, 250), (330, 300), BROWN, 0.55, blur=26, rings=(1, 0.9, 0.7))
    canvas.blot((500, 120), (230, 210), DARK_BROWN, 0.55, blur=30)
    runs = [(x, canvas.dice.uniform(560, 800)) for x in range(300, 760, 62)]
    canvas.smear(
        [[(x - 9, 420), (x + 9, 420), (x + 5, end), (x - 3, end)] for x, end in runs],
        DARK_BROWN,
        0.55,
        9,
    )
    tape(canvas, 960, 60, 18, 42, upright=True)
    canvas.shade((1.0, 0.94, 0.88, 0.80))


def second_stain(canvas: Canvas) -> None:
    boards(canvas, WHITEWASH, 96, bead=True)
    for x, radius in ((330, 210), (640, 280)):
        canvas.blot(
            (x, 200), (radius, radius * 1.25), (172, 126, 62), 0.55, blur=20, rings=(1, 0.88)
        )
    canvas.blot((470, 330), (150, 210), DARK_BROWN, 0.60, blur=24)
    meter(canvas, 700, 560, "24")
    canvas.shade((0.94, 1.0, 0.82, 0.9))


def ring_on_ceiling(canvas: Canvas) -> None:
    canvas.grain(0.10, (5, 5))
    pen = canvas.pen
    pen.rectangle((0, 0, 1200, 900), fill=FIBERBOARD)
    for x, y in ((300, 0), (940, 0)):
        pen.line((x, y, x, 900), fill=(120, 106, 82), width=7)
        pen.line((x + 7, y, x + 7, 900), fill=(226, 214, 188), width=3)
    for y in range(60, 900, 130):
        for x in (282, 322, 922, 962):
            pen.ellipse((x - 6, y - 6, x + 6, y + 6), fill=(126, 92, 60))
    canvas.grain(0.13, (4, 4))
    canvas.blot((610, 430), (330, 290), (176, 130, 70), 0.6, blur=18, rings=(1, 0.92))
    canvas.blot((590, 440), (210, 180), BROWN, 0.55, blur=20, rings=(1,))
    canvas.blot((575, 450), (95, 80), DARK_BROWN, 0.80, blur=18)
    tape(canvas, 180, 800, 22, 42)
    canvas.shade((0.84, 0.95, 0.92, 1.0))


def sagging_seam(canvas: Canvas) -> None:
    pen = canvas.pen
    pen.rectangle((0, 0, 1200, 900), fill=FIBERBOARD)
    canvas.grain(0.13, (4, 4))
    canvas.blot((620, 470), (470, 250), BROWN, 0.55, blur=40)
    gap = [(0, 448), (250, 440), (620, 395), (980, 436), (1200, 446)]
    lip = [(1200, 452), (980, 478), (620, 560), (250, 474), (0, 452)]
    pen.polygon([*gap, *lip], fill=(26, 20, 14))
    for x in range(300, 960, 14):
        drop = canvas.dice.uniform(0, 46)
        edge = 560 - abs(x - 620) * 0.25
        pen.line(
            (x, edge - 6, x + canvas.dice.uniform(-9, 9), edge + drop),
            fill=canvas.near((150, 118, 74), 20),
            width=6,
        )
    canvas.smear(
        [[(0, 470), (620, 580), (1200, 470), (1200, 540), (620, 690), (0, 540)]],
        (110, 90, 66),
        0.6,
        30,
    )
    for y in (120, 260, 640, 780):
        for x in range(120, 1200, 240):
            pen.ellipse((x - 7, y - 7, x + 7, y + 7), fill=(118, 84, 54))
    canvas.shade((0.95, 1.0, 0.76, 0.84))


def tide_line(canvas: Canvas) -> None:
    boards(canvas, WHITEWASH, 96, bead=True)
    canvas.pen.rectangle((0, 760, 1200, 900), fill=(118, 92, 66))
    boards(canvas, (126, 98, 70), 46, box=(0, 770, 1200, 900), upright=False)
    line = [(x, 470 + canvas.dice.uniform(-34, 34)) for x in range(0, 1260, 60)]
    canvas.smear([[*line, (1260, 770), (0, 770)]], (158, 124, 80), 0.75, 14)
    canvas.smear([[*((x, y + 130) for x, y in line), (1260, 770), (0, 770)]], DARK_BROWN, 0.6, 26)
    canvas.smear([[*line, *((x, y + 13) for x, y in reversed(line))]], DARK_BROWN, 0.75, 4)
    for _ in range(150):
        x, y = canvas.dice.uniform(0, 1200), canvas.dice.gauss(465, 20)
        canvas.pen.ellipse((x, y, x + 7, y + 6), fill=(240, 238, 228))
    tape(canvas, 880, 130, 15, 42, upright=True)
    canvas.shade((1.0, 0.9, 0.9, 0.76))


def mold_in_corner(canvas: Canvas) -> None:
    boards(canvas, WHITEWASH, 96, bead=True)
    canvas.smear([[(0, 0), (150, 0), (150, 900), (0, 900)]], (150, 146, 138), 0.6, 12)
    for _ in range(1500):
        x, y = abs(canvas.dice.gauss(160, 190)), 900 - abs(canvas.dice.gauss(80, 260))
        size = canvas.dice.uniform(2, 11)
        canvas.pen.ellipse((x, y, x + size, y + size), fill=canvas.near((62, 68, 58), 22))
    canvas.blot((210, 690), (230, 240), (96, 104, 88), 0.75, blur=40)
    tape(canvas, 420, 812, 18, 42)
    canvas.shade((0.9, 1.0, 0.72, 0.9))


def meter_in_framing(canvas: Canvas) -> None:
    boards(canvas, (120, 94, 66), 150, upright=False, gap=9)
    canvas.pen.rectangle((250, 0, 590, 900), fill=RAW_WOOD)
    boards(canvas, (176, 136, 88), 400, box=(250, 0, 590, 900))
    canvas.smear([[(590, 0), (640, 0), (640, 900), (590, 900)]], (50, 40, 30), 0.8, 14)
    canvas.blot((420, 640), (150, 320), (88, 62, 38), 0.80, blur=40)
    meter(canvas, 660, 470, "31.5")
    canvas.shade((1.0, 0.9, 0.82, 0.74))
