"""Zones: checked, widened to the framing, united."""

from __future__ import annotations

import random
from dataclasses import replace
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from leanto.building.model import Building
from leanto.building.rectangle import Rectangle
from leanto.building.surface import FramingGrid, Surface
from leanto.building.surfaces import surfaces_of
from leanto.building.zones import (
    ZoneError,
    check_zone,
    member_length_ft,
    members_in,
    union_area_sqft,
    union_height_ft,
    union_width_ft,
    united,
    widen,
)
from leanto.errors import LeantoError

UP = FramingGrid((0, 2, 4, 6, 8, 9), "up", 2, "2x4", full_size=False)
ACROSS = FramingGrid((0, 2, 4, 6), "across", 2, "2x6", full_size=False)

inches = st.integers(0, 140).map(lambda count: count / 12)
sizes = st.integers(1, 60).map(lambda count: count / 12)
zones = st.builds(Rectangle, inches, inches, sizes, sizes) | st.builds(
    Rectangle, st.floats(0, 12), st.floats(0, 12), st.floats(0.01, 5), st.floats(0.01, 5)
)
zone_lists = st.lists(zones, min_size=1, max_size=8)


def _surface(building: Building, id_: str) -> Surface:
    return next(surface for surface in surfaces_of(building) if surface.id == id_)


@pytest.fixture(scope="module")
def south_wall(a_building: Any) -> Surface:
    window = {"id": "W1", "kind": "window", "on": "main.south", "from_left": 4, "from_bottom": 3}
    building = a_building(openings=[window | {"width": 3, "height": 4}])
    return _surface(building, "main.south.outside")


@pytest.fixture(scope="module")
def gable_end(a_building: Any) -> Surface:
    return _surface(a_building(), "main.east.outside")


@pytest.fixture(scope="module")
def shared_wall(a_building: Any, a_block: Any, a_lean_to: Any) -> Surface:
    return _surface(a_building(a_block(), a_lean_to()), "main.north.outside")


@pytest.mark.parametrize(
    ("zone", "says"),
    [
        (Rectangle(0, 0, 24, 8), None),
        (Rectangle(0, 0, 24 + 1 / 100, 8), None),  # under an eighth of an inch
        (Rectangle(-1 / 100, 0, 2, 2), None),
        (Rectangle(0, 0, 24 + 1 / 90, 8), 'runs 1/8" past the right end'),
        (Rectangle(-0.25, 0, 2, 2), 'runs 3" past the left end'),
        (Rectangle(20, 0, 5, 9.5), "runs 1' 0\" past the right end and 1' 6\" past the top"),
        (Rectangle(1, -1, 2, 2), "runs 1' 0\" past the bottom"),
    ],
)
def test_a_zone_past_an_edge_is_refused_with_the_size_of_the_surface(
    south_wall: Surface, zone: Rectangle, says: str | None
) -> None:
    if says is None:
        check_zone(zone, south_wall)
        return
    with pytest.raises(ZoneError) as refused:
        check_zone(zone, south_wall)
    assert says in refused.value.what
    assert refused.value.remedy == "Main room, south wall, outside is 24' 0\" wide and 8' 0\" high."
    assert "\n" not in str(refused.value)
    assert isinstance(refused.value, LeantoError)


def test_a_zone_beside_the_gable_is_refused_and_one_across_its_rake_is_not(
    gable_end: Surface,
) -> None:
    check_zone(Rectangle(0, 7, 3, 2), gable_end)
    with pytest.raises(ZoneError, match="sloping edge"):
        check_zone(Rectangle(0, 10, 1, 1), gable_end)


def test_edges_of_a_plan_are_named_by_compass(a_building: Any) -> None:
    floor = _surface(a_building(), "main.floor")
    with pytest.raises(ZoneError, match="past the east edge and 1' 0\" past the north edge"):
        check_zone(Rectangle(20, 10, 5, 3), floor)


def test_a_zone_within_the_hidden_part_belongs_on_the_inside_face(shared_wall: Surface) -> None:
    check_zone(Rectangle(10, 0, 4, 1), shared_wall)
    with pytest.raises(ZoneError, match="inside face"):
        check_zone(Rectangle(13, 0, 4, 1), shared_wall)


