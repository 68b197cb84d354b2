"""Which finding follows from which, and the order they read in."""

from __future__ import annotations

from collections.abc import Callable
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from leanto.building.rectangle import Rectangle
from leanto.record.observation import ObservationKey
from leanto.rules.causes import gap_ft, in_chains
from leanto.rules.finding import Finding
from leanto.rules.model import Rule, Urgency

Ruled = Callable[..., Rule]


def cause_of(case: Any, rules: list[Rule], finding_id: str) -> str | None:
    (found,) = [f for f in case.judged(rules).findings if f.id == finding_id]
    cause: str | None = found.cause_id
    return cause


@pytest.mark.parametrize(
    ("where", "leak_at", "is_cause"),
    [
        ("here", "main.north.inside", True),
        ("here", "main.north.outside", True),
        ("here", "main.roof.north", False),
        ("above", "main.roof.north", True),
        ("above", "feed-room.roof.north", True),
        ("above", "main.roof.south", False),
        ("above", "main.north.inside", False),
        ("beside", "main.ceiling", True),
        ("beside", "main.north.inside", True),
        ("beside", "feed-room.floor", False),
        ("anywhere", "feed-room.floor", True),
        ("anywhere", "site", True),
    ],
)
def test_a_cause_is_looked_for_where_the_rule_says(
    case: Any, rule: Ruled, where: str, leak_at: str, is_cause: bool
) -> None:
    case.answer("main.north.inside", "stain")
    case.answer(leak_at, "flashing")
    stain = rule("stain-wet", "failed", causes=[{"rules": ["flashing-open"], "where": where}])
    cause = cause_of(
        case, [stain, rule("flashing-open", "failed")], "stain-wet@main.north.inside/stain#1"
    )
    assert cause == (f"flashing-open@{leak_at}/flashing#1" if is_cause else None)


def test_the_nearest_cause_counts(case: Any, rule: Ruled) -> None:
    case.answer("main.north.inside", "stain")
    stain = rule("stain-wet", "failed", causes=[{"rules": ["flashing-open"]}])
    rules = [stain, rule("flashing-open", "failed")]
    for nearer in (
        "site",
        "main.floor",
        "main.roof.north",
        "main.north.outside",
        "main.north.inside",
    ):
        case.answer(nearer, "flashing")
        cause = cause_of(case, rules, "stain-wet@main.north.inside/stain#1")
        assert cause == f"flashing-open@{nearer}/flashing#1"


def test_on_one_surface_the_zone_with_the_smaller_gap_counts(case: Any, rule: Ruled) -> None:
    case.answer("main.floor", "stain", zone=(10, 0, 2, 2))
    case.answer("main.floor", "flashing", zone=(0, 0, 2, 2), number=1)
    case.answer("main.floor", "flashing", zone=(13, 0, 2, 2), number=2)
    stain = rule("stain-wet", "failed", causes=[{"rules": ["flashing-open"]}])
    cause = cause_of(case, [stain, rule("flashing-open", "failed")], "stain-wet@main.floor/stain#1")
    assert cause == "flashing-open@main.floor/flashing#2"


def test_of_equally_near_causes_the_more_urgent_counts_then_the_lower_id(
    case: Any, rule: Ruled
) -> None:
    case.answer("main.floor", "stain")
    case.answer("main.floor", "flashing")
    causes = [{"rules": ["flashing-a", "flashing-b", "flashing-c"]}]
    stain = rule("stain-wet", "failed", causes=causes)
    rules = [stain, *(rule(f"flashing-{letter}", "failed") for letter in "cba")]
    of_stain = "stain-wet@main.floor/stain#1"
    assert cause_of(case, rules, of_stain) == "flashing-a@main.floor/flashing#1"
    rules[1] = rule("flashing-c", "failed", urgency="now")
    assert cause_of(case, rules, of_stain) == "flashing-c@main.floor/flashing#1"


def test_findings_that_explain_each_other_make_no_circle(case: Any, rule: Ruled) -> None:
    for item_id in ("stain", "rot", "ants"):
        case.answer("main.floor", item_id)
    rules = [
        rule("stain-x", "failed", causes=[{"rules": ["rot-x"]}]),
        rule("rot-x", "failed", causes=[{"rules": ["ants-x"]}]),
        rule("ants-x", "failed", causes=[{"rules": ["stain-x", "ants-x"]}]),
    ]
    causes = {f.id: f.cause_id for f in case.judged(rules).findings}
    assert len(causes) == 3
    assert causes == {
        "ants-x@main.floor/ants#1": "stain-x@main.floor/stain#1",
        "rot-x@main.floor/rot#1": "ants-x@main.floor/ants#1",
        "stain-x@main.floor/stain#1": None,
    }


