"""Convex outlines: areas, clipping and crossing lines."""

from __future__ import annotations

import pytest
import shapely
from hypothesis import given
from hypothesis import strategies as st

from leanto.building import polygon
from leanto.building.rectangle import Rectangle

GABLE_END = ((0.0, 0.0), (12.0, 0.0), (12.0, 8.0), (6.0, 11.0), (0.0, 8.0))

rectangles = st.builds(
    Rectangle, st.floats(-4, 14), st.floats(-4, 14), st.floats(0.01, 9), st.floats(0.01, 9)
)


def test_sizes_of_a_gable_end() -> None:
    assert polygon.area_sqft(GABLE_END) == 114  # 12 x 8 + 12 x 3 / 2
    assert polygon.perimeter_ft(GABLE_END) == pytest.approx(28 + 2 * 45**0.5)
    assert polygon.size_ft(GABLE_END) == (12, 11)


@given(rectangles)
def test_clipping_agrees_with_shapely(rectangle: Rectangle) -> None:
    reference = shapely.Polygon(GABLE_END).intersection(shapely.Polygon(rectangle.corners))
    assert polygon.clipped_area_sqft(GABLE_END, rectangle) == pytest.approx(
        reference.area, abs=1e-9
    )


@given(rectangles)
def test_holding_agrees_with_shapely(rectangle: Rectangle) -> None:
    room = shapely.Polygon(GABLE_END)
    inside = shapely.Polygon(rectangle.corners)
    # What is held at all is held by a slightly larger room, and the other way around.
    if polygon.holds(GABLE_END, rectangle):
        assert room.buffer(1e-6).covers(inside)
    if room.buffer(-1e-6).covers(inside):
        assert polygon.holds(GABLE_END, rectangle)


def test_slack_is_measured_square_to_the_edge() -> None:
    beside_rake = Rectangle(0.0, 7.0, 1.0, 1.1)  # corner 0.1 ft above the eave, rake at 6:12
    past = 0.1 * 2 / 5**0.5
    assert polygon.holds(GABLE_END, beside_rake, past + 0.001)
    assert not polygon.holds(GABLE_END, beside_rake, past - 0.001)


@pytest.mark.parametrize(
    ("at", "axis", "span"),
    [
        (6, 0, (0, 11)),
        (3, 0, (0, 9.5)),
        (0, 0, (0, 8)),
        (12, 0, (0, 8)),
        (12.1, 0, None),
        (9.5, 1, (3, 9)),
        (0, 1, (0, 12)),
        (11, 1, (6, 6)),
    ],
)
def test_where_a_line_is_inside(at: float, axis: int, span: tuple[float, float] | None) -> None:
    assert polygon.crossing_ft(GABLE_END, at, axis=axis) == span
