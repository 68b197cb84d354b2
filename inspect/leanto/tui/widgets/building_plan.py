"""The plan of a building in cells, north at the top, and the areas of its surfaces."""

from __future__ import annotations

import math
from dataclasses import dataclass

from leanto.building.block_shape import plan_ft
from leanto.building.kinds import OpeningKind, PlaceKind, Side
from leanto.building.model import Building, Opening
from leanto.building.surface import Surface
from leanto.building.surfaces import surfaces_of
from leanto.quantities import Unit, shown
from leanto.tui.shown import on_one_line

NORTH, EAST, SOUTH, WEST = 1, 2, 4, 8
_LINES = " ╵╶└╷│┌├╴┘─┴┐┤┬┼"
"""By the arms that a cell has: north 1, east 2, south 4, west 8."""
HERE = "@"
_ROUND = (3, 1)
"""Cells beside and above the plan for somebody who stands outside."""
_OUTWARD = {Side.NORTH: (0, -1), Side.SOUTH: (0, 1), Side.EAST: (1, 0), Side.WEST: (-1, 0)}
"""One step away from a wall: cells to the right and down."""
_LETTERS = {
    OpeningKind.DOOR: "D",
    OpeningKind.BIG_DOOR: "B",
    OpeningKind.WINDOW: "W",
    OpeningKind.VENT: "V",
}
_KINDS = {
    PlaceKind.WALL_OUTSIDE: "walls outside",
    PlaceKind.ROOF: "roof",
    PlaceKind.WALL_INSIDE: "walls inside",
    PlaceKind.CEILING: "ceiling",
    PlaceKind.FLOOR: "floor",
}


@dataclass(frozen=True, slots=True)
class Footprint:
    """A block on the ground, in feet east and north of the first block's corner."""

    block: str
    name: str
    west_ft: float
    south_ft: float
    wide_ft: float
    deep_ft: float


def footprints(building: Building) -> tuple[Footprint, ...]:
    """Where each block stands; the blocks must fit together."""
    placed: dict[str, Footprint] = {}
    left = list(building.blocks)
    while left:
        block = left.pop(0)
        wide, deep = plan_ft(block)
        against = block.attached
        if against is None:
            placed[block.id] = Footprint(block.id, block.name, 0.0, 0.0, wide, deep)
        elif against.to in placed:
            other, offset = placed[against.to], against.offset
            west, south = {
                Side.NORTH: (other.west_ft + other.wide_ft - offset - wide, _north(other)),
                Side.SOUTH: (other.west_ft + offset, other.south_ft - deep),
                Side.EAST: (other.west_ft + other.wide_ft, other.south_ft + offset),
                Side.WEST: (other.west_ft - wide, _north(other) - offset - deep),
            }[against.side]
            placed[block.id] = Footprint(block.id, block.name, west, south, wide, deep)
        else:
            left.append(block)
    return tuple(placed[block.id] for block in building.blocks)


def plan_lines(
    building: Building, columns: int, rows: int, here: Surface | None = None
) -> list[str]:
    """The plan in at most so many cells; a cell is taken to be twice as high as wide.

    With ``here`` a mark shows where somebody stands who faces that surface.
    """
    aside, above = _ROUND if here is not None else (0, 0)
    prints = footprints(building)
    west = min(one.west_ft for one in prints)
    south = min(one.south_ft for one in prints)
    wide = max(one.west_ft + one.wide_ft for one in prints) - west
    deep = max(_north(one) for one in prints) - south
    cells_per_ft = min((columns - 1 - 2 * aside) / wide, 2 * (rows - 1 - 2 * above) / deep)
    edge_ft = aside / cells_per_ft, 2 * above / cells_per_ft
    canvas = _Canvas(west - edge_ft[0], south + deep + edge_ft[1], cells_per_ft, columns, rows)
    for one in prints:
        canvas.box(one)
    for one in prints:
        canvas.write(one)
    by_id = {one.block: one for one in prints}
    for opening in building.openings:
        canvas.opening(building, opening, by_id)
    if here is not None:
        canvas.stand(here, by_id[here.block])
    return canvas.lines()


def area_lines(building: Building) -> list[str]:
    """The net areas of every block's surfaces, each wall and slope by its side."""
    lines: list[str] = []
    surfaces = surfaces_of(building)
    for block in building.blocks:
        lines.append(on_one_line(block.name))
        for kind, words in _KINDS.items():
            fitting = [one for one in surfaces if one.block == block.id and one.kind is kind]
            amounts = [
                f"{one.side.value[0].upper() + ' ' if one.side else ''}{_area(one.net_area_sqft)}"
                for one in fitting
            ]
            if amounts:
                lines.append(f"  {words}: {', '.join(amounts)} {shown().area_unit}")
    return lines


