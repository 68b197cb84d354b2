"""A quantity of work as somebody types it, in the unit of the work."""

from __future__ import annotations

from leanto.quantities import (
    QuantityError,
    Unit,
    parse_area_sqft,
    parse_length_ft,
    parse_number,
    shown,
)


def typed_quantity(text: str, unit: Unit) -> float:
    """The quantity in the unit; a bare number is in the unit that is shown for it.

    Lengths and areas may be typed as they are said. Raises QuantityError for anything else, and
    for a quantity that is not above zero.
    """
    display = shown()
    plain = text.strip()
    for written in (display.plural(unit), display.label(unit)):
        plain = plain.removesuffix(written).strip()
    try:
        quantity = parse_number(plain) / display.number(1.0, unit)
    except QuantityError:
        if unit is Unit.LF:
            quantity = parse_length_ft(text)
        elif unit is Unit.SQFT:
            quantity = parse_area_sqft(text)
        else:
            raise
    if quantity <= 0:
        raise QuantityError("A quantity is above zero.", "x strikes the line instead.")
    return quantity
