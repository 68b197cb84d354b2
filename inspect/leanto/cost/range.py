"""The range of a total of lines that move together.

Each line is triangular; the total is taken as normal, with one correlation between any two lines.
Independent lines would make the total look far narrower than it is.
"""

from __future__ import annotations

import math
from collections.abc import Iterable
from statistics import NormalDist

from leanto.cost.estimate import Range
from leanto.money import Spread


def triangular_mean(spread: Spread) -> float:
    """(low + likely + high) / 3, in dollars."""
    return float(spread.low + spread.likely + spread.high) / 3


def triangular_sd(spread: Spread) -> float:
    """Standard deviation of the triangular distribution, in dollars.

    Variance (a^2 + m^2 + b^2 - am - ab - bm) / 18 for low a, likely m, high b.
    """
    low, likely, high = float(spread.low), float(spread.likely), float(spread.high)
    squares = low**2 + likely**2 + high**2 - low * likely - low * high - likely * high
    return math.sqrt(max(0.0, squares) / 18)


def range_of(spreads: Iterable[Spread], correlation: float) -> Range:
    """The range of the sum of the spreads.

    Var = sum of var_i + 2 x correlation x sum over pairs of sd_i x sd_j.
    """
    lines = tuple(spreads)
    total = Spread.total(lines)
    deviations = [triangular_sd(line) for line in lines]
    own = sum(deviation**2 for deviation in deviations)
    shared = sum(deviations) ** 2 - own
    mean = sum(triangular_mean(line) for line in lines)
    sd = math.sqrt(max(0.0, own + correlation * shared))

    def at(probability: float) -> float:
        value = NormalDist(mean, sd).inv_cdf(probability) if sd > 0 else mean
        return min(max(value, float(total.low)), float(total.high))

    return Range(
        low=float(total.low),
        likely=float(total.likely),
        high=float(total.high),
        mean=mean,
        p10=at(0.10),
        p50=at(0.50),
        p80=at(0.80),
        p90=at(0.90),
    )
