"""Rules against observations: what was found, what must be asked, what could not be judged."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass, field, replace
from datetime import date

from leanto.building.model import Building
from leanto.building.station import Station
from leanto.building.surface import Surface
from leanto.checklist.condition import Condition
from leanto.checklist.model import Checklist, Item
from leanto.reckon.model import Reckoning
from leanto.record.observation import Observation, ObservationKey, in_order
from leanto.record.walk import Walk
from leanto.remembered import remembered
from leanto.rules.causes import in_chains, unexplained, with_causes
from leanto.rules.compiled import CompiledRule
from leanto.rules.danger import danger_finding
from leanto.rules.expression import CompiledExpression
from leanto.rules.facts import FactSpec, fact_specs, wanting
from leanto.rules.finding import CalledWork, Finding, Judged, OpenQuestion
from leanto.rules.nearness import Boxes, Neighbors, neighbors
from leanto.rules.outcome import Outcome, Said, searches, searches_of_zone
from leanto.rules.reckoned import reckoned_by_answer
from leanto.rules.replacing import with_replaced
from leanto.rules.terms import Searches, Values
from leanto.rules.undecidable import Undecidable
from leanto.rules.values import observation_values, station_values


def judge(
    building: Building,
    surfaces: Mapping[str, Surface],
    stations: Iterable[Station],
    walk: Walk,
    checklist: Checklist,
    rules: Sequence[CompiledRule],
    as_of: date,
    reckonings: Sequence[Reckoning] = (),
) -> Judged:
    """What every rule has to say about every observation of its items.

    ``reckonings`` of the same walk feed the facts that computations give; without them those
    facts are not known.
    ``rules`` must be in the order that ``leanto.rules.load`` gives them, so that a rule comes
    after those whose findings it asks for. Observations at stations that the building no longer
    has are passed over.
    """
    stations = tuple(stations)
    by_id = {station.id: station for station in stations}
    around = _around(stations, surfaces)
    before = _before(stations, surfaces, checklist, rules)
    outcome = Outcome()
    scenes = _scenes(
        building, surfaces, by_id, walk, checklist, outcome, around, as_of, reckonings, before
    )
    for rule in rules:
        for item_id in rule.rule.items:
            for scene in scenes.get(item_id, ()):
                if _concerns(rule, scene.observation):
                    outcome.take(_said(rule, scene))
    by_rule_id = {rule.id: rule for rule in rules}
    walked = {station_id: index for index, station_id in enumerate(by_id)}
    found = sorted(outcome.findings, key=lambda finding: walked[finding.observation.station])
    explained = with_causes(with_replaced(found, by_rule_id), by_rule_id, around)
    settled = [_without_cause(finding, by_rule_id) for finding in explained]
    spoken = {part.observation for finding in settled for part in finding.parts}
    unspoken = [
        danger_finding(scene.observation, scene.item, scene.station)
        for about in scenes.values()
        for scene in about
        if scene.observation.danger and scene.observation.key not in spoken
    ]
    findings = in_chains([*settled, *unspoken], walked)
    return Judged(findings, tuple(_questions(findings, by_rule_id)), tuple(outcome.undecided))


@dataclass(frozen=True, slots=True)
class _Before:
    """What the last walk through the same building came to, to be taken where nothing changed."""

    here: dict[str, Values] = field(default_factory=dict)
    """By station id."""
    scenes: dict[ObservationKey, _Scene] = field(default_factory=dict)


@remembered(4)
def _before(
    stations: tuple[Station, ...],
    surfaces: Mapping[str, Surface],
    checklist: Checklist,
    rules: Sequence[CompiledRule],
) -> _Before:
    """Nothing at first; it is filled by judging these rules over this building."""
    return _Before()


@remembered(4)
def _around(
    stations: tuple[Station, ...], surfaces: Mapping[str, Surface]
) -> Mapping[str, Neighbors]:
    """What lies around each station, by its id."""
    boxes: Boxes = {}
    return {station.id: neighbors(station, surfaces, boxes) for station in stations}


@dataclass(frozen=True, slots=True)
class _Scene:
    """One observation with all that rules may ask about it."""

    observation: Observation
    item: Item | None
    station: Station
    facts: Mapping[str, FactSpec]
    here: Values
    """What it shares with all others at the station."""
    reckoned: Values
    values: Values
    searches: Searches
    said: dict[str, Said]
    """What rules that search for no other findings said of it, by their ids."""

    def missing(self, undecidable: Undecidable) -> str:
        return wanting(undecidable.missing, self.facts, self.values)

    def is_asked_for(self, missing: str) -> bool:
        """False for a measure that a sound answer does not call for."""
        if self.observation.condition is not Condition.SOUND or self.item is None:
            return True
        spec = self.facts.get(missing)
        is_measure = spec is not None and spec.is_measure
        return not is_measure or missing in self.item.answers.sound.measures


def _scenes(
    building: Building,
    surfaces: Mapping[str, Surface],
    stations: Mapping[str, Station],
    walk: Walk,
    checklist: Checklist,
    outcome: Outcome,
    around: Mapping[str, Neighbors],
    as_of: date,
    reckonings: Sequence[Reckoning],
    before: _Before,
) -> dict[str, list[_Scene]]:
    """The observations that any rule may read, by item."""
    facts = fact_specs(checklist)
    items = {item.id: item for item in checklist.items()}
    alone = reckoned_by_answer(reckonings)
    here: dict[str, Values] = {}
    shared_searches: dict[str, Searches] = {}
    scenes: dict[str, list[_Scene]] = {}
    for key, observation in in_order(walk.observations):
        station = stations.get(key.station)
        if station is None or not (_has_answer(observation) or observation.danger):
            continue
        if station.id not in here:
            now = station_values(station, building, surfaces, stations, walk, as_of, reckonings)
            if before.here.get(station.id) != now:
                before.here[station.id] = now
            here[station.id] = before.here[station.id]
            shared_searches[station.id] = searches(around[station.id], outcome)
        shared = here[station.id]
        reckoned = alone.get(key, {})
        looked_for = searches_of_zone(
            shared_searches[station.id], around[station.id], outcome, observation.zone
        )
        held, said = before.scenes.get(key), dict[str, Said]()
        if (
            held is not None
            and held.here is shared
            and held.observation == observation
            and held.reckoned == reckoned
        ):
            values, said = held.values, held.said
        else:
            surface = surfaces.get(station.surface_id or "")
            own = observation_values(observation, surface, shared, facts)
            values = {**shared, **own, **reckoned}
        scene = before.scenes[key] = _Scene(
            observation=observation,
            item=items.get(key.item),
            station=station,
            facts=facts,
            here=shared,
            reckoned=reckoned,
            values=values,
            searches=looked_for,
            said=said,
        )
        scenes.setdefault(key.item, []).append(scene)
    return scenes


def _has_answer(observation: Observation) -> bool:
    return observation.condition not in (None, Condition.NOT_THERE)


def _concerns(rule: CompiledRule, observation: Observation) -> bool:
    """Whether the rule may read the observation.

    Without an answer only rules that name danger do, where there is no access also those that
    name it: any other rule would take what was not seen for a fact.
    """
    if observation.danger and "danger" in rule.when.names:
        return True
    if observation.condition is Condition.NO_ACCESS:
        return "no_access" in rule.when.names
    return _has_answer(observation)


def _said(rule: CompiledRule, scene: _Scene) -> Said:
    """What the rule says here; once for all where it hangs on nothing but the observation."""
    if rule.searched:
        return _judge_one(rule, scene)
    if rule.id not in scene.said:
        scene.said[rule.id] = _judge_one(rule, scene)
    return scene.said[rule.id]


def _judge_one(rule: CompiledRule, scene: _Scene) -> Said:
    missing: list[str] = []
    holds = _holds(rule.when, scene, missing)
    of_rule = missing[0] if missing else ""
    finding = _finding(rule, scene, missing) if holds else None
    return Said(rule.id, scene.observation.key, finding, tuple(missing), of_rule)


def _finding(rule: CompiledRule, scene: _Scene, missing: list[str]) -> Finding:
    observation, station, model = scene.observation, scene.station, rule.rule
    return Finding(
        id=f"{rule.id}@{observation.key}",
        rule_id=rule.id,
        observation=observation.key,
        station_name=station.name,
        surface_id=station.surface_id,
        zone=observation.zone,
        text=model.finding,
        advice=model.advice,
        urgency=model.urgency,
        danger=observation.danger,
        note=observation.note,
        photos=observation.photos,
        work=tuple(_called(rule, scene, missing)),
        hidden=model.hidden,
        decides=model.decides,
        caution=model.caution,
        watch=model.watch,
        source=model.source,
    )


def _called(rule: CompiledRule, scene: _Scene, missing: list[str]) -> Iterator[CalledWork]:
    """The work that the rule calls for here; a quantity of zero or less calls for none."""
    for compiled in rule.calls:
        if compiled.when is not None and not _holds(compiled.when, scene, missing):
            continue
        if compiled.quantity is None:
            yield CalledWork(compiled.call, None)
            continue
        try:
            quantity = compiled.quantity.evaluate(scene.values, scene.searches)
        except Undecidable as undecidable:
            missing.append(scene.missing(undecidable))
            continue
        assert isinstance(quantity, float)
        if quantity > 0:
            yield CalledWork(compiled.call, quantity)


def _holds(condition: CompiledExpression, scene: _Scene, missing: list[str]) -> bool:
    """Whether the condition is true; when it cannot be told, what is missing is added."""
    try:
        return condition.evaluate(scene.values, scene.searches) is True
    except Undecidable as undecidable:
        lacks = scene.missing(undecidable)
    if scene.is_asked_for(lacks):
        missing.append(lacks)
    return False


def _without_cause(finding: Finding, rules: Mapping[str, CompiledRule]) -> Finding:
    """The finding; what needs a cause and has none calls for no work."""
    if finding.cause_id is not None:
        return finding
    wanting = (finding, *unexplained(finding, rules))
    idle = {part.id for part in wanting if rules[part.rule_id].rule.needs_cause}
    also = tuple(replace(p, work=()) if p.id in idle else p for p in finding.also)
    return replace(finding, also=also, work=() if finding.id in idle else finding.work)


def _questions(
    findings: Iterable[Finding], rules: Mapping[str, CompiledRule]
) -> Iterator[OpenQuestion]:
    """The question of every finding that is told.

    Those that it replaces ask none, unless it has no question, and they want a cause it lacks.
    """
    for finding in findings:
        if finding.rule_id not in rules:
            continue
        asked = [rules[finding.rule_id].rule]
        if not asked[0].question and finding.cause_id is None:
            parts = (rules[part.rule_id].rule for part in unexplained(finding, rules))
            asked = [rule for rule in parts if rule.needs_cause]
        for rule in asked[:1]:
            is_answered = rule.needs_cause and finding.cause_id is not None
            if rule.question and not is_answered:
                yield OpenQuestion(finding.id, finding.observation, rule.question, rule.ask)
