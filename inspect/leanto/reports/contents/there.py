"""What stands at the place of a line now: sizes and materials that a bidder prices from."""

from __future__ import annotations

from collections.abc import Iterator

from leanto.assessment import Assessment
from leanto.building.kinds import Cladding, Insulation, OpeningKind, PlaceKind
from leanto.building.surface import PlacedOpening, Surface
from leanto.quantities import format_ft_in, format_pitch
from leanto.reckon.section import POST_SIZE
from leanto.scope.item import RepairItem
from leanto.scope.work import Phase

SILL_SIZE = "sill_size"
_OPENINGS = {
    "B2020": (OpeningKind.WINDOW, OpeningKind.VENT),
    "B2030": (OpeningKind.DOOR, OpeningKind.BIG_DOOR),
    "B3020": (OpeningKind.SKYLIGHT,),
}
_MEMBERS = {
    PlaceKind.WALL_OUTSIDE: "studs",
    PlaceKind.WALL_INSIDE: "studs",
    PlaceKind.ROOF: "rafters",
    PlaceKind.FLOOR: "joists",
}
LEAST_POST = 4
"""Nominal inches of its thin side from which a wall member is called a post."""
_WITHOUT = (Phase.PROTECT, Phase.TREAT)
_BESIDE = ("A", "G", "D2040")
"""Substructure, site work and rain water: what the surface is made of does not matter there."""


def there_in_words(item: RepairItem, assessment: Assessment) -> str:
    """Framing, faces, openings and measured sizes at the line's surface; empty without one.

    As typed into the building and measured on the walk; nothing is guessed.
    """
    surface = assessment.surfaces.get(item.surface_id or "")
    if surface is None or item.work.phase in _WITHOUT:
        return ""
    parts = [*_sizes(item, assessment)]
    if not item.work.element.startswith(_BESIDE):
        parts += [*_openings(item, surface), *_of_surface(surface, assessment)]
    return f"There now: {'; '.join(dict.fromkeys(parts))}." if parts else ""


def _sizes(item: RepairItem, assessment: Assessment) -> Iterator[str]:
    """What was measured of the members that the line is about."""
    seen = assessment.walk.observations
    for finding in assessment.judged.grounds:
        observation = seen.get(finding.observation) if finding.id in item.findings else None
        if observation is None:
            continue
        if isinstance(sill := observation.measures.get(SILL_SIZE), str):
            yield f"sill {sill}"
        if isinstance(post := observation.measures.get(POST_SIZE), int | float):
            yield f"post {post:g} in. square"


def _openings(item: RepairItem, surface: Surface) -> Iterator[str]:
    kinds = _OPENINGS.get(item.work.element, ())
    for opening in surface.openings:
        if opening.kind in kinds:
            yield _opening_in_words(opening)


def _opening_in_words(opening: PlacedOpening) -> str:
    shape = opening.rectangle
    size = f"{format_ft_in(shape.width_ft)} wide, {format_ft_in(shape.height_ft)} high"
    return f"{opening.kind} {opening.id}, {size}"


def _of_surface(surface: Surface, assessment: Assessment) -> Iterator[str]:
    if surface.grid is not None:
        grid = surface.grid
        sawn = ", full sawn" if grid.full_size else ""
        what = _members(surface, grid.member, assessment)
        yield f"{grid.member} {what} at {format_ft_in(grid.spacing_ft)}{sawn}"
    yield from _faces(surface, assessment)


def _members(surface: Surface, member: str, assessment: Assessment) -> str:
    if surface.kind is PlaceKind.CEILING:
        block = next(b for b in assessment.building.blocks if b.id == surface.block)
        return "rafters" if block.ceiling is None else "ceiling joists"
    named = _MEMBERS.get(surface.kind, "members")
    return "posts" if named == "studs" and int(member.partition("x")[0]) >= LEAST_POST else named


def _faces(surface: Surface, assessment: Assessment) -> Iterator[str]:
    roof = next(b.roof for b in assessment.building.blocks if b.id == surface.block)
    if surface.covering is not None:
        layers = f", {roof.layers} layers" if roof.layers > 1 else ""
        yield f"{surface.covering}{layers}"
        if surface.pitch_in_12 is not None:
            yield f"{format_pitch(surface.pitch_in_12)} pitch"
        yield f"on {roof.deck}"
    if surface.cladding not in (None, Cladding.NONE):
        yield f"{surface.cladding} outside"
    if surface.is_lined:
        yield f"{surface.lining} inside"
    if surface.insulation not in (None, Insulation.NONE, Insulation.UNKNOWN):
        yield f"{surface.insulation} in the bays"
    if surface.floor_kind is not None and surface.grid is None:
        yield f"{surface.floor_kind} floor"
