"""The building of the demo."""

from __future__ import annotations

from pathlib import Path

import pytest

import leanto.demo
from leanto.building.check import building_problems
from leanto.building.kinds import Covering, Foundation, Lining, OpeningKind, Use
from leanto.building.load import read_building
from leanto.building.model import Building
from leanto.building.stations import stations_of
from leanto.building.surfaces import surfaces_of


@pytest.fixture(scope="module")
def demo() -> Building:
    return read_building(Path(leanto.demo.__file__).with_name("building.yaml"))


def test_the_demo_building_holds_together(demo: Building) -> None:
    assert building_problems(demo) == []
    assert demo.invented


def test_the_demo_building_is_the_brooder_house_of_the_story(demo: Building) -> None:
    main, feed_room = demo.blocks
    assert (demo.name, demo.year_built) == ("Hollow Creek brooder house", 1938)
    assert (main.length, main.width, main.roof.pitch, main.roof.layers) == (24, 12, 6, 2)
    assert main.roof.covering is Covering.ASPHALT_SHINGLE
    assert (feed_room.length, feed_room.width, feed_room.roof.pitch) == (12, 6, 3)
    assert feed_room.roof.covering is Covering.CORRUGATED_STEEL
    assert demo.foundation is Foundation.STONE_AND_SKIDS
    assert (demo.distance_to_panel, demo.intended_use) == (140, Use.WORKSHOP)
    assert main.walls.lining is Lining.BEADED_BOARD
    assert main.ceiling is not None
    assert main.ceiling.lining is Lining.FIBERBOARD
    flues = [opening.on for opening in demo.openings if opening.kind is OpeningKind.FLUE]
    assert flues == ["main.roof.south"]


def test_the_walk_of_the_demo_starts_at_the_door_and_ends_at_the_house(demo: Building) -> None:
    ids = [station.id for station in stations_of(demo)]
    assert ids[:2] == ["site", "main.south.outside"]
    assert ids[-2:] == ["wiring", "feed"]
    assert len(ids) == len(surfaces_of(demo)) + 3
