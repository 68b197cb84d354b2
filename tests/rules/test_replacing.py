"""One observation, one main finding."""

from __future__ import annotations

from collections.abc import Callable
from typing import Any

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from leanto.record.observation import ObservationKey
from leanto.rules.finding import Finding, Judged
from leanto.rules.load import compile_rules
from leanto.rules.model import Rule, Urgency
from leanto.rules.replacing import with_replaced

Ruled = Callable[..., Rule]


def told(judged: Judged) -> dict[str, list[str]]:
    """What each finding that is told stands for."""
    return {found.id: [part.id for part in found.also] for found in judged.findings}


def replaces(*rules: str, where: str = "answer") -> list[dict[str, Any]]:
    return [{"rules": list(rules), "where": where}]


def test_a_finding_stands_for_another_of_the_same_answer(case: Any, rule: Ruled) -> None:
    case.answer("main.floor", "rot")
    case.answer("main.floor", "rot", number=2)
    case.answer("main.ceiling", "rot")
    rules = [
        rule("rot-deep", "failed and place == 'floor'", replaces=replaces("rot-any")),
        rule("rot-any", "failed"),
    ]
    assert told(case.judged(rules)) == {
        "rot-deep@main.floor/rot#1": ["rot-any@main.floor/rot#1"],
        "rot-deep@main.floor/rot#2": ["rot-any@main.floor/rot#2"],
        "rot-any@main.ceiling/rot#1": [],
    }


@pytest.mark.parametrize(
    ("where", "gone"),
    [
        ("answer", set()),
        ("place", {"ants-any@main.floor/ants#1"}),
        ("anywhere", {"ants-any@main.floor/ants#1", "ants-any@main.ceiling/ants#1"}),
    ],
)
def test_the_rule_says_how_far_it_stands_for_others(
    case: Any, rule: Ruled, where: str, gone: set[str]
) -> None:
    case.answer("main.floor", "rot")
    case.answer("main.floor", "ants")
    case.answer("main.ceiling", "ants")
    rules = [
        rule("rot-any", "failed", replaces=replaces("ants-any", where=where)),
        rule("ants-any", "failed"),
    ]
    every = {"ants-any@main.floor/ants#1", "ants-any@main.ceiling/ants#1"}
    kept = {found.id for found in case.judged(rules).findings}
    assert kept == {"rot-any@main.floor/rot#1", *(every - gone)}


def test_a_rule_that_names_itself_is_told_once_a_place(case: Any, rule: Ruled) -> None:
    case.answer("main.floor", "rot", "no access")
    case.answer("main.floor", "ants", "no access")
    case.answer("main.ceiling", "ants", "no access")
    blind = rule(
        "rot-unseen",
        "no_access",
        items=["rot", "ants"],
        question="What is there?",
        ask="Carpenter",
        replaces=replaces("rot-unseen", where="place"),
    )
    judged = case.judged([blind])
    assert told(judged) == {
        "rot-unseen@main.floor/rot#1": ["rot-unseen@main.floor/ants#1"],
        "rot-unseen@main.ceiling/ants#1": [],
    }
    assert len(judged.questions) == 2
    assert judged.findings[0].besides == ()


def test_the_nearest_finding_stands_for_another(case: Any, rule: Ruled) -> None:
    case.answer("main.ceiling", "rot")
    case.answer("main.floor", "ants")
    case.answer("main.floor", "rot")
    rules = [
        rule("rot-any", "failed", replaces=replaces("ants-any", where="anywhere")),
        rule("ants-any", "failed"),
    ]
    assert told(case.judged(rules))["rot-any@main.floor/rot#1"] == ["ants-any@main.floor/ants#1"]


def test_it_stands_for_what_the_replaced_one_stood_for(case: Any, rule: Ruled) -> None:
    case.answer("main.floor", "rot")
    rules = [
        rule("rot-a", "failed", replaces=replaces("rot-b")),
        rule("rot-b", "failed", replaces=replaces("rot-c")),
        rule("rot-c", "failed"),
    ]
    assert told(case.judged(rules)) == {
        "rot-a@main.floor/rot#1": ["rot-b@main.floor/rot#1", "rot-c@main.floor/rot#1"]
    }


