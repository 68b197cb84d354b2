"""A triangular amount: low, likely, high, with a straight rise to the likely value and a fall.

Mean (a + m + b) / 3, variance (a^2 + m^2 + b^2 - am - ab - bm) / 18, quantile
a + sqrt(u (b - a)(m - a)) up to the mode and b - sqrt((1 - u)(b - a)(b - m)) past it.
"""

from __future__ import annotations

import math
from bisect import bisect_right
from dataclasses import dataclass

from leanto.money import Spread

SLICES = 256
"""A random byte picks one of as many equally likely slices."""
_MIDDLES = [(index + 0.5) / SLICES for index in range(SLICES)]
_ROOTS = [math.sqrt(u) for u in _MIDDLES]
"""They also serve the falling side, read backward: 1 - u runs through the same middles."""


@dataclass(frozen=True, slots=True)
class Triangle:
    """low <= likely <= high, as plain numbers."""

    low: float
    likely: float
    high: float

    def __post_init__(self) -> None:
        if not self.low <= self.likely <= self.high:
            raise ValueError(f"low, likely and high must not fall: {self}")

    @classmethod
    def of(cls, spread: Spread) -> Triangle:
        return cls(float(spread.low), float(spread.likely), float(spread.high))

    @property
    def mean(self) -> float:
        return (self.low + self.likely + self.high) / 3

    @property
    def variance(self) -> float:
        a, m, b = self.low, self.likely, self.high
        return max(0.0, a * a + m * m + b * b - a * m - a * b - m * b) / 18

    @property
    def mean_square(self) -> float:
        return self.variance + self.mean**2

    def quantile(self, u: float) -> float:
        """The value that is not passed with probability ``u``."""
        a, m, b = self.low, self.likely, self.high
        width = b - a
        if width <= 0:
            return m
        if u * width <= m - a:
            return a + math.sqrt(u * width * (m - a))
        return b - math.sqrt((1 - u) * width * (b - m))

    def sliced(self) -> list[float]:
        """The middle quantile of each slice, shifted so that the mean is kept exactly."""
        a, m, b = self.low, self.likely, self.high
        width = b - a
        if width <= 0:
            return [m] * SLICES
        rising = bisect_right(_MIDDLES, (m - a) / width)
        up, down = math.sqrt(width * (m - a)), math.sqrt(width * (b - m))
        values = [a + up * root for root in _ROOTS[:rising]]
        values += [b - down * root for root in reversed(_ROOTS[: SLICES - rising])]
        shift = self.mean - math.fsum(values) / SLICES
        return [value + shift for value in values]
