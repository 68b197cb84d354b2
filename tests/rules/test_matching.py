"""What the rules make of a walk."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace
from typing import Any

import pytest

from leanto.record.observation import Air, Photo
from leanto.rules.finding import Undecided
from leanto.rules.model import Rule, Urgency

Ruled = Callable[..., Rule]


def test_a_finding_remembers_its_rule_its_observation_and_what_was_entered(
    case: Any, rule: Ruled
) -> None:
    case.answer("main.floor", "rot", zone=(1, 2, 3, 4), probe_depth_in=1.0)
    soft = rule(
        "rot-soft",
        "failed and probe_depth_in >= 0.5",
        advice="Cut it out.",
        urgency="now",
        decides={"course": "gut", "reason": "The frame must be reached."},
        hidden="soft-wood",
        caution=["floor"],
    )
    (finding,) = case.judged([soft]).findings
    assert finding.id == "rot-soft@main.floor/rot#1"
    assert (finding.rule_id, finding.surface_id) == ("rot-soft", "main.floor")
    assert finding.station_name == "Main room, floor"
    assert finding.zone is not None
    assert finding.zone.area_sqft == 12
    assert (finding.text, finding.advice) == ("Finding of rot-soft", "Cut it out.")
    assert finding.urgency is Urgency.NOW
    assert (finding.hidden, finding.caution) == ("soft-wood", ("floor",))
    assert finding.decides is not None
    assert finding.source == "Invented for a test"
    assert finding.cause_id is None


def test_note_photos_and_danger_go_with_the_finding(case: Any, rule: Ruled) -> None:
    seen = case.answer("main.floor", "rot", danger=True)
    photo = Photo("0" * 64, "floor.jpg")
    case.observations[seen.key] = replace(seen, note="By the door.", photos=(photo,))
    (finding,) = case.judged([rule("rot-any", "failed")]).findings
    assert (finding.note, finding.photos, finding.danger) == ("By the door.", (photo,), True)


def test_each_observation_is_judged_by_each_rule_of_its_item(case: Any, rule: Ruled) -> None:
    case.answer("main.floor", "rot")
    case.answer("main.floor", "rot", number=2)
    case.answer("main.ceiling", "rot")
    case.answer("main.ceiling", "stain")
    found = case.found(rule("rot-any", "failed"), rule("rot-floor", "place == 'floor'"))
    assert found == {
        "rot-any@main.floor/rot#1",
        "rot-any@main.floor/rot#2",
        "rot-any@main.ceiling/rot#1",
        "rot-floor@main.floor/rot#1",
        "rot-floor@main.floor/rot#2",
    }


@pytest.mark.parametrize(
    ("condition", "danger", "found"),
    [
        ("sound", False, {"rot-open"}),
        ("worn", False, {"rot-open"}),
        ("failed", False, {"rot-open", "rot-failed"}),
        ("no access", False, {"rot-blind"}),
        ("not there", False, set()),
        (None, False, set()),
        ("sound", True, {"rot-open", "rot-danger"}),
        ("no access", True, {"rot-blind", "rot-danger"}),
        ("not there", True, {"rot-danger"}),
        (None, True, {"rot-danger"}),
    ],
)
def test_only_what_was_seen_triggers_a_rule(
    case: Any, rule: Ruled, condition: str | None, danger: bool, found: set[str]
) -> None:
    case.answer("main.floor", "rot", condition, danger=danger)
    rules = (
        rule("rot-open", "not no_access"),
        rule("rot-failed", "failed"),
        rule("rot-blind", "no_access"),
        rule("rot-danger", "danger"),
    )
    assert case.found(*rules) == {f"{rule_id}@main.floor/rot#1" for rule_id in found}


def test_a_station_that_the_building_lost_is_passed_over(case: Any, rule: Ruled) -> None:
    case.answer("barn.floor", "rot")
    assert case.found(rule("rot-any", "failed")) == set()


def test_a_rule_without_its_measure_is_undecided_and_never_passed(case: Any, rule: Ruled) -> None:
    seen = case.answer("main.floor", "rot")
    judged = case.judged([rule("rot-soft", "failed and probe_depth_in >= 0.5")])
    assert judged.findings == ()
    assert judged.undecided == (Undecided("rot-soft", seen.key, "probe_depth_in"),)


def test_undecided_names_what_the_walker_can_enter(case: Any, rule: Ruled) -> None:
    seen = case.answer("main.floor", "rot", moisture_pct=15.0)
    wet = rule("rot-wet", "failed and moisture_verdict != 'drying out with the room'")
    assert case.judged([wet]).undecided == (Undecided("rot-wet", seen.key, "air_temp_f"),)
    case.air["main.floor"] = Air(70.0, 50.0)
    assert case.judged([wet]).undecided == ()
    assert case.found(wet) == {"rot-wet@main.floor/rot#1"}


def test_arithmetic_without_a_result_is_undecided_with_its_reason(case: Any, rule: Ruled) -> None:
    case.answer("main.floor", "rot", run_ft=0.0)
    (undecided,) = case.judged([rule("rot-long", "failed and 1 / run_ft > 1")]).undecided
    assert undecided.missing == "division by zero"


@pytest.mark.parametrize(
    ("condition", "asked", "is_undecided"),
    [
        ("worn", [], True),
        ("sound", [], False),
        ("sound", ["probe_depth_in"], True),
    ],
)
def test_a_sound_answer_leaves_undecided_only_what_it_was_asked(
    case: Any,
    rule: Ruled,
    item: Callable[..., Any],
    checklist: Callable[..., Any],
    condition: str,
    asked: list[str],
    is_undecided: bool,
) -> None:
    answers = item("rot").answers.model_dump()
    answers["sound"] |= {"measures": asked}
    case.checklist = checklist(item("rot", answers=answers))
    case.answer("main.floor", "rot", condition)
    judged = case.judged([rule("rot-soft", "probe_depth_in >= 0.5")])
    assert bool(judged.undecided) is is_undecided


def test_work_is_called_for_with_its_quantity(case: Any, rule: Ruled) -> None:
    case.answer("main.floor", "rot", run_ft=7.0)
    work = [
        {"work": "replace-joist", "take": "members"},
        {"work": "add-post", "quantity": "ceil(run_ft / 4)"},
        {"work": "shore", "quantity": "run_ft", "when": "run_ft > 8"},
        {"work": "patch", "quantity": "run_ft", "when": "run_ft > 6"},
        {"work": "nothing", "quantity": "run_ft - 7"},
        {"work": "less", "quantity": "run_ft - 8"},
    ]
    (finding,) = case.judged([rule("rot-joists", "failed", work=work)]).findings
    called = [(made.call.work, made.quantity) for made in finding.work]
    assert called == [("replace-joist", None), ("add-post", 2.0), ("patch", 7.0)]


def test_work_that_cannot_be_counted_is_left_out_and_told(case: Any, rule: Ruled) -> None:
    seen = case.answer("main.floor", "rot")
    work = [
        {"work": "add-post", "quantity": "run_ft"},
        {"work": "shore", "take": "width", "when": "probe_depth_in > 1"},
        {"work": "patch", "take": "area"},
    ]
    judged = case.judged([rule("rot-joists", "failed", work=work)])
    assert [made.call.work for made in judged.findings[0].work] == ["patch"]
    assert judged.undecided == (
        Undecided("rot-joists", seen.key, "run_ft"),
        Undecided("rot-joists", seen.key, "probe_depth_in"),
    )


@pytest.mark.parametrize(
    ("function", "where", "is_found"),
    [
        ("found_here", "main.north.inside", True),
        ("found_here", "main.north.outside", True),
        ("found_here", "main.roof.north", False),
        ("found_here", "main.floor", False),
        ("found_above", "main.roof.north", True),
        ("found_above", "feed-room.roof.north", True),
        ("found_above", "main.roof.south", False),
        ("found_above", "main.north.inside", False),
        ("found_beside", "main.floor", True),
        ("found_beside", "main.roof.south", True),
        ("found_beside", "main.north.inside", True),
        ("found_beside", "feed-room.floor", False),
        ("found_anywhere", "feed-room.floor", True),
        ("found_anywhere", "site", True),
    ],
)
def test_a_rule_may_ask_for_the_findings_of_another(
    case: Any, rule: Ruled, function: str, where: str, is_found: bool
) -> None:
    case.answer("main.north.inside", "rot")
    case.answer(where, "stain")
    rules = [rule("rot-wet", f"failed and {function}('stain-old')"), rule("stain-old", "failed")]
    assert ("rot-wet@main.north.inside/rot#1" in case.found(*rules)) is is_found


@pytest.mark.parametrize(
    ("slope", "hole", "stain_at", "stain", "is_found"),
    [
        ("south", None, "main.ceiling", (8, 2, 2, 2), True),
        ("north", None, "main.ceiling", (8, 2, 2, 2), False),
        ("north", None, "main.ceiling", (8, 9, 2, 2), True),
        ("south", None, "main.ceiling", None, True),
        ("south", None, "main.south.inside", (8, 6, 2, 2), True),
        ("north", None, "main.south.inside", (8, 6, 2, 2), False),
        ("south", None, "feed-room.north.inside", None, False),
        # Not more than 3 ft from the hole, as seen from above.
        ("south", (12.5, 1, 2, 2), "main.ceiling", (8, 2, 2, 2), True),
        ("south", (14.5, 1, 2, 2), "main.ceiling", (8, 2, 2, 2), False),
    ],
)
def test_a_roof_may_ask_what_its_water_wets(
    case: Any,
    rule: Ruled,
    slope: str,
    hole: tuple[float, float, float, float] | None,
    stain_at: str,
    stain: tuple[float, float, float, float] | None,
    is_found: bool,
) -> None:
    case.answer(f"main.roof.{slope}", "flashing", zone=hole)
    case.answer(stain_at, "stain", zone=stain)
    rules = [
        rule("flashing-leaks", "failed and found_below('stain-wet')"),
        rule("stain-wet", "failed"),
    ]
    leak = f"flashing-leaks@main.roof.{slope}/flashing#1"
    assert (leak in case.found(*rules)) is is_found


def test_a_search_below_for_what_could_not_be_judged_is_undecided(case: Any, rule: Ruled) -> None:
    case.answer("main.roof.south", "flashing")
    case.answer("main.ceiling", "stain")
    rules = [
        rule("flashing-leaks", "failed and found_below('stain-wet')"),
        rule("stain-wet", "failed and moisture_pct > 20"),
    ]
    undecided = {(it.rule_id, it.missing) for it in case.judged(rules).undecided}
    assert undecided == {("flashing-leaks", "moisture_pct"), ("stain-wet", "moisture_pct")}


def test_a_search_for_what_could_not_be_judged_is_undecided_as_well(case: Any, rule: Ruled) -> None:
    case.answer("main.floor", "rot")
    case.answer("main.floor", "stain")
    rules = [
        rule("rot-wet", "failed and found_here('stain-wet')"),
        rule("stain-wet", "failed and moisture_pct > 20"),
    ]
    undecided = {(it.rule_id, it.missing) for it in case.judged(rules).undecided}
    assert undecided == {("rot-wet", "moisture_pct"), ("stain-wet", "moisture_pct")}


def test_a_stop_without_surface_has_only_itself_around_it(case: Any, rule: Ruled) -> None:
    case.answer("wiring", "panel")
    case.answer("main.floor", "rot")
    rules = [
        rule("panel-old", "failed and found_beside('rot-any')"),
        rule("panel-any", "failed and found_anywhere('rot-any') and not found_above('rot-any')"),
        rule("panel-here", "failed and found_here('panel-any')"),
        rule("rot-any", "failed"),
    ]
    found = {finding_id.partition("@")[0] for finding_id in case.found(*rules)}
    assert found == {"panel-any", "panel-here", "rot-any"}


def test_questions_are_asked_always_or_where_no_cause_was_found(case: Any, rule: Ruled) -> None:
    case.answer("main.ceiling", "stain")
    case.answer("main.north.inside", "stain")
    case.answer("main.roof.north", "flashing")
    case.answer("wiring", "panel")
    work = [{"work": "patch", "take": "area"}]
    rules = [
        rule(
            "stain-wet",
            "failed",
            needs_cause=True,
            causes=[{"rules": ["flashing-open"], "where": "above"}],
            question="Where does the water come from?",
            ask="Roofer",
            work=work,
        ),
        rule("flashing-open", "failed and side == 'south'"),
        rule("panel-old", "failed", question="Is the panel live?", ask="Licensed electrician"),
    ]
    judged = case.judged(rules)
    asked = [(question.finding_id, question.text, question.ask) for question in judged.questions]
    assert sorted(asked) == [
        ("panel-old@wiring/panel#1", "Is the panel live?", "Licensed electrician"),
        ("stain-wet@main.ceiling/stain#1", "Where does the water come from?", "Roofer"),
        ("stain-wet@main.north.inside/stain#1", "Where does the water come from?", "Roofer"),
    ]
    assert all(not finding.work for finding in judged.findings)

    case.answer("main.roof.south", "flashing")
    judged = case.judged(rules)
    by_id = {finding.id: finding for finding in judged.findings}
    explained = by_id["stain-wet@main.ceiling/stain#1"]
    assert explained.cause_id == "flashing-open@main.roof.south/flashing#1"
    assert [made.call.work for made in explained.work] == ["patch"]
    assert by_id["stain-wet@main.north.inside/stain#1"].work == ()
    assert {question.finding_id for question in judged.questions} == {
        "panel-old@wiring/panel#1",
        "stain-wet@main.north.inside/stain#1",
    }


def test_judging_twice_gives_the_same(case: Any, rule: Ruled) -> None:
    for station in ("main.floor", "main.ceiling", "main.south.inside"):
        case.answer(station, "rot")
        case.answer(station, "stain")
    rules = [rule("rot-any", "failed"), rule("stain-any", "failed and found_beside('rot-any')")]
    first = case.judged(rules)
    case.observations = dict(reversed(case.observations.items()))
    assert case.judged(rules) == first
    assert len(first.findings) == 6


def test_a_danger_that_no_rule_speaks_of_is_a_finding_of_its_own(case: Any, rule: Ruled) -> None:
    case.answer("main.floor", "rot", "sound", danger=True)
    case.answer("main.ceiling", "rot", "failed", danger=True)
    found = case.judged([rule("rot-failed", "failed")]).findings
    assert {finding.id: finding.danger for finding in found} == {
        "danger-marked@main.floor/rot#1": True,
        "rot-failed@main.ceiling/rot#1": True,
    }
    assert next(f for f in found if f.rule_id == "danger-marked").urgency is Urgency.NOW
