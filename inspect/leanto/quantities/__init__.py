"""Quantities as people say them: read from typed text, kept in feet, shown as the job asks."""

from __future__ import annotations

from leanto.quantities.area import parse_area_sqft
from leanto.quantities.display import (
    FEET,
    METRIC,
    Display,
    System,
    display_of,
    format_ft_in,
    format_quantity,
    restore_shown,
    show_as,
    showing,
    shown,
)
from leanto.quantities.field import LengthFt, Pitch
from leanto.quantities.length import parse_length_ft
from leanto.quantities.metric import plain_number
from leanto.quantities.number import (
    parse_count,
    parse_number,
    parse_percent,
    parse_temperature_f,
)
from leanto.quantities.pitch import format_pitch, parse_pitch
from leanto.quantities.refusal import LengthError, QuantityError
from leanto.quantities.unit import Unit

__all__ = [
    "FEET",
    "METRIC",
    "Display",
    "LengthError",
    "LengthFt",
    "Pitch",
    "QuantityError",
    "System",
    "Unit",
    "display_of",
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
    "plain_number",
    "restore_shown",
    "show_as",
    "showing",
    "shown",
]
