"""Live, snow and dead loads in pounds per square foot."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass
from typing import Literal

from pydantic import Field

from leanto.source import Source
from leanto.trade.citation import CitedRow, CitedTable
from leanto.trade.tables import read_table

Part = Literal["covering", "deck", "lining", "insulation"]

FRAMING_PCF = 32.0
"""Weight of framing lumber, pounds per cubic foot."""
FRAMING_SOURCE = Source("ASCE 7", "2016", "Table C3.1-2", "from memory")
SNOW_SOURCE = Source("ASCE 7", "2010", "equation 7.3-1")
UNHEATED_THERMAL = 1.2
UNHEATED_SOURCE = Source("ASCE 7", "2016", "Table 7.3-2", "from memory")


class FloorUse(CitedRow):
    """What a floor carries in one use."""

    id: str
    live_psf: float = Field(gt=0)
    least_psf: float | None = Field(default=None, gt=0)
    """What it must carry whatever an engineer finds; ``live_psf`` when left out."""
    by_table: bool
    """Whether the span tables cover this use."""
    note: str = ""


class AtticLive(CitedRow):
    """Live load over a ceiling nobody lives above."""

    no_storage_psf: float = Field(gt=0)
    limited_storage_psf: float = Field(gt=0)
    storage_clear_height_in: float = Field(gt=0)
    """With this height or more under the rafters, storage has to be expected."""


class RoofLive(CitedRow):
    """Live load on roofs flatter than this rise in 12; the last row has no limit."""

    below_rise_in_12: float | None = Field(default=None, gt=0)
    live_psf: float = Field(gt=0)


class DeadDefaults(CitedRow):
    """Dead loads the span tables are printed for."""

    floor_psf: float
    tiled_floor_psf: float
    ceiling_psf: float
    storage_ceiling_psf: float
    roof_psf: float
    heavy_roof_psf: float


class Weight(CitedRow):
    """Dead load of one layer."""

    part: Part
    id: str
    psf: float = Field(ge=0)
    note: str = ""


class LoadTable(CitedTable):
    """Everything in checklists/tables/loads.yaml."""

    floor_uses: tuple[FloorUse, ...] = Field(min_length=1)
    attic: AtticLive
    roof_live: tuple[RoofLive, ...] = Field(min_length=1)
    dead_defaults: DeadDefaults
    weights: tuple[Weight, ...] = Field(min_length=1)


@dataclass(frozen=True, slots=True)
class Load:
    """A load and why it is that."""

    psf: float
    reasons: tuple[str, ...]


def load_table() -> LoadTable:
    """The shipped loads, checklists/tables/loads.yaml."""
    return read_table("loads.yaml", LoadTable)


def floor_use(use: str) -> FloorUse:
    """The floor load of a use such as ``workshop``; ValueError when there is none."""
    for row in load_table().floor_uses:
        if row.id == use:
            return row
    raise ValueError(f"no floor load for the use {use!r}")


def attic_live_load(storage: bool, clear_height_in: float | None = None) -> Load:
    """Live load over a ceiling: 20 psf with limited storage or room for it, else 10 psf.

    Source: International Residential Code, Table R301.5.
    """
    table = load_table()
    attic = table.attic
    cited = f"({table.cite(attic)})"
    if storage:
        psf = attic.limited_storage_psf
        return Load(psf, (f"Limited storage above: {psf:g} psf live {cited}.",))
    if clear_height_in is not None and clear_height_in >= attic.storage_clear_height_in:
        psf = attic.limited_storage_psf
        why = (
            f"{clear_height_in:g} in. clear above, {attic.storage_clear_height_in:g} in. or more: "
            f"storage has to be expected, {psf:g} psf live {cited}."
        )
        return Load(psf, (why,))
    psf = attic.no_storage_psf
    return Load(psf, (f"Insulation only, nothing stored: {psf:g} psf live {cited}.",))


def roof_live_psf(rise_in_12: float) -> float:
    """Roof live load in psf: 20 below 4 in 12, 16 below 12 in 12, 12 from there on.

    For up to 200 sq ft on one member. Source: International Residential Code, Table R301.6.
    """
    if not rise_in_12 >= 0:
        raise ValueError(f"rise_in_12 must be zero or more: {rise_in_12}")
    for row in load_table().roof_live:
        if row.below_rise_in_12 is None or rise_in_12 < row.below_rise_in_12:
            return row.live_psf
    raise ValueError("the roof live load table has no last row")


def flat_roof_snow_psf(
    ground_psf: float, exposure: float = 1.0, thermal: float = 1.0, importance: float = 1.0
) -> float:
    """Snow on a flat roof in psf, 0.7 x Ce x Ct x Is x ground snow; ASCE 7-10 equation 7.3-1.

    An unheated building takes a thermal factor of 1.2. Drifts and slides are not in it.
    """
    if not ground_psf >= 0 or min(exposure, thermal, importance) <= 0:
        raise ValueError("ground snow must be zero or more and every factor more than zero")
    return 0.7 * exposure * thermal * importance * ground_psf


def framing_psf(breadth_in: float, depth_in: float, spacing_in: float) -> float:
    """Dead load of members at a spacing, psf, at 32 pounds per cubic foot."""
    if min(breadth_in, depth_in, spacing_in) <= 0:
        raise ValueError("member sizes must be more than zero")
    return breadth_in * depth_in / 144.0 * FRAMING_PCF * 12.0 / spacing_in


def dead_load(parts: Iterable[tuple[Part, str, float]], framing: float = 0.0) -> Load:
    """Dead load of layers such as ``("covering", "asphalt shingle", 2)``, with the framing's psf.

    By area along the slope; ValueError for a part the table does not hold.
    """
    table = load_table()
    rows = {(row.part, row.id): row for row in table.weights}
    total, reasons = framing, []
    if framing:
        reasons.append(f"Framing: {framing:.1f} psf ({FRAMING_SOURCE}).")
    for part, name, layers in parts:
        row = rows.get((part, name))
        if row is None:
            raise ValueError(f"no weight for the {part} {name!r}")
        if not layers >= 0:
            raise ValueError(f"layers must be zero or more: {layers}")
        psf = row.psf * layers
        total += psf
        if psf:
            of = f"{layers:g} x {row.psf:g} = " if layers != 1 else ""
            size = f", {row.note}" if row.note else ""
            reasons.append(f"{name.capitalize()}{size}: {of}{psf:.1f} psf ({table.cite(row)}).")
    return Load(total, tuple(reasons))
