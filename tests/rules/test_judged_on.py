"""One walk judged after each answer says what the same walk judged from nothing says."""

from __future__ import annotations

import random
from dataclasses import replace

import pytest
from invented import invented

from leanto.assessment import Assessment, assess
from leanto.building.stations import stations_of
from leanto.building.surfaces import surfaces_of
from leanto.checklist.condition import Condition
from leanto.library import Library, read_library
from leanto.reckon.all import reckon
from leanto.record.observation import Air, Observation, ObservationKey
from leanto.record.walk import Walk
from leanto.rules.finding import Judged
from leanto.rules.matching import judge

CHANGES = 40


@pytest.fixture(scope="module")
def library() -> Library:
    return read_library()


def from_nothing(done: Assessment) -> Judged:
    """Judged over a building that was never seen before."""
    surfaces = {surface.id: surface for surface in surfaces_of(done.building)}
    stations = stations_of(done.building)
    reckonings = reckon(done.building, surfaces, stations, done.walk, done.as_of)
    checklist = done.library.checklist
    rules = done.library.rules
    return judge(
        done.building, surfaces, stations, done.walk, checklist, rules, done.as_of, reckonings
    )


def changed(walk: Walk, luck: random.Random) -> Walk:
    """The walk with one thing more, less or other."""
    seen = dict(walk.observations)
    key = luck.choice(list(seen))
    match luck.randrange(6):
        case 0:
            del seen[key]
        case 1:
            seen[key] = replace(seen[key], condition=luck.choice(list(Condition)))
        case 2:
            seen[key] = replace(seen[key], danger=not seen[key].danger)
        case 3:
            seen[key] = replace(seen[key], measures={}, zone=None)
        case 4:
            other = ObservationKey(key.station, key.item, key.number + 1)
            seen[other] = Observation(other, luck.choice(list(Condition)))
        case _:
            air = {**walk.air, key.station: Air(luck.choice([40.0, 70.0]), 80.0)}
            return replace(walk, air=air)
    return replace(walk, observations=seen)


@pytest.mark.parametrize("luck", range(3))
def test_what_is_remembered_changes_nothing(luck: int, library: Library) -> None:
    demo, chance = invented("demo"), random.Random(luck)
    walk = demo.walk
    said = set()
    for _ in range(CHANGES):
        walk = changed(walk, chance)
        done = assess(demo.building, walk, library, demo.written.date)
        assert done.judged == from_nothing(done)
        said.add(len(done.judged.findings))
    assert len(said) > 3
