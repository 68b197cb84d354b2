"""The quantity that every bidder prices."""

from __future__ import annotations

import math

from leanto.bids.in_feet import printed_unit, quantity_in_words
from leanto.quantities import FEET, Display, Unit, shown
from leanto.scope.item import RepairItem


def bid_quantity(item: RepairItem, display: Display = FEET) -> float:
    """The net quantity that every bidder prices, in the unit shown for that of the work.

    Pieces are whole; anything else is rounded up to a tenth below ten, to whole units above.
    """
    slack = 1e-6
    quantity = display.number(item.quantity, item.work.unit)
    if item.work.unit is Unit.EACH or quantity >= 10:
        return float(math.ceil(quantity - slack))
    return math.ceil(quantity * 10 - slack) / 10


def bid_quantity_in_words(item: RepairItem) -> str:
    """The same with its unit, as the bid form has it: ``120 sq ft`` or ``11.2 m²``."""
    display = shown()
    quantity = bid_quantity(item, display)
    unit = printed_unit(item.work.unit, display.system)
    return quantity_in_words(quantity, unit)
