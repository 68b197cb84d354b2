"""The surfaces of a building, which follow from its blocks and openings.

A block that stands against another has no wall on that side, neither outside nor inside: the
wall is the other block's, and its outside face is the one seen from within the lean-to. The
part that the lean-to hides is taken off that face's area.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import replace

from leanto.building import framing, polygon, roof_shape
from leanto.building.block_shape import plan_ft, side_length_ft, wall_outline, wall_sides
from leanto.building.joints import blocks_against, hidden_part
from leanto.building.kinds import Insulation, Lining, PlaceKind, RoofForm, Side
from leanto.building.model import Block, Building, WallChange
from leanto.building.rectangle import Rectangle
from leanto.building.surface import FramingGrid, PlacedOpening, Point, Surface
from leanto.building.union import disjoint
from leanto.remembered import remembered


@remembered(8)
def surfaces_by_id(building: Building) -> Mapping[str, Surface]:
    """The surfaces of a building by their ids, in the order of ``surfaces_of``."""
    return {surface.id: surface for surface in surfaces_of(building)}


@remembered(8)
def surfaces_of(building: Building) -> tuple[Surface, ...]:
    """Every surface, block by block: outside walls, roof, inside walls, ceiling, floor.

    The building must be free of the problems that ``leanto.building.check`` finds.
    """
    return tuple(found for block in building.blocks for found in _of_block(building, block))


def _of_block(building: Building, block: Block) -> Iterator[Surface]:
    for side in wall_sides(block):
        yield _wall_outside(building, block, side)
    for side in roof_shape.slope_sides(block):
        yield _slope(building, block, side)
    for side in wall_sides(block):
        yield _wall_inside(building, block, side)
    yield _ceiling(block)
    yield _floor(block)


def _wall_outside(building: Building, block: Block, side: Side) -> Surface:
    change = block.on_wall.get(side, WallChange())
    plain = _surface(
        block,
        f"{side}.outside",
        f"{side} wall, outside",
        PlaceKind.WALL_OUTSIDE,
        side,
        wall_outline(block, side, inside=False),
        framing.wall_grid(block, side, inside=False),
        openings=_openings(building, f"{block.id}.{side}"),
        covered=tuple(hidden_part(other) for other in blocks_against(building, block, side)),
    )
    return replace(
        plain,
        cladding=block.walls.cladding if change.cladding is None else change.cladding,
        insulation=_wall_insulation(block, change),
    )


def _wall_inside(building: Building, block: Block, side: Side) -> Surface:
    """The inside face; an opening that lies above the ceiling is not seen on it."""
    change = block.on_wall.get(side, WallChange())
    outline = wall_outline(block, side, inside=True)
    width = side_length_ft(block, side)
    mirrored = (_mirrored(opening, width) for opening in _openings(building, f"{block.id}.{side}"))
    plain = _surface(
        block,
        f"{side}.inside",
        f"{side} wall, inside",
        PlaceKind.WALL_INSIDE,
        side,
        outline,
        framing.wall_grid(block, side, inside=True),
        openings=tuple(
            opening for opening in mirrored if polygon.clipped_area_sqft(outline, opening.rectangle)
        ),
    )
    return replace(
        plain,
        lining=block.walls.lining if change.lining is None else change.lining,
        insulation=_wall_insulation(block, change),
    )


def _slope(building: Building, block: Block, side: Side) -> Surface:
    """One slope; the single slope of a lean-to names the wall that its top meets."""
    is_only = block.roof.form in (RoofForm.SHED, RoofForm.FLAT)
    plain = _surface(
        block,
        f"roof.{side}",
        "roof" if is_only else f"{side} roof slope",
        PlaceKind.ROOF,
        side,
        roof_shape.slope_outline(block, side),
        framing.slope_grid(block, side),
        openings=_openings(building, f"{block.id}.roof.{side}"),
    )
    met = block.attached if is_only else None
    return replace(
        plain,
        covering=block.roof.covering,
        pitch_in_12=block.roof.pitch or 0.0,
        meets=f"{met.to}.{met.side}.outside" if met else None,
    )


def _ceiling(block: Block) -> Surface:
    """The ceiling; in a room open to the rafters, the underside of its roof, seen as a plan."""
    ceiling = block.ceiling
    plain = _surface(
        block,
        "ceiling",
        "ceiling" if ceiling else "underside of roof",
        PlaceKind.CEILING,
        None,
        _plan(block),
        framing.ceiling_grid(block),
    )
    return replace(
        plain,
        lining=ceiling.lining if ceiling else Lining.NONE,
        insulation=ceiling.insulation if ceiling else Insulation.NONE,
    )


def _floor(block: Block) -> Surface:
    grid = framing.floor_grid(block)
    plain = _surface(block, "floor", "floor", PlaceKind.FLOOR, None, _plan(block), grid)
    return replace(plain, floor_kind=block.floor.kind)


def _surface(
    block: Block,
    part: str,
    words: str,
    kind: PlaceKind,
    side: Side | None,
    outline: tuple[Point, ...],
    grid: FramingGrid | None,
    *,
    openings: tuple[PlacedOpening, ...] = (),
    covered: tuple[Rectangle, ...] = (),
) -> Surface:
    """A surface with its sizes, before its faces are known."""
    gross = polygon.area_sqft(outline)
    width, height = polygon.size_ft(outline)
    return Surface(
        id=f"{block.id}.{part}",
        name=f"{block.name}, {words}",
        block=block.id,
        kind=kind,
        side=side,
        outline=outline,
        openings=openings,
        covered=covered,
        grid=grid,
        gross_area_sqft=gross,
        net_area_sqft=gross - _taken_sqft(outline, openings, covered),
        perimeter_ft=polygon.perimeter_ft(outline),
        width_ft=width,
        height_ft=height,
    )


def _plan(block: Block) -> tuple[Point, ...]:
    east_west, north_south = plan_ft(block)
    return (0.0, 0.0), (east_west, 0.0), (east_west, north_south), (0.0, north_south)


def _openings(building: Building, on: str) -> tuple[PlacedOpening, ...]:
    return tuple(
        PlacedOpening(
            opening.id,
            opening.kind,
            Rectangle(opening.from_left, opening.from_bottom, opening.width, opening.height),
        )
        for opening in building.openings
        if opening.on == on
    )


def _mirrored(opening: PlacedOpening, width_ft: float) -> PlacedOpening:
    seen = opening.rectangle
    left = width_ft - seen.right_ft
    rectangle = Rectangle(left, seen.bottom_ft, seen.width_ft, seen.height_ft)
    return PlacedOpening(opening.id, opening.kind, rectangle)


def _taken_sqft(
    outline: tuple[Point, ...],
    openings: tuple[PlacedOpening, ...],
    covered: tuple[Rectangle, ...],
) -> float:
    """What openings and covered parts take off the outline, an opening in a covered part once."""
    away = disjoint([*(opening.rectangle for opening in openings), *covered])
    return sum(polygon.clipped_area_sqft(outline, part) for part in away)


def _wall_insulation(block: Block, change: WallChange) -> Insulation:
    return block.walls.insulation if change.insulation is None else change.insulation
