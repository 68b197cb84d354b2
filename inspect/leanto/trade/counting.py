"""Whole units to buy, with a guard against floating noise."""

from __future__ import annotations

import math

NOISE = 1e-6
"""Far below any real piece and far above the rounding of a sum of products."""


def whole_units(amount: float, noise: float = NOISE) -> int:
    """The number of whole units that covers `amount`; noise in the last digits adds no unit.

    39.0000001 gives 39, 39.01 gives 40. Nothing needed gives 0.
    """
    if not math.isfinite(amount) or amount < 0:
        raise ValueError(f"an amount to count must be zero or more: {amount}")
    return max(0, math.ceil(amount - noise))


def with_waste(amount: float, waste: float) -> float:
    """The amount raised by a share of waste: 100 at 0.10 gives 110."""
    if amount < 0 or waste < 0:
        raise ValueError(f"amount and waste must be zero or more: {amount}, {waste}")
    return amount * (1 + waste)
