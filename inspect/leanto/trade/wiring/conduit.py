"""Conduit fill: the smallest trade size that holds a set of conductors."""

from __future__ import annotations

from collections.abc import Sequence
from enum import StrEnum
from typing import Annotated, Literal

from pydantic import Field

from leanto.source import Source
from leanto.strict import Strict
from leanto.trade.tables import read_table

Insulation = Literal["THWN-2", "XHHW-2"]
"""Types for wet places; the inside of a buried conduit is one. THHN has the area of THWN-2."""
Positive = Annotated[float, Field(gt=0)]
Share = Annotated[float, Field(gt=0, le=1)]
ROUND_UP_FROM = 0.8
"""Same-size count: a remainder from 0.8 up counts as one more. Source: Chapter 9 note 7."""


class Conduit(StrEnum):
    SCHEDULE_40 = "PVC Schedule 40"
    SCHEDULE_80 = "PVC Schedule 80"
    EMT = "EMT"


class SizeRow(Strict):
    trade_size: str
    schedule_40_sqin: Positive
    schedule_80_sqin: Positive
    emt_sqin: Positive
    pvc_outside_in: Positive


class Fill(Strict):
    one: Share
    two: Share
    over_two: Share
    nipple: Share


class ConductorArea(Strict):
    size: str
    thwn_2_sqin: Positive
    xhhw_2_sqin: Positive


class ConduitTable(Strict):
    source: Source
    outside_source: Source
    sizes: tuple[SizeRow, ...]
    fill_source: Source
    fill: Fill
    conductor_source: Source
    conductors: tuple[ConductorArea, ...]


def conduit_table() -> ConduitTable:
    """Chapter 9 Tables 1, 4 and 5."""
    return read_table("electrical_conduit.yaml", ConduitTable)


def trade_sizes() -> tuple[str, ...]:
    """Trade sizes, smallest first."""
    return tuple(row.trade_size for row in conduit_table().sizes)


def conductor_area_sqin(size: str, insulation: Insulation = "THWN-2") -> float:
    """Area of one insulated conductor, square inches. Source: Chapter 9 Table 5."""
    for row in conduit_table().conductors:
        if row.size == size:
            return row.thwn_2_sqin if insulation == "THWN-2" else row.xhhw_2_sqin
    raise ValueError(f"no conductor of size {size!r} in the table")


def inside_area_sqin(trade_size: str, conduit: Conduit) -> float:
    """Total inside area, square inches. Source: Chapter 9 Table 4."""
    row = _row(trade_size)
    by_kind = {
        Conduit.SCHEDULE_40: row.schedule_40_sqin,
        Conduit.SCHEDULE_80: row.schedule_80_sqin,
        Conduit.EMT: row.emt_sqin,
    }
    return by_kind[conduit]


def outside_in(trade_size: str) -> float:
    """Outside diameter of rigid PVC conduit, inches."""
    return _row(trade_size).pvc_outside_in


def fill_share(count: int, *, is_nipple: bool = False) -> float:
    """Share of the inside that ``count`` conductors may take; a nipple is at most 24 in long.

    Grounding conductors count. Source: Chapter 9 Table 1 and notes 3 and 4.
    """
    if count < 1:
        raise ValueError(f"a conduit holds at least one conductor: {count}")
    fill = conduit_table().fill
    if is_nipple:
        return fill.nipple
    return {1: fill.one, 2: fill.two}.get(count, fill.over_two)


def smallest_trade_size(
    areas_sqin: Sequence[float], conduit: Conduit, *, is_nipple: bool = False
) -> str | None:
    """The smallest trade size that holds conductors of these areas; None past 3 in."""
    wanted = sum(areas_sqin)
    share = fill_share(len(areas_sqin), is_nipple=is_nipple)
    for size in trade_sizes():
        if wanted <= inside_area_sqin(size, conduit) * share:
            return size
    return None


def most_of_one_size(area_sqin: float, trade_size: str, conduit: Conduit) -> int:
    """How many conductors of one area a conduit holds. Source: Chapter 9 Table 1, note 7."""
    if area_sqin <= 0:
        raise ValueError(f"a conductor has an area: {area_sqin}")
    inside = inside_area_sqin(trade_size, conduit)
    exact = inside * fill_share(3) / area_sqin
    count = int(exact) + (exact - int(exact) >= ROUND_UP_FROM)
    if count > 2:
        return count
    # One and two conductors have shares of their own and no rounding up.
    return max((n for n in (1, 2) if n * area_sqin <= inside * fill_share(n)), default=0)


def _row(trade_size: str) -> SizeRow:
    for row in conduit_table().sizes:
        if row.trade_size == trade_size:
            return row
    raise ValueError(f"no conduit of trade size {trade_size!r} in the table")