@pytest.mark.parametrize(
    ("zone", "extra", "wide"),
    [
        # Studs every 2 ft on a wall of 24 by 8 ft.
        (Rectangle(3, 1, 1.5, 2), 0, Rectangle(2, 1, 4, 2)),
        (Rectangle(2, 1, 2, 2), 0, Rectangle(2, 1, 2, 2)),
        (Rectangle(2.2, 1, 0.1, 2), 0, Rectangle(2, 1, 2, 2)),
        (Rectangle(2, 1, 2, 2), 0.5, Rectangle(0, 0.5, 6, 3)),
        (Rectangle(23, 7, 1, 1), 2, Rectangle(20, 5, 4, 3)),
    ],
)
def test_a_zone_grows_to_the_next_studs(
    south_wall: Surface, zone: Rectangle, extra: float, wide: Rectangle
) -> None:
    assert widen(zone, south_wall, extra) == wide


def test_a_zone_grows_up_and_down_where_members_run_across(south_wall: Surface) -> None:
    surface = replace(south_wall, grid=ACROSS)
    assert widen(Rectangle(3, 3, 1, 0.5), surface) == Rectangle(3, 2, 1, 2)
    assert widen(Rectangle(3, 6.5, 1, 0.5), surface) == Rectangle(3, 6, 1, 2)


def test_without_framing_a_zone_only_grows_by_the_extra(south_wall: Surface) -> None:
    slab = replace(south_wall, grid=None)
    assert widen(Rectangle(3, 3, 1, 1), slab, 0.5) == Rectangle(2.5, 2.5, 2, 2)


@given(
    left=st.floats(0, 23),
    bottom=st.floats(0, 7),
    width=st.floats(0.01, 24),
    height=st.floats(0.01, 8),
    extra=st.floats(0, 4),
    spacing=st.sampled_from([16 / 12, 2, 19.2 / 12, 1.7]),
    runs=st.sampled_from(["up", "across"]),
)
def test_widening_holds_the_zone_stays_on_the_surface_and_is_done_once(
    a_building: Any,
    left: float,
    bottom: float,
    width: float,
    height: float,
    extra: float,
    spacing: float,
    runs: Any,
) -> None:
    plain = _surface(a_building(), "main.south.outside")
    positions = tuple(number * spacing for number in range(int(24 / spacing) + 1))
    surface = replace(plain, grid=FramingGrid(positions, runs, spacing, "2x4", False))
    zone = Rectangle(left, bottom, min(width, 24 - left), min(height, 8 - bottom))
    wide = widen(zone, surface, extra)
    tolerance = 1e-6
    assert wide.left_ft <= zone.left_ft + tolerance
    assert wide.right_ft >= zone.right_ft - tolerance
    assert wide.bottom_ft <= zone.bottom_ft + tolerance
    assert wide.top_ft >= zone.top_ft - tolerance
    assert wide.left_ft >= 0
    assert wide.bottom_ft >= 0
    assert wide.right_ft <= 24 + 1e-9
    assert wide.top_ft <= 8 + 1e-9
    again = widen(wide, surface)
    assert again.left_ft == pytest.approx(wide.left_ft, abs=1e-9)
    assert again.right_ft == pytest.approx(wide.right_ft, abs=1e-9)
    assert again.bottom_ft == pytest.approx(wide.bottom_ft, abs=1e-9)
    assert again.top_ft == pytest.approx(wide.top_ft, abs=1e-9)
    ends = (wide.left_ft, wide.right_ft) if runs == "up" else (wide.bottom_ft, wide.top_ft)
    stops = (*positions, 24 if runs == "up" else 8)
    assert all(min(abs(end - stop) for stop in stops) < 1e-6 for end in ends)


@given(zone_lists, st.randoms())
def test_uniting_does_not_depend_on_the_order(
    rectangles: list[Rectangle], chance: random.Random
) -> None:
    shuffled = list(rectangles)
    chance.shuffle(shuffled)
    assert united(shuffled) == united(rectangles)


