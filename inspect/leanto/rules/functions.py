"""The functions an expression may call."""

from __future__ import annotations

import math
from collections.abc import Callable

from leanto.rules.undecidable import NoNumber

FEET = "feet"
INCHES = "inches"
NUMBER = "number"
"""Takes the unit off, for formulas whose constants carry units themselves."""

LIMIT = 1e12
"""The largest number an expression may hold."""

KNOWN = "known"
FOUND_HERE = "found_here"
FOUND_ABOVE = "found_above"
FOUND_BESIDE = "found_beside"
FOUND_BELOW = "found_below"
FOUND_ANYWHERE = "found_anywhere"
SEARCHES = (FOUND_HERE, FOUND_ABOVE, FOUND_BESIDE, FOUND_BELOW, FOUND_ANYWHERE)
"""Each takes the id of a rule in quotes and says whether that rule made a finding there."""

_DECIMALS = 9
"""Kept before rounding, so that 3.0000000000000004 pieces are three."""


def bounded(number: float) -> float:
    """The number itself; NoNumber when it is not finite or beyond 1e12."""
    if -LIMIT <= number <= LIMIT:
        return number
    raise NoNumber("a number beyond all measure")


def quotient(top: float, bottom: float) -> float:
    """Top over bottom; NoNumber when bottom is zero."""
    if bottom == 0:
        raise NoNumber("division by zero")
    return top / bottom


def ceiling(number: float) -> float:
    return float(math.ceil(round(number, _DECIMALS)))


def floor(number: float) -> float:
    return float(math.floor(round(number, _DECIMALS)))


def rounded(number: float) -> float:
    """The nearest whole number, half away from zero."""
    return math.copysign(floor(abs(number) + 0.5), number)


def root(number: float) -> float:
    """The square root; NoNumber below zero."""
    if number < 0:
        raise NoNumber("square root of a number below zero")
    return math.sqrt(number)


OF_ONE: dict[str, Callable[[float], float]] = {
    FEET: lambda inches: inches / 12,
    INCHES: lambda feet: feet * 12,
    NUMBER: lambda number: number,
    "abs": abs,
    "ceil": ceiling,
    "floor": floor,
    "round": rounded,
    "sqrt": root,
}
OF_MANY: dict[str, Callable[[list[float]], float]] = {"max": max, "min": min}

NAMES = frozenset({*OF_ONE, *OF_MANY, KNOWN, *SEARCHES})
