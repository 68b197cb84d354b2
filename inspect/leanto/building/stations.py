"""The stations of a building, in walking order."""

from __future__ import annotations

from collections.abc import Iterator, Mapping

from leanto.building.block_shape import clockwise_from, joined_side, wall_sides
from leanto.building.joints import blocks_against
from leanto.building.kinds import OpeningKind, PlaceKind, Side
from leanto.building.model import Block, Building
from leanto.building.roof_shape import slope_sides
from leanto.building.station import Station
from leanto.building.surface import PlacedOpening, Surface
from leanto.building.surfaces import surfaces_by_id
from leanto.remembered import remembered

SITE = Station("site", "Site and drainage", PlaceKind.SITE, None)
WIRING = Station("wiring", "Shut-off, panel and wiring", PlaceKind.WIRING, None)
FEED = Station("feed", "Feed from the house panel", PlaceKind.FEED, None)


@remembered(8)
def stations_of(building: Building) -> tuple[Station, ...]:
    """Site, outside walls, roofs, then block by block the inside, wiring, and the feed if any.

    Outside, the walker goes clockwise around the whole building from the wall with the first
    door, past each lean-to where it stands; inside, clockwise around each room from its door,
    the room with the first door first.
    """
    surfaces = surfaces_by_id(building)
    first_wall = _first_door(building, surfaces) or next(iter(surfaces.values()))
    blocks = sorted(building.blocks, key=lambda block: block.id != first_wall.block)
    around = _all_around(building)
    start = around.index(first_wall.id)
    ids = [*around[start:], *around[:start]]
    for block in blocks:
        ids += [f"{block.id}.roof.{side}" for side in _in_order(slope_sides(block), first_wall)]
    for block in blocks:
        door = _first_door(building, surfaces, block) or first_wall
        ids += [f"{block.id}.{side}.inside" for side in _in_order(wall_sides(block), door)]
        ids += [f"{block.id}.ceiling", f"{block.id}.floor"]
    facing = (surfaces[id_] for id_ in ids)
    seen = (Station(surface.id, surface.name, surface.kind, surface.id) for surface in facing)
    return (SITE, *seen, WIRING, *((FEED,) if building.distance_to_panel > 0 else ()))


def _first_door(
    building: Building, surfaces: Mapping[str, Surface], block: Block | None = None
) -> Surface | None:
    """The outside wall with the first listed door to the outdoors, of one block or of any."""
    for opening in building.openings:
        wall = surfaces.get(f"{opening.on}.outside")
        if wall is None or opening.kind not in (OpeningKind.DOOR, OpeningKind.BIG_DOOR):
            continue
        placed = next(seen for seen in wall.openings if seen.id == opening.id)
        if (block is None or wall.block == block.id) and not _is_covered(placed, wall):
            return wall
    return None


def _is_covered(opening: PlacedOpening, wall: Surface) -> bool:
    """True for a door from one block into another."""
    middle_ft = opening.rectangle.left_ft + opening.rectangle.width_ft / 2
    return any(part.left_ft < middle_ft < part.right_ft for part in wall.covered)


def _all_around(building: Building) -> list[str]:
    standing_alone = [block for block in building.blocks if block.attached is None]
    return [wall for block in standing_alone for wall in _around(building, block, tuple(Side))]


def _around(building: Building, block: Block, sides: tuple[Side, ...]) -> Iterator[str]:
    """The outside walls clockwise; what stands against a wall comes right after it.

    Walking clockwise one passes a wall from right to left.
    """
    for side in sides:
        yield f"{block.id}.{side}.outside"
        for other in reversed(blocks_against(building, block, side)):
            joined = joined_side(other)
            if joined is not None:
                yield from _around(building, other, clockwise_from(joined)[1:])


def _in_order(sides: tuple[Side, ...], start: Surface) -> list[Side]:
    order = clockwise_from(start.side or Side.NORTH)
    return [side for side in order if side in sides]
