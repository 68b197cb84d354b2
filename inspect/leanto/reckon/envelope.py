"""What each part of a room's shell holds back of the heat: as it is, kept and filled, gutted."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, replace
from typing import Literal

from leanto.building.block_shape import rise_per_ft, slope_factor
from leanto.building.kinds import FloorKind, Insulation, Lining, PlaceKind, RoofForm
from leanto.building.model import Block, Framing
from leanto.building.surface import Surface
from leanto.reckon.basis import Basis
from leanto.reckon.member import member_size_in
from leanto.trade.heat_loss import (
    ROOF_AIR_PATH_IN,
    fill_r,
    fitting_batt,
    framed_r,
    joist_framing_share,
    wall_framing_share,
)
from leanto.trade.r_values import r_table

Kind = Literal["walls", "ceiling", "floor"]
USUAL_DEPTH_IN = 3.5
USUAL_BREADTH_IN = 1.5
"""Members whose size no table holds."""


@dataclass(frozen=True, slots=True)
class Part:
    """One part of the shell, per sq ft; every R with films and framing in it."""

    name: str
    kind: Kind
    area_sqft: float
    as_it_is: float
    kept: float
    """The lining stays; the cavity is filled through holes, an attic from above. What is not
    lined is open anyhow and takes what fits."""
    gutted: float
    """The cavity is open and takes what fits."""
    fits_r: float
    """R of the fill alone that fits once it is open: what codes count."""
    kept_fill_r: float


def parts(basis: Basis, block: Block) -> Iterator[Part]:
    """Walls, ceiling or roof, and a framed floor; a slab or dirt loses at its edge instead."""
    for surface in basis.surfaces_in(block.id, PlaceKind.WALL_INSIDE):
        yield _wall(basis, block, surface)
    for surface in basis.surfaces_in(block.id, PlaceKind.CEILING):
        yield _overhead(basis, block, surface)
    if block.floor.kind is FloorKind.JOISTS:
        for surface in basis.surfaces_in(block.id, PlaceKind.FLOOR):
            yield _floor(basis, block, surface)


def volume_cuft(block: Block) -> float:
    """Air of the room: to the ceiling, or up to the roof where there is none."""
    plan = block.length * block.width
    if block.ceiling is not None:
        return plan * block.eave_height
    rise_ft = block.width * rise_per_ft(block)
    is_shed = block.roof.form is RoofForm.SHED
    return plan * (block.eave_height + (rise_ft / 2 if is_shed else rise_ft / 4))


def _wall(basis: Basis, block: Block, surface: Surface) -> Part:
    table, depth_in = r_table(), _depth_in(basis, block.walls)
    cladding = _cladding(block, surface)
    outer = (table.layer("film", "outside").r, table.layer("cladding", cladding).r)
    inner = table.layer("film", "inside wall").r
    share = wall_framing_share(block.walls.spacing * 12)
    return _part(
        surface,
        "walls",
        (*outer, inner),
        surface.lining or Lining.NONE,
        surface.insulation or Insulation.NONE,
        depth_in,
        share,
        kept_fill=table.fill("blown in").r_per_in * depth_in,
    )


def _overhead(basis: Basis, block: Block, surface: Surface) -> Part:
    """A ceiling under an attic; in a room open to the rafters the roof itself."""
    table = r_table()
    if block.ceiling is None:
        roof = block.roof
        depth_in = max(0.5, _depth_in(basis, roof) - ROOF_AIR_PATH_IN)
        faces = (
            table.layer("film", "outside").r,
            table.layer("covering", roof.covering.value).r,
            table.layer("deck", roof.deck.value).r,
            table.layer("film", "inside ceiling").r,
        )
        share = joist_framing_share(_breadth_in(basis, roof), roof.spacing * 12)
        part = _part(surface, "ceiling", faces, Lining.NONE, Insulation.NONE, depth_in, share)
        return replace(part, area_sqft=surface.net_area_sqft * slope_factor(block))
    ceiling = block.ceiling
    films = (table.layer("film", "attic").r, table.layer("film", "inside ceiling").r)
    share = joist_framing_share(_breadth_in(basis, ceiling), ceiling.spacing * 12)
    wanted = target(basis, "ceiling") or 0.0
    on_top = max(wanted, fill_r(table.fill("loose fill"), _depth_in(basis, ceiling)))
    return _part(
        surface,
        "ceiling",
        films,
        surface.lining or Lining.NONE,
        surface.insulation or Insulation.NONE,
        _depth_in(basis, ceiling),
        share,
        kept_fill=on_top,
        open_fill=on_top,
        buried=True,
    )


def _floor(basis: Basis, block: Block, surface: Surface) -> Part:
    table, depth_in = r_table(), _depth_in(basis, block.floor)
    faces = (
        table.layer("film", "inside floor").r,
        table.layer("floor", "boards").r,
        table.layer("film", "below floor").r,
    )
    share = joist_framing_share(_breadth_in(basis, block.floor), block.floor.spacing * 12)
    insulation = surface.insulation or Insulation.NONE
    return _part(surface, "floor", faces, Lining.NONE, insulation, depth_in, share)


def _part(
    surface: Surface,
    kind: Kind,
    faces: tuple[float, ...],
    lining: Lining,
    insulation: Insulation,
    depth_in: float,
    share: float,
    *,
    kept_fill: float = 0.0,
    open_fill: float | None = None,
    buried: bool = False,
) -> Part:
    """``buried``: fill lies over the members too, so that they lose their short cut."""
    table = r_table()
    lining_r = table.layer("lining", lining.value).r
    wood_r = table.wood.r_per_in * depth_in
    batt = fitting_batt(depth_in)
    fits = open_fill if open_fill is not None else batt.r if batt else 0.0
    empty = table.cavity_air.r if lining is not Lining.NONE and not buried else 0.0
    now_fill = _fill_now(insulation, depth_in)
    new_lining = lining_r or table.layer("lining", Lining.GYPSUM_BOARD.value).r
    if kind == "floor":
        new_lining = 0.0

    def framed(fill: float, inside: float) -> float:
        over_wood = max(0.0, fill - table.fill("loose fill").r_per_in * depth_in) if buried else 0.0
        return framed_r((*faces, inside), fill, wood_r + over_wood, share)

    gutted = framed(fits, new_lining)
    is_open = lining is Lining.NONE
    kept_r = fits if is_open else max(kept_fill, now_fill)
    return Part(
        surface.name,
        kind,
        surface.net_area_sqft,
        framed(now_fill or empty, lining_r),
        gutted if is_open else framed(kept_r, lining_r),
        gutted,
        fits,
        kept_r,
    )


def target(basis: Basis, kind: Kind) -> float | None:
    """R of the fill that is wanted: the owner's, else the code's by climate zone; None unknown."""
    own = basis.building.target_r
    given = {"walls": own.walls, "ceiling": own.ceiling, "floor": own.floor}[kind]
    if given is not None or basis.building.climate_zone is None:
        return given
    row = r_table().target(basis.building.climate_zone)
    return {"walls": row.walls, "ceiling": row.ceiling, "floor": row.floor}[kind]


def _fill_now(insulation: Insulation, depth_in: float) -> float:
    """R of what is known to lie in the cavity; what nobody has seen counts for nothing."""
    if insulation in (Insulation.NONE, Insulation.UNKNOWN):
        return 0.0
    return fill_r(r_table().fill(insulation.value), depth_in)


def _cladding(block: Block, surface: Surface) -> str:
    change = block.on_wall.get(surface.side) if surface.side else None
    return (change.cladding if change and change.cladding else block.walls.cladding).value


def _depth_in(basis: Basis, framing: Framing) -> float:
    size = member_size_in(framing, basis.building.year_built)
    return size[1] if size else USUAL_DEPTH_IN


def _breadth_in(basis: Basis, framing: Framing) -> float:
    size = member_size_in(framing, basis.building.year_built)
    return size[0] if size else USUAL_BREADTH_IN
