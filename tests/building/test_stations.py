"""The walking order."""

from __future__ import annotations

from typing import Any

import pytest

from leanto.building.kinds import PlaceKind
from leanto.building.stations import stations_of
from leanto.building.surfaces import surfaces_of

DOOR = {"id": "D1", "kind": "door", "from_left": 1, "width": 3, "height": 5}


def _ids(building: Any) -> list[str]:
    return [station.id for station in stations_of(building)]


@pytest.mark.parametrize(
    ("door_side", "walls"),
    [
        ("south", ["south", "west", "north", "east"]),
        ("east", ["east", "south", "west", "north"]),
    ],
)
def test_one_block_clockwise_from_its_door(
    a_building: Any, door_side: str, walls: list[str]
) -> None:
    ids = _ids(a_building(openings=[DOOR | {"on": f"main.{door_side}"}]))
    slopes = [side for side in walls if side in ("north", "south")]
    assert ids == [
        "site",
        *(f"main.{side}.outside" for side in walls),
        *(f"main.roof.{side}" for side in slopes),
        *(f"main.{side}.inside" for side in walls),
        "main.ceiling",
        "main.floor",
        "wiring",
    ]


def test_a_lean_to_is_walked_around_where_it_stands(
    a_building: Any, a_block: Any, a_lean_to: Any
) -> None:
    ids = _ids(a_building(a_block(), a_lean_to(), openings=[DOOR | {"on": "main.south"}]))
    assert ids[1:8] == [
        "main.south.outside",
        "main.west.outside",
        "main.north.outside",
        "lean-to.west.outside",
        "lean-to.north.outside",
        "lean-to.east.outside",
        "main.east.outside",
    ]
    assert ids[8:11] == ["main.roof.south", "main.roof.north", "lean-to.roof.north"]
    assert ids.index("main.floor") < ids.index("lean-to.north.inside")


def test_of_two_lean_tos_on_a_wall_the_right_one_is_passed_first(
    a_building: Any, a_block: Any, a_lean_to: Any
) -> None:
    left = a_lean_to(id="left", attached={"to": "main", "side": "north", "offset": 0})
    ids = _ids(a_building(a_block(), left, a_lean_to()))
    assert ids.index("lean-to.east.outside") < ids.index("left.west.outside")


def test_the_block_with_the_first_door_comes_first(
    a_building: Any, a_block: Any, a_lean_to: Any
) -> None:
    openings = [DOOR | {"on": "lean-to.west"}, DOOR | {"id": "D2", "on": "main.south"}]
    ids = _ids(a_building(a_block(), a_lean_to(), openings=openings))
    assert ids[1] == "lean-to.west.outside"
    assert ids[7] == "main.north.outside"
    assert ids.index("lean-to.floor") < ids.index("main.south.inside")
    assert ids[ids.index("main.ceiling") - 4] == "main.south.inside"


def test_a_door_between_two_blocks_is_no_way_in(
    a_building: Any, a_block: Any, a_lean_to: Any
) -> None:
    openings = [
        DOOR | {"on": "main.north", "from_left": 14},
        DOOR | {"id": "D2", "on": "main.east"},
    ]
    assert _ids(a_building(a_block(), a_lean_to(), openings=openings))[1] == "main.east.outside"


def test_without_a_door_the_walk_still_goes_all_around(a_building: Any) -> None:
    assert _ids(a_building())[1:5] == [
        f"main.{side}.outside" for side in ("north", "east", "south", "west")
    ]


@pytest.mark.parametrize(("distance", "has_feed"), [("0 ft", False), ("1 in", True)])
def test_a_feed_is_walked_only_when_there_is_a_distance(
    a_building: Any, distance: str, has_feed: bool
) -> None:
    ids = _ids(a_building(distance_to_panel=distance))
    assert (ids[-1] == "feed") is has_feed
    assert "wiring" in ids


def test_every_surface_has_one_station(a_building: Any, a_block: Any, a_lean_to: Any) -> None:
    building = a_building(a_block(), a_lean_to())
    stations = stations_of(building)
    facing = {station.surface_id: station for station in stations if station.surface_id}
    surfaces = surfaces_of(building)
    assert len(facing) == len(surfaces)
    for surface in surfaces:
        station = facing[surface.id]
        assert (station.id, station.name, station.kind) == (surface.id, surface.name, surface.kind)
    others = [station.kind for station in stations if station.surface_id is None]
    assert others == [PlaceKind.SITE, PlaceKind.WIRING]
