"""Gut or keep, for every lined surface and for all of them together."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import dataclass, replace
from datetime import date

from leanto.building.kinds import PlaceKind
from leanto.building.model import Building
from leanto.building.relations import other_face
from leanto.building.surface import Surface
from leanto.building.zones import union_area_sqft
from leanto.cost.risk import HiddenRisk, SharedRisk
from leanto.cost.simulation import HiddenDraw
from leanto.decision.combination import Choice, Shared, best_combination, combined_cost
from leanto.decision.courses import (
    Book,
    Case,
    gut_cost,
    keep_cost,
    needs_insulation,
    setup_call,
)
from leanto.decision.evidence import believed
from leanto.decision.heat import heat_losses
from leanto.decision.hidden import HiddenFile
from leanto.decision.hole import one_hole
from leanto.decision.model import Course, CourseCost, Decision, SurfaceDecision
from leanto.decision.unseen import Unseen
from leanto.money import NOTHING, Spread
from leanto.record.walk import Walk
from leanto.rules.finding import CalledWork, Finding
from leanto.rules.model import NEW_WIRING, OPEN_LINING
from leanto.scope.call import Call, calls_of
from leanto.scope.quantity import widened_union


def decide(
    building: Building,
    surfaces: Mapping[str, Surface],
    walk: Walk,
    findings: tuple[Finding, ...],
    book: Book,
    as_of: date,
) -> Decision:
    """Both courses of every lined surface with their costs, reasons and the chosen one."""
    lined = [surface for surface in surfaces.values() if surface.is_lined]
    walked = {key.station for key, seen in walk.observations.items() if seen.condition is not None}
    age_years = max(0, as_of.year - building.year_built)
    heat = heat_losses(building, surfaces, walk, as_of, book.hidden.heat)
    alone = [
        _alone(building, surface, findings, book, 1 / len(lined), walked, age_years, heat)
        for surface in lined
    ]
    answers = _together(alone, walk, book)
    decided = tuple(
        replace(one, computed=computed, chosen=chosen)
        for one, computed, chosen in zip(alone, answers.computed, answers.chosen, strict=True)
    )
    overruled = tuple(
        replace(one, overruled=walk.overrulings[one.surface_id].reason or "none given")
        if one.surface_id in walk.overrulings
        else one
        for one in decided
    )
    return Decision(
        surfaces=overruled,
        keep_all=answers.keep_all,
        gut_all=answers.gut_all,
        chosen=answers.chosen_usd,
        is_exact=answers.is_exact,
    )


@dataclass(frozen=True, slots=True)
class _Answers:
    computed: tuple[Course, ...]
    chosen: tuple[Course, ...]
    keep_all: float
    gut_all: float
    chosen_usd: float
    is_exact: bool


def _together(alone: list[SurfaceDecision], walk: Walk, book: Book) -> _Answers:
    """The best courses of all surfaces together, and those after the owner's overrulings."""
    if not alone:
        return _Answers((), (), 0.0, 0.0, 0.0, True)
    setup_usd = book.expected(
        book.lines((setup_call(book.surfaces[alone[0].surface_id], book.hidden),))
    )
    shared = Shared(
        setup_usd,
        {
            name: float(price.minimum_usd)
            for name, price in book.prices.items()
            if price.minimum_usd
        },
    )

    def choices(overruled: bool) -> list[Choice]:
        return [
            Choice(one.keep, one.gut, setup_usd / len(alone), _fixed(one, walk, overruled))
            for one in alone
        ]

    computed = best_combination(choices(overruled=False), shared)
    chosen = best_combination(choices(overruled=True), shared) if walk.overrulings else computed
    free = choices(overruled=False)
    keep_all, gut_all = (
        combined_cost(free, [course] * len(alone), shared) for course in (Course.KEEP, Course.GUT)
    )
    return _Answers(
        computed.courses,
        chosen.courses,
        keep_all,
        gut_all,
        chosen.expected_usd,
        computed.is_exact and chosen.is_exact,
    )


def _fixed(one: SurfaceDecision, walk: Walk, overruled: bool) -> Course | None:
    if overruled and one.surface_id in walk.overrulings:
        return Course(walk.overrulings[one.surface_id].course)
    return Course.GUT if one.decisive else None


def chosen_costs(decision: Decision) -> tuple[CourseCost, ...]:
    """The cost of the chosen course of every lined surface."""
    return tuple(one.chosen_cost for one in decision.surfaces)


def hidden_risks(decision: Decision, shared: SharedRisk) -> tuple[tuple[Spread, HiddenRisk], ...]:
    """What damage nobody has seen may still cost under the chosen courses, surface by surface."""
    return tuple(
        (
            one.chosen_cost.hidden,
            HiddenRisk(
                one.unseen.mean * _at_likely_wages(one.chosen_cost, shared),
                one.unseen.variance * _at_likely_wages(one.chosen_cost, shared) ** 2,
            ),
        )
        for one in decision.surfaces
    )


def hidden_draws(decision: Decision, shared: SharedRisk) -> tuple[HiddenDraw, ...]:
    """The same, to be drawn; none where nothing is left that could not be seen."""
    return tuple(
        hidden_draw(one, one.chosen, shared)
        for one in decision.surfaces
        if one.chosen_cost.all_bad_usd > 0
    )


