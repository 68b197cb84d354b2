"""A field's value as text that can be typed, and typed text as the field's value."""

from __future__ import annotations

from collections.abc import Mapping
from decimal import Decimal
from enum import Enum
from typing import Any

from leanto.building.kinds import Side
from leanto.quantities import (
    LengthError,
    format_ft_in,
    format_pitch,
    parse_count,
    parse_length_ft,
    parse_number,
    parse_pitch,
    parse_temperature_f,
    plain_number,
    shown,
)
from leanto.tui.widgets.building_fields import NO, YES, YES_NO, Field, Kind

_FINER = (8, 16, 32, 64)
_DECIMALS = (2, 3, 4, 5, 6)


def text_of(field: Field, part: object) -> str:
    """What the part holds there, as it can be typed again without any loss; the field's start
    where it holds nothing."""
    value, is_there = _value_at(part, field.path)
    if field.path in ("ceiling", "on_wall"):
        return YES if value else NO
    if not is_there:
        return str(field.start)
    if value is None:
        return ""
    return _text(field.kind, value)


def value_of(field: Field, text: str) -> Any:
    """The value that the text stands for; LeantoError with an example for anything else."""
    match field.kind:
        case Kind.LENGTH:
            return parse_length_ft(text, default_unit=shown().bare_length)
        case Kind.SIZE:
            size_ft = parse_length_ft(text, default_unit=shown().bare_length)
            if size_ft <= 0:
                raise LengthError("This must be more than zero.", f"{field.help}.")
            return size_ft
        case Kind.SPACING:
            return parse_length_ft(text, default_unit=shown().bare_short_length)
        case Kind.SHORT_LENGTH:
            return parse_length_ft(text)
        case Kind.PITCH:
            return parse_pitch(text)
        case Kind.COUNT:
            return parse_count(text)
        case Kind.MONEY | Kind.NUMBER:
            return parse_number(text.lstrip("$ "))
        case Kind.TEMPERATURE:
            return parse_temperature_f(text, bare=shown().bare_temperature)
        case Kind.MEMBER:
            return "".join(text.split()).lower().replace("×", "x")
        case Kind.CHOICE if field.choices == YES_NO:
            return text == YES
        case Kind.CHOICE if text.isdigit():
            return int(text)
        case _:
            return text.strip()


def length_text(ft: float) -> str:
    """The length as it is shown where that says it exactly, else in decimal feet."""
    if shown().is_metric:
        for decimals in _DECIMALS:
            text = f"{plain_number(ft * 0.3048, decimals)} m"
            if parse_length_ft(text) == ft:
                return text
        return f"{Decimal(repr(ft)):f} ft"
    for denominator in _FINER:
        text = format_ft_in(ft, denominator)
        if parse_length_ft(text) == ft:
            return text
    return f"{Decimal(repr(ft)):f} ft"


def _text(kind: Kind, value: Any) -> str:
    match kind:
        case Kind.LENGTH | Kind.SIZE | Kind.SPACING | Kind.SHORT_LENGTH:
            return length_text(value)
        case Kind.PITCH:
            text = format_pitch(value)
            return text if parse_pitch(text) == value else f"{value!r}:12"
        case Kind.MONEY | Kind.NUMBER:
            text = f"{value:,.2f}".removesuffix(".00")
            return text if parse_number(text) == value else f"{Decimal(repr(value)):f}"
        case Kind.TEMPERATURE:
            text = shown().temperature(value)
            if parse_temperature_f(text) == value:
                return text
            return f"{Decimal(repr(value)):f} F".replace(".0 F", " F")
        case _:
            if isinstance(value, bool):
                return YES if value else NO
            return str(value.value if isinstance(value, Enum) else value)


def _value_at(part: object, path: str) -> tuple[Any, bool]:
    """(value, whether the part has such a place at all); a part left out has none."""
    held: Any = part
    for step in path.split("."):
        if held is None:
            return None, False
        held = held.get(Side(step)) if isinstance(held, Mapping) else getattr(held, step)
    return held, True
