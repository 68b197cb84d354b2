"""What only shows when all data files are seen together."""

from __future__ import annotations

import keyword
from collections.abc import Iterable, Iterator, Mapping

from leanto.checklist.model import Checklist
from leanto.errors import Problem
from leanto.library.gaps import gaps
from leanto.library.names import unknown_names
from leanto.library.parts import Parts
from leanto.library.pointless_faults import pointless_faults
from leanto.quantities import Unit
from leanto.rules.asking import only_if
from leanto.rules.causes import causing_circle
from leanto.rules.compiled import CompiledRule
from leanto.rules.expression import CompiledExpression, ExpressionError
from leanto.rules.facts import STATIC_FACTS, FactSpec, fact_specs
from leanto.rules.functions import NAMES
from leanto.rules.load import compile_rule, in_order, rule_faults
from leanto.rules.model import Take
from leanto.rules.replacing import replacing_circle
from leanto.rules.syntax import nearest
from leanto.rules.units import check_units, unit_faults

_UNIT_OF_TAKE = {
    Take.AREA: Unit.SQFT,
    Take.SURFACE: Unit.SQFT,
    Take.WIDTH: Unit.LF,
    Take.HEIGHT: Unit.LF,
    Take.MEMBER_LENGTH: Unit.LF,
    Take.PERIMETER: Unit.LF,
    Take.MEMBERS: Unit.EACH,
}
_TAKEN_NAMES = frozenset({*(spec.name for spec in STATIC_FACTS), *NAMES, *keyword.kwlist})


def cross_check(
    parts: Parts, checklist: Checklist
) -> tuple[tuple[CompiledRule, ...], list[Problem]]:
    """The compiled rules in order, and every problem between the entries."""
    compiled, problems = _compiled(parts, checklist)
    rules, cycle = in_order(compiled)
    if cycle:
        message = "These rules ask for each other's findings: " + " -> ".join(cycle) + "."
        problems.append(parts.rules[cycle[0]].problem(("when",), message, "Take one out."))
    if circle := replacing_circle(compiled):
        message = "These rules replace each other: " + " -> ".join(circle) + "."
        problems.append(parts.rules[circle[0]].problem(("replaces",), message, "Take one out."))
    if circle := causing_circle(compiled):
        message = "These rules cause each other: " + " -> ".join(circle) + "."
        problems.append(parts.rules[circle[0]].problem(("causes",), message, "Take one out."))
    facts = fact_specs(checklist)
    problems += _measure_problems(parts)
    problems += _only_if_problems(parts, facts)
    problems += _take_problems(parts)
    problems += _unit_problems(parts, compiled, facts)
    problems += unknown_names(parts)
    problems += pointless_faults(parts)
    problems += gaps(parts, compiled)
    return rules, problems


def _compiled(parts: Parts, checklist: Checklist) -> tuple[list[CompiledRule], list[Problem]]:
    facts = fact_specs(checklist)
    items = {item_id: entry.value for item_id, entry in parts.items.items()}
    compiled: list[CompiledRule] = []
    problems: list[Problem] = []
    before: dict[str, CompiledExpression] = {}
    for entry in parts.rules.values():
        rule, faults = compile_rule(entry.value, facts, before)
        if not parts.has_all("measures"):
            faults = [fault for fault in faults if not fault.is_unknown_name]
        problems += entry.problems(faults)
        if rule is None:
            continue
        compiled.append(rule)
        problems += entry.problems(rule_faults(rule, items, facts))
        if parts.has_all("rules"):
            for rule_id in sorted(rule.searched - parts.rules.keys()):
                message = f"It asks for the findings of '{rule_id}', which is no rule."
                problems.append(entry.problem(("when",), message, nearest(rule_id, parts.rules)))
    return compiled, problems


def _measure_problems(parts: Parts) -> Iterator[Problem]:
    for measure_id, entry in parts.measures.items():
        if measure_id in _TAKEN_NAMES:
            message = f"'{measure_id}' is a name that expressions use already."
            yield entry.problem(("id",), message, "Choose another.")
        unit = entry.value.unit
        if unit not in ("choice", "yes_no") and not measure_id.endswith(f"_{unit}"):
            message = f"'{measure_id}' is entered in {unit}; its name must end with _{unit}."
            yield entry.problem(("id",), message, "Rename it.")


def _only_if_problems(parts: Parts, facts: Mapping[str, FactSpec]) -> Iterator[Problem]:
    for entry in parts.items.values():
        if entry.value.only_if:
            try:
                check_units(only_if(entry.value.only_if), facts, None)
            except ExpressionError as error:
                yield entry.problem(("only_if",), error.sentence)


def _unit_problems(
    parts: Parts, rules: Iterable[CompiledRule], facts: Mapping[str, FactSpec]
) -> Iterator[Problem]:
    counted_in = {work_id: entry.value.unit for work_id, entry in parts.works.items()}
    for rule in rules:
        yield from parts.rules[rule.id].problems(unit_faults(rule, facts, counted_in))


def _take_problems(parts: Parts) -> Iterator[Problem]:
    for entry in parts.rules.values():
        for index, call in enumerate(entry.value.work):
            work = parts.works.get(call.work)
            if work is None or call.take is None:
                continue
            taken, counted = _UNIT_OF_TAKE[call.take], work.value.unit
            if taken is not counted:
                message = f"'{call.take}' gives {taken}, but {call.work} is counted in {counted}."
                yield entry.problem(("work", index, "take"), message, "Give a quantity instead.")