def test_nothing_that_counts_is_lost(case: Any, rule: Ruled) -> None:
    case.answer("main.floor", "rot")
    gut = {"course": "gut", "reason": "It must be opened."}
    rules = [
        rule(
            "rot-main",
            "failed",
            watch="",
            work=[{"work": "patch", "take": "area"}],
            caution=["floor"],
            replaces=replaces("rot-more"),
            question="Main?",
        ),
        rule(
            "rot-more",
            "failed",
            urgency="now",
            hidden="soft-wood",
            decides=gut,
            caution=["mold", "floor"],
            work=[{"work": "shore", "quantity": "2"}],
            question="More?",
        ),
    ]
    judged = case.judged(rules)
    (found,) = judged.findings
    assert (found.rule_id, found.urgency) == ("rot-main", Urgency.NOW)
    assert found.caution == ("floor", "mold")
    assert found.watch == "Look again in spring."
    assert found.decides is not None
    assert found.decides.course == "gut"
    assert found.besides == ("Finding of rot-more",)
    assert [question.text for question in judged.questions] == ["Main?"]
    assert {ground.id for ground in judged.grounds} == {found.id}
    called = [made.call.work for ground in judged.grounds for made in ground.work]
    assert sorted(called) == ["patch", "shore"]
    assert [ground.hidden for ground in judged.grounds if ground.hidden] == ["soft-wood"]
    assert judged.grounds[-1].rule_id == "rot-main"


def test_what_is_watched_elsewhere_is_not_taken_over(case: Any, rule: Ruled) -> None:
    case.answer("main.floor", "rot")
    case.answer("main.floor", "ants")
    rules = [
        rule(
            "rot-any",
            "failed",
            watch="",
            question="Why?",
            replaces=replaces("ants-any", where="place"),
        ),
        rule("ants-any", "failed"),
    ]
    (found,) = case.judged(rules).findings
    assert found.watch == ""


def test_danger_and_the_danger_of_others_stay(case: Any, rule: Ruled) -> None:
    case.answer("main.floor", "rot")
    case.answer("main.floor", "ants", danger=True)
    rules = [
        rule("rot-any", "failed", replaces=replaces("ants-any", where="place")),
        rule("ants-any", "failed"),
    ]
    (found,) = case.judged(rules).findings
    assert found.danger


def test_what_is_replaced_still_causes_and_is_still_found(case: Any, rule: Ruled) -> None:
    case.answer("main.floor", "rot")
    case.answer("main.floor", "stain")
    case.answer("main.floor", "ants")
    rules = [
        rule(
            "rot-main",
            "failed",
            replaces=replaces("rot-more"),
            causes=[{"rules": ["rot-more", "ants-any"], "where": "here"}],
        ),
        rule("rot-more", "failed"),
        rule("ants-any", "failed"),
        rule("stain-any", "failed", causes=[{"rules": ["rot-more"], "where": "here"}]),
        rule("stain-rot", "failed and found_here('rot-more')"),
    ]
    causes = {found.id: found.cause_id for found in case.judged(rules).findings}
    assert causes == {
        "ants-any@main.floor/ants#1": None,
        "rot-main@main.floor/rot#1": "ants-any@main.floor/ants#1",
        "stain-any@main.floor/stain#1": "rot-main@main.floor/rot#1",
        "stain-rot@main.floor/stain#1": None,
    }


