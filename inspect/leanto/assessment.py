"""The pipeline: building, walk and library in, Assessment out. Pure."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import dataclass, replace
from datetime import date

from leanto.building.model import Building
from leanto.building.station import Station
from leanto.building.stations import stations_of
from leanto.building.surface import Surface
from leanto.building.surfaces import surfaces_by_id
from leanto.checklist.condition import Condition
from leanto.checklist.model import Checklist, Item
from leanto.cost.estimate import Estimate
from leanto.cost.feed import FeedPrices, FeedWay, feed_ways
from leanto.cost.risk import shared_risk
from leanto.cost.simulation import DRAWS
from leanto.cost.total import estimate_scope
from leanto.decision.budget import Money, MoneyBasis, drawn_range, money
from leanto.decision.chances import AllChances, chances_of
from leanto.decision.courses import Book
from leanto.decision.decide import decide, hidden_risks
from leanto.decision.model import Decision
from leanto.decision.plan import Plan
from leanto.decision.whole import whole_scope
from leanto.library import Library
from leanto.reckon.all import reckon
from leanto.reckon.basis import Basis
from leanto.reckon.feed import feed_need
from leanto.reckon.model import Reckoning
from leanto.record.observation import Observation
from leanto.record.walk import Walk
from leanto.remembered import remembered
from leanto.rules.asking import occurring_at
from leanto.rules.finding import Judged
from leanto.rules.matching import judge
from leanto.rules.pointless import still_asked
from leanto.scope.by_owner import marked_by_owner
from leanto.scope.edits import Edits, edited
from leanto.scope.item import Scope
from leanto.trade.tables import using
from leanto.trade.wiring.feed_need import FeedNeed


@dataclass(frozen=True, slots=True)
class Coverage:
    """How much of the walk was done at one station."""

    station: Station
    items: tuple[str, ...]
    """Item ids asked here, in order."""
    answered: int
    no_access: int
    open_items: tuple[str, ...]
    """Item ids without an answer."""


@dataclass(frozen=True, slots=True)
class NotReached:
    """Something that was not seen, and why."""

    place: str
    what: str
    why: str


@dataclass(frozen=True, slots=True)
class Assessment:
    """Everything that follows from one walk; front ends and reports only show it."""

    building: Building
    walk: Walk
    library: Library
    as_of: date
    surfaces: Mapping[str, Surface]
    stations: tuple[Station, ...]
    coverage: tuple[Coverage, ...]
    judged: Judged
    decision: Decision
    scope: Scope
    estimate: Estimate
    not_reached: tuple[NotReached, ...]
    reckonings: tuple[Reckoning, ...] = ()
    """The trade's computations over this walk."""
    feed_ways: tuple[FeedWay, ...] = ()
    """The ways of running the feed, side by side with their allowances; empty without a feed."""
    money: Money | None = None
    """Drawn where a report asks for it, see ``with_money``; None while walking."""


def assess(building: Building, walk: Walk, library: Library, as_of: date) -> Assessment:
    """Everything that follows from a walk by the rules, prices and shares of a library.

    ``as_of`` is the day of the walk: ages are counted up to it.
    """
    with using(library.tables):
        return _assessed(building, walk, library, as_of)


def _assessed(building: Building, walk: Walk, library: Library, as_of: date) -> Assessment:
    surfaces = surfaces_by_id(building)
    stations = stations_of(building)
    reckonings = reckon(building, surfaces, stations, walk, as_of)
    judged = judge(
        building, surfaces, stations, walk, library.checklist, library.rules, as_of, reckonings
    )
    findings, works, hidden = judged.grounds, library.works, library.hidden
    cautions = {caution.id: caution for caution in library.checklist.cautions}
    owned = marked_by_owner(walk.scope_edits, works, cautions)
    book = Book(works, library.prices, library.factors, hidden, surfaces, owned)
    decision = decide(building, surfaces, walk, findings, book, as_of)
    by_id = {station.id: station for station in stations}
    scope = edited(
        whole_scope(findings, decision, book),
        Edits(walk.scope_edits, walk.added_lines),
        works,
        surfaces,
        cautions,
    )
    estimate = estimate_scope(
        scope, library.prices, library.factors, hidden_risks(decision, book.shared)
    )
    asked = still_asked(occurring_at(building, library.checklist), walk)
    coverage = tuple(_coverage(station, asked[station.id], walk) for station in stations)
    return Assessment(
        building=building,
        walk=walk,
        library=library,
        as_of=as_of,
        surfaces=surfaces,
        stations=stations,
        coverage=coverage,
        reckonings=reckonings,
        feed_ways=_feed_ways(Basis.of(building, surfaces, by_id, walk, as_of), library),
        judged=judged,
        decision=decision,
        scope=scope,
        estimate=estimate,
        not_reached=_not_reached(coverage, walk, library.checklist),
    )


