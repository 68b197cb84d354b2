"""The rectangle that keys move over a surface."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st
from small_shed import SHED

from leanto.building.load import parse_building
from leanto.building.rectangle import Rectangle
from leanto.building.surface import Surface
from leanto.building.surfaces import surfaces_of
from leanto.tui.placer import KEYS, Placer, stops_ft

_SURFACES = {one.id: one for one in surfaces_of(parse_building(SHED, "shed.yaml"))}
SOUTH = "main.south.outside"  # 24 ft x 8 ft, studs every 2 ft


@pytest.mark.parametrize(
    ("keys", "expected"),
    [
        ("right", Rectangle(2, 0, 2, 2)),
        ("right right left", Rectangle(2, 0, 2, 2)),
        ("left", Rectangle(0, 0, 2, 2)),
        ("up", Rectangle(0, 0.5, 2, 2)),
        ("down", Rectangle(0, 0, 2, 2)),
        ("shift+right", Rectangle(0, 0, 4, 2)),
        ("w w", Rectangle(0, 0, 6, 2)),
        ("w n", Rectangle(0, 0, 2, 2)),
        ("n", Rectangle(0, 0, 2, 2)),  # a bay is the least
        ("h", Rectangle(0, 0, 2, 2.5)),
        ("shift+down", Rectangle(0, 0, 2, 1.5)),
        ("a", Rectangle(0, 0, 24, 8)),
        ("W right", Rectangle(2, 0, 4, 2)),
    ],
)
def test_keys_move_and_size_it_from_stud_to_stud(
    surfaces: dict[str, Surface], keys: str, expected: Rectangle
) -> None:
    placer = Placer(surfaces[SOUTH], Rectangle(0, 0, 2, 2))
    for key in keys.split():
        placer.press(key)

    assert placer.zone == expected


def test_at_the_far_end_it_grows_the_other_way(surfaces: dict[str, Surface]) -> None:
    placer = Placer(surfaces[SOUTH], Rectangle(22, 0, 2, 2))

    placer.press("right")
    assert placer.zone == Rectangle(22, 0, 2, 2)
    placer.press("w")
    assert placer.zone == Rectangle(20, 0, 4, 2)


def test_a_typed_size_is_kept_when_it_moves(surfaces: dict[str, Surface]) -> None:
    placer = Placer(surfaces[SOUTH], Rectangle(3, 0, 7.25, 1))

    placer.press("right")
    assert placer.zone == Rectangle(4, 0, 7.25, 1)
    placer.press("left")
    assert placer.zone == Rectangle(2, 0, 7.25, 1)


def test_joists_that_run_across_are_stops_from_south_to_north(
    surfaces: dict[str, Surface],
) -> None:
    ceiling = surfaces["main.ceiling"]
    assert ceiling.grid is not None
    along = ceiling.grid.runs == "up"

    assert stops_ft(ceiling, across=along)[1] == 2.0
    assert stops_ft(ceiling, across=not along)[1] in (0.5, 1.0)


@given(
    surface_id=st.sampled_from([SOUTH, "main.west.outside", "main.roof.south", "main.ceiling"]),
    keys=st.lists(st.sampled_from(sorted(KEYS)), max_size=40),
    left=st.floats(0, 10),
    width=st.floats(0.1, 2),
)
def test_no_keys_take_it_off_its_surface(
    surface_id: str, keys: list[str], left: float, width: float
) -> None:
    surface = _SURFACES[surface_id]
    placer = Placer(surface, Rectangle(left, 0, width, 1))
    for key in keys:
        placer.press(key)
        zone = placer.zone
        assert zone.left_ft >= 0
        assert zone.bottom_ft >= 0
        assert zone.right_ft <= surface.width_ft + 1e-9
        assert zone.top_ft <= surface.height_ft + 1e-9
