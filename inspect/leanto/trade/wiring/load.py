"""The load a building is planned for, by its use."""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass
from typing import Annotated

from pydantic import Field

from leanto.source import Source
from leanto.strict import Strict
from leanto.trade.tables import read_table
from leanto.trade.wiring.confirm import CONFIRM, code

RECEPTACLE_VA = 180
RECEPTACLE_SOURCE = code("220.14(I) and (L), each yoke other than in a dwelling")
FARM_SHARES = (1.0, 0.75, 0.65)
FARM_REST = 0.50
FARM_SOURCE = code("Table 220.103, farm loads, largest first")
FRACTION_SOURCE = code("220.5(B), a fraction of an ampere below 0.5 may be dropped")

Amount = Annotated[float, Field(ge=0)]


class Load(Strict):
    """One thing that draws power."""

    name: str
    va: Annotated[float, Field(gt=0)]
    is_continuous: bool
    """It runs three hours or more at a time."""


class UseRow(Strict):
    use: str
    general_va_per_sqft: Amount
    receptacle_every_ft: Amount
    """Planned spacing along the walls; 0 when only the least number is planned."""
    is_habitable: bool
    loads: tuple[Load, ...]


class UseTable(Strict):
    source: Source
    general_source: Source
    uses: tuple[UseRow, ...]


@dataclass(frozen=True, slots=True)
class PlannedLoad:
    """The load in volt-amperes, and what it is made of."""

    loads: tuple[Load, ...]
    """The general load of lights and receptacles first."""
    source: Source
    general_source: Source
    confirm: str = CONFIRM

    @property
    def continuous_va(self) -> float:
        return sum(load.va for load in self.loads if load.is_continuous)

    @property
    def other_va(self) -> float:
        return sum(load.va for load in self.loads if not load.is_continuous)

    @property
    def total_va(self) -> float:
        return self.continuous_va + self.other_va


def use_table() -> UseTable:
    """Planning loads and receptacle spacing by use."""
    return read_table("electrical_uses.yaml", UseTable)


def use_row(use: str) -> UseRow:
    """The planning figures of a use, such as ``workshop``; ValueError for an unknown one."""
    for row in use_table().uses:
        if row.use == use:
            return row
    raise ValueError(f"no planning load for the use {use!r}")


def planned_load(
    use: str, floor_sqft: float, own_loads: Sequence[Load] | None = None
) -> PlannedLoad:
    """The load for a use: floor area x VA per sq ft, and the tools and appliances.

    ``own_loads`` replaces the planning list with the owner's. All loads are taken at once, with
    no demand factor; an electrician's calculation under Article 220 may come out lower.
    """
    if not math.isfinite(floor_sqft) or floor_sqft <= 0:
        raise ValueError(f"a floor has an area: {floor_sqft}")
    table, row = use_table(), use_row(use)
    loads = row.loads if own_loads is None else tuple(own_loads)
    general_va = floor_sqft * row.general_va_per_sqft
    if general_va > 0:
        general = Load(name="lights and general receptacles", va=general_va, is_continuous=False)
        loads = (general, *loads)
    return PlannedLoad(loads, table.source, table.general_source)


def amps(va: float, volts: float) -> float:
    """Amps from volt-amperes, single phase."""
    if volts <= 0 or va < 0:
        raise ValueError(f"volts are more than zero, volt-amperes not below: {va}, {volts}")
    return va / volts


def whole_amps(exact_a: float) -> int:
    """Amps with a fraction below 0.5 dropped, else rounded up. Source: 220.5(B)."""
    return math.floor(exact_a + 0.5)


def receptacle_va(count: int) -> float:
    """Load of receptacles outside a dwelling: 180 VA a yoke. Source: 220.14."""
    return float(RECEPTACLE_VA * count)


def circuits(va: float, volts: float, rating_a: float) -> int:
    """Circuits of a rating that a load divides into, rounded up."""
    if rating_a <= 0:
        raise ValueError(f"a rating is more than zero: {rating_a}")
    return math.ceil(amps(va, volts) / rating_a - 1e-9)


def farm_demand_va(loads_va: Sequence[float]) -> float:
    """Several farm loads together: largest whole, then 75, 65 and 50 percent for the rest.

    Source: Table 220.103.
    """
    largest_first = sorted(loads_va, reverse=True)
    shares = [*FARM_SHARES, *[FARM_REST] * max(0, len(largest_first) - len(FARM_SHARES))]
    return sum(va * share for va, share in zip(largest_first, shares, strict=False))
