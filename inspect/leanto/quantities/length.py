"""Lengths as people say them, read exactly and kept in feet."""

from __future__ import annotations

import math
import re
from fractions import Fraction
from typing import Literal

from leanto.quantities.refusal import LengthError
from leanto.quantities.typed_text import AMOUNT, shown, tidy

MAX_FT = 1000
MM_PER_INCH = Fraction(254, 10)
"""Exact: the international inch is 25.4 mm."""

LengthUnit = Literal["ft", "in", "m", "mm"]

_EXAMPLE = "Write it like 7' 3 1/2\", 7-3, 88 in or 2.24 m."
_MM_PER_UNIT = {"mm": 1, "cm": 10, "m": 1000}

_FEET_MARK = r" ?(?:'|ft\.?|feet|foot)"
_INCH_MARK = r" ?(?:\"|inches|inch|in\.?)"
_FEET_INCHES = re.compile(
    rf"(?P<feet>{AMOUNT}){_FEET_MARK}(?:,? ?(?:and |- ?)?)(?P<inches>{AMOUNT})(?:{_INCH_MARK})?"
)
_DASHED = re.compile(r"(?P<feet>[0-9]+) ?- ?(?P<inches>[0-9]+(?:[ -][0-9]+/[0-9]+|\.[0-9]+)?)")
_FEET = re.compile(rf"(?P<amount>{AMOUNT}){_FEET_MARK}")
_INCHES = re.compile(rf"(?P<amount>{AMOUNT}){_INCH_MARK}")
_METRIC = re.compile(
    r"(?P<amount>[0-9]+(?:[.,][0-9]+)?|[.,][0-9]+) ?"
    r"(?:(?P<mm>mm|millimet(?:er|re)s?)|(?P<cm>cm|centimet(?:er|re)s?)|(?P<m>m|met(?:er|re)s?))\.?"
)


def parse_length_ft(text: str, *, default_unit: LengthUnit | None = None) -> float:
    """The length in feet of text such as ``7' 3 1/2"``, ``7-3``, ``88 in`` or ``2,24 m``.

    A bare number is refused unless ``default_unit`` says what it means.
    Raises LengthError for anything else, and for a length above 1000 ft.
    """
    plain = tidy(text, "A length", _EXAMPLE, LengthError)
    if plain.startswith("-"):
        raise LengthError(f"{shown(text)} is below zero; a length is not.", _EXAMPLE)
    inches = _inches(plain, text, default_unit)
    if inches > MAX_FT * 12:
        raise LengthError(f"{shown(text)} is longer than {MAX_FT} ft.", "Look at the unit.")
    return float(inches / 12)


def format_ft_in(ft: float, denominator: int = 8) -> str:
    """The length as ``7' 3 1/2"``, rounded to the nearest 1/denominator inch; half goes up."""
    if not math.isfinite(ft) or denominator < 1:
        raise ValueError(f"no length to print: {ft!r} ft in 1/{denominator} in")
    parts = math.floor(abs(Fraction(ft)) * 12 * denominator + Fraction(1, 2))
    whole_inches, part = divmod(parts, denominator)
    feet, inches = divmod(whole_inches, 12)
    fraction = str(Fraction(part, denominator)) if part else ""
    words = [f"{feet}'"] if feet else []
    words += [str(inches)] if inches or not fraction else []
    words += [fraction] if fraction else []
    return ("-" if ft < 0 and parts else "") + " ".join(words) + '"'


def _inches(plain: str, text: str, default_unit: LengthUnit | None) -> Fraction:
    if match := _FEET_INCHES.fullmatch(plain) or _DASHED.fullmatch(plain):
        return _feet_and_inches(match["feet"], match["inches"], text)
    if match := _FEET.fullmatch(plain):
        return _amount(match["amount"]) * 12
    if match := _INCHES.fullmatch(plain):
        return _amount(match["amount"])
    if match := _METRIC.fullmatch(plain):
        unit = next(name for name in _MM_PER_UNIT if match[name])
        return _metric_amount(match["amount"], text) * _MM_PER_UNIT[unit] / MM_PER_INCH
    if re.fullmatch(AMOUNT, plain):
        return _bare(plain, text, default_unit)
    raise LengthError(f"{shown(text)} is not understood as a length.", _EXAMPLE)


def _feet_and_inches(feet: str, inches: str, text: str) -> Fraction:
    if not feet.isdigit():
        raise LengthError(f"{shown(text)} has parts of a foot and inches as well.", _EXAMPLE)
    inch_amount = _amount(inches)
    if inch_amount >= 12:
        raise LengthError(f"{shown(text)}: inches after feet must be under 12.", _EXAMPLE)
    return _amount(feet) * 12 + inch_amount


def _bare(plain: str, text: str, default_unit: LengthUnit | None) -> Fraction:
    if default_unit is None:
        raise LengthError(f"{shown(text)} has no unit.", _EXAMPLE)
    if default_unit in ("m", "mm"):
        return _amount(plain) * _MM_PER_UNIT[default_unit] / MM_PER_INCH
    if default_unit == "in":
        return _amount(plain)
    if "-" in plain:
        raise LengthError(f"{shown(text)} can be read as feet or as feet and inches.", _EXAMPLE)
    return _amount(plain) * 12


def _metric_amount(amount: str, text: str) -> Fraction:
    whole, comma, decimals = amount.partition(",")
    if comma and len(decimals) == 3 and whole.strip("0"):
        remedy = f"Write {whole}{decimals} or {whole}.{decimals} with its unit."
        raise LengthError(f"The comma in {shown(text)} can be read two ways.", remedy)
    return Fraction(amount.replace(",", "."))


def _amount(amount: str) -> Fraction:
    """The exact value of ``7``, ``7.5``, ``1/2``, ``3 1/2`` or ``3-1/2``."""
    *whole, last = re.split(r"[ -]", amount)
    top, slash, bottom = last.partition("/")
    if not slash:
        return Fraction(last + "0" if last.endswith(".") else last)
    if not int(bottom):
        raise LengthError(f"The fraction {last} has a zero below the line.", _EXAMPLE)
    part = Fraction(int(top), int(bottom))
    if not whole:
        return part
    if part >= 1:
        raise LengthError(f"The fraction {last} after {whole[0]} is not less than one.", _EXAMPLE)
    return int(whole[0]) + part
