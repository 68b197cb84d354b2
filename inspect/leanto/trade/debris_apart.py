"""What may not go with the debris: what the building makes expect, and what to look for."""

from __future__ import annotations

from collections.abc import Collection
from dataclasses import dataclass
from typing import Final

from leanto.source import Source
from leanto.trade.debris_table import KeptApart, When, debris_table
from leanto.trade.lead_paint import LEAD_BEFORE_YEAR

ALWAYS: Final[When] = "always"
HEAVY: Final = frozenset({"masonry", "concrete", "earth", "slate", "tile", "plaster"})
"""Materials of the table that fill a container by weight."""
PAINTED: Final = frozenset(
    {
        "boards",
        "ceiling-tile",
        "doors-windows",
        "fiberboard",
        "gypsum-board",
        "gypsum-board-thick",
        "lumber",
        "plaster",
    }
)
"""Materials of the table that are usually painted."""


@dataclass(frozen=True, slots=True)
class Apart:
    """Something to be kept apart, and whether this building makes one expect it."""

    row: KeptApart
    is_expected: bool
    source: Source


def kept_apart(expected: Collection[When]) -> tuple[Apart, ...]:
    """Every row of the table, those first that are expected here, each in its order.

    A row that nothing brings up is still to be looked for, so none is ever left out.
    """
    table = debris_table()
    rows = [Apart(row, row.when in expected, table.cite(row)) for row in table.apart]
    return tuple(sorted(rows, key=lambda one: not one.is_expected))


def expected_in(
    materials: Collection[str],
    year_built: int | None,
    *,
    asbestos_suspect: bool = False,
    paint_cleared: bool = False,
    treated_wood: bool = False,
    fouled: bool = False,
) -> tuple[When, ...]:
    """What debris of these materials of the table makes one expect, by year and what was seen.

    Without a year paint is taken to be old. Source of the year: 40 CFR 745.103, by lead_paint.
    """
    is_old = year_built is None or year_built < LEAD_BEFORE_YEAR
    has_paint = not PAINTED.isdisjoint(materials)
    found: list[tuple[When, bool]] = [
        ("asbestos suspect", asbestos_suspect),
        ("old paint", has_paint and is_old and not paint_cleared),
        ("treated wood", treated_wood),
        ("fouled", fouled),
        ("heavy", not HEAVY.isdisjoint(materials)),
    ]
    return tuple(when for when, is_there in found if is_there)