def hidden_draw(one: SurfaceDecision, course: Course, shared: SharedRisk) -> HiddenDraw:
    """What one course of a surface may still bring up."""
    all_bad_usd = _at_likely_wages(one.cost_of(course), shared)
    return HiddenDraw(one.unseen.p, one.unseen.a, one.unseen.b, all_bad_usd, one.surface_id)


def _at_likely_wages(cost: CourseCost, shared: SharedRisk) -> float:
    """An expected cost holds the mean wage already; the wages are drawn on top of this one."""
    return cost.all_bad_usd / shared.wages.mean


def with_access(calls: Iterable[Call], decision: Decision) -> tuple[Call, ...]:
    """The calls with poor access where they lie behind a lining that is kept."""
    kept = {one.surface_id for one in decision.surfaces if one.chosen is Course.KEEP}
    return tuple(
        replace(call, poor_access=True) if call.behind_lining and call.surface_id in kept else call
        for call in calls
    )


def wiring_calls(
    findings: Iterable[Finding], surfaces: Mapping[str, Surface], hidden: HiddenFile
) -> tuple[Call, ...]:
    """New cable on the surfaces without a lining, where it is called for."""
    wanted = _wants_wiring(findings, surfaces)
    return tuple(
        Call(hidden.wire_open, surface.id, quantity=wired_ft(surface, hidden))
        for surface in surfaces.values()
        if surface.id in wanted and not surface.is_lined
    )


def wired_ft(surface: Surface, hidden: HiddenFile) -> float:
    return surface.net_area_sqft * hidden.wire_ft_per_sqft


def _alone(
    building: Building,
    surface: Surface,
    findings: tuple[Finding, ...],
    book: Book,
    setup_share: float,
    walked: set[str],
    age_years: float,
    heat: Mapping[str, Spread],
) -> SurfaceDecision:
    """Both courses of one surface, answered as if it were the only one."""
    opened = [
        (finding, called)
        for finding in findings
        if finding.surface_id == surface.id
        for called in finding.work
        if called.call.behind_lining or called.call.work == OPEN_LINING
    ]
    zones = widened_union(
        [(finding.zone, called.call.widen_ft) for finding, called in opened], surface
    )
    reached = surface.id in walked
    thought = believed(
        surface,
        book.surfaces,
        findings,
        book.hidden,
        reached=reached,
        age_years=age_years,
        foundation=building.foundation,
    )
    extent = book.hidden.extent
    unseen = Unseen(thought.chance, extent.a, extent.b)
    wanted = surface.id in _wants_wiring(findings, book.surfaces)
    case = Case(
        surface=surface,
        zones=zones,
        damaged_sqft=union_area_sqft(zones, surface),
        behind=tuple(call for call in calls_of(_once(opened)) if call.behind_lining),
        unseen=unseen,
        wiring_ft=wired_ft(surface, book.hidden) if wanted else 0.0,
        insulate=needs_insulation(surface, building.to_be_heated),
        setup_share=setup_share,
        heat_lost=heat.get(surface.id, NOTHING),
    )
    keep, gut = keep_cost(case, book), gut_cost(case, book)
    here = _concerning(surface, book.surfaces, findings)
    decisive = _reasons(here, "gut")
    answer = Course.GUT if decisive or gut.expected < keep.expected else Course.KEEP
    return SurfaceDecision(
        surface_id=surface.id,
        surface_name=surface.name,
        area_sqft=surface.net_area_sqft,
        damaged_sqft=case.damaged_sqft,
        prior=thought.prior,
        evidence=thought.evidence,
        unseen=unseen,
        keep=keep,
        gut=gut,
        decisive=decisive,
        test_first=_reasons(here, "test first"),
        alone=answer,
        computed=answer,
        chosen=answer,
        overruled="",
        unknown="" if reached else "not walked",
        hole=None if decisive else one_hole(surface, unseen, thought.place, keep, gut, book),
    )


def _once(opened: list[tuple[Finding, CalledWork]]) -> list[Finding]:
    """Each finding once, though several of its calls open the lining."""
    found = {(one.id, one.rule_id, one.observation): one for one, _ in opened}
    return list(found.values())


def _wants_wiring(findings: Iterable[Finding], surfaces: Mapping[str, Surface]) -> frozenset[str]:
    """Ids of the surfaces whose cable is to be renewed: walls inside and ceilings."""
    carry = {
        surface.id
        for surface in surfaces.values()
        if surface.kind in (PlaceKind.WALL_INSIDE, PlaceKind.CEILING)
    }
    wanted: set[str] = set()
    for finding in findings:
        if any(called.call.work == NEW_WIRING for called in finding.work):
            wanted |= carry if finding.surface_id is None else {finding.surface_id} & carry
    return frozenset(wanted)


def _concerning(
    surface: Surface, surfaces: Mapping[str, Surface], findings: Iterable[Finding]
) -> tuple[Finding, ...]:
    """Findings on the surface, on its other face, or on the building as a whole."""
    other = other_face(surface, surfaces.values())
    places = {None, surface.id, other.id if other else surface.id}
    return tuple(finding for finding in findings if finding.surface_id in places)


def _reasons(findings: Iterable[Finding], course: str) -> tuple[str, ...]:
    return tuple(
        dict.fromkeys(
            finding.decides.reason
            for finding in findings
            if finding.decides is not None and finding.decides.course == course
        )
    )
