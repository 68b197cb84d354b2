"""The table of what debris weighs and what carries it away."""

from __future__ import annotations

from typing import Literal, Self

from pydantic import Field, model_validator

from leanto.source import Source
from leanto.strict import Strict
from leanto.trade.citation import CitedRow, CitedTable
from leanto.trade.tables import read_table


class UnitWeight(CitedRow):
    """Weight of one unit in place."""

    low_lb: float = Field(gt=0)
    high_lb: float = Field(gt=0)


class LooseDensity(CitedRow):
    """Weight of a cubic yard once torn out and thrown in a heap."""

    low_lb_per_cy: float = Field(gt=0)
    high_lb_per_cy: float = Field(gt=0)


class DebrisMaterial(Strict):
    """A material that is stripped."""

    label: str
    unit: str
    weights: tuple[UnitWeight, ...] = Field(min_length=1)
    loose: str
    """How it lies in a heap, an id under the table's `densities`."""


class Container(CitedRow):
    """What carries debris away: room, and the weight it may hold by the sources."""

    label: str
    volume_cy: float = Field(gt=0)
    low_limit_lb: float = Field(gt=0)
    high_limit_lb: float = Field(gt=0)

    @model_validator(mode="after")
    def _low_comes_first(self) -> Self:
        if self.low_limit_lb > self.high_limit_lb:
            raise ValueError("low_limit_lb is over high_limit_lb")
        return self


class Fill(CitedRow):
    """Share of a container that loose debris really fills."""

    share: float = Field(gt=0, le=1)


When = Literal["asbestos suspect", "old paint", "treated wood", "fouled", "heavy", "always"]
"""What brings up something that may not go with the rest; ``always`` is looked for anywhere."""


class KeptApart(CitedRow):
    """Something that may not go in with the rest."""

    id: str
    what: str
    instead: str
    """Where it goes, and how."""
    who: str
    when: When


class DebrisTable(CitedTable):
    """Materials and containers."""

    densities: dict[str, tuple[LooseDensity, ...]]
    materials: dict[str, DebrisMaterial]
    containers: dict[str, Container]
    fill: Fill
    apart: tuple[KeptApart, ...] = Field(min_length=1)

    @model_validator(mode="after")
    def _every_heap_has_a_density(self) -> Self:
        for name, material in self.materials.items():
            if not self.densities.get(material.loose):
                raise ValueError(f"{name} lies {material.loose}, which has no density")
        return self


def debris_table() -> DebrisTable:
    """The shipped table of debris."""
    return read_table("debris.yaml", DebrisTable)


def find_debris(name: str) -> DebrisMaterial:
    """The material of this id; ValueError lists the ids there are."""
    materials = debris_table().materials
    if name not in materials:
        raise ValueError(f"no debris {name}; there are {', '.join(sorted(materials))}")
    return materials[name]


def find_container(name: str) -> Container:
    """The container of this id; ValueError lists the ids there are."""
    containers = debris_table().containers
    if name not in containers:
        raise ValueError(f"no container {name}; there are {', '.join(sorted(containers))}")
    return containers[name]


def debris_sources(name: str) -> tuple[Source, ...]:
    """The sources behind the weights of one material."""
    material, table = find_debris(name), debris_table()
    rows = (*material.weights, *table.densities[material.loose])
    return tuple(dict.fromkeys(table.cite(row) for row in rows))
