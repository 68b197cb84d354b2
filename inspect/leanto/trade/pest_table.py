"""The table of pests, clearances and gaps."""

from __future__ import annotations

from typing import Literal, Self

from pydantic import Field, model_validator

from leanto.trade.citation import CitedRow, CitedTable
from leanto.trade.mold import Words
from leanto.trade.tables import read_table

HoleShape = Literal["round", "oval"]


class SizeRange(CitedRow):
    """Sizes from low to high, in inches."""

    low_in: float = Field(gt=0)
    high_in: float = Field(gt=0)

    @model_validator(mode="after")
    def _low_comes_first(self) -> Self:
        if self.low_in > self.high_in:
            raise ValueError(f"low_in {self.low_in} is over high_in {self.high_in}")
        return self


class Holes(SizeRange):
    """Holes a pest leaves."""

    shape: HoleShape


class Recheck(CitedRow):
    """When to look again, and for what."""

    days: int = Field(gt=0)
    days_source: str
    look_for: str


class Treatment(CitedRow):
    """Who treats, and how."""

    by: str
    what: str


class PestKind(CitedRow):
    """One kind of pest."""

    label: str
    signs: tuple[str, ...] = Field(min_length=1)
    against: tuple[str, ...] = ()
    holes: Holes | None = None
    droppings: SizeRange | None = None
    active_when: tuple[tuple[str, ...], ...] = Field(min_length=1)
    recheck: Recheck
    treatment: Treatment
    marks_damp: bool = False
    """Whether finding it means that wood is or was damp."""
    eats_wood: bool = True


class Clearance(CitedRow):
    """The least room between wood and what is below it."""

    label: str
    least_in: float = Field(gt=0)


class Gap(CitedRow):
    """The smallest gap that lets an animal in."""

    least_in: float = Field(gt=0)


class PestTable(CitedTable):
    """Pests by kind, clearances and gaps."""

    kinds: dict[str, PestKind]
    clearances: dict[str, Clearance]
    gaps: dict[str, Gap]
    unknown_strength: Words
    powder_alone: Words

    @property
    def signs(self) -> frozenset[str]:
        """Every sign the table knows."""
        return frozenset(
            sign
            for kind in self.kinds.values()
            for sign in (*kind.signs, *kind.against, *(s for g in kind.active_when for s in g))
        )


def pest_table() -> PestTable:
    """The shipped table of pests."""
    return read_table("pests.yaml", PestTable)


def find_pest(name: str) -> PestKind:
    """The kind of this id; ValueError lists the ids there are."""
    kinds = pest_table().kinds
    if name not in kinds:
        raise ValueError(f"no pest {name}; there are {', '.join(sorted(kinds))}")
    return kinds[name]
