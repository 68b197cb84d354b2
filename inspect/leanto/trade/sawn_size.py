"""What a named piece of lumber measures: full sawn, dressed before 1964, dressed since."""

from __future__ import annotations

from enum import StrEnum

from pydantic import Field

from leanto.source import Mark
from leanto.strict import Strict
from leanto.trade.tables import read_table


class Surfacing(StrEnum):
    """How the piece was milled; old outbuildings hold all three."""

    FULL = "full sawn"
    OLD_DRESSED = "dressed before 1964"
    DRESSED = "dressed since 1964"


class SawnSize(Strict):
    """One named size and what it measures, breadth by depth in inches."""

    name: str = Field(pattern=r"^[0-9]+x[0-9]+$")
    dressed_in: tuple[float, float]
    old_dressed_in: tuple[float, float] | None = None
    """None when no figure for the time before 1964 is at hand."""
    mark: Mark
    old_mark: Mark = "from memory"

    @property
    def nominal_in(self) -> tuple[float, float]:
        """Breadth and depth in the name; a full-sawn piece measures this."""
        breadth, depth = self.name.split("x")
        return float(breadth), float(depth)

    def actual_in(self, surfacing: Surfacing) -> tuple[float, float]:
        """Breadth and depth in inches; ValueError when the table holds none for this surfacing."""
        if surfacing is Surfacing.FULL:
            return self.nominal_in
        if surfacing is Surfacing.DRESSED:
            return self.dressed_in
        if self.old_dressed_in is None:
            raise ValueError(f"no size from before 1964 for {self.name}: measure the piece")
        return self.old_dressed_in


class SawnSizes(Strict):
    """Every named size."""

    source: str = Field(min_length=1)
    rows: tuple[SawnSize, ...] = Field(min_length=1)

    def size(self, name: str) -> SawnSize:
        """The size called ``name`` such as 2x8; ValueError when there is none."""
        for row in self.rows:
            if row.name == name:
                return row
        raise ValueError(f"no lumber size {name!r}")


def sawn_sizes() -> SawnSizes:
    """The shipped sizes, checklists/tables/wood_sawn_sizes.yaml."""
    return read_table("wood_sawn_sizes.yaml", SawnSizes)


def actual_size_in(name: str, surfacing: Surfacing = Surfacing.DRESSED) -> tuple[float, float]:
    """Breadth and depth in inches of a named size; a tape on the piece goes before any table."""
    return sawn_sizes().size(name).actual_in(surfacing)