@pytest.mark.parametrize(
    ("own_causes", "needs_cause", "explains_itself", "cause"),
    [
        # Where its own rule names no cause, it may be where all began.
        (False, False, False, None),
        (True, False, False, "ants-any@main.floor/ants#1"),
        (False, True, False, "ants-any@main.floor/ants#1"),
        # What follows from the finding itself says nothing of its cause.
        (True, True, True, None),
    ],
)
def test_it_takes_over_the_causes_of_others_where_that_makes_sense(
    case: Any,
    rule: Ruled,
    own_causes: bool,
    needs_cause: bool,
    explains_itself: bool,
    cause: str | None,
) -> None:
    case.answer("main.floor", "rot")
    case.answer("main.floor", "ants")
    named = ["ants-any", "rot-main"] if explains_itself else ["ants-any"]
    needing = {"needs_cause": True, "question": "Why?"} if needs_cause else {}
    rules = [
        rule(
            "rot-main",
            "failed",
            replaces=replaces("rot-more"),
            causes=[{"rules": ["stain-any"]}] if own_causes else [],
        ),
        rule("rot-more", "failed", causes=[{"rules": named}], **needing),
        rule("ants-any", "failed"),
        rule("stain-any", "failed"),
    ]
    judged = case.judged(rules)
    assert {found.id: found.cause_id for found in judged.findings} == {
        "ants-any@main.floor/ants#1": None,
        "rot-main@main.floor/rot#1": cause,
    }
    assert judged.questions == ()


@pytest.mark.parametrize("has_cause", [True, False])
def test_a_replaced_effect_without_a_cause_calls_for_no_work(
    case: Any, rule: Ruled, has_cause: bool
) -> None:
    case.answer("main.floor", "rot")
    if has_cause:
        case.answer("main.floor", "ants")
    work = [{"work": "patch", "take": "area"}]
    rules = [
        rule("rot-main", "failed", replaces=replaces("rot-wet"), work=work),
        rule(
            "rot-wet",
            "failed",
            needs_cause=True,
            question="Why?",
            work=[{"work": "dry", "quantity": "1"}],
            causes=[{"rules": ["ants-any"], "where": "here"}],
        ),
        rule("ants-any", "failed"),
    ]
    judged = case.judged(rules)
    called = [made.call.work for ground in judged.grounds for made in ground.work]
    assert sorted(called) == (["dry", "patch"] if has_cause else ["patch"])
    assert [question.text for question in judged.questions] == ([] if has_cause else ["Why?"])


def test_rules_that_replace_each_other_are_refused(case: Any, rule: Ruled) -> None:
    rules = [
        rule("rot-a", "failed", replaces=replaces("rot-b")),
        rule("rot-b", "failed", replaces=replaces("rot-a")),
    ]
    with pytest.raises(ValueError, match="replace each other: rot-"):
        compile_rules(rules, case.checklist)


@settings(suppress_health_check=[HealthCheck.function_scoped_fixture])
@given(
    edges=st.sets(st.tuples(st.integers(0, 5), st.integers(0, 5)).filter(lambda e: e[0] <= e[1])),
    wheres=st.lists(st.sampled_from(["answer", "place", "anywhere"]), min_size=6, max_size=6),
    seen=st.lists(st.tuples(st.integers(0, 5), st.integers(0, 3)), max_size=12, unique=True),
)
def test_every_finding_is_told_once_alone_or_with_another(
    rule: Ruled,
    checklist: Callable[..., Any],
    edges: set[tuple[int, int]],
    wheres: list[str],
    seen: list[tuple[int, int]],
) -> None:
    rules = {
        compiled.id: compiled
        for compiled in compile_rules(
            [
                rule(
                    f"rot-r{one}",
                    "failed",
                    replaces=[
                        {"rules": [f"rot-r{other}"], "where": wheres[one]}
                        for of, other in sorted(edges)
                        if of == one
                    ],
                )
                for one in range(6)
            ],
            checklist(),
        )
    }
    findings = [_finding(f"rot-r{which}", at) for which, at in seen]
    kept = with_replaced(findings, rules)
    parts = [part.id for found in kept for part in found.parts]
    assert sorted(parts) == sorted(found.id for found in findings)
    assert all(found.urgency is Urgency.WITH_THE_WORK for found in kept)


def _finding(rule_id: str, at: int) -> Finding:
    key = ObservationKey("main.floor" if at < 2 else "main.ceiling", "rot", 1 + at % 2)
    return Finding(
        id=f"{rule_id}@{key}",
        rule_id=rule_id,
        observation=key,
        station_name="",
        surface_id=key.station,
        zone=None,
        text=rule_id,
        advice="",
        urgency=Urgency.WITH_THE_WORK,
        danger=False,
        note="",
        photos=(),
        work=(),
        hidden=None,
        decides=None,
        caution=(),
        watch="",
        source="",
    )
