"""Gut or keep, for every lined surface and for all of them together."""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass, replace
from datetime import date

from leanto.building.model import Building
from leanto.building.surface import Surface
from leanto.cost.risk import HiddenRisk, SharedRisk
from leanto.cost.simulation import HiddenDraw
from leanto.decision.alone import Grounds, alone
from leanto.decision.combination import Choice, Shared, best_combination, combined_cost
from leanto.decision.courses import Book, setup_call
from leanto.decision.heat import heat_losses
from leanto.decision.hole import one_hole
from leanto.decision.model import Course, CourseCost, Decision, SurfaceDecision
from leanto.money import Spread
from leanto.record.walk import Walk
from leanto.rules.finding import Finding
from leanto.scope.call import Call


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
    grounds = Grounds(
        building=building,
        walk=walk,
        findings=findings,
        book=book,
        setup_share=1 / max(1, len(lined)),
        age_years=max(0, as_of.year - building.year_built),
        heat=heat_losses(building, surfaces, walk, as_of, book.hidden.heat),
    )
    single = [alone(surface, grounds) for surface in lined]
    answers = _together(single, walk, book)
    return Decision(
        surfaces=tuple(
            replace(
                one,
                computed=computed,
                chosen=chosen,
                hole=one_hole(one, gap, book),
                overruled=_overruling(one, walk),
            )
            for one, computed, chosen, gap in zip(
                single, answers.computed, answers.chosen, answers.gaps, strict=True
            )
        ),
        keep_all=answers.keep_all,
        gut_all=answers.gut_all,
        chosen=answers.chosen_usd,
        is_exact=answers.is_exact,
    )


def _overruling(one: SurfaceDecision, walk: Walk) -> str:
    """The owner's reason; empty where the owner left the answer as it is."""
    if one.surface_id not in walk.overrulings:
        return ""
    return walk.overrulings[one.surface_id].reason or "none given"


@dataclass(frozen=True, slots=True)
class _Answers:
    computed: tuple[Course, ...]
    chosen: tuple[Course, ...]
    gaps: tuple[float, ...]
    """What gutting each surface costs more than keeping it, all others as chosen."""
    keep_all: float
    gut_all: float
    chosen_usd: float
    is_exact: bool


def _together(single: list[SurfaceDecision], walk: Walk, book: Book) -> _Answers:
    """The best courses of all surfaces together, and those after the owner's overrulings."""
    if not single:
        return _Answers((), (), (), 0.0, 0.0, 0.0, True)
    setup_usd = book.expected(
        book.lines((setup_call(book.surfaces[single[0].surface_id], book.hidden),))
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
            Choice(one.keep, one.gut, setup_usd / len(single), _fixed(one, walk, overruled))
            for one in single
        ]

    computed = best_combination(choices(overruled=False), shared)
    chosen = best_combination(choices(overruled=True), shared) if walk.overrulings else computed
    free = choices(overruled=False)
    keep_all, gut_all = (
        combined_cost(free, [course] * len(single), shared) for course in (Course.KEEP, Course.GUT)
    )
    return _Answers(
        computed.courses,
        chosen.courses,
        tuple(_gap(free, chosen.courses, index, shared) for index in range(len(single))),
        keep_all,
        gut_all,
        chosen.expected_usd,
        computed.is_exact and chosen.is_exact,
    )


def _gap(
    choices: Sequence[Choice], courses: tuple[Course, ...], index: int, shared: Shared
) -> float:
    gut, keep = (
        combined_cost(choices, (*courses[:index], course, *courses[index + 1 :]), shared)
        for course in (Course.GUT, Course.KEEP)
    )
    return gut - keep


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