@given(zone_lists)
def test_united_zones_do_not_overlap_and_uniting_again_changes_nothing(
    rectangles: list[Rectangle],
) -> None:
    parts = united(rectangles)
    assert not any(
        a.reaches_into(b, 1e-9) for index, a in enumerate(parts) for b in parts[index + 1 :]
    )
    assert union_area_sqft(parts) == pytest.approx(union_area_sqft(rectangles))
    assert len(united(parts)) == len(parts)


@given(zone_lists)
def test_an_overlap_counts_once(rectangles: list[Rectangle]) -> None:
    area = union_area_sqft(rectangles)
    largest = max(zone.area_sqft for zone in rectangles)
    assert largest - 1e-4 <= area <= sum(zone.area_sqft for zone in rectangles) + 1e-4
    assert union_area_sqft([*rectangles, rectangles[0]]) == pytest.approx(area)


def test_zones_that_touch_become_one() -> None:
    side_by_side = [Rectangle(0, 0, 2, 3), Rectangle(2, 0, 2, 3)]
    assert united(side_by_side) == (Rectangle(0, 0, 4, 3),)
    stacked = [Rectangle(0, 0, 2, 3), Rectangle(0, 3, 2, 3)]
    assert united(stacked) == (Rectangle(0, 0, 2, 6),)
    assert united([]) == ()


def test_area_leaves_out_openings_gable_corners_and_hidden_parts(
    south_wall: Surface, gable_end: Surface, shared_wall: Surface
) -> None:
    # A window of 3 by 4 ft at (4, 3): half of it lies in the zone.
    assert union_area_sqft([Rectangle(0, 0, 5.5, 8)], south_wall) == 44 - 6
    # The whole box of the gable end holds two corners of 6 x 3 / 2.
    assert union_area_sqft([Rectangle(0, 0, 12, 11)], gable_end) == 132 - 18
    assert union_area_sqft([Rectangle(10, 0, 4, 1)], shared_wall) == 2
    assert union_area_sqft([Rectangle(-5, -5, 40, 20)], south_wall) == 192 - 12


def test_width_and_height_leave_out_gaps() -> None:
    apart = [Rectangle(0, 0, 2, 1), Rectangle(1, 3, 3, 1), Rectangle(10, 0, 1, 1)]
    assert union_width_ft(apart) == 5
    assert union_height_ft(apart) == 2


@pytest.mark.parametrize(
    ("rectangles", "count", "length"),
    [
        ([Rectangle(2.5, 0, 1, 5)], 0, 0),  # within one bay
        ([Rectangle(2, 0, 2, 5)], 2, 10),
        ([Rectangle(2.5, 0, 2, 5)], 1, 5),
        ([Rectangle(8.5, 0, 0.5, 5)], 1, 5),  # the end stud
        ([Rectangle(2, 0, 2, 5), Rectangle(4, 2, 2, 5)], 3, 5 + 7 + 5),  # stud at 4: 0 to 7
        ([Rectangle(2, 0, 2, 1), Rectangle(2, 4, 2, 1)], 2, 4),
        ([], 0, 0),
    ],
)
def test_members_and_their_length(rectangles: list[Rectangle], count: int, length: float) -> None:
    assert members_in(rectangles, UP) == count
    assert member_length_ft(rectangles, UP) == length
    turned = [Rectangle(r.bottom_ft, r.left_ft, r.height_ft, r.width_ft) for r in rectangles]
    across = replace(UP, runs="across")
    assert members_in(turned, across) == count
    assert member_length_ft(turned, across) == length


def test_a_slab_has_no_members() -> None:
    assert members_in([Rectangle(0, 0, 9, 9)], None) == 0
    assert member_length_ft([Rectangle(0, 0, 9, 9)], None) == 0


@given(zone_lists)
def test_members_do_not_depend_on_how_zones_are_cut_up(rectangles: list[Rectangle]) -> None:
    assert members_in(united(rectangles), UP) == members_in(rectangles, UP)
    assert member_length_ft(united(rectangles), UP) == pytest.approx(
        member_length_ft(rectangles, UP), abs=1e-4
    )
