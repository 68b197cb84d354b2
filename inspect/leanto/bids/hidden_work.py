"""The hidden work that is to be expected, at each bidder's own unit prices."""

from __future__ import annotations

from dataclasses import dataclass
from decimal import Decimal

from leanto.money import Spread


@dataclass(frozen=True, slots=True)
class HiddenWork:
    """Work that may be found, in the quantity that is expected on average."""

    ask_id: str
    """The unit price asked for on the form."""
    title: str
    unit: str
    quantity: float
    ours: Spread
    """Our allowance for one unit, with overhead and profit."""


def break_even(
    base: Decimal, unit: Decimal, other_base: Decimal, other_unit: Decimal
) -> Decimal | None:
    """The quantity at which two bids cost the same; None where they never meet above zero."""
    if unit == other_unit:
        return None
    quantity = (other_base - base) / (unit - other_unit)
    return quantity if quantity > 0 else None
