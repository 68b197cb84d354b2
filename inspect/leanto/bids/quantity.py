"""The quantity that every bidder prices."""

from __future__ import annotations

import math

from leanto.quantities import Unit
from leanto.scope.item import RepairItem


def bid_quantity(item: RepairItem) -> float:
    """The net quantity that every bidder prices, in the unit of the work.

    Pieces are whole; anything else is rounded up to a tenth below ten, to whole units above.
    """
    slack = 1e-6
    if item.work.unit is Unit.EACH or item.quantity >= 10:
        return float(math.ceil(item.quantity - slack))
    return math.ceil(item.quantity * 10 - slack) / 10
