"""Reference design values of dimension lumber by species group and grade."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal, Self

from pydantic import Field, model_validator

from leanto.source import Source
from leanto.strict import Strict
from leanto.trade.citation import CitedRow, CitedTable
from leanto.trade.tables import read_table

Species = Literal["douglas_fir", "hem_fir", "spruce_pine_fir", "southern_pine"]
Grade = Literal["select_structural", "no_1", "no_2", "no_3"]
Edition = Literal["current", "older"]

GRADE_NAMES: dict[Grade, str] = {
    "select_structural": "Select Structural",
    "no_1": "No. 1",
    "no_2": "No. 2",
    "no_3": "No. 3",
}

DEEPER_SHARE = 0.9
"""Bending of a piece deeper than its table goes, as a share of the last width's."""


class SpeciesGroup(Strict):
    """A group of species that one grade stamp stands for."""

    id: Species
    name: str = Field(min_length=1)


class DesignRow(CitedRow):
    """One species and grade, psi; bending either needs the size factor or stands by width."""

    species: Species
    grade: Grade
    edition: Edition = "current"
    fb_psi: float | None = Field(default=None, gt=0)
    fb_by_width_psi: tuple[tuple[int, float], ...] = ()
    """Nominal width in inches, rising, and bending; the size factor is already in."""
    fv_psi: float = Field(gt=0)
    fc_perp_psi: float = Field(gt=0)
    e_psi: float = Field(gt=0)

    @model_validator(mode="after")
    def _one_bending_value(self) -> Self:
        if (self.fb_psi is None) == (not self.fb_by_width_psi):
            raise ValueError("give either fb_psi or fb_by_width_psi")
        widths = [width_in for width_in, _ in self.fb_by_width_psi]
        if widths != sorted(set(widths)):
            raise ValueError("the widths of fb_by_width_psi must rise")
        return self

    def bending_psi(self, depth_in: float) -> float:
        """Bending value for a piece of this depth; from the table or below it."""
        if self.fb_psi is not None:
            return self.fb_psi
        for width_in, fb_psi in self.fb_by_width_psi:
            if depth_in <= width_in:
                return fb_psi
        return DEEPER_SHARE * self.fb_by_width_psi[-1][1]


class DesignTable(CitedTable):
    """Every species group and its rows."""

    species: tuple[SpeciesGroup, ...] = Field(min_length=1)
    rows: tuple[DesignRow, ...] = Field(min_length=1)

    @model_validator(mode="after")
    def _no_row_twice(self) -> Self:
        keys = [(row.species, row.grade, row.edition) for row in self.rows]
        for key in keys:
            if keys.count(key) > 1:
                raise ValueError(f"{' '.join(key)} stands twice")
        return self


@dataclass(frozen=True, slots=True)
class DesignValues:
    """Reference values in psi, before adjustment."""

    species: str
    grade: str
    fb_psi: float
    """Bending."""
    fv_psi: float
    """Shear along the grain."""
    fc_perp_psi: float
    """Bearing across the grain."""
    e_psi: float
    """Modulus of elasticity."""
    size_factor_included: bool
    source: Source

    @property
    def name(self) -> str:
        return f"{self.species} {self.grade}"


def design_table() -> DesignTable:
    """The shipped values, checklists/tables/design_values.yaml."""
    return read_table("design_values.yaml", DesignTable)


def species_names() -> dict[Species, str]:
    """The species groups that have values, by id."""
    return {group.id: group.name for group in design_table().species}


def known_species(name: str | None) -> Species | None:
    """The species group of this id, or None when there are no values for it."""
    return next((group for group in species_names() if group == name), None)


def known_grade(name: str | None) -> Grade | None:
    """The grade of this id, or None when it is not one that has values."""
    return next((grade for grade in GRADE_NAMES if grade == name), None)


def design_values(
    species: Species, grade: Grade, depth_in: float, edition: Edition = "current"
) -> DesignValues:
    """Reference values for a piece of this actual depth, psi.

    ``older`` gives the value of earlier tables where they were lower, else the current one.
    ValueError when the table holds no such row.
    Source: NDS Supplement 2018, Tables 4A and 4B; each row carries its mark.
    """
    table = design_table()
    row = _row(table, species, grade, edition) or _row(table, species, grade, "current")
    if row is None:
        raise ValueError(f"no design values for {species} {grade}")
    return DesignValues(
        species=species_names()[species],
        grade=GRADE_NAMES[grade],
        fb_psi=row.bending_psi(depth_in),
        fv_psi=row.fv_psi,
        fc_perp_psi=row.fc_perp_psi,
        e_psi=row.e_psi,
        size_factor_included=row.fb_psi is None,
        source=table.cite(row),
    )


def _row(table: DesignTable, species: Species, grade: Grade, edition: Edition) -> DesignRow | None:
    wanted = (species, grade, edition)
    return next((r for r in table.rows if (r.species, r.grade, r.edition) == wanted), None)
