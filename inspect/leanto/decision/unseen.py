"""What is not known of a surface: the damaged share of its unseen part, as a distribution.

With probability 1 - p nothing is damaged, with probability p the damaged share is Beta(a, b). The
costs of both courses are straight lines in that share, so means and values of looking follow in
closed form but for one integral.
"""

from __future__ import annotations

import math
from dataclasses import dataclass, replace
from functools import cache

_SLICES = 400


@dataclass(frozen=True, slots=True)
class Unseen:
    """Damaged share x of the unseen part: 0 with probability 1 - p, else Beta(a, b)."""

    p: float
    a: float
    b: float
    """a and b are at least 1, so that the density has no pole."""

    def __post_init__(self) -> None:
        if not 0.0 <= self.p <= 1.0:
            raise ValueError("a probability lies between 0 and 1")
        if self.a < 1.0 or self.b < 1.0:
            raise ValueError("a and b must be at least 1")

    @property
    def extent(self) -> float:
        """Mean damaged share when there is damage."""
        return self.a / (self.a + self.b)

    @property
    def mean(self) -> float:
        """Mean damaged share, damage or none."""
        return self.p * self.extent

    @property
    def variance(self) -> float:
        """E[x^2] - E[x]^2, with E[x^2] = p (a + 1) a / ((a + b + 1)(a + b))."""
        total = self.a + self.b
        square = self.p * (self.a + 1) * self.a / ((total + 1) * total)
        return square - self.mean**2

    @property
    def slices(self) -> tuple[tuple[float, float], ...]:
        """Middle and weight of equal slices of 0 to 1 under Beta(a, b); the weights add up to 1."""
        return _slices(self.a, self.b)

    def quantile(self, u: float) -> float:
        """The share that is not passed with probability ``u``, to the width of a slice."""
        if u <= 1 - self.p:
            return 0.0
        rest, passed = (u - (1 - self.p)) / self.p, 0.0
        for share, weight in self.slices:
            passed += weight
            if passed >= rest:
                return share
        return 1.0

    def with_chance(self, p: float) -> Unseen:
        return replace(self, p=p)


@cache
def _slices(a: float, b: float) -> tuple[tuple[float, float], ...]:
    middles = [(index + 0.5) / _SLICES for index in range(_SLICES)]
    logs = [(a - 1) * math.log(x) + (b - 1) * math.log(1 - x) for x in middles]
    peak = max(logs)  # taken off, as a narrow density underflows
    weights = [math.exp(log - peak) for log in logs]
    total = math.fsum(weights)
    return tuple((x, w / total) for x, w in zip(middles, weights, strict=True))


@dataclass(frozen=True, slots=True)
class Line:
    """A course's expected cost as a straight line in the damaged share: start + rise x share."""

    start_usd: float
    rise_usd: float

    def at(self, share: float) -> float:
        return self.start_usd + self.rise_usd * share


def posterior(prior: float, ratios: tuple[float, ...]) -> float:
    """The chance of damage after evidence: odds times every likelihood ratio.

    A ratio of infinity is proof: the chance is 1.
    """
    if not 0.0 <= prior <= 1.0:
        raise ValueError("a probability lies between 0 and 1")
    if prior == 1.0 or any(math.isinf(ratio) for ratio in ratios):
        return 1.0
    odds = prior / (1 - prior) * math.prod(ratios)
    return odds / (1 + odds)


def break_even(keep: Line, gut: Line) -> float | None:
    """The damaged share at which both courses cost the same; None outside 0 to 1 or parallel."""
    if keep.rise_usd == gut.rise_usd:
        return None
    share = (gut.start_usd - keep.start_usd) / (keep.rise_usd - gut.rise_usd)
    return share if 0.0 <= share <= 1.0 else None


def least_expected(unseen: Unseen, keep: Line, gut: Line) -> float:
    """The expected cost of the better course, chosen now."""
    return min(keep.at(unseen.mean), gut.at(unseen.mean))


def value_of_perfect_information(unseen: Unseen, keep: Line, gut: Line) -> float:
    """What knowing the share before choosing would save on average, in dollars; never negative.

    min over courses of E[cost] - E[min over courses of cost].
    """
    clean = min(keep.at(0.0), gut.at(0.0))
    damaged = math.fsum(w * min(keep.at(x), gut.at(x)) for x, w in unseen.slices)
    informed = (1 - unseen.p) * clean + unseen.p * damaged
    # The mean by the same slices, so that both sides of the difference are rounded alike.
    mean = unseen.p * math.fsum(w * x for x, w in unseen.slices)
    return max(0.0, min(keep.at(mean), gut.at(mean)) - informed)
