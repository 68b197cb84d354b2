"""Years a roof covering may still serve: a range from published lives, never a promise."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal

from leanto.source import COMMON_PRACTICE, Source
from leanto.trade.coverings import cite, find_covering
from leanto.trade.outcome import Outcome

SeenCondition = Literal["sound", "worn", "failed"]

WORN_LEFT_SHARE = 0.5
WORN_SOURCE = COMMON_PRACTICE
"""A covering that looks worn has spent half its longest life at least."""

WANTED_YEARS = 2.0
WANTED_SOURCE = Source("HUD reference guide for appraisals", place="1-24, roof")

NO_PROMISE = "A range from published lives, not a forecast for this roof."


@dataclass(frozen=True, slots=True)
class YearRange:
    """Years from low to high; no `high` means no published upper end."""

    low: float
    high: float | None


@dataclass(frozen=True, slots=True)
class LifeLeft:
    """Years a covering may still serve, with what led to them."""

    years: YearRange | None
    """None when no life is published for the covering."""
    used: tuple[float, float] | None
    """Least and greatest share of the published lives that the age makes; None without both."""
    wanted: Outcome
    """How the range compares with the two years a lender's guide wants."""
    reasons: tuple[str, ...]
    sources: tuple[Source, ...]


def service_life(covering: str) -> YearRange | None:
    """Shortest and longest published life of a covering, or None if there is none."""
    lives = find_covering(covering).lives
    if not lives:
        return None
    highs = [life.high_years for life in lives]
    high = None if None in highs else max(high for high in highs if high is not None)
    return YearRange(min(life.low_years for life in lives), high)


def life_left(
    covering: str,
    age_years: tuple[float, float] | None,
    seen: SeenCondition | None,
    wanted_years: float = WANTED_YEARS,
) -> LifeLeft:
    """Years left from the covering, its age from low to high, and how it looks.

    None stands for an age or a condition that is not known. A failed covering has none left
    whatever its age; a worn one has at most half of its longest life left.
    """
    if age_years is not None and not 0 <= age_years[0] <= age_years[1]:
        raise ValueError(f"an age runs from low to high: {age_years}")
    kind = find_covering(covering)
    life = service_life(covering)
    sources = [cite(row) for row in kind.lives]
    if seen == "failed":
        return LifeLeft(
            YearRange(0.0, 0.0),
            _used(life, age_years),
            Outcome.FAILS,
            ("It has failed; age does not matter any more.",),
            (COMMON_PRACTICE,),
        )
    if life is None:
        return LifeLeft(
            None,
            None,
            Outcome.UNDECIDED,
            (f"No published life is on file for {kind.label}.",),
            (),
        )
    reasons = [f"Published lives for {kind.label} run {_words(life)}."]
    low, high = _by_age(life, age_years, reasons)
    if seen == "worn":
        low, high = _cap_worn(life, low, high, reasons)
        sources.append(WORN_SOURCE)
    elif seen is None:
        reasons.append("Its condition was not seen.")
        low = 0.0
    reasons.append(NO_PROMISE)
    sources.append(WANTED_SOURCE)
    return LifeLeft(
        YearRange(low, high),
        _used(life, age_years),
        _compare(low, high, wanted_years),
        tuple(reasons),
        tuple(dict.fromkeys(sources)),
    )


def _by_age(
    life: YearRange, age_years: tuple[float, float] | None, reasons: list[str]
) -> tuple[float, float | None]:
    if age_years is None:
        reasons.append("Its age is not known.")
        return 0.0, life.high
    low = max(0.0, life.low - age_years[1])
    high = None if life.high is None else max(0.0, life.high - age_years[0])
    years = " to ".join(f"{age:g}" for age in dict.fromkeys(age_years))
    reasons.append(f"It is {years} years old.")
    if high == 0:
        reasons.append("It is past every published life; count on nothing.")
    return low, high


def _cap_worn(
    life: YearRange, low: float, high: float | None, reasons: list[str]
) -> tuple[float, float | None]:
    reasons.append("It looks worn, so at most half of its longest life is left.")
    longest = life.high if life.high is not None else life.low
    cap = longest * WORN_LEFT_SHARE
    return min(low, cap), cap if high is None else min(high, cap)


def _used(
    life: YearRange | None, age_years: tuple[float, float] | None
) -> tuple[float, float] | None:
    if life is None or age_years is None:
        return None
    longest = life.high if life.high is not None else life.low
    return age_years[0] / longest, age_years[1] / life.low


def _compare(low: float, high: float | None, wanted_years: float) -> Outcome:
    if low >= wanted_years:
        return Outcome.PASSES
    if high is not None and high < wanted_years:
        return Outcome.FAILS
    return Outcome.UNDECIDED


def _words(life: YearRange) -> str:
    if life.high is None:
        return f"{life.low:g} years and more"
    return f"{life.low:g} to {life.high:g} years"