def _feed_ways(basis: Basis, library: Library) -> tuple[FeedWay, ...]:
    """The ways of running the feed with what each is likely to cost."""
    need = feed_need(basis)
    return () if need is None else _priced_ways(need, library)


@remembered(4)
def _priced_ways(need: FeedNeed, library: Library) -> tuple[FeedWay, ...]:
    if library.feed_materials is None:
        return ()
    prices = FeedPrices(library.feed_materials, library.works, library.prices, library.factors)
    return feed_ways(need, prices)


def with_money(assessment: Assessment, *, draws: int = DRAWS) -> Assessment:
    """The assessment with its money drawn, and its range the drawn one instead of the quick one.

    Takes about a second; an assessment that has its money already is returned as it is.
    """
    if assessment.money is not None:
        return assessment
    library, walk = assessment.library, assessment.walk
    book = Book(library.works, library.prices, library.factors, library.hidden, assessment.surfaces)
    cautions = {caution.id: caution for caution in library.checklist.cautions}
    edits = Edits(walk.scope_edits, walk.added_lines)
    plan = Plan(book, assessment.judged.grounds, assessment.decision, edits, cautions)
    basis = MoneyBasis(assessment.building, plan, assessment.estimate, assessment.as_of)
    drawn = money(basis, draws=draws)
    estimate = replace(assessment.estimate, range=drawn_range(assessment.estimate, drawn.total))
    return replace(assessment, estimate=estimate, money=drawn)


def course_chances(assessment: Assessment, *, draws: int = DRAWS) -> AllChances:
    """What both courses of every lined surface may cost; drawn now where the money was not."""
    if assessment.money is not None:
        return assessment.money.chances
    return chances_of(assessment.decision, shared_risk(assessment.library.factors), draws=draws)


def _coverage(station: Station, items: Iterable[Item], walk: Walk) -> Coverage:
    asked = tuple(item.id for item in items)
    given = {
        key.item: seen.condition
        for key, seen in walk.observations.items()
        if key.station == station.id and seen.condition is not None
    }
    return Coverage(
        station=station,
        items=asked,
        answered=sum(item in given for item in asked),
        no_access=sum(given.get(item) is Condition.NO_ACCESS for item in asked),
        open_items=tuple(item for item in asked if item not in given),
    )


def _not_reached(
    coverage: tuple[Coverage, ...], walk: Walk, checklist: Checklist
) -> tuple[NotReached, ...]:
    """Every *no access* with its reason, and every station with items left open."""
    prompts = {item.id: item.prompt for item in checklist.items()}
    blocked: dict[str, list[Observation]] = {}
    for seen in walk.observations.values():
        if seen.condition is Condition.NO_ACCESS:
            blocked.setdefault(seen.key.station, []).append(seen)
    reached = []
    for covered in coverage:
        for seen in sorted(blocked.get(covered.station.id, ()), key=lambda one: one.key):
            what = prompts.get(seen.key.item, seen.key.item)
            reached.append(NotReached(covered.station.name, what, seen.reason or "no reason given"))
        if covered.open_items and covered.answered == 0:
            reached.append(NotReached(covered.station.name, "Everything here", "not walked"))
        elif covered.open_items:
            left = "; ".join(prompts[item].rstrip("?.") for item in covered.open_items)
            reached.append(NotReached(covered.station.name, left, "not answered"))
    return tuple(reached)
