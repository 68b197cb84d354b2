"""Roof covering to buy."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from leanto.trade.roofing import (
    WASTE_BY_FORM,
    cap_bundles,
    courses,
    drip_edge_pieces,
    shingle_bundles,
    shingle_nails,
    squares,
    starter_bundles,
    underlayment_layers,
    underlayment_rolls,
    valley_rolls,
    woven_valley_bundles,
)
from leanto.trade.slope import rafter_length_ft


def test_a_garage_of_24_by_36_with_one_foot_overhangs() -> None:
    # By hand: rafter line (12 + 1) x 1.118 = 14.534 ft; 2 x 38 x 14.534 = 1,104.6 sq ft; 11.05
    # squares; 11.05 x 3 x 1.1 = 36.45, 37 bundles.
    line_ft = rafter_length_ft(12, 6, overhang_ft=1)
    area_sqft = 2 * 38 * line_ft
    assert line_ft == pytest.approx(14.534, abs=0.001)
    assert squares(area_sqft) == pytest.approx(11.046, abs=0.001)
    assert shingle_bundles(area_sqft, WASTE_BY_FORM["gable"]) == 37


def test_a_cut_up_roof_wastes_more_than_a_plain_one() -> None:
    assert WASTE_BY_FORM["hip"] > WASTE_BY_FORM["gable"]
    assert WASTE_BY_FORM["cut up"] > WASTE_BY_FORM["shed"]


def test_parts_of_bundles_are_rounded_once() -> None:
    extra = starter_bundles(40, 80) + cap_bundles(17.5, 35) + woven_valley_bundles(16)
    assert extra == pytest.approx(2)
    assert shingle_bundles(100, waste=0, extra_bundles=extra) == 5


def test_shingles_are_refused_on_a_roof_too_flat() -> None:
    with pytest.raises(ValueError, match="2 in 12"):
        underlayment_layers(1.99)


@pytest.mark.parametrize(
    ("area_sqft", "layers", "roll_sqft", "rolls"),
    [(400, 1, 400, 1), (400, 2, 400, 2), (401, 1, 400, 2), (430, 1, 430, 1), (0, 1, 400, 0)],
)
def test_half_lap_takes_twice_the_felt(
    area_sqft: float, layers: int, roll_sqft: float, rolls: int
) -> None:
    assert underlayment_rolls(area_sqft, layers, roll_sqft) == rolls


@pytest.mark.parametrize(
    ("lap_in", "spare", "pieces"),
    [(0, 0, 10), (2, 0, 11), (0, 5, 15)],  # 100 ft; 100 / 9.833 = 10.17
)
def test_drip_edge_laps_are_a_setting(lap_in: float, spare: int, pieces: int) -> None:
    assert drip_edge_pieces(48, 52, lap_in=lap_in, spare=spare) == pieces


@pytest.mark.parametrize(("length_ft", "rolls"), [(0, 0), (33, 1), (33.1, 2)])
def test_valley_rolls(length_ft: float, rolls: int) -> None:
    assert valley_rolls(length_ft) == rolls


@pytest.mark.parametrize(
    ("length_ft", "exposure_in", "count"), [(10, 5, 24), (10, 5.5, 22), (10.01, 5, 25)]
)
def test_courses_up_a_slope(length_ft: float, exposure_in: float, count: int) -> None:
    assert courses(length_ft, exposure_in) == count


def test_nails_a_square() -> None:
    # 80 strips of 36 in. at 5 in. exposure; four nails each, six in high wind: from memory.
    assert shingle_nails(1) == 320
    assert shingle_nails(1, per_strip=6) == 480


@given(st.floats(1, 5000), st.floats(0, 0.3), st.floats(0, 0.3))
def test_more_waste_never_asks_for_fewer_bundles(area: float, a: float, b: float) -> None:
    low, high = sorted((a, b))
    assert shingle_bundles(area, low) <= shingle_bundles(area, high)


@pytest.mark.parametrize("bundle_sqft", [0, -1])
def test_a_bundle_that_covers_nothing_is_refused(bundle_sqft: float) -> None:
    with pytest.raises(ValueError, match="unit of purchase"):
        shingle_bundles(100, 0.1, bundle_sqft)
