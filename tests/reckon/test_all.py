"""All computations together: order, words, and the items they read."""

from __future__ import annotations

from typing import Any

import pytest

from leanto.library import read_library
from leanto.reckon import asked
from leanto.record.observation import Air
from leanto.rules.facts import RECKONED_FACTS, STATIC_FACTS


@pytest.fixture
def busy(case: Any) -> Any:
    """A walk with an answer for every kind of computation."""
    case.lean_to = {}
    case.facts = {"distance_to_panel": 140, "climate_zone": 5, "winter_low_f": 5}
    case.answer(
        "main.south.inside", "stud-feet", zone=(0, 0, 4, 2), probe_depth_in=1.0, moisture_pct=24.0
    )
    case.air = {"main.floor": Air(70.0, 50.0)}
    case.answer("main.south.inside", "cut-members", "worn", cut_kind="notch", cut_depth_in=1.5)
    case.answer("main.south.inside", "mold", zone=(0, 0, 4, 4))
    case.answer("main.south.inside", "wall-base", tide_height_in=8.0)
    case.answer("main.south.inside", "wet-lining", wet_days=3.0, water_kind="pipe")
    case.answer("main.south.outside", "entry-holes", gap_size_in=0.5)
    case.answer("main.south.outside", "soil-gap", gap_to_soil_in=3.0)
    case.answer("main.floor", "pin-holes", hole_size_in=0.1, dust_kind="gritty")
    case.answer("feed", "feed-size", feed_amp=20.0, feed_poles="one pole", feed_awg=12.0)
    return case


def test_every_reckoning_says_who_confirms_and_where_it_comes_from(busy: Any) -> None:
    for one in busy.reckoned().values():
        assert one.title and one.verdict, one.id
        assert one.confirm, one.id
        assert one.sources or one.verdict == "undecided", one.id
        assert one.figures or one.reasons, one.id


def test_nothing_is_ever_called_safe(busy: Any) -> None:
    for one in busy.reckoned().values():
        said = " ".join((one.title, one.verdict, *one.reasons, *one.asks, *one.cautions))
        assert "safe" not in said.lower(), one.id


def test_every_reckoning_stands_at_a_station_of_the_building(busy: Any) -> None:
    from leanto.building.stations import stations_of

    stations = {station.id for station in stations_of(busy.building)}
    assert {one.station_id for one in busy.reckoned().values()} <= stations


def test_facts_are_those_that_rules_know_and_of_their_kind(busy: Any) -> None:
    specs = {spec.name: spec for spec in STATIC_FACTS}
    named: set[str] = set()
    for one in busy.reckoned().values():
        for name, value in one.facts.items():
            spec = specs[name]
            named.add(name)
            kind = (
                "flag"
                if isinstance(value, bool)
                else "text"
                if isinstance(value, str)
                else "number"
            )
            assert kind == spec.kind, name
            if kind == "text":
                assert value in spec.choices, name
    by_observation_too = {"moisture_verdict", "moisture_over_air_pct"}
    assert named == {spec.name for spec in RECKONED_FACTS} | by_observation_too


def test_the_same_walk_gives_the_same_reckonings(busy: Any) -> None:
    assert busy.reckoned() == busy.reckoned()


def test_the_shipped_checklists_ask_every_item_that_is_read() -> None:
    items = {item.id for item in read_library().checklist.items()}
    assert set(asked.ALL) <= items
