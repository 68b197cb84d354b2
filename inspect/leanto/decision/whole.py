"""The whole scope under the chosen courses: repairs, wiring, and what each course adds."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import replace

from leanto.decision.courses import Book
from leanto.decision.decide import chosen_costs, with_access
from leanto.decision.model import Course, Decision
from leanto.decision.wiring import wiring_calls
from leanto.rules.finding import Finding
from leanto.scope.build import build_scope
from leanto.scope.call import calls_of
from leanto.scope.item import Scope


def whole_scope(findings: Iterable[Finding], decision: Decision, book: Book) -> Scope:
    """Every repair item that the findings and the chosen courses call for, merged."""
    findings = tuple(findings)
    calls = [
        *with_access(calls_of(findings), decision),
        *wiring_calls(findings, book.surfaces, book.hidden),
        *(call for course in chosen_costs(decision) for call in course.calls),
    ]
    return build_scope(calls, book.surfaces, book.works)


def turned(decision: Decision, surface_id: str) -> Decision:
    """The decision with the other course chosen for one surface; its sums are left as they were."""
    return replace(
        decision,
        surfaces=tuple(
            replace(one, chosen=other_course(one.chosen)) if one.surface_id == surface_id else one
            for one in decision.surfaces
        ),
    )


def other_course(course: Course) -> Course:
    return Course.KEEP if course is Course.GUT else Course.GUT
