"""The table of what materials hold back of the heat, and what a code asks for."""

from __future__ import annotations

from typing import Literal

from pydantic import Field

from leanto.source import Source
from leanto.strict import Strict
from leanto.trade.citation import CitedRow, CitedTable
from leanto.trade.tables import read_table

Face = Literal["lining", "cladding", "covering", "deck", "film", "opening", "floor"]


class LayerR(CitedRow):
    """Resistance of one layer as it is built, hour x sq ft x deg F / Btu."""

    part: Face
    id: str
    r: float = Field(ge=0)
    note: str = ""


class FillR(CitedRow):
    """Resistance of a fill for each inch."""

    id: str
    r_per_in: float = Field(ge=0)
    note: str = ""


class BattR(CitedRow):
    """The batt that fills a cavity of this depth or more."""

    cavity_in: float = Field(gt=0)
    r: float = Field(gt=0)


class CavityAir(CitedRow):
    """An empty cavity between two faces."""

    r: float = Field(gt=0)


class Framing(CitedRow):
    """Share of a wall that is solid wood, for members at this spacing or wider."""

    spacing_in: float = Field(gt=0)
    share: float = Field(gt=0, lt=1)


class SlabEdge(CitedRow):
    """Loss along the edge of a slab, Btu / hour x ft x deg F."""

    bare: float = Field(gt=0)
    insulated: float = Field(gt=0)
    insulated_as: str


class AirChange(CitedRow):
    """Air changed for outdoor air, times an hour."""

    as_it_is: float = Field(gt=0)
    sealed: float = Field(gt=0)


class ZoneTarget(Strict):
    """What the code asks for in one climate zone; ``plus`` stands outside the framing."""

    zone: int = Field(ge=1, le=8)
    ceiling: float
    walls: float
    walls_plus: float = 0.0
    floor: float


class Targets(CitedRow):
    """Insulation by climate zone."""

    zones: tuple[ZoneTarget, ...] = Field(min_length=8, max_length=8)


class RTable(CitedTable):
    """Everything in checklists/tables/r_values.yaml."""

    layers: tuple[LayerR, ...] = Field(min_length=1)
    fills: tuple[FillR, ...] = Field(min_length=1)
    batts: tuple[BattR, ...] = Field(min_length=1)
    cavity_air: CavityAir
    framing: tuple[Framing, ...] = Field(min_length=1)
    wood: FillR
    slab_edge: SlabEdge
    air_change: AirChange
    targets: Targets

    def layer(self, part: Face, name: str) -> LayerR:
        """The layer of this part and id; ValueError when the table holds none."""
        for row in self.layers:
            if (row.part, row.id) == (part, name):
                return row
        raise ValueError(f"no R value for the {part} {name!r}")

    def fill(self, name: str) -> FillR:
        """The fill of this id; ValueError when the table holds none."""
        for row in self.fills:
            if row.id == name:
                return row
        raise ValueError(f"no R value for the fill {name!r}")

    def target(self, zone: int) -> ZoneTarget:
        """What the code asks for in a zone from 1 to 8."""
        for row in self.targets.zones:
            if row.zone == zone:
                return row
        raise ValueError(f"climate zones run from 1 to 8: {zone}")


def r_table() -> RTable:
    """The shipped values, checklists/tables/r_values.yaml."""
    return read_table("r_values.yaml", RTable)


def cited(row: CitedRow) -> Source:
    """The source of a row of the table of R values."""
    return r_table().cite(row)
