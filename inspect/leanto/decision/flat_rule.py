"""What a flat public rule would set aside: a check on the contingency, never the answer."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Final

from leanto.source import Source

RULE_SOURCE: Final = Source(
    "HUD Handbook 4000.1",
    place="II.A.8.a, contingency reserve of the 203(k) rehabilitation program; article KA-04997",
)
OLD_YEARS: Final = 30


@dataclass(frozen=True, slots=True)
class FlatRule:
    """Percent of the cost of the work."""

    low_pct: float
    high_pct: float
    why: str
    source: Source = RULE_SOURCE

    def low_usd(self, cost_usd: float) -> float:
        return cost_usd * self.low_pct / 100

    def high_usd(self, cost_usd: float) -> float:
        return cost_usd * self.high_pct / 100


def flat_rule(age_years: float, *, has_termite_signs: bool, utilities_work: bool) -> FlatRule:
    """The band of the public rule for a building; dead utilities go before age.

    ValueError for an age below zero.
    """
    if age_years < 0:
        raise ValueError(f"an age is zero or more: {age_years}")
    if not utilities_work:
        return FlatRule(15, 20, "utilities that cannot be used as they stand")
    if age_years >= OLD_YEARS:
        return FlatRule(10, 20, f"a building of {OLD_YEARS} years or more")
    if has_termite_signs:
        return FlatRule(10, 20, f"a building under {OLD_YEARS} years with signs of termites")
    return FlatRule(0, 20, f"a building under {OLD_YEARS} years without signs of termites")
