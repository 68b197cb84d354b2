"""What is drawn of a surface."""

from __future__ import annotations

from typing import Any

import pytest

from leanto.building.rectangle import Rectangle
from leanto.building.sketch import SketchZone, sketch_of
from leanto.building.surfaces import surfaces_of


def _surface(building: Any, id_: str) -> Any:
    return next(surface for surface in surfaces_of(building) if surface.id == id_)


def test_a_sketch_shows_the_surface_as_it_is(a_building: Any, a_block: Any, a_lean_to: Any) -> None:
    surface = _surface(a_building(a_block(), a_lean_to()), "main.north.outside")
    sketch = sketch_of(surface)
    assert sketch.title == "Main room, north wall, outside"
    assert (sketch.surface, sketch.width_ft, sketch.height_ft) == (surface.id, 24, 8)
    assert sketch.outline == surface.outline
    assert sketch.covered == surface.covered
    assert sketch.openings == surface.openings
    assert sketch.zones == ()


def test_studs_end_at_the_rake(a_building: Any) -> None:
    lines = sketch_of(_surface(a_building(), "main.east.outside")).member_lines
    assert lines[0] == ((0, 0), (0, 8))
    assert lines[1] == ((2, 0), (2, pytest.approx(9)))
    assert lines[3] == ((6, 0), (6, 11))
    assert len(lines) == 7


def test_rafters_of_a_hip_end_stay_in_the_triangle(a_building: Any, a_block: Any) -> None:
    roof = {"form": "hip", "pitch": 6, "overhang": 0, "spacing": 3}
    surface = _surface(a_building(a_block(roof=roof)), "main.roof.east")
    lines = sketch_of(surface).member_lines
    assert [line[0][0] for line in lines] == [3, 6, 9]  # none of no length at the corners
    assert lines[1][1] == (6, pytest.approx(surface.height_ft))


def test_joists_that_run_across_are_level_lines(a_building: Any, a_block: Any) -> None:
    floor = _surface(
        a_building(a_block(ridge_runs="north-south", floor={"spacing": 8})), "main.floor"
    )
    assert sketch_of(floor).member_lines[1] == ((0, 8), (12, 8))


def test_a_slab_has_no_member_lines(a_building: Any, a_block: Any) -> None:
    floor = _surface(a_building(a_block(floor={"kind": "slab"})), "main.floor")
    assert sketch_of(floor).member_lines == ()


def test_zones_are_cut_at_the_edge_and_stand_in_order(a_building: Any) -> None:
    surface = _surface(a_building(), "main.south.outside")
    zones = [
        SketchZone(2, "rot", Rectangle(23, 7, 3, 3), "failed"),
        SketchZone(1, "stain", Rectangle(1, 1, 2, 2), "worn"),
        SketchZone(3, "elsewhere", Rectangle(30, 0, 1, 1), "worn"),
    ]
    drawn = sketch_of(surface, zones).zones
    assert [(zone.number, zone.rectangle) for zone in drawn] == [
        (1, Rectangle(1, 1, 2, 2)),
        (2, Rectangle(23, 7, 1, 1)),
    ]
    assert [(zone.label, zone.mark) for zone in drawn] == [("stain", "worn"), ("rot", "failed")]
