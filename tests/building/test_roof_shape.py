"""Outlines of roof slopes with their overhangs."""

from __future__ import annotations

import math
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from leanto.building.kinds import Side
from leanto.building.polygon import area_sqft
from leanto.building.roof_shape import slope_outline, slope_sides

AT_6 = math.hypot(1, 6 / 12)
AT_3 = math.hypot(1, 3 / 12)


def test_gable_slopes_are_rectangles_with_eave_and_rake_overhang(a_block: Any) -> None:
    block = a_block(roof={"form": "gable", "pitch": 6, "overhang": 1, "rake_overhang": 0.5})
    assert slope_sides(block) == (Side.NORTH, Side.SOUTH)
    high = 7 * AT_6
    assert slope_outline(block, Side.SOUTH) == ((0, 0), (25, 0), (25, high), (0, high))


def test_free_standing_shed_overhangs_low_and_high(a_block: Any) -> None:
    block = a_block(roof={"form": "shed", "pitch": 3, "overhang": 1, "high_side": "north"})
    assert slope_sides(block) == (Side.SOUTH,)
    assert slope_outline(block, Side.SOUTH)[2] == (24, pytest.approx(14 * AT_3))


def test_lean_to_roof_does_not_overhang_into_the_other_block(a_lean_to: Any) -> None:
    assert slope_sides(a_lean_to()) == (Side.NORTH,)
    assert slope_outline(a_lean_to(), Side.NORTH)[2] == (12, pytest.approx(7 * AT_3))


def test_gable_wing_has_no_rake_against_the_other_block(a_lean_to: Any) -> None:
    roof = {"form": "gable", "pitch": 6, "overhang": 1, "rake_overhang": 0.5}
    wing = a_lean_to(length=6, width=10, ridge_runs="north-south", roof=roof)
    assert slope_outline(wing, Side.EAST)[1] == (6.5, 0)


@pytest.mark.parametrize(
    ("ridge_runs", "side"), [("east-west", Side.SOUTH), ("north-south", Side.WEST)]
)
def test_flat_roof_is_one_rectangle(a_block: Any, ridge_runs: str, side: Side) -> None:
    block = a_block(ridge_runs=ridge_runs, roof={"form": "flat", "overhang": 1})
    assert slope_sides(block) == (side,)
    assert slope_outline(block, side) == ((0, 0), (24, 0), (24, 14), (0, 14))


def test_hip_has_two_trapezoids_and_two_triangles(a_block: Any) -> None:
    block = a_block(roof={"form": "hip", "pitch": 6, "overhang": 1, "rake_overhang": 9})
    assert slope_sides(block) == tuple(Side)
    high = 7 * AT_6
    trapezoid = ((0, 0), (26, 0), (19, high), (7, high))
    triangle = ((0, 0), (14, 0), (7, high))
    for side in (Side.NORTH, Side.SOUTH):
        assert slope_outline(block, side) == trapezoid
    for side in (Side.EAST, Side.WEST):
        assert slope_outline(block, side) == triangle


def test_square_hip_is_a_pyramid(a_block: Any) -> None:
    block = a_block(length=12, roof={"form": "hip", "pitch": 6})
    assert {len(slope_outline(block, side)) for side in Side} == {3}


@given(
    length=st.floats(4, 80),
    width=st.floats(4, 80),
    pitch=st.floats(0.25, 20),
    overhang=st.floats(0, 4),
    form=st.sampled_from(["gable", "hip", "shed"]),
)
def test_slopes_cover_the_plan_with_overhangs_times_the_slope_factor(
    a_block: Any, length: float, width: float, pitch: float, overhang: float, form: str
) -> None:
    roof = {"form": form, "pitch": pitch, "overhang": overhang, "rake_overhang": overhang}
    if form == "shed":
        roof["high_side"] = "south"
    block = a_block(length=length, width=width, roof=roof)
    area = sum(area_sqft(slope_outline(block, side)) for side in slope_sides(block))
    plan = (length + 2 * overhang) * (width + 2 * overhang)
    assert area == pytest.approx(plan * math.hypot(1, pitch / 12))
