"""Plain numbers as people type them: counts, percentages and temperatures."""

from __future__ import annotations

import re
from typing import Literal

from leanto.quantities.refusal import QuantityError
from leanto.quantities.typed_text import shown, tidy

MAX_COUNT = 100_000
LOWEST_F = -80.0
HIGHEST_F = 180.0

_NumberUnit = Literal["", "%", "f", "c"]
_NUMBER = re.compile(
    r"(?P<number>[-+]?(?:[0-9]{1,3}(?:,[0-9]{3})+(?:\.[0-9]+)?|[0-9]+(?:\.[0-9]*)?|\.[0-9]+)) ?"
    r"(?:(?P<percent>%|percent|pct\.?)"
    r"|(?:\u00b0 ?|deg(?:rees?|\.)? ?)?(?:(?P<f>f|fahrenheit)|(?P<c>c|celsius)))?"
)


def parse_number(text: str) -> float:
    """The number in text such as ``12``, ``1,200``, ``18 %``, ``41 F`` or ``5 C``.

    A percentage comes back in percent (18, not 0.18) and a temperature in degrees Fahrenheit.
    """
    number, unit = _split(text, "A number", "Write it like 12 or 12.5.")
    return _fahrenheit(number) if unit == "c" else number


def parse_percent(text: str, *, at_most: float = 100.0) -> float:
    """The percentage in text such as ``18`` or ``18.5 %``, from 0 to ``at_most``."""
    example = "Write it like 18 or 18.5 %."
    number, unit = _split(text, "A percentage", example)
    if unit not in ("", "%"):
        raise QuantityError(f"{shown(text)} is a temperature, not a percentage.", example)
    if not 0 <= number <= at_most:
        raise QuantityError(f"{shown(text)} is not between 0 and {at_most:g} %.", example)
    return number


def parse_count(text: str) -> int:
    """The whole number in text such as ``3`` or ``1,200``; from 0 to 100,000."""
    example = "Write a whole number, like 3."
    number, unit = _split(text, "A count", example)
    if unit or not number.is_integer():
        raise QuantityError(f"{shown(text)} is not a whole number.", example)
    if not 0 <= number <= MAX_COUNT:
        raise QuantityError(f"{shown(text)} is not between 0 and {MAX_COUNT:,}.", example)
    return int(number)


def parse_temperature_f(text: str, *, bare: Literal["f", "c"] = "f") -> float:
    """The temperature in degrees Fahrenheit of text such as ``41``, ``41 F`` or ``5 C``.

    A bare number is in degrees Fahrenheit, or in those of ``bare``.
    """
    example = "Write it like 41 F or 5 C."
    number, unit = _split(text, "A temperature", example)
    if unit == "%":
        raise QuantityError(f"{shown(text)} is a percentage, not a temperature.", example)
    degrees_f = _fahrenheit(number) if (unit or bare) == "c" else number
    if not LOWEST_F <= degrees_f <= HIGHEST_F:
        raise QuantityError(
            f"{shown(text)} is not between {LOWEST_F:g} F and {HIGHEST_F:g} F.", example
        )
    return degrees_f


def _split(text: str, what: str, example: str) -> tuple[float, _NumberUnit]:
    plain = tidy(text, what, example, QuantityError)
    match = _NUMBER.fullmatch(plain)
    if match is None:
        raise QuantityError(f"{shown(text)} is not understood as a number.", example)
    unit: _NumberUnit = (
        "%" if match["percent"] else "f" if match["f"] else "c" if match["c"] else ""
    )
    return float(match["number"].replace(",", "")), unit


def _fahrenheit(celsius: float) -> float:
    return celsius * 9 / 5 + 32
