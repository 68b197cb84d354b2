"""Roof pitch: inches of rise in 12 inches of run."""

from __future__ import annotations

import math
import re
from fractions import Fraction

from leanto.quantities.refusal import QuantityError
from leanto.quantities.typed_text import shown, tidy

MIN_PITCH = 0.25
MAX_PITCH = 20.0

_EXAMPLE = "Write it like 6:12, 6 in 12 or 27 deg."
_RISE = r"(?P<rise>[0-9]+(?:\.[0-9]+)?|\.[0-9]+)"
_PART = r"(?: (?P<top>[0-9]+)/(?P<bottom>[1-9][0-9]*))?"
_IN_TWELVE = re.compile(rf"{_RISE}{_PART}(?: ?[:/] ?12| ?in 12| ?on 12)?")
_PART_IN_TWELVE = re.compile(r"(?P<top>[0-9]+)/(?P<bottom>[1-9][0-9]*)(?: ?: ?12| in 12| on 12)")
_DEGREES = re.compile(rf"{_RISE} ?(?:\u00b0|deg\.?|degrees?)")


def parse_pitch(text: str) -> float:
    """The rise in 12 of text such as ``6:12``, ``6/12``, ``6 in 12``, ``6`` or ``27 deg``.

    Raises QuantityError for anything else and for a pitch outside 0.25 to 20 in 12.
    A fraction with another number than 12 below is refused: trades read 1/2 in two ways.
    """
    plain = tidy(text, "A pitch", _EXAMPLE, QuantityError)
    if match := _IN_TWELVE.fullmatch(plain):
        part = Fraction(int(match["top"]), int(match["bottom"])) if match["top"] else Fraction(0)
        return believable_pitch(float(Fraction(match["rise"]) + part), text)
    if match := _PART_IN_TWELVE.fullmatch(plain):
        return believable_pitch(int(match["top"]) / int(match["bottom"]), text)
    if match := _DEGREES.fullmatch(plain):
        degrees = float(match["rise"])
        if degrees >= 90:
            raise QuantityError(f"{shown(text)} is no roof slope.", _EXAMPLE)
        return believable_pitch(12 * math.tan(math.radians(degrees)), text)
    raise QuantityError(f"{shown(text)} is not understood as a pitch.", _EXAMPLE)


def believable_pitch(rise_in_12: float, text: str = "") -> float:
    """The pitch itself, when it lies between 0.25 and 20 in 12; else QuantityError."""
    named = f"pitch {text.strip()}" if text.isprintable() and text.strip() else "pitch"
    if rise_in_12 < 0 or not math.isfinite(rise_in_12):
        raise QuantityError(f"{named}: a pitch is a number above zero.", _EXAMPLE)
    if rise_in_12 < MIN_PITCH:
        raise QuantityError(f"{named} is flatter than 1/4:12.", "Choose the flat roof form.")
    if rise_in_12 > MAX_PITCH:
        raise QuantityError(f"{named} is steeper than {MAX_PITCH:g}:12.", "Measure it again.")
    return rise_in_12


def format_pitch(rise_in_12: float) -> str:
    """The pitch as ``6:12`` or ``6.25:12``, to two decimals."""
    return f"{round(rise_in_12, 2):g}:12"
