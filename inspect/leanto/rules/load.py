"""From rules as written to rules that can be judged: compiled, checked, in order."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping, Sequence
from graphlib import CycleError, TopologicalSorter

from leanto.building.kinds import PlaceKind
from leanto.checklist.condition import Condition
from leanto.checklist.model import Checklist, Item
from leanto.rules.compiled import CompiledCall, CompiledRule
from leanto.rules.expression import (
    CompiledExpression,
    ExpressionError,
    Kind,
    UnknownName,
    compile_expression,
)
from leanto.rules.facts import FactSpec, fact_specs
from leanto.rules.fault import Fault
from leanto.rules.model import Rule
from leanto.rules.replacing import replacing_circle
from leanto.rules.syntax import nearest
from leanto.rules.undecidable import Undecidable

_WITHOUT_SURFACE = (PlaceKind.SITE, PlaceKind.WIRING, PlaceKind.FEED)


def compile_rules(rules: Iterable[Rule], checklist: Checklist) -> tuple[CompiledRule, ...]:
    """The rules compiled and in the order in which they are judged.

    ValueError for a faulty rule or a cycle; ``leanto check`` names each one.
    """
    facts = fact_specs(checklist)
    compiled = []
    for rule in rules:
        made, faults = compile_rule(rule, facts)
        if made is None:
            raise ValueError(f"rule {rule.id}: {faults[0].message}")
        compiled.append(made)
    ordered, cycle = in_order(compiled)
    if cycle:
        raise ValueError("rules ask for each other's findings: " + " -> ".join(cycle))
    if circle := replacing_circle(ordered):
        raise ValueError("rules replace each other: " + " -> ".join(circle))
    return ordered


def compile_rule(
    rule: Rule,
    facts: Mapping[str, FactSpec],
    before: dict[str, CompiledExpression] | None = None,
) -> tuple[CompiledRule | None, list[Fault]]:
    """The rule compiled, or None and every fault of its expressions.

    ``before`` holds what was compiled from other rules over the same facts, and is added to.
    """
    faults: list[Fault] = []
    known = {} if before is None else before

    def compiled(text: str, kind: Kind, *path: str | int) -> CompiledExpression | None:
        try:
            made = known.get(text) or known.setdefault(text, compile_expression(text, facts))
        except ExpressionError as error:
            unknown = isinstance(error, UnknownName)
            faults.append(Fault(path, error.sentence, is_unknown_name=unknown))
            return None
        if made.kind == kind:
            return made
        wanted = "A yes or no" if kind == "flag" else "A number"
        faults.append(Fault(path, f"{wanted} is needed, but '{made.text}' is a {made.kind}."))
        return None

    when = compiled(rule.when, "flag", "when")
    calls = [
        CompiledCall(
            call,
            compiled(call.when, "flag", "work", index, "when") if call.when else None,
            compiled(call.quantity, "number", "work", index, "quantity") if call.quantity else None,
        )
        for index, call in enumerate(rule.work)
    ]
    if when is None or faults:
        return None, faults
    expressions = [when, *(part for call in calls for part in (call.when, call.quantity) if part)]
    searched = frozenset(rule_id for part in expressions for _, rule_id in part.calls)
    return CompiledRule(rule, when, tuple(calls), searched), []


def in_order(
    rules: Sequence[CompiledRule],
) -> tuple[tuple[CompiledRule, ...], tuple[str, ...]]:
    """The rules with each behind those whose findings it asks for; or none, and one cycle."""
    by_id = {rule.id: rule for rule in rules}
    graph = {rule.id: sorted(rule.searched & by_id.keys()) for rule in rules}
    try:
        ordered = tuple(TopologicalSorter(graph).static_order())
    except CycleError as error:
        return (), tuple(error.args[1])
    return tuple(by_id[rule_id] for rule_id in ordered), ()


def rule_faults(
    rule: CompiledRule, items: Mapping[str, Item], facts: Mapping[str, FactSpec]
) -> Iterator[Fault]:
    """What makes a rule impossible to judge at the items it reads; nothing when one is unknown."""
    if not items.keys() >= set(rule.rule.items):
        return
    read = [items[item_id] for item_id in rule.rule.items]
    asked = {name for item in read for name in _measures_of(item)}
    needed = {
        part
        for expression in rule.expressions()
        for name in expression.names
        for part in (name, *facts[name].made_from)
    }
    for name in sorted(needed - asked):
        spec = facts.get(name)
        if spec is None or spec.is_measure:
            remedy = nearest(name, asked) or "Add the measure to an answer of the item."
            yield Fault(("items",), f"None of these items asks for {name}.", remedy)
    for index, call in enumerate(rule.rule.work):
        for item in read:
            bare = [kind.value for kind in item.at if kind in _WITHOUT_SURFACE]
            if call.take is not None and bare:
                message = f"'{call.take}' needs a surface; {item.id} is asked at {bare[0]} as well."
                yield Fault(("work", index, "take"), message, "Give a quantity instead.")


def unanswered(item: Item, rules: Iterable[CompiledRule]) -> tuple[Condition, ...]:
    """Which of worn and failed no rule speaks for, whatever else is observed."""
    own = [rule for rule in rules if item.id in rule.rule.items]
    return tuple(
        condition
        for condition in (Condition.WORN, Condition.FAILED)
        if not any(_may_hold(rule.when, condition) for rule in own)
    )


def _may_hold(when: CompiledExpression, condition: Condition) -> bool:
    """False when the condition of the observation alone makes the expression false."""
    flags = {
        "sound": condition is Condition.SOUND,
        "worn": condition is Condition.WORN,
        "failed": condition is Condition.FAILED,
        "no_access": condition is Condition.NO_ACCESS,
        "danger": False,
    }
    try:
        return when.evaluate(flags) is True
    except Undecidable:
        return True


def _measures_of(item: Item) -> set[str]:
    answers = (item.answers.sound, item.answers.worn, item.answers.failed)
    return {measure for answer in answers for measure in answer.measures}
