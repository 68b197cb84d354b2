"""Slopes as plane geometry."""

from __future__ import annotations

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st
from shapely.geometry import Polygon

from leanto.trade.slope import (
    gable_end_sqft,
    hip_length_ft,
    hip_valley_factor,
    plumb_cut_ft,
    rafter_length_ft,
    rafter_stock_ft,
    roof_area_sqft,
    slope_factor,
)

rises = st.floats(0, 36)
lengths = st.floats(0.1, 200)


def test_a_level_roof_is_its_plan() -> None:
    assert slope_factor(0) == 1
    assert hip_valley_factor(0) == pytest.approx(math.sqrt(2))


def test_three_four_five() -> None:
    assert slope_factor(9) == 1.25
    assert rafter_length_ft(4, 9) == 5
    assert roof_area_sqft(80, 9) == 100


def test_steeper_than_twelve_in_twelve() -> None:
    assert slope_factor(24) == pytest.approx(math.sqrt(5))


@given(lengths, rises)
def test_a_rafter_is_the_hypotenuse(run_ft: float, rise: float) -> None:
    assert rafter_length_ft(run_ft, rise) == pytest.approx(
        math.dist((0, 0), (run_ft, run_ft * rise / 12))
    )


@given(lengths, rises)
def test_a_hip_is_the_diagonal_of_a_raised_square(run_ft: float, rise: float) -> None:
    corner, top = (0.0, 0.0, 0.0), (run_ft, run_ft, run_ft * rise / 12)
    assert hip_length_ft(run_ft, rise) == pytest.approx(math.dist(corner, top))


@given(lengths, rises)
def test_a_gable_is_the_triangle_over_its_span(span_ft: float, rise: float) -> None:
    triangle = Polygon([(0, 0), (span_ft, 0), (span_ft / 2, span_ft / 2 * rise / 12)])
    assert gable_end_sqft(span_ft, rise) == pytest.approx(triangle.area, abs=1e-9)


@given(lengths, lengths, rises)
def test_hip_and_gable_over_one_plan_have_one_area(a_ft: float, b_ft: float, rise: float) -> None:
    """Four hip planes by their own heights against plan area times the factor."""
    long_ft, short_ft = max(a_ft, b_ft), min(a_ft, b_ft)
    height_ft = rafter_length_ft(short_ft / 2, rise)
    ridge_ft = long_ft - short_ft
    hip_sqft = 2 * (long_ft + ridge_ft) / 2 * height_ft + 2 * short_ft * height_ft / 2
    assert roof_area_sqft(a_ft * b_ft, rise) == pytest.approx(hip_sqft)


def test_plumb_cut_takes_more_of_a_deeper_member() -> None:
    assert plumb_cut_ft(7.25, 0) == 0
    assert plumb_cut_ft(12, 12) == 1
    assert rafter_stock_ft(10, 6, 7.25) > rafter_stock_ft(10, 6, 5.5)


@pytest.mark.parametrize("value", [-1, math.nan, math.inf])
def test_impossible_slopes_and_lengths_are_refused(value: float) -> None:
    with pytest.raises(ValueError, match="rise_in_12"):
        slope_factor(value)
    with pytest.raises(ValueError, match="run_ft"):
        rafter_length_ft(value, 6)
