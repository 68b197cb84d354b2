"""Which finding follows from which, and the order they read in."""

from __future__ import annotations

from collections.abc import Callable
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from leanto.record.observation import ObservationKey
from leanto.rules.causes import in_chains
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


def test_of_equally_near_causes_the_more_urgent_counts_then_the_one_listed_first(
    case: Any, rule: Ruled
) -> None:
    case.answer("main.floor", "stain")
    case.answer("main.floor", "flashing")
    causes = [{"rules": ["flashing-b", "flashing-a"]}, {"rules": ["flashing-c"]}]
    stain = rule("stain-wet", "failed", causes=causes)
    rules = [stain, *(rule(f"flashing-{letter}", "failed") for letter in "cba")]
    of_stain = "stain-wet@main.floor/stain#1"
    assert cause_of(case, rules, of_stain) == "flashing-b@main.floor/flashing#1"
    rules[1] = rule("flashing-c", "failed", urgency="now")
    assert cause_of(case, rules, of_stain) == "flashing-c@main.floor/flashing#1"


ON_FACES = "main.north.inside", "main.north.outside"


@pytest.mark.parametrize(
    ("of", "zone", "causes", "expected"),
    [
        # The wall is 24 ft long: 8 ft from the left inside is 16 ft from the right outside.
        (
            ON_FACES[0],
            (8, 2, 2, 2),
            [(ON_FACES[1], (14, 2, 2, 2)), (ON_FACES[1], (8, 2, 2, 2))],
            0,
        ),
        # 2 ft beside it on the other face is near, whatever leaks above.
        (
            ON_FACES[0],
            (8, 2, 2, 2),
            [("main.roof.north", None), (ON_FACES[1], (10, 2, 2, 2))],
            1,
        ),
        # More than 3 ft beside it gives way to the roof.
        (
            ON_FACES[0],
            (8, 2, 2, 2),
            [("main.roof.north", None), (ON_FACES[1], (5, 2, 2, 2))],
            0,
        ),
        # So does what lies more than 1 ft below: water runs down.
        (
            ON_FACES[0],
            (8, 3, 2, 2),
            [("main.roof.north", None), (ON_FACES[1], (14, 0, 2, 1.5))],
            0,
        ),
        (
            ON_FACES[0],
            (8, 2, 2, 2),
            [("main.roof.north", None), (ON_FACES[1], (14, 0, 2, 1.5))],
            1,
        ),
        # A roof leak far along the eave gives way to a near one, and counts where none is near.
        (
            "main.south.inside",
            (2, 6, 2, 2),
            [("main.roof.south", (2, 0, 2, 1)), ("main.roof.south", (20, 0, 2, 1))],
            1,
        ),
        # Down the slope water goes any way: the leak at the ridge is as near as one at the eave.
        (
            "main.south.inside",
            (2, 6, 2, 2),
            [("main.roof.south", (15, 0, 2, 1)), ("main.roof.south", (20, 6, 2, 1))],
            1,
        ),
        ("main.south.inside", (2, 6, 2, 2), [("main.roof.south", (2, 0, 2, 1))], 0),
        # Ceiling, floor and walls share one plan.
        (
            "main.floor",
            (8, 10, 4, 2),
            [("main.ceiling", (8, 2, 4, 4)), (ON_FACES[1], (12, 0, 4, 1))],
            1,
        ),
        (
            "main.floor",
            (8, 3, 4, 2),
            [("main.ceiling", (8, 2, 4, 4)), (ON_FACES[1], (12, 0, 4, 1))],
            0,
        ),
        # A leak in a zone says more than one somewhere on a whole slope.
        (
            "main.ceiling",
            (8, 2, 2, 2),
            [("main.roof.south", None), ("main.roof.south", (9, 3, 2, 2))],
            1,
        ),
    ],
)
def test_places_are_compared_by_their_zones(
    case: Any,
    rule: Ruled,
    of: str,
    zone: tuple[float, float, float, float],
    causes: list[tuple[str, tuple[float, float, float, float] | None]],
    expected: int,
) -> None:
    case.answer(of, "stain", zone=zone)
    for number, (station, place) in enumerate(causes, start=1):
        case.answer(station, "flashing", zone=place, number=number)
    searches = [{"rules": ["flashing-open"], "where": w} for w in ("here", "above", "beside")]
    rules = [rule("stain-wet", "failed", causes=searches), rule("flashing-open", "failed")]
    station = causes[expected][0]
    cause = cause_of(case, rules, f"stain-wet@{of}/stain#1")
    assert cause == f"flashing-open@{station}/flashing#{expected + 1}"


@pytest.mark.parametrize(("top", "is_cause"), [(2.0, False), (2.1, True)])
def test_nothing_explains_what_lies_more_than_three_feet_above_it(
    case: Any, rule: Ruled, top: float, is_cause: bool
) -> None:
    case.answer("main.north.inside", "stain", zone=(8, 5.05, 2, 2))
    case.answer("main.north.outside", "flashing", zone=(14, 0, 2, top))
    search = [{"rules": ["flashing-open"], "where": "here"}]
    rules = [rule("stain-wet", "failed", causes=search), rule("flashing-open", "failed")]
    cause = cause_of(case, rules, "stain-wet@main.north.inside/stain#1")
    assert (cause is not None) is is_cause


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
