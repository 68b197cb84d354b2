"""What the walker lays beside the subject, and the plate that says a picture is invented."""

from __future__ import annotations

from PIL import ImageFont

from leanto.demo.pictures.canvas import HEIGHT_PX, WIDTH_PX, Canvas, Color

YELLOW: Color = (236, 196, 40)
INK: Color = (30, 28, 26)
STEEL: Color = (176, 180, 184)


def plate(canvas: Canvas) -> None:
    """The strip at the lower right that keeps anybody from taking the picture for a photograph."""
    text, font = "drawn for the demo: invented", ImageFont.load_default(size=24)
    left = WIDTH_PX - canvas.pen.textlength(text, font=font) - 32
    canvas.pen.rectangle((left, HEIGHT_PX - 44, WIDTH_PX, HEIGHT_PX), fill=(24, 24, 24))
    canvas.pen.text((left + 16, HEIGHT_PX - 38), text, font=font, fill=(238, 238, 232))


def tape(
    canvas: Canvas, left: float, top: float, inches: int, inch_px: float, upright: bool = False
) -> None:
    """A yellow measuring tape with inch marks; upright ones count from the bottom."""
    pen, font, wide = canvas.pen, ImageFont.load_default(size=26), 46
    long = inches * inch_px
    if upright:
        _drop(canvas, left, top, wide, long)
        pen.rectangle((left, top, left + wide, top + long), fill=YELLOW, outline=INK)
    else:
        _drop(canvas, left, top, long, wide)
        pen.rectangle((left, top, left + long, top + wide), fill=YELLOW, outline=INK)
    for half in range(2 * inches + 1):
        at = half * inch_px / 2
        mark = 22 if half % 2 == 0 else 12
        if upright:
            pen.line((left, top + long - at, left + mark, top + long - at), fill=INK, width=3)
        else:
            pen.line((left + at, top, left + at, top + mark), fill=INK, width=3)
        if half % 2 == 0 and 0 < half < 2 * inches and (inch_px >= 34 or half % 6 == 0):
            number = str(half // 2)
            if upright:
                pen.text((left + 24, top + long - at), number, font=font, fill=INK, anchor="lm")
            else:
                pen.text((left + at, top + 33), number, font=font, fill=INK, anchor="mm")


def meter(canvas: Canvas, left: float, top: float, reading: str) -> None:
    """A moisture meter with its two pins in the surface to the left of it."""
    pen = canvas.pen
    _drop(canvas, left, top, 330, 150, 14)
    for at in (50, 100):
        pen.line((left - 70, top + at, left + 4, top + at), fill=STEEL, width=8)
    pen.rounded_rectangle((left, top, left + 330, top + 150), 26, fill=(58, 62, 66))
    pen.rounded_rectangle((left + 40, top + 26, left + 226, top + 124), 8, fill=(186, 198, 172))
    font = ImageFont.load_default(size=84)
    pen.text((left + 133, top + 76), reading, font=font, fill=(28, 34, 26), anchor="mm")
    for at, color in ((48, (206, 62, 46)), (102, (220, 220, 214))):
        pen.ellipse((left + 258, top + at - 20, left + 298, top + at + 20), fill=color)


def awl(canvas: Canvas, tip_x: float, tip_y: float, sunk: float) -> None:
    """An awl that comes in from the right; ``sunk`` pixels of its steel are out of sight."""
    pen, steel = canvas.pen, 260 - sunk
    _drop(canvas, tip_x + steel, tip_y - 24, 250, 56, 12)
    pen.polygon(
        [
            (tip_x, tip_y - 5),
            (tip_x + steel, tip_y - 10),
            (tip_x + steel, tip_y + 10),
            (tip_x, tip_y + 5),
        ],
        fill=STEEL,
    )
    pen.line((tip_x, tip_y - 3, tip_x + steel, tip_y - 7), fill=(228, 230, 232), width=3)
    pen.rectangle((tip_x + steel, tip_y - 22, tip_x + steel + 26, tip_y + 22), fill=(196, 166, 84))
    box = (tip_x + steel + 22, tip_y - 32, tip_x + steel + 250, tip_y + 32)
    pen.rounded_rectangle(box, 30, fill=(168, 56, 34))
    pen.line((box[0] + 24, box[1] + 14, box[2] - 30, box[1] + 14), fill=(212, 108, 84), width=6)


def _drop(
    canvas: Canvas, left: float, top: float, width: float, height: float, by: float = 9
) -> None:
    """The shadow below a thing."""
    right, bottom = left + width, top + height
    canvas.smear(
        [
            [
                (left + by, top + by),
                (right + by, top + by),
                (right + by, bottom + by),
                (left + by, bottom + by),
            ]
        ],
        (60, 56, 52),
        0.55,
        8,
    )
