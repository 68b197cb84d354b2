"""The walk of the demo, and what follows from it: one story of water, rot, ants and old wire."""

from __future__ import annotations

import pytest

from leanto.assessment import Assessment
from leanto.building.zones import check_zone
from leanto.checklist.condition import Condition
from leanto.decision.model import Course, SurfaceDecision
from leanto.job import Job
from leanto.rules.finding import Finding

SIX_SECTIONS = (
    "framing-rot",
    "water-staining",
    "pest-damage",
    "roofing",
    "flashing",
    "existing-wiring",
)


def test_sixty_observations_at_least_and_most_of_the_stations(demo: Job) -> None:
    observations = demo.walk.observations

    assert len(observations) >= 60
    assert len({key.station for key in observations}) >= len(demo.stations) - 1


def test_every_section_is_walked_and_the_six_of_the_trade_well(demo: Job) -> None:
    sections = {
        item.id: section.id for section in demo.library.checklist.sections for item in section.items
    }
    walked = [sections[key.item] for key in demo.walk.observations]

    assert set(walked) == set(sections.values())
    assert all(walked.count(section) >= 5 for section in SIX_SECTIONS)
    assert sum(walked.count(section) for section in SIX_SECTIONS) >= 45


def test_every_condition_is_given_and_no_access_has_its_reason(demo: Job) -> None:
    seen = demo.walk.observations.values()

    assert {one.condition for one in seen} == set(Condition)
    assert all(one.reason for one in seen if one.condition is Condition.NO_ACCESS)
    assert sum(one.danger for one in seen) >= 3
    assert sum(bool(one.note) for one in seen) >= 20


def test_zones_lie_on_their_surfaces(demo: Job) -> None:
    zoned = [(key.station, one.zone) for key, one in demo.walk.observations.items() if one.zone]

    assert len(zoned) >= 40
    for station, zone in zoned:
        surface = demo.grounds.surface_at(station)
        assert surface is not None
        check_zone(zone, surface)


def test_what_is_bad_has_the_zone_that_its_answer_asks_for(demo: Job) -> None:
    items = demo.grounds.items
    missing = [
        str(key)
        for key, one in demo.walk.observations.items()
        if one.condition is not None
        and (answer := items[key.item].answer(one.condition)) is not None
        and answer.zone
        and one.zone is None
    ]

    assert missing == []


def test_two_stains_on_one_wall_overlap(demo: Job) -> None:
    stains = [
        one.zone
        for key, one in demo.walk.observations.items()
        if (key.station, key.item) == ("main.north.inside", "wall-stain")
    ]

    first, second = stains
    assert first is not None
    assert second is not None
    assert first.reaches_into(second, slack_ft=0.5)


def test_air_is_measured_in_both_rooms(demo: Job) -> None:
    assert {station.split(".")[0] for station in demo.walk.air} >= {"site", "main", "feed-room"}


CHAINS = [
    (
        "stain-active@main.ceiling/ceiling-stain#1",
        ["flashing-chimney-failed@main.roof.south/flue-flashing#1"],
    ),
    (
        "rafter-rotted@main.ceiling/rafters#1",
        [
            "stain-active@main.ceiling/ceiling-stain#1",
            "flashing-chimney-failed@main.roof.south/flue-flashing#1",
        ],
    ),
    (
        "floor-boards-rotted@main.floor/floor-boards#1",
        [
            "joist-rotted@main.floor/floor-joists#1",
            "stain-active@main.ceiling/ceiling-stain#1",
            "flashing-chimney-failed@main.roof.south/flue-flashing#1",
        ],
    ),
    (
        "stain-active@main.north.inside/wall-stain#1",
        ["flashing-wall-failed@feed-room.roof.north/wall-apron#1"],
    ),
    (
        "stud-feet-rotted@main.north.inside/stud-feet#1",
        [
            "sill-rotted@main.north.outside/sill#1",
            "flashing-wall-failed@feed-room.roof.north/wall-apron#1",
        ],
    ),
    (
        "wall-base-wet@main.south.inside/wall-base#1",
        ["roof-water-at-wall@main.south.outside/roof-runoff#1"],
    ),
    (
        "wiring-gnawed@main.north.inside/cable-damage#1",
        [
            "rodents-active@main.floor/rodents#1",
            "animals-can-enter@main.north.outside/entry-holes#1",
        ],
    ),
]


@pytest.mark.parametrize(("effect", "causes"), CHAINS, ids=[effect for effect, _ in CHAINS])
def test_effects_follow_from_their_causes(
    assessed: Assessment, effect: str, causes: list[str]
) -> None:
    by_id = {finding.id: finding for finding in assessed.judged.findings}

    assert _causes(by_id[effect], by_id) == causes


def test_ants_live_in_the_wet_wall(assessed: Assessment) -> None:
    by_id = {finding.id: finding for finding in assessed.judged.findings}
    chain = _causes(by_id["ants-in-wood@main.north.inside/ants#1"], by_id)

    assert chain[-1] == "flashing-wall-failed@feed-room.roof.north/wall-apron#1"


def test_gut_or_keep_comes_out_mixed(assessed: Assessment) -> None:
    by_surface = {one.surface_id: one for one in assessed.decision.surfaces}
    north, east, south, west, ceiling = (
        by_surface[id_]
        for id_ in (
            "main.north.inside",
            "main.east.inside",
            "main.south.inside",
            "main.west.inside",
            "main.ceiling",
        )
    )

    assert north.chosen is Course.GUT
    assert north.decisive
    assert east.chosen is Course.KEEP
    assert _gap(east) > 0.25
    assert _gap(south) < 0.25
    assert west.unknown
    assert ceiling.chosen is Course.GUT
    assert any("asbestos" in reason for reason in ceiling.test_first)


def test_the_feed_is_as_long_as_the_way_to_the_house(assessed: Assessment) -> None:
    quantities = {item.work.id: item.quantity for item in assessed.scope.items}

    assert quantities["new-feeder"] == pytest.approx(140)
    assert quantities["feed-trench"] == pytest.approx(140)


def _causes(finding: Finding, by_id: dict[str, Finding]) -> list[str]:
    """The ids from the finding's cause up to where it all began."""
    chain: list[str] = []
    while finding.cause_id is not None:
        chain.append(finding.cause_id)
        finding = by_id[finding.cause_id]
    return chain


def _gap(one: SurfaceDecision) -> float:
    """How far the dearer course lies above the cheaper one, as a share of it."""
    low, high = sorted((one.keep.expected, one.gut.expected))
    return (high - low) / low
