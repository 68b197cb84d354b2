"""The range of a total in closed form, fast enough for every key of the walk.

Mean and variance come from ``leanto.cost.risk``; the shape is taken as log-normal, since a sum of
costs times shared factors leans to the dear side. The reports draw the distribution instead.
"""

from __future__ import annotations

import math
from collections.abc import Iterable
from statistics import NormalDist

from leanto.cost.estimate import Range
from leanto.cost.risk import HiddenRisk, LineShapes, SharedShapes, moments
from leanto.money import Spread


def range_of(
    total: Spread,
    lines: Iterable[LineShapes],
    hidden: Iterable[HiddenRisk],
    shared: SharedShapes,
) -> Range:
    """The range of the total of the lines and the hidden damage; ``total`` is their plain sum."""
    expected = moments(lines, hidden, shared)
    mean, variance = expected.mean, expected.variance
    if mean <= 0 or variance <= 0:
        at = dict.fromkeys((0.1, 0.5, 0.8, 0.9), mean)
    else:
        spread = math.log(1 + variance / mean**2)
        shape = NormalDist(math.log(mean) - spread / 2, math.sqrt(spread))
        at = {p: math.exp(shape.inv_cdf(p)) for p in (0.1, 0.5, 0.8, 0.9)}
    return Range(
        low=float(total.low),
        likely=float(total.likely),
        high=float(total.high),
        mean=mean,
        p10=at[0.1],
        p50=at[0.5],
        p80=at[0.8],
        p90=at[0.9],
    )