def test_what_needs_a_cause_keeps_it_when_a_circle_is_broken(case: Any, rule: Ruled) -> None:
    case.answer("main.floor", "stain")
    case.answer("main.floor", "ants")
    needing = {"needs_cause": True, "question": "Why?"}
    rules = [
        rule("stain-x", "failed", causes=[{"rules": ["ants-x"]}], **needing),
        rule("ants-x", "failed", causes=[{"rules": ["stain-x"]}]),
    ]
    judged = case.judged(rules)
    causes = {finding.rule_id: finding.cause_id for finding in judged.findings}
    assert causes == {"stain-x": "ants-x@main.floor/ants#1", "ants-x": None}
    assert judged.questions == ()


def finding(name: str, cause: str | None, urgency: Urgency, danger: bool = False) -> Finding:
    return Finding(
        id=name,
        rule_id=name,
        observation=ObservationKey("main.floor", "rot"),
        station_name="Floor",
        surface_id="main.floor",
        zone=None,
        text=name,
        advice="",
        urgency=urgency,
        danger=danger,
        note="",
        photos=(),
        work=(),
        hidden=None,
        decides=None,
        caution=(),
        watch="",
        source="",
        cause_id=cause,
    )


NOW, SOON, LATER, WATCH = Urgency


@pytest.mark.parametrize(
    ("findings", "order"),
    [
        ([("a", None, WATCH), ("b", None, NOW), ("c", None, SOON)], "bca"),
        ([("a", None, NOW), ("b", None, NOW)], "ab"),
        # An effect stands behind its cause, before what is more urgent but another matter.
        ([("a", None, NOW), ("b", None, SOON), ("c", "a", WATCH)], "acb"),
        # A chain is as urgent as its most urgent part, and its cause still comes first.
        ([("a", None, WATCH), ("b", None, SOON), ("c", "a", NOW)], "acb"),
        ([("a", None, WATCH), ("b", "a", LATER), ("c", "b", LATER), ("d", "a", SOON)], "adbc"),
    ],
)
def test_chains_are_in_order_of_urgency_with_effects_behind_their_cause(
    findings: list[tuple[str, str | None, Urgency]], order: str
) -> None:
    made = [finding(*one) for one in findings]
    assert "".join(f.id for f in in_chains(made, {})) == order
    assert "".join(f.id for f in in_chains(reversed(made), {})) == order


def test_danger_goes_first() -> None:
    made = [finding("a", None, NOW), finding("b", None, WATCH), finding("c", "b", WATCH, True)]
    assert [f.id for f in in_chains(made, {})] == ["b", "c", "a"]


def test_equally_urgent_findings_are_in_walking_order(case: Any, rule: Ruled) -> None:
    stops = [station.id for station in case.stations]
    for station in reversed(stops):
        case.answer(station, "rot")
    found = case.judged([rule("rot-any", "failed")]).findings
    assert [f.observation.station for f in found] == stops


@given(st.lists(st.integers(0, 12), min_size=1, max_size=12), st.lists(st.integers(0, 3)))
def test_every_finding_stands_once_and_behind_its_cause(
    parents: list[int], urgencies: list[int]
) -> None:
    made = [
        finding(
            f"f{index:02}",
            f"f{parent:02}" if parent < index else None,
            list(Urgency)[urgencies[index % len(urgencies)] if urgencies else 0],
        )
        for index, parent in enumerate(parents)
    ]
    ordered = in_chains(made, {})
    assert sorted(f.id for f in ordered) == sorted(f.id for f in made)
    place = {f.id: index for index, f in enumerate(ordered)}
    assert all(f.cause_id is None or place[f.cause_id] < place[f.id] for f in ordered)


@pytest.mark.parametrize(
    ("one", "other", "gap"),
    [
        ((0, 0, 2, 2), (5, 0, 2, 2), 3.0),
        ((5, 0, 2, 2), (0, 0, 2, 2), 3.0),
        ((0, 0, 2, 2), (5, 6, 2, 2), 5.0),
        ((0, 0, 2, 2), (2, 0, 2, 2), 0.0),
        ((0, 0, 2, 2), (1, 1, 2, 2), 0.0),
        ((0, 0, 2, 2), None, 0.0),
        (None, None, 0.0),
    ],
)
def test_the_gap_between_zones(one: Any, other: Any, gap: float) -> None:
    zones = [Rectangle(*zone) if zone else None for zone in (one, other)]
    assert gap_ft(zones[0], zones[1]) == pytest.approx(gap)
