"""Old paint that work disturbs, against the limits of the federal renovation rule."""

from __future__ import annotations

import math
from collections.abc import Mapping
from dataclasses import dataclass
from typing import Final

from leanto.source import Source

LEAD_BEFORE_YEAR: Final = 1978
INSIDE_LIMIT_SQFT: Final = 6.0
"""Painted surface that may be disturbed in one room, within 30 days."""
OUTSIDE_LIMIT_SQFT: Final = 20.0
"""Painted surface that may be disturbed outside, all sides together."""
LEAD_SOURCE = Source(
    "40 CFR 745.83, minor repair and maintenance activities",
    place="6 sq ft a room inside, 20 sq ft outside; windows and demolition never count as minor",
)
OUTSIDE_SOURCE = Source(
    "EPA frequent questions on the renovation rule",
    place="question 23002-18379: the total of all sides outside counts",
)


@dataclass(frozen=True, slots=True)
class Disturbed:
    """Whether old paint that is disturbed comes under the rule, and why."""

    is_suspect: bool
    """Built before 1978 and not tested."""
    is_over: bool
    """More than the rule lets pass as minor work."""
    reasons: tuple[str, ...]
    sources: tuple[Source, ...] = (LEAD_SOURCE, OUTSIDE_SOURCE)


def disturbed_paint(
    year_built: int,
    inside_sqft: Mapping[str, float],
    outside_sqft: float,
    *,
    replaces_windows: bool = False,
    demolishes: bool = False,
) -> Disturbed:
    """Whether the areas to be disturbed pass the limits of the rule.

    ``inside_sqft`` is by room. A part that is taken out counts with its whole painted face.
    Source: 40 CFR 745.83.
    """
    if any(not math.isfinite(a) or a < 0 for a in (*inside_sqft.values(), outside_sqft)):
        raise ValueError(f"an area is zero or more: {dict(inside_sqft)}, {outside_sqft}")
    if year_built >= LEAD_BEFORE_YEAR:
        why = f"Built in {year_built}; paint from {LEAD_BEFORE_YEAR} on is not held to hold lead."
        return Disturbed(False, False, (why,))
    reasons = [f"Built in {year_built}, before {LEAD_BEFORE_YEAR}: lead until a test says not."]
    over = [
        f"{room}: {area:.3g} sq ft of old paint; the limit in a room is "
        f"{INSIDE_LIMIT_SQFT:g} sq ft."
        for room, area in inside_sqft.items()
        if area > INSIDE_LIMIT_SQFT
    ]
    if outside_sqft > OUTSIDE_LIMIT_SQFT:
        over.append(
            f"Outside: {outside_sqft:.3g} sq ft of old paint; the limit is "
            f"{OUTSIDE_LIMIT_SQFT:g} sq ft."
        )
    if replaces_windows:
        over.append("A window is to be replaced: that is never minor work.")
    if demolishes:
        over.append("Painted parts are to be torn out: that is never minor work.")
    return Disturbed(True, bool(over), (*reasons, *over))
