"""From walk.yaml to entries."""

from __future__ import annotations

import pytest

from leanto.demo.make import read_walk
from leanto.demo.walk import DemoWalk, Picture, measured, steps_of
from leanto.errors import InputProblems
from leanto.quantities import LengthError
from leanto.record.entry import AirMeasured, Answered, Measured, MovedTo, Zoned
from leanto.yaml_input import parse_model

TWO_STAINS = """
invented: true
date: 2026-10-17
who: demo
opens_at: {station: main.north.inside, item: wall-stain}
stops:
  - station: main.north.inside
    air: {temp_f: 57, humidity_pct: 70}
    seen:
      - item: wall-stain
        condition: failed
        measures: {moisture_pct: 26}
        zone: {left: 7' 3", bottom: 3 ft, width: 3' 6", height: 18 in}
        pictures: [stain]
      - {item: wall-stain, condition: worn}
      - {item: mold, condition: no access, reason: Shelves}
"""


def read(text: str) -> DemoWalk:
    return parse_model(text, DemoWalk, "walk.yaml")


@pytest.mark.parametrize(
    ("measure", "typed", "kept"),
    [
        ("moisture_pct", 17, 17.0),
        ("is_active", True, 1.0),
        ("is_active", False, 0.0),
        ("run_ft", "12' 6\"", 12.5),
        ("run_ft", "24", 24.0),
        ("probe_depth_in", "1 1/4 in", 1.25),
        ("probe_depth_in", "3/4", 0.75),
        ("ground_fall_in", "-4 in", -4.0),
        ("stain_look", "several rings", "several rings"),
    ],
)
def test_a_measure_is_kept_in_the_unit_its_id_ends_with(
    measure: str, typed: bool | float | str, kept: float | str
) -> None:
    assert measured(measure, typed) == kept


def test_a_length_that_is_none_is_refused() -> None:
    with pytest.raises(LengthError):
        measured("run_ft", "some way")


def test_entries_come_in_the_order_in_which_they_were_seen() -> None:
    kinds = [type(step) for step in steps_of(read(TWO_STAINS))]

    assert kinds == [AirMeasured, Answered, Measured, Zoned, Picture, Answered, Answered, MovedTo]


def test_a_second_observation_of_an_item_at_a_station_is_number_2() -> None:
    answers = [step for step in steps_of(read(TWO_STAINS)) if isinstance(step, Answered)]

    assert [(a.item, a.number, a.reason) for a in answers] == [
        ("wall-stain", 1, ""),
        ("wall-stain", 2, ""),
        ("mold", 1, "Shelves"),
    ]


def test_a_zone_is_in_feet() -> None:
    (zone,) = (step for step in steps_of(read(TWO_STAINS)) if isinstance(step, Zoned))

    assert (zone.left_ft, zone.bottom_ft, zone.width_ft, zone.height_ft) == (7.25, 3, 3.5, 1.5)


@pytest.mark.parametrize(
    ("right", "wrong"),
    [
        ("invented: true", "invented: false"),
        ("condition: worn", "condition: so-so"),
        ("18 in}", "18 in, depth: 2 ft}"),
    ],
)
def test_a_walk_that_is_not_as_described_is_refused(right: str, wrong: str) -> None:
    with pytest.raises(InputProblems):
        read(TWO_STAINS.replace(right, wrong))


def test_the_walk_of_the_demo_says_that_it_is_invented() -> None:
    assert read_walk().invented
