"""Fonts with wide coverage, and text split into runs that one font each can draw.

Noto Sans draws Latin (Vietnamese too), Greek and Cyrillic; FiraGO adds Hebrew, Arabic, Devanagari,
Thai, Georgian and arrows; Cascadia Mono adds check marks and boxes. Nothing here shapes text:
Arabic letters are not joined, Devanagari and Thai signs are not placed or reordered. Chinese,
Japanese, Korean and emoji are not drawn: such a character is printed as its code.
"""

from __future__ import annotations

import io
import unicodedata
from collections.abc import Iterator
from dataclasses import dataclass, field
from enum import StrEnum
from functools import cache, lru_cache
from importlib import import_module

from reportlab.pdfbase import pdfmetrics
from reportlab.pdfbase.ttfonts import TTFont

from leanto.reports.characters import code, in_drawing_order, printable


class Face(StrEnum):
    REGULAR = "regular"
    BOLD = "bold"


_CHAINS = {
    Face.REGULAR: ("NotoSans_Regular", "FiraGO_Regular", "CascadiaMono_Regular"),
    Face.BOLD: ("NotoSans_Bold", "FiraGO_Bold", "CascadiaMono_Bold"),
}
"""The modules of pymupdf_fonts to draw with, the first that has the character."""


@dataclass(frozen=True, slots=True)
class Run:
    """A piece of one line that one font can draw."""

    font: str
    text: str


@dataclass(slots=True)
class Typesetter:
    """Splits the text of one document into runs, and keeps what no font could draw."""

    missing: dict[str, None] = field(default_factory=dict)

    @property
    def not_drawn(self) -> str:
        """Every character printed as its code, once, in order of their codes."""
        return "".join(sorted(self.missing))

    def lines(self, text: str, face: Face = Face.REGULAR) -> list[tuple[Run, ...]]:
        """The runs of every line of a text, which may hold any character."""
        return [
            tuple(self._runs(in_drawing_order(line), face)) for line in printable(text).split("\n")
        ]

    def line(self, text: str, face: Face = Face.REGULAR) -> tuple[Run, ...]:
        """The runs of a text that is to stand on one line."""
        return self.lines(" ".join(printable(text).split()), face)[0]

    def _runs(self, line: str, face: Face) -> Iterator[Run]:
        if _load(base_font(face)).issuperset(map(ord, line)):
            if line:
                yield Run(base_font(face), line)
            return
        font, piece = base_font(face), ""
        for character in line:
            fitting = _font_for(character, face, font)
            if fitting is None:
                self.missing[character] = None
                character, fitting = code(character), base_font(face)
            if fitting != font and piece:
                yield Run(font, piece)
                piece = ""
            font, piece = fitting, piece + character
        if piece:
            yield Run(font, piece)


def base_font(face: Face) -> str:
    """The name of the face's first font, registered for drawing."""
    name = _CHAINS[face][0]
    _load(name)
    return name


def width_pt(runs: tuple[Run, ...], size_pt: float) -> float:
    """How wide the runs are drawn beside each other."""
    return sum(pdfmetrics.stringWidth(run.text, run.font, size_pt) for run in runs)


def _font_for(character: str, face: Face, before: str) -> str | None:
    """The font that draws the character: for a mark the one that drew its letter, if it can."""
    if unicodedata.combining(character) and ord(character) in _load(before):
        return before
    return next((name for name in _CHAINS[face] if ord(character) in _load(name)), None)


class _Font(TTFont):
    """A font that remembers how wide words are: few words make most of a report."""

    @lru_cache(maxsize=100_000)  # noqa: B019 - fonts live as long as the program
    def stringWidth(self, text: str, size: float, encoding: str = "utf8") -> float:
        width: float = super().stringWidth(text, size, encoding)
        return width


@cache
def _load(name: str) -> frozenset[int]:
    """The code points that a font covers; it is registered on the way."""
    buffer: bytes = import_module(f"pymupdf_fonts.{name}").fontbuffer
    font = _Font(name, io.BytesIO(buffer))
    pdfmetrics.registerFont(font)
    return frozenset(font.face.charToGlyph)
