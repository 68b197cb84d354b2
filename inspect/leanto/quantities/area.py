"""Areas as people say them, in square feet."""

from __future__ import annotations

import re
from fractions import Fraction

from leanto.quantities.length import parse_length_ft
from leanto.quantities.refusal import LengthError, QuantityError
from leanto.quantities.typed_text import shown, tidy

MAX_SQFT = 100_000

_EXAMPLE = "Write it like 12 sq ft, 1.1 m2 or 3' x 4'."
_SQM_PER_SQFT = Fraction(3048, 10_000) ** 2
_SQM = re.compile(
    r"(?P<amount>[0-9]{1,3}(?:,[0-9]{3})+(?:\.[0-9]+)?|[0-9]+(?:\.[0-9]+)?|\.[0-9]+) ?"
    r"(?:m2|m\u00b2|sqm|sq\.? ?m\.?|sq\.? ?met(?:er|re)s?|square met(?:er|re)s?)"
)
_SQFT = re.compile(
    r"(?P<amount>[0-9]{1,3}(?:,[0-9]{3})+|[0-9]+(?:\.[0-9]+)?|\.[0-9]+) ?"
    r"(?:sq\.? ?(?:ft|feet|foot)\.?|square (?:feet|foot)|sf|ft2|ft\u00b2)"
)


def parse_area_sqft(text: str) -> float:
    """The area in square feet of text such as ``12 sq ft``, ``1.1 m2`` or ``3' x 4'``.

    Raises QuantityError for anything else, and for more than 100,000 sq ft.
    """
    plain = tidy(text, "An area", _EXAMPLE, QuantityError)
    if match := _SQFT.fullmatch(plain):
        area_sqft = float(match["amount"].replace(",", ""))
    elif match := _SQM.fullmatch(plain):
        area_sqft = float(Fraction(match["amount"].replace(",", "")) / _SQM_PER_SQFT)
    else:
        area_sqft = _product(plain, text)
    if area_sqft > MAX_SQFT:
        raise QuantityError(f"{shown(text)} is more than {MAX_SQFT:,} sq ft.", "Look at the unit.")
    return area_sqft


def _product(plain: str, text: str) -> float:
    sides = re.split(r" ?(?:x|by) ?", plain)
    if len(sides) != 2:
        raise QuantityError(f"{shown(text)} is not understood as an area.", _EXAMPLE)
    try:
        return parse_length_ft(sides[0]) * parse_length_ft(sides[1])
    except LengthError as error:
        raise QuantityError(f"In the area {shown(text)}: {error.what}", _EXAMPLE) from error
