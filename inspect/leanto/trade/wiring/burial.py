"""Cover over a buried run, and how deep to dig for it."""

from __future__ import annotations

import math
from enum import StrEnum
from typing import Annotated

from pydantic import Field

from leanto.source import COMMON_PRACTICE, Source
from leanto.strict import Strict
from leanto.trade.tables import read_table
from leanto.trade.wiring.confirm import Check, Verdict, code

GUARD_BELOW_GRADE_IN = 18
"""A rising cable is guarded from its cover depth, at most this far down."""
GUARD_ABOVE_GRADE_FT = 8
GUARD_SOURCE = code("300.5(D)(1), cable rising from the ground")
BEDDING_IN = 2.0
BEDDING_SOURCE = COMMON_PRACTICE
"""Sand or sifted soil under the run."""
DIG_CAUTION = (
    "Before any digging: call the locate service (811) several days ahead, and hire a private "
    "locator for the cable between the buildings, which utilities do not mark. Dig by hand near "
    "marks. Assume a found cable is live."
)

Cover = Annotated[int, Field(ge=0)]


class Place(StrEnum):
    """Where the run lies."""

    YARD = "yard"
    TRENCH_UNDER_CONCRETE = "trench under concrete"
    UNDER_BUILDING = "under a building"
    UNDER_SLAB = "under a slab"
    ROAD = "road"
    HOUSE_DRIVEWAY = "house driveway"
    RUNWAY = "runway"


class Method(StrEnum):
    """How the run is protected."""

    DIRECT_BURIAL = "direct burial cable"
    RIGID_METAL = "rigid or intermediate metal conduit"
    PVC = "PVC conduit"
    GFCI_DIRECT = "120 V branch, 20 A or less, GFCI at its source, cable"
    GFCI_RACEWAY = "120 V branch, 20 A or less, GFCI at its source, raceway"
    LOW_VOLTAGE_DIRECT = "30 V or less, cable"
    LOW_VOLTAGE_RACEWAY = "30 V or less, raceway"


class CoverRow(Strict):
    place: Place
    words: str
    direct_burial_in: Cover
    rigid_metal_in: Cover
    pvc_in: Cover
    gfci_direct_in: Cover
    gfci_raceway_in: Cover
    low_voltage_direct_in: Cover
    low_voltage_raceway_in: Cover


class CoverTable(Strict):
    source: Source
    rows: tuple[CoverRow, ...]


def cover_table() -> CoverTable:
    """Table 300.5."""
    return read_table("electrical_burial.yaml", CoverTable)


def least_cover_in(place: Place, method: Method) -> int:
    """Least inches from the top of the cable or conduit to finished grade.

    Under a building only a raceway, or a cable listed for it, may run. Source: Table 300.5.
    """
    row = next(row for row in cover_table().rows if row.place == place)
    by_method = {
        Method.DIRECT_BURIAL: row.direct_burial_in,
        Method.RIGID_METAL: row.rigid_metal_in,
        Method.PVC: row.pvc_in,
        Method.GFCI_DIRECT: row.gfci_direct_in,
        Method.GFCI_RACEWAY: row.gfci_raceway_in,
        Method.LOW_VOLTAGE_DIRECT: row.low_voltage_direct_in,
        Method.LOW_VOLTAGE_RACEWAY: row.low_voltage_raceway_in,
    }
    return by_method[method]


def trench_depth_in(cover_in: float, outside_in: float, bedding_in: float = BEDDING_IN) -> int:
    """Inches to dig: cover, the thickness of the run, bedding; rounded up to a whole inch."""
    if min(cover_in, outside_in, bedding_in) < 0:
        raise ValueError(f"depths are zero or more: {cover_in}, {outside_in}, {bedding_in}")
    return math.ceil(cover_in + outside_in + bedding_in - 1e-9)


def check_cover(seen_in: float | None, place: Place, method: Method) -> Check:
    """How the cover seen where a run comes to light stands against the table.

    ``seen_in`` is measured without digging; None when nothing is exposed.
    """
    table = cover_table()
    if seen_in is None:
        return Check(Verdict.ASK, "The depth cannot be seen. Do not dig for it.", table.source)
    least = least_cover_in(place, method)
    words = f"{seen_in:g} in of cover; the table asks for {least} in ({method.value})."
    verdict = Verdict.PASSES if seen_in >= least else Verdict.DOES_NOT_PASS
    return Check(verdict, words, table.source)
