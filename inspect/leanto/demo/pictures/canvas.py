"""A sheet to draw an invented picture on: seeded, so that the same name gives the same pixels."""

from __future__ import annotations

import math
import random
from collections.abc import Sequence

from PIL import Image, ImageChops, ImageDraw, ImageFilter

Color = tuple[int, int, int]
Point = tuple[float, float]
Box = tuple[float, float, float, float]
"""Left, top, right, bottom, in pixels."""

WIDTH_PX, HEIGHT_PX = 1200, 900
WHOLE: Box = (0, 0, WIDTH_PX, HEIGHT_PX)

_COARSE = 4
"""Masks are soft, so they are made at a quarter of the size and enlarged."""


class Canvas:
    """An image, its pen and its own dice."""

    def __init__(self, seed: str, ground: Color) -> None:
        self.image = Image.new("RGB", (WIDTH_PX, HEIGHT_PX), ground)
        self.pen = ImageDraw.Draw(self.image)
        self.dice = random.Random(seed)

    def grain(self, strength: float, cell: tuple[float, float], box: Box = WHOLE) -> None:
        """Darkens the box by noise of up to ``strength`` (0 to 1) in soft cells of that size."""
        left, top, right, bottom = _inside(box)
        if right <= left or bottom <= top:
            return
        width = max(2, math.ceil((right - left) / cell[0]))
        height = max(2, math.ceil((bottom - top) / cell[1]))
        noise = Image.frombytes("L", (width, height), self.dice.randbytes(width * height))
        dark = noise.point([round(strength * v) for v in range(256)])
        mask = dark.resize((right - left, bottom - top), Image.Resampling.BILINEAR)
        self.image.paste((0, 0, 0), (left, top, right, bottom), mask)

    def shade(self, corners: tuple[float, float, float, float], box: Box = WHOLE) -> None:
        """Dims the box to these shares of its light at top left, top right and the bottom ones."""
        left, top, right, bottom = _inside(box)
        small = Image.new("L", (2, 2))
        small.putdata([round(255 * (1 - min(1.0, corner))) for corner in corners])
        mask = small.resize((right - left, bottom - top), Image.Resampling.BILINEAR)
        self.image.paste((0, 0, 0), (left, top, right, bottom), mask)

    def blot(
        self,
        center: Point,
        radius: Point,
        color: Color,
        opacity: float,
        *,
        blur: float = 10,
        ragged: float = 0.18,
        rings: Sequence[float] = (),
        stain: bool = True,
    ) -> None:
        """A soft, ragged patch. A stain darkens what is below it; otherwise the color covers.

        ``rings`` are shares of the radius where it dried and left its edge.
        """
        shape = self.ragged(center, radius, ragged)
        self._lay([shape], color, opacity, blur, stain)
        for share in rings:
            ring = [
                (center[0] + share * (x - center[0]), center[1] + share * (y - center[1]))
                for x, y in shape
            ]
            inner = [
                (center[0] + 0.955 * (x - center[0]), center[1] + 0.955 * (y - center[1]))
                for x, y in ring
            ]
            self._lay([[*ring, ring[0], inner[0], *inner[::-1]]], color, 0.8, 5, stain)

    def smear(
        self, shapes: Sequence[Sequence[Point]], color: Color, opacity: float, blur: float = 6
    ) -> None:
        """Soft dark polygons: runs of water, shadows, soot."""
        self._lay(shapes, color, opacity, blur, stain=True)

    def ragged(self, center: Point, radius: Point, amount: float) -> list[Point]:
        """The corners of a wobbly oval."""
        waves = [
            (k, amount * self.dice.uniform(0.2, 1) / k**0.7, self.dice.uniform(0, math.tau))
            for k in range(2, 9)
        ]
        shape = []
        for step in range(96):
            turn = math.tau * step / 96
            reach = 1 + sum(size * math.cos(k * turn + at) for k, size, at in waves)
            shape.append(
                (
                    center[0] + radius[0] * reach * math.cos(turn),
                    center[1] + radius[1] * reach * math.sin(turn),
                )
            )
        return shape

    def near(self, color: Color, spread: int) -> Color:
        """The color, a little lighter or darker."""
        by = self.dice.randint(-spread, spread)
        red, green, blue = (max(0, min(255, part + by)) for part in color)
        return red, green, blue

    def _lay(
        self,
        shapes: Sequence[Sequence[Point]],
        color: Color,
        opacity: float,
        blur: float,
        stain: bool,
    ) -> None:
        """Soft polygons of one color; only the part of the sheet that they reach is touched."""
        margin = 3 * blur + _COARSE
        across = [x for shape in shapes for x, _ in shape]
        upright = [y for shape in shapes for _, y in shape]
        box = (min(across) - margin, min(upright) - margin)
        left, top, right, bottom = _inside((*box, max(across) + margin, max(upright) + margin))
        size = (right - left, bottom - top)
        if min(size) < _COARSE:
            return
        mask = Image.new("L", (size[0] // _COARSE, size[1] // _COARSE))
        pen = ImageDraw.Draw(mask)
        for shape in shapes:
            pen.polygon([((x - left) / _COARSE, (y - top) / _COARSE) for x, y in shape], fill=255)
        if blur:
            mask = mask.filter(ImageFilter.GaussianBlur(blur / _COARSE))
        mask = mask.point([round(opacity * v) for v in range(256)])
        mask = mask.resize(size, Image.Resampling.BILINEAR)
        layer = Image.new("RGB", size, color)
        if stain:
            layer = ImageChops.multiply(self.image.crop((left, top, right, bottom)), layer)
        self.image.paste(layer, (left, top), mask)


def _inside(box: Box) -> tuple[int, int, int, int]:
    left, top, right, bottom = (round(side) for side in box)
    return max(0, left), max(0, top), min(WIDTH_PX, right), min(HEIGHT_PX, bottom)
