"""The sketch in character cells."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st
from small_shed import SHED

from leanto.building.load import parse_building
from leanto.building.rectangle import Rectangle
from leanto.building.sketch import SketchZone, sketch_of
from leanto.building.surface import Surface
from leanto.building.surfaces import surfaces_of
from leanto.tui.widgets.building_plan import plan_lines
from leanto.tui.widgets.sketch_cells import Ink, sketch_cells


def drawn(surface: Surface, *zones: Rectangle, columns: int = 38, rows: int = 18) -> list[str]:
    numbered = (
        SketchZone(number, "soft", zone, "failed") for number, zone in enumerate(zones, start=1)
    )
    cells = sketch_cells(sketch_of(surface, numbered), columns, rows)
    return ["".join(cell.char for cell in line) for line in cells]


def test_a_wall_shows_its_door_its_studs_and_its_zone(surfaces: dict[str, Surface]) -> None:
    wall = surfaces["main.south.outside"]  # 24 ft x 8 ft, a door 10 ft from the left

    lines = drawn(wall, Rectangle(0, 0, 4, 2), columns=26, rows=10)

    assert lines[0] == "+------------------------+"
    assert len(lines) == 6  # four rows of 2 ft, and the frame
    assert lines[-2].startswith("|1111")
    assert not lines[-3].startswith("|1")
    assert "D1" in "".join(lines)
    assert ":" in lines[1]


def test_a_gable_comes_to_a_point_in_the_middle(surfaces: dict[str, Surface]) -> None:
    lines = drawn(surfaces["main.west.outside"])

    top = lines[0]
    assert abs((len(top) - len(top.lstrip())) - (len(top) - len(top.rstrip()))) <= 1
    assert any("/" in line and "\\" in line for line in lines)
    assert lines[-1].strip("+-") == ""
    assert len(lines[-1].strip()) > len(top.strip())


def test_a_later_zone_is_seen_over_an_earlier_one(surfaces: dict[str, Surface]) -> None:
    lines = drawn(
        surfaces["main.south.outside"], Rectangle(0, 0, 24, 8), Rectangle(20, 4, 4, 4), columns=26
    )

    assert "2" in lines[1]
    assert "1" in lines[-2]


@pytest.mark.parametrize(("columns", "rows"), [(5, 10), (30, 3), (0, 0)])
def test_no_sketch_where_there_is_no_room(
    surfaces: dict[str, Surface], columns: int, rows: int
) -> None:
    assert drawn(surfaces["main.south.outside"], columns=columns, rows=rows) == []


@given(
    columns=st.integers(6, 90),
    rows=st.integers(4, 40),
    left=st.floats(0, 23),
    bottom=st.floats(0, 7),
    width=st.floats(0.1, 24),
    height=st.floats(0.1, 8),
)
def test_a_sketch_fits_its_room_and_shows_every_zone(
    columns: int, rows: int, left: float, bottom: float, width: float, height: float
) -> None:
    for surface in SURFACES:
        zone = Rectangle(
            left * surface.width_ft / 24,
            bottom * surface.height_ft / 8,
            width * surface.width_ft / 24,
            height * surface.height_ft / 8,
        )
        cells = sketch_cells(
            sketch_of(surface, [SketchZone(1, "soft", zone, "failed")]), columns, rows
        )
        assert 3 <= len(cells) <= rows
        assert {len(line) for line in cells} == {len(cells[0])}
        assert len(cells[0]) <= columns
        on_the_box = zone.left_ft + zone.width_ft / 2 < surface.width_ft
        if len(surface.outline) == 4 and on_the_box and zone.bottom_ft < surface.height_ft:
            assert any(cell.ink is Ink.ZONE for line in cells for cell in line)


def test_the_rectangle_that_is_being_placed_lies_over_everything(
    surfaces: dict[str, Surface],
) -> None:
    wall = surfaces["main.south.outside"]
    zone = SketchZone(1, "soft", Rectangle(0, 0, 24, 8), "failed")

    cells = sketch_cells(sketch_of(wall, [zone]), 26, 10, Rectangle(4, 0, 4, 2))
    lines = ["".join(cell.char for cell in line) for line in cells]

    assert lines[-2].startswith("|1111****1")
    assert "*" not in lines[1]
    assert {cell.ink for cell in cells[-2] if cell.char == "*"} == {Ink.PLACED}


@pytest.mark.parametrize(
    ("surface_id", "row", "column"),
    [
        ("main.south.outside", -1, 0.5),
        ("main.south.inside", -2, 0.5),
        ("main.north.outside", 0, 0.5),
        ("main.west.outside", None, 0.0),
        ("main.east.outside", None, 1.0),
        ("main.ceiling", None, 0.5),
        ("main.roof.north", 0, 0.5),
    ],
)
def test_the_plan_shows_where_somebody_stands(
    surfaces: dict[str, Surface], surface_id: str, row: int | None, column: float
) -> None:
    building = parse_building(SHED, "shed.yaml")

    lines = plan_lines(building, 31, 9, surfaces[surface_id])
    at = next(number for number, line in enumerate(lines) if "@" in line)
    width = max(map(len, lines)) - 1

    assert sum(line.count("@") for line in lines) == 1
    assert row is None or at == row % len(lines)
    assert abs(lines[at].index("@") / width - column) < 0.15
    assert "@" not in "".join(plan_lines(building, 31, 9))


def _surfaces() -> tuple[Surface, ...]:
    return surfaces_of(parse_building(SHED, "shed.yaml"))


SURFACES = _surfaces()
