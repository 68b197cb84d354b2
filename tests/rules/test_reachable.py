"""Every shipped rule can come true, and every call for work of it can be made."""

from __future__ import annotations

import random
from collections.abc import Iterator

import pytest

from leanto.library import read_library
from leanto.rules.compiled import CompiledRule
from leanto.rules.expression import CompiledExpression
from leanto.rules.facts import FactSpec, fact_specs
from leanto.rules.terms import Value
from leanto.rules.undecidable import Undecidable

LIBRARY = read_library()
FACTS = fact_specs(LIBRARY.checklist)
LIMITS = {measure.id: (measure.low, measure.high) for measure in LIBRARY.checklist.measures}
ITEMS = {item.id: item for item in LIBRARY.checklist.items()}
NUMBERS = (
    *(-12.0, -3.0, 0.0, 0.03, 0.1, 0.2, 0.5, 1.0, 1.4, 2.0, 3.0, 4.0),
    *(7.0, 10.0, 14.0, 25.0, 40.0, 70.0, 130.0, 1500.0),
)
YEARS = (1880.0, 1930.0, 1970.0, 1990.0, 2010.0)
DRAWS = 4000


def drawn(spec: FactSpec, chance: random.Random) -> Value:
    """One value of the fact, within the limits of a measure."""
    if spec.kind == "flag":
        return chance.random() < 0.5
    if spec.kind == "text":
        return chance.choice(spec.choices)
    if spec.unit == "year":
        return chance.choice(YEARS)
    low, high = LIMITS.get(spec.name, (None, None))
    fitting = [
        number
        for number in NUMBERS
        if (low is None or number >= low) and (high is None or number <= high)
    ]
    return chance.choice(fitting)


def scenes(rule: CompiledRule) -> Iterator[dict[str, Value]]:
    """Made-up facts for the rule: one answer, any place where an item of it is asked."""
    chance = random.Random(rule.id)
    names = sorted(set().union(*(part.names for part in rule.expressions())))
    places = [kind for item in rule.rule.items for kind in ITEMS[item].at]
    for _ in range(DRAWS):
        values = {name: drawn(FACTS[name], chance) for name in names if chance.random() < 0.85}
        answer = chance.choice(("sound", "worn", "failed", "no_access", ""))
        values |= {flag: flag == answer for flag in ("sound", "worn", "failed", "no_access")}
        values["place"] = chance.choice(places).value
        yield values


def holds(part: CompiledExpression, values: dict[str, Value], found: frozenset[str]) -> bool:
    searches = {function: found.__contains__ for function, _ in part.calls}
    try:
        value = part.evaluate(values, searches)
    except Undecidable:
        return False
    return bool(value) if part.kind == "flag" else isinstance(value, float) and value > 0


@pytest.mark.parametrize("rule", LIBRARY.rules, ids=lambda rule: rule.id)
def test_every_rule_and_every_call_of_it_can_come_true(rule: CompiledRule) -> None:
    wanting = dict(enumerate(rule.calls))
    chance = random.Random(rule.id)
    reached = False
    for values in scenes(rule):
        share = chance.choice((0.05, 0.5, 0.95))
        found = frozenset(id_ for id_ in sorted(rule.searched) if chance.random() < share)
        if not holds(rule.when, values, found):
            continue
        reached = True
        for index, call in list(wanting.items()):
            parts = [part for part in (call.when, call.quantity) if part is not None]
            if all(holds(part, values, found) for part in parts):
                del wanting[index]
        if not wanting:
            break
    assert reached, rule.when.text
    assert [call.call.work for call in wanting.values()] == []
