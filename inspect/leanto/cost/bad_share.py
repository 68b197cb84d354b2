"""A Beta(a, b) share cut in equally likely slices, as lines are."""

from __future__ import annotations

import math
from functools import cache

from leanto.cost.triangle import SLICES

_STEPS = 4096


@cache
def sliced(a: float, b: float) -> tuple[float, ...]:
    """The middle quantile of each slice, moved so that the mean a / (a + b) is kept exactly.

    ``a`` and ``b`` are at least 1, so that the density has no pole.
    """
    if a < 1 or b < 1:
        raise ValueError("a and b must be at least 1")
    middles = [(step + 0.5) / _STEPS for step in range(_STEPS)]
    logs = [(a - 1) * math.log(x) + (b - 1) * math.log(1 - x) for x in middles]
    peak = max(logs)  # taken off, as a narrow density underflows
    weights = [math.exp(log - peak) for log in logs]
    total = math.fsum(weights)
    values, passed, step = [], 0.0, 0
    for index in range(SLICES):
        wanted = total * (index + 0.5) / SLICES
        while passed + weights[step] < wanted:
            passed += weights[step]
            step += 1
        values.append((step + (wanted - passed) / weights[step]) / _STEPS)
    # By a factor, as a shift would lead below zero.
    scale = a / (a + b) / (math.fsum(values) / SLICES)
    return tuple(min(1.0, value * scale) for value in values)
