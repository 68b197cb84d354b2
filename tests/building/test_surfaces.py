"""Which surfaces a building has, with their openings, areas and faces."""

from __future__ import annotations

import math
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from leanto.building.kinds import Cladding, Insulation, Lining, PlaceKind, Side
from leanto.building.model import Building
from leanto.building.rectangle import Rectangle
from leanto.building.surface import Surface
from leanto.building.surfaces import surfaces_of

WINDOW = {"id": "W1", "kind": "window", "width": 3, "height": 4, "from_bottom": 3}


def _by_id(building: Building) -> dict[str, Surface]:
    surfaces = surfaces_of(building)
    by_id = {surface.id: surface for surface in surfaces}
    assert len(by_id) == len(surfaces)
    return by_id


def test_a_gable_block_has_twelve_surfaces(a_building: Any) -> None:
    assert list(_by_id(a_building())) == [
        "main.north.outside",
        "main.east.outside",
        "main.south.outside",
        "main.west.outside",
        "main.roof.north",
        "main.roof.south",
        "main.north.inside",
        "main.east.inside",
        "main.south.inside",
        "main.west.inside",
        "main.ceiling",
        "main.floor",
    ]


def test_surfaces_are_named_in_words(a_building: Any, a_block: Any, a_lean_to: Any) -> None:
    surfaces = _by_id(a_building(a_block(ceiling={}), a_lean_to()))
    assert surfaces["main.north.inside"].name == "Main room, north wall, inside"
    assert surfaces["main.roof.south"].name == "Main room, south roof slope"
    assert surfaces["main.ceiling"].name == "Main room, ceiling"
    assert surfaces["lean-to.roof.north"].name == "Feed room, roof"
    assert surfaces["lean-to.ceiling"].name == "Feed room, underside of roof"


def test_an_opening_shows_on_both_faces_and_mirrored_inside(a_building: Any) -> None:
    surfaces = _by_id(a_building(openings=[WINDOW | {"on": "main.south", "from_left": 2}]))
    outside, inside = surfaces["main.south.outside"], surfaces["main.south.inside"]
    assert outside.openings[0].rectangle == Rectangle(2, 3, 3, 4)
    assert inside.openings[0].rectangle == Rectangle(19, 3, 3, 4)
    assert outside.net_area_sqft == inside.net_area_sqft == 24 * 8 - 12


def test_a_roof_opening_shows_on_its_slope(a_building: Any) -> None:
    flue = {"id": "F1", "kind": "flue", "on": "main.roof.south", "from_left": 2, "from_bottom": 1}
    surfaces = _by_id(a_building(openings=[flue | {"width": 2, "height": 1.5}]))
    slope = surfaces["main.roof.south"]
    assert slope.gross_area_sqft == pytest.approx(24 * 7 * math.hypot(1, 0.5))
    assert slope.net_area_sqft == pytest.approx(slope.gross_area_sqft - 3)
    assert surfaces["main.roof.north"].openings == surfaces["main.ceiling"].openings == ()


def test_a_vent_above_the_ceiling_is_not_seen_inside(a_building: Any, a_block: Any) -> None:
    vent = {"id": "V1", "kind": "vent", "on": "main.east", "from_left": 5, "from_bottom": 8.5}
    opening = [vent | {"width": 2, "height": 1}]
    under_ceiling = _by_id(a_building(a_block(ceiling={}), openings=opening))
    assert under_ceiling["main.east.outside"].net_area_sqft == 112
    assert under_ceiling["main.east.inside"].openings == ()
    assert under_ceiling["main.east.inside"].net_area_sqft == 96
    open_to_roof = _by_id(a_building(a_block(), openings=opening))
    assert open_to_roof["main.east.inside"].net_area_sqft == 112


def test_a_lean_to_hides_part_of_the_wall_it_stands_against(
    a_building: Any, a_block: Any, a_lean_to: Any
) -> None:
    between = {"id": "D1", "kind": "door", "on": "main.north", "from_left": 16}
    surfaces = _by_id(
        a_building(a_block(), a_lean_to(), openings=[between | {"width": 3, "height": 6}])
    )
    north = surfaces["main.north.outside"]
    # 5 ft 9 in at the eave plus 6 ft at 3:12; the door lies in the hidden part.
    assert north.covered == (Rectangle(12, 0, 12, 7.25),)
    assert north.net_area_sqft == 24 * 8 - 12 * 7.25
    assert surfaces["main.north.inside"].net_area_sqft == 24 * 8 - 18
    assert surfaces["main.north.inside"].covered == ()


