"""A conductor by size and metal: area, resistance, ampacity."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass
from typing import Annotated, Literal

from pydantic import Field

from leanto.source import Source
from leanto.strict import Strict
from leanto.trade.tables import per_tables, read_table

Metal = Literal["copper", "aluminum"]
Column = Literal[60, 75, 90]
"""Temperature column of the ampacity table, deg C."""
Columns = tuple[int, int, int]
Positive = Annotated[float, Field(gt=0)]


class ResistanceRow(Strict):
    size: str
    area_cmil: Annotated[int, Field(gt=0)]
    copper_ohm_per_kft: Positive
    copper_solid_ohm_per_kft: Positive | None = None
    aluminum_ohm_per_kft: Positive
    aluminum_solid_ohm_per_kft: Positive | None = None
    reactance_ohm_per_kft: Positive


class ResistanceTable(Strict):
    source: Source
    reactance_source: Source
    rows: tuple[ResistanceRow, ...]


class AmpacityRow(Strict):
    size: str
    copper_a: Columns
    aluminum_a: Columns | None = None


class Crowding(Strict):
    up_to_conductors: int
    factor: Annotated[float, Field(gt=0, le=1)]


class AmpacityTable(Strict):
    source: Source
    rows: tuple[AmpacityRow, ...]
    crowding_source: Source
    crowding: tuple[Crowding, ...]


def resistance_table() -> ResistanceTable:
    """Chapter 9 Table 8 with the reactance of Table 9."""
    return read_table("electrical_resistance.yaml", ResistanceTable)


def ampacity_table() -> AmpacityTable:
    """Table 310.16 with the factors for crowded raceways."""
    return read_table("electrical_ampacity.yaml", AmpacityTable)


@dataclass(frozen=True, slots=True)
class Conductor:
    """One size of one metal."""

    size: str
    """``14`` to ``1``, ``1/0`` to ``4/0`` in AWG; ``250`` and up in kcmil."""
    metal: Metal
    area_cmil: int
    ohm_per_kft: float
    """Direct current, 75 C, stranded, one way."""
    solid_ohm_per_kft: float | None
    reactance_ohm_per_kft: float
    """To neutral, 60 Hz, in PVC or aluminum conduit."""
    ampacity_60c_a: int
    ampacity_75c_a: int
    ampacity_90c_a: int

    @property
    def label(self) -> str:
        """Size and metal the way they are said: ``6 AWG copper``, ``250 kcmil aluminum``."""
        return f"{size_label(self.size)} {self.metal}"

    def ampacity_a(self, column_c: Column) -> int:
        """Amps in one temperature column. Source: Table 310.16."""
        by_column = {60: self.ampacity_60c_a, 75: self.ampacity_75c_a, 90: self.ampacity_90c_a}
        return by_column[column_c]


def size_label(size: str) -> str:
    """The size with its unit: ``6 AWG``, ``1/0 AWG``, ``250 kcmil``."""
    is_kcmil = "/" not in size and int(size) >= 250
    return f"{size} {'kcmil' if is_kcmil else 'AWG'}"


@per_tables(maxsize=8)
def conductors(metal: Metal) -> tuple[Conductor, ...]:
    """Every listed size of a metal, smallest first."""
    ampacities = {
        row.size: row.copper_a if metal == "copper" else row.aluminum_a
        for row in ampacity_table().rows
    }
    listed = []
    for row in sorted(resistance_table().rows, key=lambda row: row.area_cmil):
        amps = ampacities.get(row.size)
        if amps is None:
            continue
        is_copper = metal == "copper"
        listed.append(
            Conductor(
                row.size,
                metal,
                row.area_cmil,
                row.copper_ohm_per_kft if is_copper else row.aluminum_ohm_per_kft,
                row.copper_solid_ohm_per_kft if is_copper else row.aluminum_solid_ohm_per_kft,
                row.reactance_ohm_per_kft,
                *amps,
            )
        )
    return tuple(listed)


def conductor(size: str, metal: Metal) -> Conductor:
    """The conductor of a size and metal; ValueError when the table lists none."""
    for one in conductors(metal):
        if one.size == size:
            return one
    raise ValueError(f"no {metal} conductor of size {size!r} in the table")


def smallest(metal: Metal, fits: Callable[[Conductor], bool]) -> Conductor | None:
    """The smallest conductor that fits, or None when even the largest listed does not."""
    return next((one for one in conductors(metal) if fits(one)), None)


def smallest_for_ampacity(metal: Metal, amps: float, column_c: Column) -> Conductor | None:
    """The smallest conductor whose ampacity in the column reaches ``amps``; None past the table."""
    return smallest(metal, lambda one: one.ampacity_a(column_c) >= amps)


def smallest_for_area(metal: Metal, area_cmil: float) -> Conductor | None:
    """The smallest conductor of at least this area in circular mils; None past the table."""
    return smallest(metal, lambda one: one.area_cmil >= area_cmil)


def crowding_factor(current_carrying: int) -> float:
    """Share of the ampacity left when this many current-carrying conductors run together.

    The neutral of a 120/240 V feed and the grounding conductor are not counted. ValueError past
    20. Source: 310.15(C)(1), from memory.
    """
    if current_carrying < 1:
        raise ValueError(f"at least one conductor carries current: {current_carrying}")
    for step in ampacity_table().crowding:
        if current_carrying <= step.up_to_conductors:
            return step.factor
    raise ValueError(f"the table ends at 20 conductors together: {current_carrying}")
