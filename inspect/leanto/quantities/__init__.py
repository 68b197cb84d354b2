"""Quantities as people say them: read from typed text, kept in feet, printed in feet and inches."""

from __future__ import annotations

from leanto.quantities.area import parse_area_sqft
from leanto.quantities.field import LengthFt, Pitch
from leanto.quantities.length import format_ft_in, parse_length_ft
from leanto.quantities.number import (
    parse_count,
    parse_number,
    parse_percent,
    parse_temperature_f,
)
from leanto.quantities.pitch import format_pitch, parse_pitch
from leanto.quantities.refusal import LengthError, QuantityError
from leanto.quantities.unit import Unit, format_quantity

__all__ = [
    "LengthError",
    "LengthFt",
    "Pitch",
    "QuantityError",
    "Unit",
    "format_ft_in",
    "format_pitch",
    "format_quantity",
    "parse_area_sqft",
    "parse_count",
    "parse_length_ft",
    "parse_number",
    "parse_percent",
    "parse_pitch",
    "parse_temperature_f",
]