def _area(sqft: float) -> str:
    """The number alone; the unit stands at the end of the line."""
    number = shown().number(sqft, Unit.SQFT)
    return f"{number:,.1f}" if shown().is_metric else f"{number:,.0f}"


def _on_side(at: Footprint, side: Side, from_left_ft: float) -> tuple[float, float]:
    """Feet east and north of a point of a wall, counted from its left end seen from outside."""
    return {
        Side.NORTH: (at.west_ft + at.wide_ft - from_left_ft, _north(at)),
        Side.SOUTH: (at.west_ft + from_left_ft, at.south_ft),
        Side.EAST: (at.west_ft + at.wide_ft, at.south_ft + from_left_ft),
        Side.WEST: (at.west_ft, _north(at) - from_left_ft),
    }[side]


def _middle_of_what_shows_ft(surface: Surface) -> float:
    """The middle of the longest stretch that no other block stands against."""
    stops = [0.0]
    for hidden in sorted(surface.covered):
        stops += [hidden.left_ft, hidden.right_ft]
    stops.append(surface.width_ft)
    stretches = zip(stops[::2], stops[1::2], strict=True)
    left, right = max(stretches, key=lambda stretch: stretch[1] - stretch[0])
    return (left + right) / 2


def _north(one: Footprint) -> float:
    return one.south_ft + one.deep_ft


class _Canvas:
    """Cells with the arms of the lines that cross in them, and the letters on top."""

    def __init__(
        self, west_ft: float, north_ft: float, cells_per_ft: float, columns: int, rows: int
    ) -> None:
        self._west, self._north, self._scale = west_ft, north_ft, cells_per_ft
        self._arms = [[0] * columns for _ in range(rows)]
        self._letters: dict[tuple[int, int], str] = {}

    def box(self, one: Footprint) -> None:
        left, top = self._cell(one.west_ft, _north(one))
        right, bottom = self._cell(one.west_ft + one.wide_ft, one.south_ft)
        for row in (top, bottom):
            for column in range(left, right):
                self._arms[row][column] |= EAST
                self._arms[row][column + 1] |= WEST
        for column in (left, right):
            for row in range(top, bottom):
                self._arms[row][column] |= SOUTH
                self._arms[row + 1][column] |= NORTH

    def write(self, one: Footprint) -> None:
        """The block's name in its middle."""
        left, top = self._cell(one.west_ft, _north(one))
        right, bottom = self._cell(one.west_ft + one.wide_ft, one.south_ft)
        room = right - left - 1
        if bottom - top < 2 or room < 1:
            return
        name = on_one_line(one.name)[:room]
        start = left + 1 + (room - len(name)) // 2
        for at, letter in enumerate(name):
            self._letters[start + at, (top + bottom) // 2] = letter

    def opening(self, building: Building, one: Opening, prints: dict[str, Footprint]) -> None:
        """The letter of its kind in the middle of where it stands in the wall."""
        block_id, _, side_word = one.on.partition(".")
        letter = _LETTERS.get(one.kind)
        if letter is None or side_word not in list(Side) or block_id not in prints:
            return
        place = _on_side(prints[block_id], Side(side_word), one.from_left + one.width / 2)
        self._letters.setdefault(self._cell(*place), letter)

    def stand(self, surface: Surface, at: Footprint) -> None:
        """The mark in front of a wall or an eave, else in the middle of the room."""
        if surface.side is None:
            column, row = self._cell(at.west_ft + at.wide_ft / 2, at.south_ft + at.deep_ft / 2)
            self._letters[column, row + 1] = HERE
            return
        is_inside = surface.kind is PlaceKind.WALL_INSIDE
        middle = _middle_of_what_shows_ft(surface)
        if is_inside:  # seen from there, left and right are the other way round
            middle = surface.width_ft - middle
        column, row = self._cell(*_on_side(at, surface.side, middle))
        right, down = _OUTWARD[surface.side]
        way = -1 if is_inside else 1
        self._letters[max(0, column + 2 * way * right), max(0, row + way * down)] = HERE

    def lines(self) -> list[str]:
        drawn = [
            "".join(
                self._letters.get((column, row), _LINES[arms]) for column, arms in enumerate(cells)
            ).rstrip()
            for row, cells in enumerate(self._arms)
        ]
        while drawn and not drawn[-1]:
            drawn.pop()
        return drawn

    def _cell(self, east_ft: float, north_ft: float) -> tuple[int, int]:
        column = math.floor((east_ft - self._west) * self._scale + 0.5)
        row = math.floor((self._north - north_ft) * self._scale / 2 + 0.5)
        return min(column, len(self._arms[0]) - 1), min(row, len(self._arms) - 1)
