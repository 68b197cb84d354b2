"""Where the contingency comes from: each place's part of the spread of the total.

A place's part is its covariance with the total over the variance of the total. The parts add up
to one whatever is grouped, and none is negative, as everything moves the total the same way. For
total = W (C L + H) + P M, with L, M, H sums over the places and W, C, P independent of them:

cov(place i, total) = E[W2] (E[C2] (var l + l L) + E[C] (l H + h L) + var h + h H)
                      - E[W]2 (E[C] l + h) (E[C] L + H)
                      + E[P2] (var m + m M) - E[P]2 m M
                      + 2 E[W] E[C] E[P] cov(l, m)
"""

from __future__ import annotations

import math
from collections.abc import Iterable
from dataclasses import dataclass

from leanto.cost.risk import HiddenRisk, OwnRisk, SharedRisk


@dataclass(slots=True)
class _Place:
    """Sums over one place: means, variances, and labor with materials."""

    labor: float = 0.0
    labor_variance: float = 0.0
    materials: float = 0.0
    materials_variance: float = 0.0
    together: float = 0.0
    hidden: float = 0.0
    hidden_variance: float = 0.0


def shares_of_spread(
    lines: Iterable[tuple[str, OwnRisk]],
    hidden: Iterable[tuple[str, HiddenRisk]],
    shared: SharedRisk,
) -> dict[str, float]:
    """By place, its part of the variance of the total; the parts add up to 1.

    Empty when nothing is uncertain.
    """
    places: dict[str, _Place] = {}
    for name, line in lines:
        place = places.setdefault(name, _Place())
        place.labor += line.labor.mean
        place.labor_variance += line.labor.variance
        place.materials += line.materials.mean
        place.materials_variance += line.materials.variance
        place.together += math.sqrt(line.labor.variance * line.materials.variance)
    for name, risk in hidden:
        place = places.setdefault(name, _Place())
        place.hidden += risk.mean
        place.hidden_variance += risk.variance
    parts = {name: _covariance(place, places.values(), shared) for name, place in places.items()}
    whole = sum(parts.values())
    if whole <= 0:
        return {}
    return {name: max(0.0, part) / whole for name, part in parts.items()}


def _covariance(one: _Place, places: Iterable[_Place], shared: SharedRisk) -> float:
    """Of one place with the sum of all."""
    places = tuple(places)
    labor = sum(place.labor for place in places)
    materials = sum(place.materials for place in places)
    hidden = sum(place.hidden for place in places)
    wages, crew, prices = shared.wages, shared.crew, shared.prices
    square = wages.mean_square * (
        crew.mean_square * (one.labor_variance + one.labor * labor)
        + crew.mean * (one.labor * hidden + one.hidden * labor)
        + one.hidden_variance
        + one.hidden * hidden
    )
    means = wages.mean**2 * (crew.mean * one.labor + one.hidden) * (crew.mean * labor + hidden)
    bought = prices.mean_square * (one.materials_variance + one.materials * materials)
    bought -= prices.mean**2 * one.materials * materials
    return square - means + bought + 2 * wages.mean * crew.mean * prices.mean * one.together
