"""Units of work and material, and how they are printed."""

from __future__ import annotations

from decimal import ROUND_HALF_UP, Decimal
from enum import StrEnum

_FINEST = Decimal("0.01")


class Unit(StrEnum):
    """What a quantity of work or material is counted in."""

    SQFT = "sf"
    LF = "lf"
    EACH = "each"
    HOUR = "hour"
    DAY = "day"
    SQUARE = "square"
    """A roofing square: 100 square feet of roof."""
    BOARD_FOOT = "bf"
    CY = "cy"
    CUBIC_FOOT = "cf"
    POUND = "lb"
    TON = "ton"
    GALLON = "gal"
    SHEET = "sheet"
    BAG = "bag"
    BOX = "box"
    ROLL = "roll"
    BUNDLE = "bundle"
    TUBE = "tube"
    PAIR = "pair"
    LUMP = "lump sum"

    @property
    def label(self) -> str:
        """The unit after the number one: ``sq ft``, ``box``."""
        return _LABELS.get(self, self.value)

    @property
    def plural(self) -> str:
        """The unit after any other number: ``sq ft``, ``boxes``."""
        return _PLURALS.get(self, self.label + "s")


_LABELS = {
    Unit.SQFT: "sq ft",
    Unit.LF: "lin ft",
    Unit.BOARD_FOOT: "board foot",
    Unit.CY: "cu yd",
    Unit.CUBIC_FOOT: "cu ft",
}
_PLURALS = {
    Unit.SQFT: "sq ft",
    Unit.LF: "lin ft",
    Unit.EACH: "each",
    Unit.BOARD_FOOT: "board feet",
    Unit.CY: "cu yd",
    Unit.CUBIC_FOOT: "cu ft",
    Unit.POUND: "lb",
    Unit.GALLON: "gal",
    Unit.BOX: "boxes",
}


def format_quantity(value: float | Decimal, unit: Unit) -> str:
    """The quantity with its unit, such as ``1,250 sq ft`` or ``2.5 hours``; two decimals at most.

    An amount that would print as zero is printed as ``under 0.01``.
    """
    exact = Decimal(str(value))
    if not exact.is_finite():
        raise ValueError(f"no quantity to print: {value!r}")
    rounded = exact.quantize(_FINEST, ROUND_HALF_UP)
    if exact and not rounded:
        return f"under {_FINEST} {unit.plural}"
    number = f"{rounded:,.2f}".rstrip("0").rstrip(".")
    return f"{number} {unit.label if number == '1' else unit.plural}"
