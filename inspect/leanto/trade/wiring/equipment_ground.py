"""The grounding conductors of a feed: with the circuit, and to the ground rod."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Annotated

from pydantic import Field

from leanto.source import Source
from leanto.strict import Strict
from leanto.trade.tables import read_table
from leanto.trade.wiring.conductor import Metal, conductor, smallest_for_area
from leanto.trade.wiring.confirm import CONFIRM, code

INCREASE_SOURCE = code("250.122(A) and (B), increase in proportion to circular mils")
ROD_LIMIT = {"copper": "6", "aluminum": "4"}
ROD_LIMIT_SOURCE = code("250.66(A), sole connection to a rod; aluminum from memory")


class EquipmentRow(Strict):
    up_to_a: Annotated[int, Field(gt=0)]
    copper: str
    aluminum: str


class ElectrodeRow(Strict):
    up_to_copper: str
    up_to_aluminum: str
    copper: str
    aluminum: str


class GroundingTable(Strict):
    source: Source
    equipment: tuple[EquipmentRow, ...]
    electrode_source: Source
    electrode: tuple[ElectrodeRow, ...]


@dataclass(frozen=True, slots=True)
class EquipmentGround:
    """The equipment grounding conductor of one circuit."""

    size: str
    metal: Metal
    table_size: str
    """Size by the rating alone."""
    ratio: float
    """Area of the circuit conductors over the area the load alone asks for; 1 = no increase."""
    wanted_cmil: float
    is_capped: bool
    """The proportion asked for more than the circuit conductors, which is never needed."""
    source: Source = INCREASE_SOURCE
    confirm: str = CONFIRM


def grounding_table() -> GroundingTable:
    """Tables 250.122 and 250.66."""
    return read_table("electrical_grounding.yaml", GroundingTable)


def table_ground_size(rating_a: float, metal: Metal) -> str:
    """Smallest equipment grounding conductor for a rating; ValueError past 600 A.

    Source: Table 250.122.
    """
    if rating_a <= 0:
        raise ValueError(f"a rating is more than zero: {rating_a}")
    for row in grounding_table().equipment:
        if rating_a <= row.up_to_a:
            return row.copper if metal == "copper" else row.aluminum
    raise ValueError(f"the table ends at 600 A: {rating_a}")


def equipment_ground(
    rating_a: float, metal: Metal, needed_cmil: float, installed_cmil: float
) -> EquipmentGround:
    """The grounding conductor for a rating, enlarged as the circuit conductors were.

    ``needed_cmil`` is the area the load alone asks for, ``installed_cmil`` what is run. Never
    larger than the circuit conductors. Sources: Table 250.122, 250.122(A) and (B).
    """
    if needed_cmil <= 0 or installed_cmil <= 0:
        raise ValueError(f"areas are more than zero: {needed_cmil}, {installed_cmil}")
    table_size = table_ground_size(rating_a, metal)
    ratio = max(1.0, installed_cmil / needed_cmil)
    wanted_cmil = conductor(table_size, metal).area_cmil * ratio
    is_capped = wanted_cmil > installed_cmil
    one = smallest_for_area(metal, min(wanted_cmil, installed_cmil))
    if one is None:
        raise ValueError(f"no {metal} conductor of {wanted_cmil:.0f} circular mils in the table")
    return EquipmentGround(one.size, metal, table_size, ratio, wanted_cmil, is_capped)


def electrode_size(
    supply_size: str, supply_metal: Metal, metal: Metal = "copper", *, rod_only: bool = True
) -> str:
    """Smallest conductor from the building's disconnect to its ground rod.

    ``rod_only``: it ends at rods and nothing else, where 6 AWG copper is enough at any supply.
    ValueError past the table. Source: Table 250.66 and 250.66(A).
    """
    supply = conductor(supply_size, supply_metal)
    for row in grounding_table().electrode:
        up_to = row.up_to_copper if supply_metal == "copper" else row.up_to_aluminum
        if supply.area_cmil <= conductor(up_to, supply_metal).area_cmil:
            size = row.copper if metal == "copper" else row.aluminum
            break
    else:
        raise ValueError(f"the table read here ends below {supply.label}")
    if not rod_only:
        return size
    limit = ROD_LIMIT[metal]
    is_larger = conductor(size, metal).area_cmil > conductor(limit, metal).area_cmil
    return limit if is_larger else size
