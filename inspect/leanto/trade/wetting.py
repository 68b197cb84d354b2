"""The table of waters and of what wet materials allow."""

from __future__ import annotations

from typing import Literal

from pydantic import Field

from leanto.trade.citation import CitedRow, CitedTable
from leanto.trade.mold import Words
from leanto.trade.tables import read_table

Category = Literal[1, 2, 3]
WhenWet = Literal["dry", "dry if whole", "dry if clean and quick", "clean and dry", "take out"]
WhenFoul = Literal["take out", "disinfect"]


class HoursRange(CitedRow):
    """Hours from low to high."""

    low_hours: float = Field(gt=0)
    high_hours: float = Field(gt=0)


class Hours(CitedRow):
    """A number of hours."""

    hours: float = Field(gt=0)


class Inches(CitedRow):
    """A length."""

    inches: float = Field(gt=0)


class CutLines(CitedRow):
    """Heights at which lining is commonly cut, upward."""

    inches: tuple[float, ...] = Field(min_length=1)


class Origin(CitedRow):
    """Where water came from."""

    label: str
    category: Category


class Material(CitedRow):
    """What a material allows once wet, and once wet with foul water."""

    label: str
    wet: WhenWet
    foul: WhenFoul
    foul_source: str


class WaterTable(CitedTable):
    """Waters, materials and limits."""

    dry_within: HoursRange
    wicking: Inches
    cut_above_wet: Inches
    cut_lines: CutLines
    close_up: Words
    worsens_after: Hours
    origins: dict[str, Origin]
    materials: dict[str, Material]


def water_table() -> WaterTable:
    """The shipped table of waters and wet materials."""
    return read_table("water.yaml", WaterTable)


def find_origin(name: str) -> Origin:
    """The origin of this id; ValueError lists the ids there are."""
    origins = water_table().origins
    if name not in origins:
        raise ValueError(f"no water {name}; there are {', '.join(sorted(origins))}")
    return origins[name]


def find_material(name: str) -> Material:
    """The material of this id; ValueError lists the ids there are."""
    materials = water_table().materials
    if name not in materials:
        raise ValueError(f"no material {name}; there are {', '.join(sorted(materials))}")
    return materials[name]
