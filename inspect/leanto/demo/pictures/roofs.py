"""Roofs: shingles, flue, flashings, rusty steel, and the rafters below."""

from __future__ import annotations

import math

from leanto.demo.pictures.canvas import Canvas, Color
from leanto.demo.pictures.marks import tape
from leanto.demo.pictures.materials import (
    GRAY_WOOD,
    RED_PAINT,
    boards,
    bricks,
    corrugated,
    shingle_slope,
)

ASPHALT: Color = (104, 104, 102)
BRICK: Color = (158, 78, 56)
RUST: Color = (150, 78, 34)
BLACK: Color = (22, 20, 18)


def curled_shingles(canvas: Canvas) -> None:
    shingle_slope(canvas, ASPHALT, 200, 118, lift=1.0)
    for left, top in ((398, 354), (598, 354), (100, 590)):
        canvas.pen.rectangle((left, top, left + 202, top + 128), fill=(74, 60, 46))
        canvas.pen.line((left, top + 3, left + 202, top + 3), fill=BLACK, width=9)
        boards(canvas, (112, 90, 64), 64, box=(left, top + 8, left + 202, top + 128), upright=False)
    tape(canvas, 560, 780, 12, 42)
    canvas.shade((1.0, 0.92, 0.86, 0.8))


def two_layers(canvas: Canvas) -> None:
    canvas.pen.rectangle((0, 0, 1200, 900), fill=(176, 196, 212))
    canvas.pen.rectangle((0, 262, 1200, 620), fill=(38, 34, 30))
    boards(canvas, GRAY_WOOD, 130, box=(0, 620, 1200, 900), upright=False)
    for row, (top, color) in enumerate(
        ((250, ASPHALT), (310, (84, 86, 88)), (400, (124, 98, 74)), (458, (108, 84, 64)))
    ):
        shift = 46 * row
        edge = [(x, top + 44 + canvas.dice.uniform(-9, 9)) for x in range(shift, 1250, 46)]
        canvas.pen.polygon([(0, top), (1200, top - 16), *reversed(edge), (0, top + 40)], fill=color)
        canvas.pen.line(edge, fill=BLACK, width=8)
    canvas.pen.rectangle((0, 506, 1200, 622), fill=(146, 108, 70))
    canvas.grain(0.3, (60, 4), (0, 506, 1200, 622))
    canvas.grain(0.28, (4, 4), (0, 240, 1200, 506))
    canvas.blot((860, 570), (260, 52), (60, 42, 26), 0.75, blur=16)
    tape(canvas, 180, 250, 6, 62, upright=True)
    canvas.shade((1.0, 1.0, 0.84, 0.8))


def open_flue_flashing(canvas: Canvas) -> None:
    shingle_slope(canvas, ASPHALT, 150, 92, lift=0.5)
    bricks(canvas, BRICK, 150, 62, (380, 0, 830, 620))
    canvas.smear([[(830, 60), (960, 180), (960, 640), (830, 620)]], (60, 60, 60), 0.6, 16)
    canvas.pen.polygon([(362, 596), (848, 596), (880, 664), (330, 664)], fill=BLACK)
    metal = [(430, 640), (640, 590), (900, 640), (930, 740), (410, 742)]
    canvas.pen.polygon(metal, fill=(146, 140, 134))
    canvas.pen.line([metal[0], metal[1], metal[2]], fill=(214, 214, 210), width=6)
    canvas.blot((560, 700), (120, 34), RUST, 0.9, blur=8)
    canvas.blot((790, 690), (90, 40), RUST, 0.9, blur=8)
    canvas.pen.polygon([(346, 250), (380, 240), (380, 620), (318, 660)], fill=BLACK)
    for x, y in ((250, 300), (232, 430), (214, 560)):
        canvas.pen.polygon(
            [(x, y), (x + 118, y - 34), (x + 110, y + 66), (x + 8, y + 84)],
            fill=canvas.near((140, 134, 126), 12),
        )
        canvas.pen.line((x, y, x + 118, y - 34), fill=(214, 212, 206), width=5)
        canvas.blot((x + 60, y + 52), (44, 18), RUST, 0.9, blur=6)
    canvas.pen.polygon(canvas.ragged((880, 560), (70, 44), 0.25), fill=(30, 29, 30))
    for y in range(80, 600, 124):
        canvas.blot((600, y), (170, 22), (236, 232, 226), 0.35, blur=14, stain=False)
    canvas.shade((1.0, 0.95, 0.84, 0.8))