def test_a_lean_to_has_no_wall_against_the_other_block(
    a_building: Any, a_block: Any, a_lean_to: Any
) -> None:
    surfaces = _by_id(a_building(a_block(), a_lean_to()))
    walls = [id_ for id_ in surfaces if id_.startswith("lean-to.") and "side" in id_]
    assert walls == [
        "lean-to.north.outside",
        "lean-to.east.outside",
        "lean-to.west.outside",
        "lean-to.north.inside",
        "lean-to.east.inside",
        "lean-to.west.inside",
    ]
    assert surfaces["lean-to.roof.north"].meets == "main.north.outside"
    assert surfaces["main.roof.north"].meets is None


def test_faces_follow_the_walls_and_what_differs_on_one(a_building: Any, a_block: Any) -> None:
    block = a_block(
        walls={"spacing": 2, "cladding": "board", "lining": "plywood", "insulation": "batts"},
        on_wall={"north": {"lining": "none", "cladding": "metal", "insulation": "none"}},
    )
    surfaces = _by_id(a_building(block))
    assert surfaces["main.north.outside"].cladding is Cladding.METAL
    assert surfaces["main.east.outside"].cladding is Cladding.BOARD
    assert surfaces["main.north.inside"].lining is Lining.NONE
    assert surfaces["main.north.inside"].insulation is Insulation.NONE
    assert surfaces["main.east.inside"].lining is Lining.PLYWOOD
    assert surfaces["main.east.inside"].insulation is Insulation.BATTS
    lined = [id_ for id_, surface in surfaces.items() if surface.is_lined]
    assert lined == ["main.east.inside", "main.south.inside", "main.west.inside"]


def test_ceiling_and_floor_are_plans_with_west_at_the_left(a_building: Any, a_block: Any) -> None:
    block = a_block(ridge_runs="north-south", ceiling={"lining": "fiberboard"})
    surfaces = _by_id(a_building(block))
    for id_ in ("main.ceiling", "main.floor"):
        assert (surfaces[id_].width_ft, surfaces[id_].height_ft) == (12, 24)
        assert surfaces[id_].side is None
    assert surfaces["main.ceiling"].is_lined


def test_a_room_open_to_the_roof_has_an_unlined_underside(a_building: Any) -> None:
    underside = _by_id(a_building())["main.ceiling"]
    assert (underside.kind, underside.lining) == (PlaceKind.CEILING, Lining.NONE)
    assert underside.gross_area_sqft == 24 * 12


@given(
    form=st.sampled_from(["gable", "shed", "hip", "flat"]),
    length=st.floats(6, 60),
    width=st.floats(6, 60),
    has_ceiling=st.booleans(),
    ridge_runs=st.sampled_from(["east-west", "north-south"]),
    left=st.floats(0, 3),
)
def test_areas_hold_together_for_every_roof_form(
    a_building: Any,
    a_block: Any,
    form: str,
    length: float,
    width: float,
    has_ceiling: bool,
    ridge_runs: str,
    left: float,
) -> None:
    roof: dict[str, Any] = {"form": form, "overhang": 1}
    if form != "flat":
        roof["pitch"] = 5
    if form == "shed":
        roof["high_side"] = "south" if ridge_runs == "east-west" else "west"
    block = a_block(
        length=length,
        width=width,
        ridge_runs=ridge_runs,
        roof=roof,
        ceiling={} if has_ceiling else None,
    )
    openings = [
        WINDOW | {"id": f"W{number}", "on": f"main.{side}", "from_left": left}
        for number, side in enumerate(Side)
    ]
    surfaces = surfaces_of(a_building(block, openings=openings))
    for surface in surfaces:
        doors_sqft = sum(opening.rectangle.area_sqft for opening in surface.openings)
        assert surface.net_area_sqft == pytest.approx(surface.gross_area_sqft - doors_sqft)
        assert surface.gross_area_sqft <= surface.width_ft * surface.height_ft * (1 + 1e-9)
        assert surface.perimeter_ft > 2 * surface.width_ft
    walls = {s.id: s for s in surfaces if s.kind in (PlaceKind.WALL_OUTSIDE, PlaceKind.WALL_INSIDE)}
    if not has_ceiling:
        for side in Side:
            outside, inside = walls[f"main.{side}.outside"], walls[f"main.{side}.inside"]
            assert outside.gross_area_sqft == pytest.approx(inside.gross_area_sqft)
