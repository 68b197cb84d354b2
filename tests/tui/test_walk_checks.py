"""The checks that the walk screen shows beside an answer."""

from __future__ import annotations

from datetime import date

from leanto.assessment import assess
from leanto.building.load import parse_building
from leanto.checklist.condition import Condition
from leanto.library import read_library
from leanto.record.observation import Air, Observation, ObservationKey
from leanto.record.walk import Walk
from leanto.tui.consequences import following
from leanto.tui.widgets.follows import Following, follow_lines

SHED = """
name: Test shed
year_built: 1938
blocks:
  - id: main
    name: Main room
    length: 24'
    width: 12'
    eave_height: 8'
    walls: {lining: beaded board, spacing: 2'}
    ceiling: {lining: fiberboard, spacing: 2'}
    roof: {pitch: 6:12, spacing: 2'}
"""


def checks(station: str, item: str, **measures: float) -> tuple[str, ...]:
    return follows(station, item, **measures).checks


def follows(station: str, item: str, distance_ft: int = 0, **measures: float) -> Following:
    text = SHED.replace("blocks:", f"distance_to_panel: {distance_ft}'\nblocks:", 1)
    building = parse_building(text, "shed.yaml")
    key = ObservationKey(station, item)
    walk = Walk(
        building=building,
        observations={key: Observation(key, Condition.WORN, measures=dict(measures))},
        air={station: Air(70.0, 50.0)},
    )
    assessment = assess(building, walk, read_library(), date(2026, 6, 1))
    return following(assessment, key, None)


def test_an_answer_brings_its_own_checks_first_and_then_those_of_the_place() -> None:
    shown = checks("main.ceiling", "rafters", moisture_pct=18.0)
    assert shown[0] == "Meter reading: wetter than the air explains"
    assert "ceiling joists under storage: does not pass" in shown[1:]


def test_a_soft_stud_shows_what_is_left_of_it() -> None:
    (shown,) = checks("main.south.inside", "stud-feet", probe_depth_in=1.5)
    assert shown == "Soft stud: replace"


def test_a_place_without_checks_shows_none() -> None:
    assert checks("main.south.inside", "stud-feet") == ()


def test_the_feed_shows_the_way_that_costs_least_whatever_else_follows() -> None:
    shown = follows("feed", "feed-kind", distance_ft=140)
    assert shown.feed.startswith("least: aluminum")
    assert ", likely $" in shown.feed
    lines = [str(line) for line in follow_lines(shown, 60, 7)]
    assert any(line.startswith("Feed") for line in lines)
    assert follows("main.south.inside", "stud-feet", distance_ft=140).feed == ""


def test_each_check_takes_one_line_below_what_follows() -> None:
    long = "Meter reading: " + "wetter than the air explains " * 4
    lines = follow_lines(Following(nothing="Nothing follows.", checks=(long, "Feed: ask")), 60, 7)
    assert [line.plain[:6].strip() for line in lines] == ["Nothin", "Check", "Check"]
    assert all(line.cell_length <= 60 for line in lines)