def rusty_steel(canvas: Canvas) -> None:
    corrugated(canvas, (158, 162, 164), 92)
    for x, y, wide, high in (
        (180, 180, 110, 150),
        (560, 420, 170, 230),
        (930, 200, 140, 120),
        (860, 700, 210, 150),
        (220, 720, 150, 110),
    ):
        canvas.blot((x, y), (wide, high), RUST, 0.9, blur=18, ragged=0.35)
        canvas.blot((x, y), (wide * 0.6, high * 0.6), (92, 44, 20), 0.75, blur=12, ragged=0.4)
    for x, y in ((560, 470), (600, 400), (520, 380), (900, 720)):
        canvas.blot((x, y), (19, 15), BLACK, 1.0, blur=1, stain=False)
    canvas.pen.line((0, 566, 1200, 560), fill=(70, 70, 70), width=7)
    for x in range(46, 1200, 184):
        canvas.pen.ellipse((x - 15, 596, x + 15, 626), fill=(96, 90, 84))
        canvas.pen.ellipse((x - 7, 603, x + 5, 615), fill=(196, 192, 186))
        canvas.smear([[(x - 6, 624), (x + 6, 624), (x + 12, 800), (x - 12, 800)]], RUST, 0.7, 8)
    canvas.shade((1.0, 0.95, 0.9, 0.78))


def open_roof_to_wall(canvas: Canvas) -> None:
    boards(canvas, RED_PAINT, 110, box=(0, 0, 1200, 460))
    canvas.blot((560, 390), (540, 110), (70, 40, 30), 0.65, blur=30)
    corrugated(canvas, (150, 154, 156), 92, (0, 490, 1200, 900))
    canvas.pen.rectangle((0, 446, 1200, 496), fill=BLACK)
    for x in range(0, 1200, 8):
        up = 500 + 16 * math.sin(math.tau * x / 92)
        canvas.pen.line((x, up - 10, x, 520), fill=(150, 154, 156), width=8)
    canvas.pen.polygon([(40, 430), (330, 436), (318, 520), (60, 560)], fill=(126, 122, 116))
    canvas.pen.line((40, 430, 330, 436), fill=(206, 204, 198), width=5)
    canvas.pen.polygon([(880, 520), (1160, 590), (1120, 680), (850, 596)], fill=(132, 126, 120))
    canvas.blot((180, 500), (90, 34), RUST, 0.9, blur=8)
    canvas.blot((1010, 600), (90, 34), RUST, 0.9, blur=8)
    for x, y in ((420, 700), (700, 640), (960, 790)):
        canvas.blot((x, y), (90, 70), RUST, 0.8, blur=16, ragged=0.35)
    tape(canvas, 390, 380, 10, 42)
    canvas.shade((0.95, 1.0, 0.8, 0.88))


def wet_rafter(canvas: Canvas) -> None:
    boards(canvas, (168, 132, 92), 108, upright=False, gap=8)
    bricks(canvas, (172, 92, 68), 132, 58, (760, 0, 1080, 900))
    for left in (90, 500):
        canvas.smear(
            [[(left + 150, 0), (left + 196, 0), (left + 196, 900), (left + 150, 900)]],
            (60, 48, 36),
            0.8,
            12,
        )
        boards(canvas, (190, 150, 102), 400, box=(left, 0, left + 156, 900))
    canvas.smear([[(1080, 0), (1130, 0), (1130, 900), (1080, 900)]], (60, 48, 36), 0.8, 12)
    canvas.blot((610, 420), (200, 470), (112, 76, 44), 0.8, blur=50, rings=(1.0,))
    canvas.pen.polygon(canvas.ragged((574, 520), (58, 130), 0.2), fill=(66, 40, 22))
    for crack in range(430, 630, 26):
        end = crack + canvas.dice.uniform(-12, 12)
        canvas.pen.line((520, crack, 628, end), fill=(26, 15, 9), width=6)
    for _ in range(320):
        x, y = canvas.dice.uniform(764, 1076), canvas.dice.gauss(480, 150)
        canvas.pen.ellipse((x, y, x + 9, y + 6), fill=(232, 228, 220))
    tape(canvas, 300, 200, 10, 50, upright=True)
    canvas.shade((0.95, 0.9, 0.95, 0.85))
