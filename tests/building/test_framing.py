"""Where members stand."""

from __future__ import annotations

import math
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from leanto.building.framing import (
    ceiling_grid,
    floor_grid,
    positions_ft,
    slope_grid,
    wall_grid,
)
from leanto.building.kinds import Side


def test_members_stand_at_both_ends_and_at_every_spacing() -> None:
    assert positions_ft(5, 2) == (0, 2, 4, 5)
    assert positions_ft(4, 2) == (0, 2, 4)
    assert positions_ft(1, 2) == (0, 1)


def test_rounding_adds_no_member() -> None:
    assert len(positions_ft(24, 16 / 12)) == 19
    assert len(positions_ft(3 * 0.7, 0.7)) == 4


@given(length=st.floats(0.5, 200), spacing=st.floats(0.34, 20))
def test_one_more_member_than_spaces(length: float, spacing: float) -> None:
    positions = positions_ft(length, spacing)
    assert len(positions) in {
        math.ceil(length / spacing) + 1,
        math.ceil((length - 1e-6) / spacing) + 1,
    }
    assert positions[0] == 0
    assert positions[-1] == length
    assert list(positions) == sorted(set(positions))


def test_both_faces_of_a_wall_show_the_same_studs(a_block: Any) -> None:
    block = a_block(length=23)
    outside = wall_grid(block, Side.NORTH, inside=False)
    inside = wall_grid(block, Side.NORTH, inside=True)
    assert outside.positions_ft[-2:] == (22, 23)
    assert inside.positions_ft[:2] == (0, 1)
    assert sorted(23 - at for at in inside.positions_ft) == list(outside.positions_ft)


def test_rafters_stand_over_the_walls_and_at_the_rake_edges(a_block: Any) -> None:
    roof = {"form": "gable", "pitch": 6, "rake_overhang": 0.5, "spacing": 8}
    grid = slope_grid(a_block(roof=roof), Side.SOUTH)
    assert grid.positions_ft == (0, 0.5, 8.5, 16.5, 24.5, 25)
    without_rake = slope_grid(a_block(roof=roof | {"rake_overhang": 0}), Side.SOUTH)
    assert without_rake.positions_ft == (0, 8, 16, 24)


def test_hip_rafters_stand_over_the_wall(a_block: Any) -> None:
    roof = {"form": "hip", "pitch": 6, "overhang": 1, "spacing": 8}
    assert slope_grid(a_block(roof=roof), Side.SOUTH).positions_ft == (1, 9, 17, 25)


@pytest.mark.parametrize(
    ("ridge_runs", "length", "runs", "count"),
    [
        ("east-west", 24, "up", 13),
        ("north-south", 24, "across", 13),
        ("east-west", 8, "across", 7),  # 8 ft along the ridge, 12 ft across it
        ("north-south", 8, "up", 7),
    ],
)
def test_joists_run_across_the_short_way(
    a_block: Any, ridge_runs: str, length: float, runs: str, count: int
) -> None:
    framing = {"spacing": 2, "member": "2x6"}
    block = a_block(ridge_runs=ridge_runs, length=length, floor=framing, ceiling=framing)
    for grid in (floor_grid(block), ceiling_grid(block)):
        assert grid is not None
        assert (grid.runs, len(grid.positions_ft), grid.member) == (runs, count, "2x6")


@pytest.mark.parametrize(("ridge_runs", "runs"), [("east-west", "up"), ("north-south", "across")])
def test_open_to_the_roof_the_rafters_run_across_the_ridge(
    a_block: Any, ridge_runs: str, runs: str
) -> None:
    roof = {"form": "gable", "pitch": 6, "member": "2x8", "spacing": 2}
    grid = ceiling_grid(a_block(length=8, ridge_runs=ridge_runs, roof=roof))
    assert (grid.runs, grid.positions_ft, grid.member) == (runs, (0, 2, 4, 6, 8), "2x8")


@pytest.mark.parametrize(
    ("kind", "is_framed"), [("joists", True), ("sleepers", True), ("slab", False), ("dirt", False)]
)
def test_only_a_wood_floor_has_a_grid(a_block: Any, kind: str, is_framed: bool) -> None:
    assert (floor_grid(a_block(floor={"kind": kind})) is not None) is is_framed


def test_no_length_or_spacing_is_our_own_mistake() -> None:
    with pytest.raises(ValueError, match="no framing"):
        positions_ft(0, 1)
    with pytest.raises(ValueError, match="no framing"):
        positions_ft(1, 0)
