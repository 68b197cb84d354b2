"""Roof coverings as the table lists them."""

from __future__ import annotations

from pydantic import Field

from leanto.source import Source
from leanto.strict import Strict
from leanto.trade.citation import CitedRow, CitedTable
from leanto.trade.tables import read_table


class LeastSlope(CitedRow):
    """The least slope one source allows a covering."""

    rise_in_12: float = Field(ge=0)


class ServiceLife(CitedRow):
    """Years one source gives a covering; no `high_years` means no upper end."""

    low_years: float = Field(gt=0)
    high_years: float | None = Field(default=None, gt=0)


class Duty(CitedRow):
    """Something a source asks of a covering."""


class PastRepair(CitedRow):
    """Signs that a covering is to be replaced and no longer patched."""

    signs: str


class LostShare(CitedRow):
    """Share of pieces missing from which a slope is replaced."""

    lost_pct: float = Field(gt=0, le=100)


class Covering(Strict):
    """One kind of roof covering."""

    label: str
    least_slopes: tuple[LeastSlope, ...] = ()
    solid_deck: Duty | None = None
    must_be_stripped: Duty | None = None
    past_repair: PastRepair | None = None
    replace_from_pct: LostShare | None = None
    lives: tuple[ServiceLife, ...] = ()


class CoveringsTable(CitedTable):
    """Every covering by its id."""

    coverings: dict[str, Covering]


def coverings_table() -> CoveringsTable:
    """The shipped table of coverings."""
    return read_table("coverings.yaml", CoveringsTable)


def find_covering(name: str) -> Covering:
    """The covering of this id; ValueError lists the ids there are."""
    coverings = coverings_table().coverings
    if name not in coverings:
        raise ValueError(f"no covering {name}; there are {', '.join(sorted(coverings))}")
    return coverings[name]


def cite(row: CitedRow) -> Source:
    """The source of a row of the coverings table."""
    return coverings_table().cite(row)
