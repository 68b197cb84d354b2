"""Which surfaces bear on one another."""

from __future__ import annotations

from typing import Any

import pytest

from leanto.building.relations import above, beside, other_face
from leanto.building.surface import Surface
from leanto.building.surfaces import surfaces_of


@pytest.fixture(scope="module")
def surfaces(a_building: Any, a_block: Any, a_lean_to: Any) -> dict[str, Surface]:
    building = a_building(a_block(), a_lean_to())
    return {surface.id: surface for surface in surfaces_of(building)}


@pytest.mark.parametrize(
    ("id_", "other"),
    [
        ("main.north.outside", "main.north.inside"),
        ("main.north.inside", "main.north.outside"),
        ("lean-to.west.inside", "lean-to.west.outside"),
        ("main.roof.north", None),
        ("main.ceiling", None),
        ("main.floor", None),
    ],
)
def test_other_face(surfaces: dict[str, Surface], id_: str, other: str | None) -> None:
    found = other_face(surfaces[id_], surfaces.values())
    assert (found.id if found else None) == other


@pytest.mark.parametrize(
    ("id_", "over"),
    [
        ("main.south.inside", ["main.roof.south"]),
        ("main.south.outside", ["main.roof.south"]),
        ("main.east.inside", ["main.roof.north", "main.roof.south"]),
        # The lean-to's roof meets this wall and drains onto it when its flashing fails.
        ("main.north.inside", ["main.roof.north", "lean-to.roof.north"]),
        ("lean-to.north.inside", ["lean-to.roof.north"]),
        ("lean-to.west.inside", ["lean-to.roof.north"]),
        ("main.ceiling", ["main.roof.north", "main.roof.south"]),
        ("lean-to.ceiling", ["lean-to.roof.north"]),
        ("main.floor", ["main.ceiling"]),
        ("main.roof.north", []),
    ],
)
def test_what_lies_above(surfaces: dict[str, Surface], id_: str, over: list[str]) -> None:
    assert [surface.id for surface in above(surfaces[id_], surfaces.values())] == over


def test_every_hip_wall_carries_its_own_slope(a_building: Any, a_block: Any) -> None:
    hip = surfaces_of(a_building(a_block(roof={"form": "hip", "pitch": 6})))
    east = next(surface for surface in hip if surface.id == "main.east.inside")
    assert [surface.id for surface in above(east, hip)] == ["main.roof.east"]


def test_beside_are_the_other_surfaces_of_the_block(surfaces: dict[str, Surface]) -> None:
    neighbors = [surface.id for surface in beside(surfaces["lean-to.floor"], surfaces.values())]
    assert neighbors == [
        id_ for id_ in surfaces if id_.startswith("lean-to.") and id_ != "lean-to.floor"
    ]
