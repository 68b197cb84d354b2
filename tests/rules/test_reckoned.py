"""Facts that computations give: where they are known, and when they may decide what is asked."""

from __future__ import annotations

from datetime import date
from typing import Any

import pytest

from leanto.reckon.all import reckon
from leanto.reckon.model import Reckoning
from leanto.record.observation import ObservationKey
from leanto.record.walk import Walk
from leanto.rules.asking import items_at
from leanto.rules.expression import ExpressionError
from leanto.rules.facts import RECKONED_FACTS
from leanto.rules.load import compile_rules
from leanto.rules.matching import judge
from leanto.rules.reckoned import reckoned_at, reckoned_of

AS_OF = date(2026, 6, 1)


def a_reckoning(station: str, observation: ObservationKey | None = None, **facts: Any) -> Reckoning:
    return Reckoning("id", "title", station, "verdict", facts=facts, observation=observation)


def known(case: Any, station: str, *reckonings: Reckoning) -> dict[str, Any]:
    stations = {one.id: one for one in case.stations}
    return reckoned_at(stations[station], case.surfaces, reckonings)


@pytest.mark.parametrize(
    ("station", "expected"),
    [
        ("main.floor", {"floor_check": "does not pass"}),
        ("main.south.inside", {"floor_check": "does not pass"}),
        ("feed-room.floor", {}),
        ("site", {"floor_check": "does not pass"}),
    ],
)
def test_a_fact_of_a_block_is_known_in_that_block(
    case: Any, station: str, expected: dict[str, Any]
) -> None:
    one = a_reckoning("main.floor", floor_check="does not pass")
    assert known(case, station, one) == expected


def test_a_fact_of_the_whole_building_is_known_everywhere(case: Any) -> None:
    one = a_reckoning("feed", feed_is_long=True)
    for station in case.stations:
        assert known(case, station.id, one) == {"feed_is_long": True}


def test_places_that_differ_leave_a_fact_open_and_the_own_place_goes_first(case: Any) -> None:
    south = a_reckoning("main.roof.south", slope_check="does not pass")
    north = a_reckoning("main.roof.north", slope_check="undecided")
    assert known(case, "main.roof.south", south, north) == {"slope_check": "does not pass"}
    assert known(case, "main.ceiling", south, north) == {}
    assert known(case, "main.ceiling", south, a_reckoning("main.roof.north", **south.facts)) == {
        "slope_check": "does not pass"
    }


def test_a_fact_of_one_answer_is_known_for_that_answer_alone(case: Any) -> None:
    key = ObservationKey("main.floor", "rot", 2)
    one = a_reckoning("main.floor", key, section_lost_pct=12)
    assert known(case, "main.floor", one) == {}
    assert reckoned_of(key, (one,)) == {"section_lost_pct": 12.0}
    assert reckoned_of(ObservationKey("main.floor", "rot", 1), (one,)) == {}


def judged(case: Any, compiled: Any, *reckonings: Reckoning) -> set[str]:
    found = judge(
        case.building,
        case.surfaces,
        case.stations,
        case.walk,
        case.checklist,
        compiled,
        AS_OF,
        reckonings,
    )
    return {finding.id for finding in found.findings}


def test_rules_read_what_was_reckoned(case: Any, rule: Any) -> None:
    case.answer("main.floor", "rot", "worn")
    fails = rule("rot-fails", "known(floor_check) and floor_check == 'does not pass'")
    compiled = compile_rules([fails], case.checklist)
    assert judged(case, compiled) == set()
    assert judged(case, compiled, a_reckoning("main.floor", floor_check="undecided")) == set()
    one = a_reckoning("main.floor", floor_check="does not pass")
    assert judged(case, compiled, one) == {"rot-fails@main.floor/rot#1"}


def test_an_item_may_hang_on_what_is_reckoned_before_the_walk(
    case: Any, item: Any, checklist: Any, building: Any
) -> None:
    asked = checklist(item("long", only_if="feed_is_long", at=["feed"]))
    feed = next(one for one in case.stations if one.id == "feed")
    assert [one.id for one in items_at(feed, case.building, case.surfaces, asked)] == ["long"]
    near = building(distance_to_panel=60)
    assert items_at(feed, near, case.surfaces, asked) == ()


@pytest.mark.parametrize("fact", ["life_left_low_years > 2", "mold_band == 'large'"])
def test_what_the_walk_must_say_first_may_not_decide_what_is_asked(
    case: Any, item: Any, checklist: Any, fact: str
) -> None:
    asked = checklist(item("late", only_if=fact, at=["floor"]))
    floor = next(one for one in case.stations if one.id == "main.floor")
    with pytest.raises(ExpressionError, match="known only once something was observed"):
        items_at(floor, case.building, case.surfaces, asked)


def test_facts_said_to_be_known_before_the_walk_are(case: Any) -> None:
    warm = case.building.model_copy(update={"winter_low_f": 5.0})
    made = reckon(warm, case.surfaces, case.stations, Walk(building=warm), AS_OF)
    known_before = {name for one in made for name in one.facts}
    assert {spec.name for spec in RECKONED_FACTS if spec.before_walk} <= known_before
