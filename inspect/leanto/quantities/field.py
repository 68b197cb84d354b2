"""Quantities as fields of pydantic models."""

from __future__ import annotations

import math
from typing import Annotated

from pydantic import BeforeValidator

from leanto.quantities.length import MAX_FT, parse_length_ft
from leanto.quantities.pitch import believable_pitch, parse_pitch
from leanto.quantities.refusal import LengthError, QuantityError


def _length_ft(value: object) -> object:
    """Feet from text or a bare number; other types are left to pydantic's own refusal."""
    if isinstance(value, str):
        return parse_length_ft(value, default_unit="ft")
    if isinstance(value, bool):
        raise LengthError("A length is needed, not true or false.")
    if isinstance(value, int | float) and not 0 <= value <= MAX_FT:
        said = "not a number" if math.isnan(value) else f"{value:g} ft"
        raise LengthError(f"A length lies between 0 and {MAX_FT} ft; this is {said}.")
    return value


def _pitch(value: object) -> object:
    """Rise in 12 from text or a bare number; other types are left to pydantic's own refusal."""
    if isinstance(value, str):
        return parse_pitch(value)
    if isinstance(value, bool):
        raise QuantityError("A pitch is needed, not true or false.")
    if isinstance(value, int | float):
        return believable_pitch(float(value), f"{value:g}:12")
    return value


LengthFt = Annotated[float, BeforeValidator(_length_ft)]
"""Feet, from 0 to 1000: text as people say lengths, or a bare number that means feet."""

Pitch = Annotated[float, BeforeValidator(_pitch)]
"""Inches of rise in 12 of run, from 0.25 to 20: ``6:12``, or a bare number."""
