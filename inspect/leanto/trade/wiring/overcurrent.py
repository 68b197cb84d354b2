"""Fuse or breaker against wire: standard ratings and the largest one a conductor may have."""

from __future__ import annotations

from typing import Annotated

from pydantic import Field

from leanto.source import Source
from leanto.strict import Strict
from leanto.trade.tables import read_table
from leanto.trade.wiring.conductor import Column, Metal, conductor, size_label
from leanto.trade.wiring.confirm import Check, Verdict

NEXT_SIZE_UP_LIMIT_A = 800
"""Above this the next larger rating is not open. Source: 240.4(B), from memory."""


class SmallConductor(Strict):
    size: str
    metal: Metal
    limit_a: Annotated[int, Field(gt=0)]


class OvercurrentTable(Strict):
    source: Source
    standard_ratings_a: tuple[int, ...]
    small_conductor_source: Source
    small_conductors: tuple[SmallConductor, ...]
    next_size_up_source: Source


def overcurrent_table() -> OvercurrentTable:
    """Standard ratings of 240.6(A) and the small conductors of 240.4(D)."""
    return read_table("electrical_overcurrent.yaml", OvercurrentTable)


def rating_at_least_a(amps: float) -> int | None:
    """The smallest standard rating that reaches ``amps``; None past 600 A. Source: 240.6(A)."""
    return next((r for r in overcurrent_table().standard_ratings_a if r >= amps), None)


def rating_at_most_a(amps: float) -> int | None:
    """The largest standard rating not above ``amps``; None below 15 A. Source: 240.6(A)."""
    within = [r for r in overcurrent_table().standard_ratings_a if r <= amps]
    return within[-1] if within else None


def small_conductor_limit_a(size: str, metal: Metal) -> int | None:
    """Largest rating on a small conductor; None for sizes 240.4(D) does not name."""
    for row in overcurrent_table().small_conductors:
        if (row.size, row.metal) == (size, metal):
            return row.limit_a
    return None


def largest_rating_a(
    size: str, metal: Metal, column_c: Column = 60, *, several_receptacles: bool = True
) -> int | None:
    """The largest standard rating the code's tables allow on a conductor; None when none fits.

    ``several_receptacles``: a branch circuit with more than one receptacle, where the next size
    up is not open. Sources: 240.4(B), 240.4(D), 240.6(A), Table 310.16.
    """
    ampacity = conductor(size, metal).ampacity_a(column_c)
    standard = rating_at_most_a(ampacity)
    if not several_receptacles and standard != ampacity:
        above = rating_at_least_a(ampacity)
        if above is not None and above <= NEXT_SIZE_UP_LIMIT_A:
            standard = above
    limit = small_conductor_limit_a(size, metal)
    if limit is None or standard is None:
        return standard
    return min(limit, standard)


def check_rating(
    rating_a: float | None,
    size: str | None,
    metal: Metal = "copper",
    column_c: Column = 60,
    *,
    several_receptacles: bool = True,
) -> Check:
    """How a fuse or breaker stands against the wire it feeds.

    Give None for a rating that is not printed or a size nobody could read from the floor; the
    answer is then to ask. Motor and welder circuits have other rules and are not covered.
    """
    table = overcurrent_table()
    if rating_a is None or size is None:
        missing = "rating" if rating_a is None else "wire size"
        return Check(
            Verdict.ASK,
            f"The {missing} is not known. Leave everything closed.",
            table.source,
        )
    limit = largest_rating_a(size, metal, column_c, several_receptacles=several_receptacles)
    if limit is None:
        return Check(Verdict.DOES_NOT_PASS, "No standard rating fits this wire.", table.source)
    has_own_limit = small_conductor_limit_a(size, metal) is not None
    source = table.small_conductor_source if has_own_limit else table.source
    wire = f"{size_label(size)} {metal}"
    if rating_a > limit:
        return Check(
            Verdict.DOES_NOT_PASS,
            f"{rating_a:g} A is more than the {limit} A the table allows on {wire}. "
            "The wire can overheat before the device trips.",
            source,
        )
    return Check(
        Verdict.PASSES, f"{rating_a:g} A is within the {limit} A allowed on {wire}.", source
    )
