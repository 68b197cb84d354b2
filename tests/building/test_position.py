"""Where zones lie in their block."""

from __future__ import annotations

from dataclasses import replace
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from leanto.building.kinds import PlaceKind, Side
from leanto.building.position import Box, box_of, drop_ft, horizontal_gap_ft, slope_gap_ft
from leanto.building.rectangle import Rectangle
from leanto.building.surface import Surface
from leanto.building.surfaces import surfaces_of


@pytest.fixture(scope="module")
def surfaces(a_building: Any, a_block: Any, a_lean_to: Any) -> dict[str, Surface]:
    """A room of 24 by 12 ft with walls of 8 ft, a gable of 6:12 with 1 ft at the eaves."""
    building = a_building(a_block(), a_lean_to())
    return {surface.id: surface for surface in surfaces_of(building)}


# A zone 3 ft from the left and 2 ft from the bottom, 4 ft wide and 1 ft high.
ZONE = Rectangle(3, 2, 4, 1)


@pytest.mark.parametrize(
    ("surface_id", "east", "north", "up"),
    [
        ("main.floor", (3, 7), (2, 3), (0, 0)),
        ("main.ceiling", (3, 7), (2, 3), (8, 8)),
        ("main.south.outside", (3, 7), (0, 0), (2, 3)),
        ("main.south.inside", (17, 21), (0, 0), (2, 3)),
        ("main.north.outside", (17, 21), (12, 12), (2, 3)),
        ("main.north.inside", (3, 7), (12, 12), (2, 3)),
        ("main.east.outside", (24, 24), (3, 7), (2, 3)),
        ("main.east.inside", (24, 24), (5, 9), (2, 3)),
        ("main.west.outside", (0, 0), (5, 9), (2, 3)),
        ("main.west.inside", (0, 0), (3, 7), (2, 3)),
    ],
)
def test_walls_floor_and_ceiling_share_one_plan(
    surfaces: dict[str, Surface],
    surface_id: str,
    east: tuple[float, float],
    north: tuple[float, float],
    up: tuple[float, float],
) -> None:
    assert box_of(ZONE, surfaces[surface_id], surfaces) == Box("main", east, north, up)


@pytest.mark.parametrize(
    ("surface_id", "whole"),
    [
        ("main.roof.south", ((0, 24), (-1, 6))),
        ("main.roof.north", ((0, 24), (6, 13))),
    ],
)
def test_a_slope_lies_over_its_half_of_the_room_and_its_eave(
    surfaces: dict[str, Surface], surface_id: str, whole: tuple[tuple[float, float], ...]
) -> None:
    slope = surfaces[surface_id]
    rake = (slope.width_ft - 24) / 2
    box = box_of(Rectangle(rake, 0, 24, slope.height_ft), slope, surfaces)
    assert box is not None
    assert (*box.east, *box.north) == pytest.approx((*whole[0], *whole[1]))


def test_without_the_floor_of_its_block_a_place_is_not_known(surfaces: dict[str, Surface]) -> None:
    wall = replace(surfaces["main.south.inside"], block="barn")
    assert box_of(ZONE, wall, surfaces) is None


@pytest.mark.parametrize(
    ("one", "other", "gap", "drop"),
    [
        ("main.ceiling", "main.floor", 0.0, 8.0),
        ("main.floor", "main.ceiling", 0.0, 0.0),
        ("main.south.outside", "main.floor", 2.0, 2.0),
    ],
)
def test_gap_and_drop(
    surfaces: dict[str, Surface], one: str, other: str, gap: float, drop: float
) -> None:
    first, second = (box_of(ZONE, surfaces[id_], surfaces) for id_ in (one, other))
    assert first is not None
    assert second is not None
    assert horizontal_gap_ft(first, second) == horizontal_gap_ft(second, first) == gap
    assert drop_ft(first, second) == drop


ROOM = Box("main", (10, 12), (4, 6), (8, 8))


@pytest.mark.parametrize(
    ("side", "leak", "gap"),
    [
        # Uphill of the place it counts nothing, nearer to the eave in full.
        (Side.SOUTH, ((10, 12), (8, 9)), 0.0),
        (Side.SOUTH, ((10, 12), (1, 2)), 2.0),
        (Side.NORTH, ((10, 12), (8, 9)), 2.0),
        (Side.NORTH, ((10, 12), (1, 2)), 0.0),
        (Side.WEST, ((14, 15), (4, 6)), 0.0),
        (Side.WEST, ((5, 8), (4, 6)), 2.0),
        (Side.EAST, ((14, 15), (4, 6)), 2.0),
        (Side.EAST, ((5, 8), (4, 6)), 0.0),
        # Sideways always in full.
        (Side.SOUTH, ((15, 16), (8, 9)), 3.0),
        (Side.SOUTH, ((16, 17), (0, 1)), 5.0),
        (Side.EAST, ((5, 8), (9, 10)), 3.0),
    ],
)
def test_water_runs_down_a_slope(
    side: Side, leak: tuple[tuple[float, float], ...], gap: float
) -> None:
    assert slope_gap_ft(side, Box("main", *leak, (8, 8)), ROOM) == gap


@given(left=st.floats(0, 20), width=st.floats(0.1, 4))
def test_both_faces_of_a_wall_show_one_place(
    surfaces: dict[str, Surface], left: float, width: float
) -> None:
    for side in ("south", "north", "east", "west"):
        outside = surfaces[f"main.{side}.outside"]
        if left + width > outside.width_ft:
            continue
        mirrored = Rectangle(outside.width_ft - left - width, 1, width, 1)
        seen = box_of(Rectangle(left, 1, width, 1), outside, surfaces)
        again = box_of(mirrored, surfaces[f"main.{side}.inside"], surfaces)
        assert seen is not None
        assert again is not None
        assert (*again.east, *again.north) == pytest.approx((*seen.east, *seen.north))
        assert surfaces[f"main.{side}.inside"].kind is PlaceKind.WALL_INSIDE
