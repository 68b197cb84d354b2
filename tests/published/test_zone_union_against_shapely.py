"""United zones against shapely, a general library of plane geometry."""

from __future__ import annotations

import pytest
import shapely
from hypothesis import given, settings
from hypothesis import strategies as st

from leanto.building import polygon
from leanto.building.kinds import OpeningKind, PlaceKind
from leanto.building.rectangle import Rectangle
from leanto.building.surface import PlacedOpening, Surface
from leanto.building.union import disjoint
from leanto.building.zones import union_area_sqft, union_height_ft, union_width_ft

OUTLINES = {
    "gable end": ((0.0, 0.0), (12.0, 0.0), (12.0, 8.0), (6.0, 11.0), (0.0, 8.0)),
    "shed end": ((0.0, 0.0), (12.0, 0.0), (12.0, 7.0), (0.0, 10.0)),
    "hip side": ((0.0, 0.0), (14.0, 0.0), (9.0, 6.0), (5.0, 6.0)),
    "hip end": ((0.0, 0.0), (10.0, 0.0), (5.0, 7.0)),
}
AREA_SLACK_SQFT = 1e-3
"""Edges within a millionth of a foot are taken as one, which may move this much area."""

inches = st.integers(-12, 140).map(lambda count: count / 12)
sizes = st.integers(1, 80).map(lambda count: count / 12)
on_the_inch = st.builds(Rectangle, inches, inches, sizes, sizes)
# To a thousandth of an inch: shapely loses area at numbers such as 1e-311.
feet = st.integers(-12_000, 144_000).map(lambda thousandths: thousandths / 12_000)
fine_sizes = st.integers(100, 84_000).map(lambda thousandths: thousandths / 12_000)
anywhere = st.builds(Rectangle, feet, feet, fine_sizes, fine_sizes)
rectangles = st.lists(on_the_inch | anywhere, max_size=9)


def _polygon(rectangle: Rectangle) -> shapely.Polygon:
    return shapely.Polygon(rectangle.corners)


def _union(zones: list[Rectangle]) -> shapely.Geometry:
    return shapely.union_all([_polygon(zone) for zone in zones])


@pytest.mark.published("shapely, plane geometry library", "library")
@settings(deadline=None)
@given(rectangles)
def test_area_of_a_union(zones: list[Rectangle]) -> None:
    assert union_area_sqft(zones) == pytest.approx(_union(zones).area, abs=AREA_SLACK_SQFT)


@pytest.mark.published("shapely, plane geometry library", "library")
@settings(deadline=None)
@given(rectangles)
def test_the_united_parts_cover_the_same_ground(zones: list[Rectangle]) -> None:
    parts = list(disjoint(zones))
    difference = _union(parts).symmetric_difference(_union(zones))
    assert difference.area == pytest.approx(0, abs=AREA_SLACK_SQFT)
    assert sum(part.area_sqft for part in parts) == pytest.approx(
        _union(parts).area, abs=AREA_SLACK_SQFT
    )


@pytest.mark.published("shapely, plane geometry library", "library")
@settings(deadline=None)
@given(rectangles, rectangles)
def test_holes_are_taken_off_once(zones: list[Rectangle], holes: list[Rectangle]) -> None:
    area = sum(part.area_sqft for part in disjoint(zones, holes))
    reference = _union(zones).difference(_union(holes))
    assert area == pytest.approx(reference.area, abs=AREA_SLACK_SQFT)


@pytest.mark.published("shapely, plane geometry library", "library")
@settings(deadline=None)
@given(rectangles)
def test_width_and_height_are_the_lengths_of_the_projections(zones: list[Rectangle]) -> None:
    across = shapely.union_all(
        [shapely.LineString([(zone.left_ft, 0), (zone.right_ft, 0)]) for zone in zones]
    )
    upright = shapely.union_all(
        [shapely.LineString([(0, zone.bottom_ft), (0, zone.top_ft)]) for zone in zones]
    )
    assert union_width_ft(zones) == pytest.approx(across.length, abs=1e-4)
    assert union_height_ft(zones) == pytest.approx(upright.length, abs=1e-4)


@pytest.mark.published("shapely, plane geometry library", "library")
@pytest.mark.parametrize("outline", list(OUTLINES.values()), ids=list(OUTLINES))
@settings(deadline=None)
@given(zones=rectangles, openings=rectangles, covered=st.lists(on_the_inch, max_size=2))
def test_area_on_a_surface(
    outline: tuple[tuple[float, float], ...],
    zones: list[Rectangle],
    openings: list[Rectangle],
    covered: list[Rectangle],
) -> None:
    placed = tuple(
        PlacedOpening(f"W{number}", OpeningKind.WINDOW, opening)
        for number, opening in enumerate(openings)
    )
    surface = Surface(
        id="main.east.outside",
        name="East wall",
        block="main",
        kind=PlaceKind.WALL_OUTSIDE,
        side=None,
        outline=outline,
        openings=placed,
        covered=tuple(covered),
        grid=None,
        gross_area_sqft=polygon.area_sqft(outline),
        net_area_sqft=0.0,
        perimeter_ft=polygon.perimeter_ft(outline),
        width_ft=polygon.size_ft(outline)[0],
        height_ft=polygon.size_ft(outline)[1],
    )
    holes = _union([*openings, *covered])
    reference = _union(zones).intersection(shapely.Polygon(outline)).difference(holes)
    assert union_area_sqft(zones, surface) == pytest.approx(reference.area, abs=AREA_SLACK_SQFT)
