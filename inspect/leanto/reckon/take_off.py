"""What a new covering of each slope takes: squares, bundles, felt, edges, walls, flues, valleys."""

from __future__ import annotations

from typing import Final

from leanto.building.block_shape import joined_side
from leanto.building.joints import blocks_against
from leanto.building.kinds import Covering, OpeningKind, RoofForm, Side
from leanto.building.model import Block
from leanto.building.surface import PlacedOpening, Surface
from leanto.quantities import FEET
from leanto.reckon.basis import Basis
from leanto.reckon.model import CONFIRM_ROOF, COUNTED, Figure, Reckoning, cited
from leanto.source import Source
from leanto.trade import roofing
from leanto.trade.step_flashing import (
    CRICKET_SOURCE,
    STEP_SOURCE,
    check_cricket,
    flash_curb,
    step_pieces,
)

_FORM_OF: Final[dict[RoofForm, roofing.RoofForm]] = {
    RoofForm.GABLE: "gable",
    RoofForm.SHED: "shed",
    RoofForm.FLAT: "shed",
    RoofForm.HIP: "hip",
}


def take_off(basis: Basis, block: Block, surface: Surface) -> Reckoning:
    """The material for one slope, openings left out, with waste and laps."""
    covering, rise = block.roof.covering, surface.pitch_in_12 or 0.0
    waste = roofing.WASTE_BY_FORM[_FORM_OF[block.roof.form]]
    area = surface.net_area_sqft
    figures = [
        Figure("Area", f"{area:.0f} sq ft"),
        Figure("Squares", f"{roofing.squares(area):.2f}"),
        Figure(f"With {waste:.0%} waste", f"{roofing.squares(area, waste):.2f} squares"),
    ]
    sources: list[Source] = [roofing.WASTE_SOURCE]
    eave_ft, rake_ft, ridge_ft = _edges_ft(block, surface)
    if covering is Covering.ASPHALT_SHINGLE and rise >= roofing.LEAST_SHINGLE_SLOPE:
        figures += _shingles(area, rise, waste, eave_ft, ridge_ft)
        sources += [roofing.BUNDLE_SOURCE, roofing.FELT_SOURCE, roofing.UNDERLAYMENT_SOURCE]
    pieces = roofing.drip_edge_pieces(eave_ft, rake_ft)
    figures.append(
        Figure(
            "Drip edge",
            f"{FEET.length(eave_ft)} of eave and {FEET.length(rake_ft)} of rake: "
            f"{counted(pieces, 'piece')} of {roofing.DRIP_EDGE_FT:g} ft",
        )
    )
    sources.append(roofing.DRIP_EDGE_SOURCE)
    if ridge_ft:
        figures.append(Figure("Ridge, this side's half", FEET.length(ridge_ft / 2)))
    figures += _at_walls(basis, block, surface)
    for opening in surface.openings:
        figures += _curb(opening)
    if len(surface.openings) or _side_walls_ft(basis, block, surface):
        sources += [STEP_SOURCE, CRICKET_SOURCE]
    return Reckoning(
        id=f"roof-take-off@{surface.id}",
        title=f"{surface.name}, what a new covering takes",
        station_id=surface.id,
        verdict=COUNTED,
        figures=tuple(figures),
        reasons=(
            "By area along the slope, openings left out; waste, laps and whole pieces on top.",
        ),
        sources=cited(sources),
        confirm=CONFIRM_ROOF,
        facts={"roof_squares": roofing.squares(area, waste)},
    )


def _shingles(
    area: float, rise: float, waste: float, eave_ft: float, ridge_ft: float
) -> list[Figure]:
    """Bundles with starter and half the caps of a shared ridge; felt by the slope."""
    extra = roofing.starter_bundles(eave_ft) + roofing.cap_bundles(ridge_ft / 2)
    bundles = roofing.shingle_bundles(area, waste, extra_bundles=extra)
    layers = roofing.underlayment_layers(rise)
    rolls = roofing.underlayment_rolls(area, layers, roofing.FELT_ROLL_SQFT["No. 15"])
    doubled = ", doubled below 4 in 12" if layers == 2 else ""
    return [
        Figure("Shingles", f"{counted(bundles, 'bundle')}, starter and caps among them"),
        Figure(
            "Underlayment",
            f"{counted(rolls, 'roll')} of No. 15 felt, {counted(layers, 'layer')}{doubled}",
        ),
        Figure("Starter course", FEET.length(eave_ft)),
    ]


