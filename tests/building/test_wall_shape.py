"""Outlines of walls under each roof form, seen from outside and from inside."""

from __future__ import annotations

from typing import Any

import pytest

from leanto.building.block_shape import clockwise_from, side_length_ft, wall_outline
from leanto.building.kinds import Side

GABLE = {"form": "gable", "pitch": "6:12"}
SHED = {"form": "shed", "pitch": "3:12", "high_side": "north"}


@pytest.mark.parametrize(
    ("roof", "ceiling", "side", "inside", "heights"),
    [
        # 12 ft across at 6:12 rises 3 ft to the middle; at 3:12 it rises 3 ft from side to side.
        (GABLE, None, "south", False, [8, 8]),
        (GABLE, None, "east", False, [8, 11, 8]),
        (GABLE, None, "east", True, [8, 11, 8]),
        (GABLE, {}, "east", False, [8, 11, 8]),
        (GABLE, {}, "east", True, [8, 8]),
        (SHED, None, "south", False, [8, 8]),
        (SHED, None, "north", False, [11, 11]),
        (SHED, None, "north", True, [11, 11]),
        (SHED, {}, "north", True, [8, 8]),
        # Facing the east wall from outside, north is at the right; from inside, at the left.
        (SHED, None, "east", False, [8, 11]),
        (SHED, None, "east", True, [11, 8]),
        (SHED, None, "west", False, [11, 8]),
        (SHED, None, "west", True, [8, 11]),
        (SHED, {}, "west", True, [8, 8]),
        ({"form": "hip", "pitch": "6:12"}, None, "east", False, [8, 8]),
        ({"form": "flat"}, None, "north", False, [8, 8]),
    ],
)
def test_top_of_wall_from_left_to_right(
    a_block: Any, roof: Any, ceiling: Any, side: str, inside: bool, heights: list[float]
) -> None:
    outline = wall_outline(a_block(roof=roof, ceiling=ceiling), Side(side), inside=inside)
    assert outline[:2] == ((0, 0), (24 if side in ("north", "south") else 12, 0))
    assert [y for _, y in reversed(outline[2:])] == pytest.approx(heights)


def test_length_lies_along_the_ridge(a_block: Any) -> None:
    turned = a_block(ridge_runs="north-south")
    assert [side_length_ft(turned, side) for side in Side] == [12, 24, 12, 24]
    assert len(wall_outline(turned, Side.NORTH, inside=False)) == 5
    assert len(wall_outline(turned, Side.EAST, inside=False)) == 4


def test_walking_clockwise_goes_from_south_to_west() -> None:
    assert clockwise_from(Side.SOUTH) == (Side.SOUTH, Side.WEST, Side.NORTH, Side.EAST)
