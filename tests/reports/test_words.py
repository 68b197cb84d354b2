"""Dates, counts, places and measures in words."""

from __future__ import annotations

from datetime import date

import pytest

from leanto.building.rectangle import Rectangle
from leanto.building.surface import Surface
from leanto.checklist.model import Measure
from leanto.reports.contents.measures import measured_in_words
from leanto.reports.contents.words import (
    about,
    capitalized,
    counted,
    date_in_words,
    joined,
    zone_in_words,
)


@pytest.mark.parametrize(
    ("surface", "zone", "expected"),
    [
        (
            "main.north.outside",
            Rectangle(2.5, 0, 4, 1),
            "4' 0\" × 1' 0\", 2' 6\" from the left end, at the floor line",
        ),
        (
            "main.north.inside",
            Rectangle(0, 3, 1.25, 0.5),
            '1\' 3" × 6", at the left end, 3\' 0" above the floor line',
        ),
        (
            "main.roof.south",
            Rectangle(1, 2, 3, 3),
            "3' 0\" × 3' 0\", 1' 0\" from the left end, 2' 0\" up the slope from the eave",
        ),
        (
            "main.ceiling",
            Rectangle(0, 0, 2, 2),
            "2' 0\" × 2' 0\", at the west edge, at the south edge",
        ),
        # half an inch is the step between at an edge and away from it
        (
            "main.floor",
            Rectangle(0.04, 0.05, 2, 2),
            '2\' 0" × 2\' 0", at the west edge, 5/8" from the south edge',
        ),
    ],
)
def test_a_zone_is_placed_as_somebody_facing_the_surface_sees_it(
    surfaces: dict[str, Surface], surface: str, zone: Rectangle, expected: str
) -> None:
    assert zone_in_words(zone, surfaces[surface]) == expected


def test_dates_and_counts_do_not_hang_on_the_machine() -> None:
    assert date_in_words(date(2026, 11, 5)) == "November 5, 2026"
    assert counted(1, "finding") == "1 finding"
    assert counted(0, "entry", "entries") == "0 entries"
    assert joined(["a"]) == "a"
    assert joined(["a", "b", "c"]) == "a, b and c"
    assert capitalized("pest firm") == "Pest firm"
    assert capitalized("A1 Steel") == "A1 Steel"
    assert (about(1234.9), about(1235), about(-4)) == ("$1,230", "$1,240", "$0")


def _measure(name: str, unit: str, **limits: object) -> Measure:
    return Measure.model_validate({"id": name, "label": name, "unit": unit} | limits)


def test_measures_carry_their_units() -> None:
    number = {"low": 0, "high": 1000}
    measures = {
        name: _measure(name, unit, **({} if unit == "yes_no" else number))
        for name, unit in {
            "depth_in": "in",
            "run_ft": "ft",
            "moisture_pct": "pct",
            "area_sqft": "sqft",
            "is_wet": "yes_no",
            "wire_awg": "awg",
        }.items()
    }

    said = measured_in_words(
        {
            "depth_in": 1.5,
            "run_ft": 7.25,
            "moisture_pct": 24.0,
            "area_sqft": 12.5,
            "is_wet": 1.0,
            "wire_awg": 14.0,
            "stain_kind": "ring",
        },
        measures,
    )

    assert said == (
        'depth_in: 1 1/2"',
        "run_ft: 7' 3\"",
        "moisture_pct: 24 %",
        "area_sqft: 12.5 sq ft",
        "is_wet: yes",
        "wire_awg: 14 AWG",
        "stain_kind: ring",
    )
