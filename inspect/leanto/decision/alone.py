"""Both courses of one lined surface, answered as if it were the only one."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import dataclass

from leanto.building.model import Building
from leanto.building.relations import other_face
from leanto.building.surface import Surface
from leanto.building.zones import union_area_sqft
from leanto.checklist.condition import Condition
from leanto.decision.courses import Book, Case, gut_cost, keep_cost, needs_insulation
from leanto.decision.evidence import believed
from leanto.decision.model import Course, Reason, SurfaceDecision
from leanto.decision.unseen import Unseen
from leanto.decision.wiring import wants_wiring, wired_ft
from leanto.money import NOTHING, Spread
from leanto.record.walk import Walk
from leanto.rules.finding import CalledWork, Finding
from leanto.rules.model import OPEN_LINING
from leanto.scope.call import calls_of
from leanto.scope.quantity import widened_union

_LOOKED = (Condition.SOUND, Condition.WORN, Condition.FAILED)


@dataclass(frozen=True, slots=True)
class Grounds:
    """What the answers for all lined surfaces are taken from."""

    building: Building
    walk: Walk
    findings: tuple[Finding, ...]
    book: Book
    setup_share: float
    age_years: float
    heat: Mapping[str, Spread]


def alone(surface: Surface, grounds: Grounds) -> SurfaceDecision:
    """The costs, reasons and answer of one surface; its hole is valued with all of them."""
    book, findings, building = grounds.book, grounds.findings, grounds.building
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
    unknown = _unknown(surface, grounds.walk)
    thought = believed(
        surface,
        book.surfaces,
        findings,
        book.hidden,
        reached=not unknown,
        age_years=grounds.age_years,
        foundation=building.foundation,
    )
    extent, (bad, clean) = book.hidden.extent, thought.samples
    unseen = Unseen(thought.chance, extent.a + bad, extent.b + clean)
    wanted = surface.id in wants_wiring(findings, book.surfaces)
    case = Case(
        surface=surface,
        zones=zones,
        damaged_sqft=union_area_sqft(zones, surface),
        behind=tuple(call for call in calls_of(_once(opened)) if call.behind_lining),
        unseen=unseen,
        wiring_ft=wired_ft(surface, book.hidden) if wanted else 0.0,
        insulate=needs_insulation(surface, building.to_be_heated),
        setup_share=grounds.setup_share,
        heat_lost=grounds.heat.get(surface.id, NOTHING),
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
        unknown=unknown,
        hole=None,
        place=thought.place,
    )


def _unknown(surface: Surface, walk: Walk) -> str:
    """Why nothing is known of a surface: nobody was there, or nobody could see a thing."""
    given = {
        seen.condition
        for key, seen in walk.observations.items()
        if key.station == surface.id and seen.condition is not None
    }
    if given.intersection(_LOOKED):
        return ""
    return "not reached" if Condition.NO_ACCESS in given else "not walked"


def _once(opened: list[tuple[Finding, CalledWork]]) -> list[Finding]:
    """Each finding once, though several of its calls open the lining."""
    found = {(one.id, one.rule_id, one.observation): one for one, _ in opened}
    return list(found.values())


def _concerning(
    surface: Surface, surfaces: Mapping[str, Surface], findings: Iterable[Finding]
) -> tuple[Finding, ...]:
    """Findings on the surface, on its other face, or on the building as a whole."""
    other = other_face(surface, surfaces.values())
    places = {None, surface.id, other.id if other else surface.id}
    return tuple(finding for finding in findings if finding.surface_id in places)


def _reasons(findings: Iterable[Finding], course: str) -> tuple[Reason, ...]:
    """Each reason once, with the source of the first rule that gives it."""
    found: dict[str, Reason] = {}
    for finding in findings:
        if finding.decides is not None and finding.decides.course == course:
            reason = Reason(finding.decides.reason, finding.source, finding.rule_id)
            found.setdefault(reason.text, reason)
    return tuple(found.values())