def _edges_ft(block: Block, surface: Surface) -> tuple[float, float, float]:
    """(eave, rakes, ridge and hips) of a slope in feet; edges at a wall are no rakes."""
    base = surface.outline[1][0] - surface.outline[0][0]
    if block.roof.form is RoofForm.HIP:
        top = surface.outline[2:]
        ridge = abs(top[0][0] - top[-1][0])
        run = (base - ridge) / 2
        hip = (run**2 + surface.height_ft**2) ** 0.5
        return base, 0.0, ridge + 2 * hip
    free = 2 - len(_wall_ends(block, surface))
    eave = base * (2 if block.roof.form is RoofForm.FLAT and surface.meets is None else 1)
    ridge = base if block.roof.form is RoofForm.GABLE else 0.0
    if block.roof.form is RoofForm.SHED and surface.meets is None:
        eave = base * 2
    return eave, surface.height_ft * free, ridge


def _wall_ends(block: Block, surface: Surface) -> tuple[Side, ...]:
    """The ends of a slope that run up along the wall of another block."""
    side = joined_side(block)
    if side is None or surface.side is None or block.roof.form is RoofForm.HIP:
        return ()
    return () if side in (surface.side, surface.side.opposite) else (side,)


def _side_walls_ft(basis: Basis, block: Block, surface: Surface) -> float:
    """How far the slope runs up along walls, where the wall stands higher than the eave."""
    if block.attached is None or not _wall_ends(block, surface):
        return 0.0
    host = basis.block(block.attached.to)
    return surface.height_ft if host.eave_height > block.eave_height else 0.0


def _at_walls(basis: Basis, block: Block, surface: Surface) -> list[Figure]:
    figures = []
    along_ft = _side_walls_ft(basis, block, surface)
    if along_ft:
        count = step_pieces(along_ft)
        figures.append(
            Figure(
                "Step flashing",
                f"{counted(count, 'piece')} up {FEET.length(along_ft)} of wall; 1 kickout",
            )
        )
    if surface.meets is not None:
        figures.append(Figure("Apron at the wall above", FEET.length(surface.width_ft)))
    valley_ft = _valley_ft(basis, block, surface)
    if valley_ft:
        rolls = roofing.valley_rolls(valley_ft)
        figures.append(
            Figure("Valley", f"{FEET.length(valley_ft)}: {counted(rolls, 'roll')} of metal")
        )
    return figures


def _valley_ft(basis: Basis, block: Block, surface: Surface) -> float:
    """Valleys on this slope where a ridge of another block runs into it: two, up to its ridge."""
    if surface.side is None:
        return 0.0
    length_ft = 0.0
    for other in blocks_against(basis.building, block, surface.side):
        has_ridge = other.roof.form in (RoofForm.GABLE, RoofForm.HIP)
        top_ft = other.eave_height + other.width / 2 * (other.roof.pitch or 0.0) / 12
        if has_ridge and top_ft > block.eave_height and surface.side is not joined_side(block):
            rise_ft = top_ft - block.eave_height
            own = (block.roof.pitch or 0.0) / 12
            if own > 0:
                run_ft = rise_ft / own
                length_ft += 2 * ((other.width / 2) ** 2 + run_ft**2 + rise_ft**2) ** 0.5
    return length_ft


def _curb(opening: PlacedOpening) -> list[Figure]:
    if opening.kind not in (OpeningKind.FLUE, OpeningKind.SKYLIGHT):
        return []
    across_in, along_in = opening.rectangle.width_ft * 12, opening.rectangle.height_ft * 12
    curb = flash_curb(across_in, along_in)
    figures = [
        Figure(
            f"{opening.kind.value.capitalize()} {opening.id}",
            f"{FEET.length(curb.perimeter_ft)} of curb, {curb.step_pieces} step flashings",
        )
    ]
    if opening.kind is OpeningKind.FLUE:
        figures.append(Figure(f"Cricket behind {opening.id}", check_cricket(across_in).reason))
    return figures


def counted(number: int, noun: str) -> str:
    """``1 roll``, ``3 rolls``."""
    return f"{number} {noun}" if number == 1 else f"{number} {noun}s"
