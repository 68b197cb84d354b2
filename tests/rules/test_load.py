"""What is found wrong with rules before anything is judged."""

from __future__ import annotations

from collections.abc import Callable
from typing import Any

import pytest

from leanto.checklist.condition import Condition
from leanto.checklist.model import Checklist
from leanto.rules.facts import fact_specs
from leanto.rules.load import compile_rule, compile_rules, in_order, rule_faults, unanswered
from leanto.rules.model import Rule

Ruled = Callable[..., Rule]


@pytest.mark.parametrize(
    ("when", "work", "path", "message"),
    [
        ("moistur_pct > 1", {}, ("when",), "did you mean 'moisture_pct'?"),
        ("moisture_pct", {}, ("when",), "A yes or no is needed, but 'moisture_pct' is a number."),
        ("lining", {}, ("when",), "A yes or no is needed, but 'lining' is a text."),
        ("worn", {"quantity": "worn"}, ("work", 0, "quantity"), "A number is needed, but 'worn'"),
        ("worn", {"quantity": "rum_ft"}, ("work", 0, "quantity"), "did you mean 'run_ft'?"),
        ("worn", {"take": "area", "when": "run_ft"}, ("work", 0, "when"), "A yes or no is needed"),
    ],
)
def test_a_fault_names_its_place_in_the_rule(
    rule: Ruled,
    checklist: Callable[..., Checklist],
    when: str,
    work: dict[str, str],
    path: tuple[str | int, ...],
    message: str,
) -> None:
    calls = [{"work": "patch", **work}] if work else []
    made, faults = compile_rule(rule("rot-x", when, work=calls), fact_specs(checklist()))
    assert made is None
    assert [fault.path for fault in faults] == [path]
    assert message in faults[0].message


def test_all_faults_of_a_rule_are_told_together(
    rule: Ruled, checklist: Callable[..., Checklist]
) -> None:
    calls = [{"work": "patch", "quantity": "2 +"}, {"work": "patch", "quantity": "nothing"}]
    _, faults = compile_rule(rule("rot-x", "wron", work=calls), fact_specs(checklist()))
    assert [fault.path[-1] for fault in faults] == ["when", "quantity", "quantity"]


def test_rules_come_behind_those_they_ask_for(
    rule: Ruled, checklist: Callable[..., Checklist]
) -> None:
    work = [{"work": "patch", "quantity": "1", "when": "found_beside('rot-c')"}]
    rules = [
        rule("rot-a", "found_here('rot-b')"),
        rule("rot-b", "worn", work=work),
        rule("rot-c", "worn"),
    ]
    ordered = [made.id for made in compile_rules(rules, checklist())]
    assert ordered == ["rot-c", "rot-b", "rot-a"]


@pytest.mark.parametrize(
    "asked",
    [{"rot-a": "rot-a"}, {"rot-a": "rot-b", "rot-b": "rot-a"}],
    ids=["itself", "each other"],
)
def test_a_cycle_is_named(
    rule: Ruled, checklist: Callable[..., Checklist], asked: dict[str, str]
) -> None:
    facts = fact_specs(checklist())
    made = [
        compile_rule(rule(own, f"found_here('{other}')"), facts)[0] for own, other in asked.items()
    ]
    ordered, cycle = in_order([one for one in made if one])
    assert ordered == ()
    assert set(cycle) == set(asked)
    with pytest.raises(ValueError, match="ask for each other"):
        compile_rules([one.rule for one in made if one], checklist())


def faults_of(rule: Rule, checklist: Checklist) -> list[str]:
    facts = fact_specs(checklist)
    made, _ = compile_rule(rule, facts)
    assert made is not None
    items = {item.id: item for item in checklist.items()}
    return [fault.message for fault in rule_faults(made, items, facts)]


def test_a_rule_must_read_measures_that_its_items_ask_for(
    rule: Ruled, item: Callable[..., Any], checklist: Callable[..., Checklist]
) -> None:
    answers = item("rot").answers.model_dump()
    answers["worn"]["measures"] = answers["failed"]["measures"] = ["run_ft"]
    short = checklist(item("rot", answers=answers), item("stain"))
    assert faults_of(rule("rot-a", "worn and run_ft > 1"), short) == []
    assert faults_of(rule("rot-a", "worn and probe_depth_in > 1"), short) == [
        "None of these items asks for probe_depth_in."
    ]
    assert faults_of(rule("rot-a", "moisture_verdict == 'wet enough for decay'"), short) == [
        "None of these items asks for moisture_pct."
    ]
    both = rule("rot-a", "worn and probe_depth_in > 1", items=["rot", "stain"])
    assert faults_of(both, short) == []


@pytest.mark.parametrize(
    ("at", "is_fault"),
    [(["floor"], False), (["floor", "site"], True), (["wiring"], True), (["feed"], True)],
)
def test_work_taken_from_the_place_needs_a_surface(
    rule: Ruled,
    item: Callable[..., Any],
    checklist: Callable[..., Checklist],
    at: list[str],
    is_fault: bool,
) -> None:
    made = rule("rot-a", "worn", work=[{"work": "patch", "take": "area"}])
    faults = faults_of(made, checklist(item("rot", at=at)))
    assert bool(faults) is is_fault
    counted = rule("rot-a", "worn", work=[{"work": "patch", "quantity": "2"}])
    assert faults_of(counted, checklist(item("rot", at=at))) == []


@pytest.mark.parametrize(
    ("whens", "open_ends"),
    [
        ([], "worn failed"),
        (["worn or failed"], ""),
        (["worn", "failed and probe_depth_in > 1"], ""),
        (["failed"], "worn"),
        (["not sound"], ""),
        (["not failed"], "failed"),
        (["probe_depth_in > 1"], ""),
        (["danger or failed"], "worn"),
        (["no_access", "sound"], "worn failed"),
        (["worn and found_here('stain-x')", "failed and lining == 'none'"], ""),
    ],
)
def test_worn_and_failed_need_a_rule_that_may_hold(
    rule: Ruled,
    item: Callable[..., Any],
    checklist: Callable[..., Checklist],
    whens: list[str],
    open_ends: str,
) -> None:
    rules = [rule(f"rot-{index}", when) for index, when in enumerate(whens)]
    other = rule("stain-x", "worn or failed")
    compiled = compile_rules([*rules, other], checklist())
    assert unanswered(item("rot"), compiled) == tuple(map(Condition, open_ends.split()))
