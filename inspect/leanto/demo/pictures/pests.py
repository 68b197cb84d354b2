"""What ants and mice leave behind."""

from __future__ import annotations

from leanto.demo.pictures.canvas import Canvas
from leanto.demo.pictures.marks import tape
from leanto.demo.pictures.materials import FIBERBOARD, RAW_WOOD, WHITEWASH, boards


def ant_shavings(canvas: Canvas) -> None:
    boards(canvas, WHITEWASH, 96, box=(0, 0, 1200, 470), bead=True)
    boards(canvas, (140, 108, 76), 110, box=(0, 470, 1200, 900), upright=False)
    canvas.smear([[(0, 462), (1200, 462), (1200, 486), (0, 486)]], (40, 30, 22), 0.9, 6)
    canvas.pen.polygon(canvas.ragged((560, 440), (90, 26), 0.3), fill=(26, 20, 14))
    canvas.smear(
        [[(250, 640), (560, 470), (900, 650), (760, 730), (360, 730)]], (70, 54, 38), 0.6, 18
    )
    for _ in range(2600):
        x = canvas.dice.gauss(560, 130)
        y = 690 - canvas.dice.random() * max(0.0, 210 - abs(x - 560) * 0.75)
        long, turn = canvas.dice.uniform(6, 20), canvas.dice.uniform(-6, 6)
        canvas.pen.line((x, y, x + long, y + turn), fill=canvas.near((216, 184, 130), 28), width=4)
    for _ in range(13):
        x, y = canvas.dice.uniform(240, 920), canvas.dice.uniform(500, 790)
        _ant(canvas, x, y)
    tape(canvas, 260, 800, 10, 62)
    canvas.shade((0.9, 1.0, 0.86, 0.8))


def ant_galleries(canvas: Canvas) -> None:
    boards(canvas, RAW_WOOD, 900, upright=False)
    for row in range(7):
        y = 150 + row * 88
        x = canvas.dice.uniform(40, 160)
        while x < 1080:
            long = canvas.dice.uniform(160, 380)
            shape = canvas.ragged(
                (x + long / 2, y + canvas.dice.uniform(-14, 14)),
                (long / 2, canvas.dice.uniform(16, 32)),
                0.12,
            )
            canvas.pen.polygon([(a + 4, b - 6) for a, b in shape], fill=(70, 44, 22))
            canvas.pen.polygon(shape, fill=(118, 78, 42))
            x += long + canvas.dice.uniform(10, 46)
    canvas.grain(0.22, (70, 5))
    for _ in range(9):
        _ant(canvas, canvas.dice.uniform(120, 1060), canvas.dice.uniform(160, 700))
    tape(canvas, 200, 800, 14, 56)
    canvas.shade((0.95, 1.0, 0.85, 0.9))


def droppings(canvas: Canvas) -> None:
    canvas.pen.rectangle((0, 0, 1200, 900), fill=FIBERBOARD)
    canvas.grain(0.16, (4, 4))
    canvas.blot((690, 330), (330, 210), (150, 128, 92), 0.6, blur=30)
    for _ in range(1300):
        x, y = canvas.dice.gauss(690, 140), canvas.dice.gauss(330, 78)
        long = canvas.dice.uniform(20, 64)
        canvas.pen.line(
            (x, y, x + canvas.dice.uniform(-long, long), y + canvas.dice.uniform(-long, long) / 2),
            fill=canvas.near((184, 162, 116), 36),
            width=4,
        )
    canvas.blot((690, 320), (110, 62), (58, 44, 30), 0.9, blur=20)
    for _ in range(170):
        x, y = canvas.dice.uniform(60, 1130), canvas.dice.gauss(560, 120)
        turn = canvas.dice.uniform(-9, 9)
        canvas.pen.line((x, y, x + 21, y + turn), fill=(34, 28, 24), width=10)
    tape(canvas, 240, 800, 10, 62)
    canvas.shade((0.8, 0.95, 0.86, 0.95))


def _ant(canvas: Canvas, x: float, y: float) -> None:
    """A carpenter ant seen from above."""
    pen, black = canvas.pen, (26, 18, 14)
    for at, reach in ((20, -9), (27, 0), (34, 9)):
        pen.line((x + at, y, x + at + reach, y - 19), fill=black, width=3)
        pen.line((x + at, y, x + at + reach, y + 19), fill=black, width=3)
    pen.ellipse((x - 8, y - 10, x + 17, y + 10), fill=black)
    pen.ellipse((x + 17, y - 6, x + 37, y + 6), fill=(52, 30, 20))
    pen.ellipse((x + 35, y - 8, x + 53, y + 8), fill=black)
    pen.line((x + 50, y - 4, x + 66, y - 13), fill=black, width=2)
    pen.line((x + 50, y + 4, x + 66, y + 13), fill=black, width=2)
