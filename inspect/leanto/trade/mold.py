"""The band a moldy area falls in, and how work of that size is done."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass
from typing import Literal

from pydantic import Field

from leanto.source import Source
from leanto.trade.citation import CitedRow, CitedTable
from leanto.trade.tables import read_table

MoldSize = Literal["none", "small", "medium", "large"]


class AreaLimit(CitedRow):
    """An area that parts two bands."""

    sqft: float = Field(gt=0)


class Words(CitedRow):
    """A sentence with its source."""

    text: str


class BandWork(CitedRow):
    """How moldy material is dealt with in one band."""

    method: str
    who: str


class MoldTable(CitedTable):
    """Bands of moldy area."""

    small_below: AreaLimit
    large_above: AreaLimit
    least_protection: Words
    bands: dict[Literal["small", "medium", "large"], BandWork]


@dataclass(frozen=True, slots=True)
class MoldBand:
    """Size of the moldy area and the work it calls for; a method, no health limit."""

    size: MoldSize
    area_sqft: float
    method: str
    who: str
    protection: str
    reasons: tuple[str, ...]
    sources: tuple[Source, ...]


def mold_table() -> MoldTable:
    """The shipped table of mold bands."""
    return read_table("mold.yaml", MoldTable)


def mold_band(patches_sqft: Iterable[float], may_spread: bool = False) -> MoldBand:
    """The band of the total of all patches; mold in fill or likely to spread counts as large."""
    areas = tuple(patches_sqft)
    if any(area < 0 for area in areas):
        raise ValueError(f"an area must be zero or more: {areas}")
    total = sum(areas)
    if total == 0:
        return MoldBand("none", 0.0, "", "", "", ("No mold was seen.",), ())
    table = mold_table()
    size, reason = _size(total, may_spread, table)
    work = table.bands[size]
    limits = (table.small_below, table.large_above, work, table.least_protection)
    return MoldBand(
        size,
        total,
        work.method,
        work.who,
        table.least_protection.text,
        (reason,),
        tuple(dict.fromkeys(table.cite(row) for row in limits)),
    )


def _size(
    total: float, may_spread: bool, table: MoldTable
) -> tuple[Literal["small", "medium", "large"], str]:
    small, large = table.small_below.sqft, table.large_above.sqft
    if total > large:
        return "large", f"{total:g} sq ft in all, over {large:g} sq ft."
    if may_spread:
        return "large", f"{total:g} sq ft in all, but in fill or likely to spread."
    if total >= small:
        return "medium", f"{total:g} sq ft in all, between {small:g} and {large:g} sq ft."
    return "small", f"{total:g} sq ft in all, under {small:g} sq ft."
