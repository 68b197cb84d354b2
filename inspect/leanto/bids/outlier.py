"""Figures that stand apart from the others, by measures that one odd figure cannot bend."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from statistics import fmean, median

from leanto.source import COMMON_PRACTICE, Source

MODIFIED_Z = Source(
    "Iglewicz and Hoaglin, How to Detect and Handle Outliers",
    "ASQC, 1993",
    "modified z over 3.5",
    "from memory",
)
DISTANCE = COMMON_PRACTICE
Z_LIMIT = 3.5
FEWEST_FOR_Z = 5
"""With fewer figures their spread says too little; the distance from the median is taken."""
FEWEST = 3

_TO_SIGMA = 0.6745
"""Median absolute deviation of a normal distribution, in standard deviations."""
_MEAN_TO_SIGMA = 1.253314
"""Standard deviation of a normal distribution, in mean absolute deviations."""


@dataclass(frozen=True, slots=True)
class Outlier:
    is_over: bool
    """Over the median; under it otherwise."""
    middle: float
    measure: str
    """Such as ``z 8.2``, a modified one, or ``+120%``, from the median."""


def modified_z(values: Sequence[float]) -> tuple[float, ...]:
    """0.6745 (x - median) / MAD for each value, MAD being the median absolute deviation.

    Where more than half of the values are alike the MAD is zero, and the mean absolute deviation
    stands in; all zero where every value is the same. Raises ValueError without values.
    """
    if not values:
        raise ValueError("no values")
    middle = median(values)
    away = [abs(value - middle) for value in values]
    if mad := median(away):
        return tuple(_TO_SIGMA * (value - middle) / mad for value in values)
    if mean := fmean(away):
        return tuple((value - middle) / (_MEAN_TO_SIGMA * mean) for value in values)
    return tuple(0.0 for _ in values)


def outliers(values: Sequence[float], far: float) -> tuple[Outlier | None, ...]:
    """What stands apart: by modified z from five figures on, by distance from the median below.

    ``far`` is the ratio to the median from which a figure is far off, such as 2 for the double or
    the half. Of fewer than three figures none stands apart.
    """
    if len(values) < FEWEST:
        return tuple(None for _ in values)
    middle = median(values)
    if len(values) >= FEWEST_FOR_Z:
        return tuple(
            Outlier(z > 0, middle, f"z {z:.1f}") if abs(z) > Z_LIMIT else None
            for z in modified_z(values)
        )
    return tuple(_by_distance(value, middle, far) for value in values)


def _by_distance(value: float, middle: float, far: float) -> Outlier | None:
    if middle <= 0 or middle / far <= value <= middle * far:
        return None
    return Outlier(value > middle, middle, f"{value / middle - 1:+.0%}")
