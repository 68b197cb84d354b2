"""Every answer but sound leads to a finding, and every finding to work, a watch or a question."""

from __future__ import annotations

import random
from collections.abc import Iterator, Mapping

import pytest
import test_buildings
from invented import invented

from leanto.building.stations import stations_of
from leanto.building.surfaces import surfaces_of
from leanto.checklist.condition import Condition
from leanto.checklist.model import Item, Measure
from leanto.library import read_library
from leanto.reckon.all import reckon
from leanto.record.observation import Observation, ObservationKey
from leanto.record.walk import Walk
from leanto.rules.asking import only_if
from leanto.rules.compiled import CompiledRule
from leanto.rules.facts import FactSpec, fact_specs
from leanto.rules.finding import Judged
from leanto.rules.matching import judge
from leanto.rules.terms import Value
from leanto.rules.undecidable import Undecidable

LIBRARY = read_library()
FACTS = fact_specs(LIBRARY.checklist)
MEASURES = {measure.id: measure for measure in LIBRARY.checklist.measures}
ANSWERS = ("worn", "failed", "no_access", "danger")
FLAGS = ("sound", "worn", "failed", "no_access", "danger")
DRAWS = 120
SEEDS = range(6)


def drawn(spec: FactSpec, chance: random.Random) -> Value:
    """A value of the fact, within the limits of a measure."""
    if spec.kind == "flag":
        return chance.random() < 0.5
    if spec.kind == "text":
        return chance.choice(spec.choices)
    if spec.unit == "year":
        return chance.choice((1880.0, 1930.0, 1970.0, 1990.0))
    measure = MEASURES.get(spec.name)
    low, high = (measure.low or 0.0, measure.high or 0.0) if measure else (0.0, 200.0)
    return low + (high - low) * chance.choice((0.0, 0.002, 0.01, 0.05, 0.2, 0.6, 1.0))


def rules_of(item: Item, answer: str) -> list[CompiledRule]:
    """Those that may read the answer, see ``leanto.rules.matching``."""
    own = [rule for rule in LIBRARY.rules if item.id in rule.rule.items]
    if answer in ("no_access", "danger"):
        return [rule for rule in own if answer in rule.when.names]
    return own


def scenes(item: Item, answer: str) -> Iterator[dict[str, Value]]:
    """Places where the item is asked, with all, some or none of what the answer measures."""
    chance = random.Random(item.id + answer)
    names = {name for rule in rules_of(item, answer) for name in rule.when.names}
    condition = only_if(item.only_if) if item.only_if else None
    names |= condition.names if condition else set()
    given = {"worn": item.answers.worn.measures, "failed": item.answers.failed.measures}
    measured = given.get(answer, ())
    made = 0
    for _ in range(DRAWS * 50):
        share = chance.choice((0.0, 0.5, 1.0))
        values: dict[str, Value] = {}
        for name in sorted(names - set(FLAGS) - {"place"}):
            spec = FACTS[name]
            if spec.before_walk or (name in measured and chance.random() < share):
                values[name] = drawn(spec, chance)
        values |= {flag: flag == answer for flag in FLAGS}
        values["place"] = chance.choice(item.at).value
        if condition is None or condition.evaluate(values) is True:
            made += 1
            yield values
        if made == DRAWS:
            return


def speaks(rule: CompiledRule, values: Mapping[str, Value], found: frozenset[str]) -> bool:
    searches = {function: found.__contains__ for function, _ in rule.when.calls}
    try:
        return rule.when.evaluate(values, searches) is True
    except Undecidable:
        return False


@pytest.mark.parametrize("answer", ANSWERS)
def test_every_answer_but_sound_leads_to_a_finding_whatever_was_measured(answer: str) -> None:
    silent = []
    for item in LIBRARY.checklist.items():
        rules = rules_of(item, answer)
        if answer == "danger" and not rules:
            continue  # the mark of danger is a finding of its own, see test_matching
        searched = sorted(set().union(*(rule.searched for rule in rules)))
        chance = random.Random(item.id)
        drawn_scenes = 0
        for values in scenes(item, answer):
            drawn_scenes += 1
            found = frozenset(rule_id for rule_id in searched if chance.random() < 0.3)
            if not any(speaks(rule, values, found) for rule in rules):
                silent.append((item.id, values))
                break
        assert drawn_scenes >= 20 or silent, f"{item.id} can hardly be asked"
    assert silent == []


def entered(measure: Measure, chance: random.Random) -> float | str:
    if measure.choices:
        return chance.choice(measure.choices)
    if measure.unit == "yes_no":
        return float(chance.random() < 0.5)
    value = drawn(FACTS[measure.id], chance)
    assert isinstance(value, float)
    return float(round(value)) if measure.unit == "count" else value


def random_walk(name: str, seed: int) -> tuple[Walk, Judged]:
    """A walk of the invented building with answers by chance, and what the rules make of it."""
    made, chance = invented(name), random.Random(f"{name} {seed}")
    conditions = [None, Condition.SOUND, Condition.WORN, *2 * [Condition.FAILED]]
    seen = {}
    for station, items in test_buildings.asked_in(name).items():
        for item in items:
            condition = chance.choice([*conditions, Condition.NO_ACCESS])
            if condition is None:
                continue
            answer = item.answer(condition)
            key = ObservationKey(station, item.id)
            seen[key] = Observation(
                key,
                condition,
                measures={
                    id_: entered(MEASURES[id_], chance)
                    for id_ in (answer.measures if answer else ())
                    if chance.random() < 0.7
                },
                danger=chance.random() < 0.03,
            )
    walk = Walk(building=made.building, observations=seen)
    surfaces = {surface.id: surface for surface in surfaces_of(made.building)}
    stations, day = stations_of(made.building), made.written.date
    reckonings = reckon(made.building, surfaces, stations, walk, day)
    return walk, judge(
        made.building,
        surfaces,
        stations,
        walk,
        LIBRARY.checklist,
        LIBRARY.rules,
        day,
        reckonings,
    )


@pytest.mark.parametrize("seed", SEEDS)
@pytest.mark.parametrize("name", test_buildings.NAMES)
def test_every_finding_leads_to_work_a_watch_a_question_or_its_cause(name: str, seed: int) -> None:
    walk, judged = random_walk(name, seed)
    asked = {question.finding_id for question in judged.questions}
    nowhere = [
        finding.id
        for finding in judged.findings
        if not any(part.work or part.watch for part in finding.parts)
        and finding.id not in asked
        and finding.cause_id is None
    ]
    assert nowhere == []
    assert all(question.ask for question in judged.questions)
    spoken = {part.observation for finding in judged.findings for part in finding.parts}
    spoken |= {undecided.observation for undecided in judged.undecided}
    bad = (Condition.WORN, Condition.FAILED, Condition.NO_ACCESS)
    unspoken = {
        key for key, seen in walk.observations.items() if seen.condition in bad or seen.danger
    }
    assert unspoken - spoken == set()
    assert len(judged.findings) > 50
