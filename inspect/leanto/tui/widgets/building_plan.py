"""The plan of a building in cells, north at the top, and the areas of its surfaces."""

from __future__ import annotations

import math
from dataclasses import dataclass

from leanto.building.block_shape import plan_ft, side_length_ft
from leanto.building.kinds import OpeningKind, PlaceKind, Side
from leanto.building.model import Building, Opening
from leanto.building.surfaces import surfaces_of
from leanto.tui.shown import on_one_line

NORTH, EAST, SOUTH, WEST = 1, 2, 4, 8
_LINES = " ╵╶└╷│┌├╴┘─┴┐┤┬┼"
"""By the arms that a cell has: north 1, east 2, south 4, west 8."""
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


def plan_lines(building: Building, columns: int, rows: int) -> list[str]:
    """The plan in at most so many cells; a cell is taken to be twice as high as wide."""
    prints = footprints(building)
    west = min(one.west_ft for one in prints)
    south = min(one.south_ft for one in prints)
    wide = max(one.west_ft + one.wide_ft for one in prints) - west
    deep = max(_north(one) for one in prints) - south
    cells_per_ft = min((columns - 1) / wide, 2 * (rows - 1) / deep)
    canvas = _Canvas(west, south + deep, cells_per_ft, columns, rows)
    for one in prints:
        canvas.box(one)
    for one in prints:
        canvas.write(one)
    by_id = {one.block: one for one in prints}
    for opening in building.openings:
        canvas.opening(building, opening, by_id)
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
                f"{one.side.value[0].upper() + ' ' if one.side else ''}{one.net_area_sqft:,.0f}"
                for one in fitting
            ]
            if amounts:
                lines.append(f"  {words}: {', '.join(amounts)} sq ft")
    return lines


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
        side, at = Side(side_word), prints[block_id]
        block = next(block for block in building.blocks if block.id == block_id)
        middle = one.from_left + one.width / 2
        back = side_length_ft(block, side) - middle
        place = {
            Side.NORTH: (at.west_ft + back, _north(at)),
            Side.SOUTH: (at.west_ft + middle, at.south_ft),
            Side.EAST: (at.west_ft + at.wide_ft, at.south_ft + middle),
            Side.WEST: (at.west_ft, at.south_ft + back),
        }[side]
        self._letters.setdefault(self._cell(*place), letter)

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
