"""Gut or keep, for every lined surface."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import replace

from leanto.building.kinds import PlaceKind
from leanto.building.model import Building
from leanto.building.relations import other_face
from leanto.building.surface import Surface
from leanto.building.zones import union_area_sqft
from leanto.cost.price import Factors, Price
from leanto.decision.courses import (
    Book,
    Case,
    break_even_share,
    gut_cost,
    keep_cost,
    needs_insulation,
)
from leanto.decision.evidence import combined_share, evidence_for
from leanto.decision.hidden import HiddenFile
from leanto.decision.model import Course, CourseCost, Decision, Evidence, SurfaceDecision
from leanto.record.walk import Walk
from leanto.rules.finding import CalledWork, Finding
from leanto.rules.model import NEW_WIRING, OPEN_LINING
from leanto.scope.call import Call, calls_of
from leanto.scope.quantity import widened_union
from leanto.scope.work import Work


def decide(
    building: Building,
    surfaces: Mapping[str, Surface],
    walk: Walk,
    findings: tuple[Finding, ...],
    works: Mapping[str, Work],
    prices: Mapping[str, Price],
    factors: Factors,
    hidden: HiddenFile,
) -> Decision:
    """Both courses of every lined surface with their costs, reasons and the chosen one."""
    book = Book(works, prices, factors, hidden, surfaces)
    lined = [surface for surface in surfaces.values() if surface.is_lined]
    walked = {key.station for key, seen in walk.observations.items() if seen.condition is not None}
    decided = []
    for surface in lined:
        case, evidence = _case(building, surface, findings, book, len(lined), walked)
        keep, gut = keep_cost(case, book), gut_cost(case, book)
        here = _concerning(surface, surfaces, findings)
        decisive = _reasons(here, "gut")
        computed = Course.GUT if decisive or gut.expected < keep.expected else Course.KEEP
        overruling = walk.overrulings.get(surface.id)
        decided.append(
            SurfaceDecision(
                surface_id=surface.id,
                surface_name=surface.name,
                area_sqft=surface.net_area_sqft,
                damaged_sqft=case.damaged_sqft,
                hidden_share=case.share,
                evidence=evidence,
                keep=keep,
                gut=gut,
                break_even_share=break_even_share(case, book, keep, gut),
                decisive=decisive,
                test_first=_reasons(here, "test first"),
                computed=computed,
                chosen=Course(overruling.course) if overruling else computed,
                overruled=overruling.reason if overruling else "",
                unknown="" if surface.id in walked else "not walked",
            )
        )
    return Decision(
        surfaces=tuple(decided),
        keep_all=sum(one.keep.expected for one in decided),
        gut_all=sum(one.gut.expected for one in decided),
        chosen=sum(one.chosen_cost.expected for one in decided),
    )


def chosen_costs(decision: Decision) -> tuple[CourseCost, ...]:
    """The cost of the chosen course of every lined surface."""
    return tuple(one.chosen_cost for one in decision.surfaces)


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


def _case(
    building: Building,
    surface: Surface,
    findings: tuple[Finding, ...],
    book: Book,
    lined_count: int,
    walked: set[str],
) -> tuple[Case, tuple[Evidence, ...]]:
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
    behind = tuple(call for call in calls_of(f for f, _ in _once(opened)) if call.behind_lining)
    evidence = evidence_for(surface, book.surfaces, findings, book.hidden, surface.id in walked)
    wanted = surface.id in _wants_wiring(findings, book.surfaces)
    case = Case(
        surface=surface,
        zones=zones,
        damaged_sqft=union_area_sqft(zones, surface),
        behind=behind,
        share=combined_share(evidence),
        wiring_ft=wired_ft(surface, book.hidden) if wanted else 0.0,
        insulate=needs_insulation(surface, building.to_be_heated),
        setup_share=1 / lined_count,
    )
    return case, evidence


def _once(opened: list[tuple[Finding, CalledWork]]) -> list[tuple[Finding, CalledWork]]:
    """Each finding once, though several of its calls open the lining."""
    return list({finding.id: (finding, called) for finding, called in opened}.values())


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
