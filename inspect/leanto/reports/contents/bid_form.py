"""The bid form of one assessment: its scope, with unit prices and alternates from the decision."""

from __future__ import annotations

from collections.abc import Sequence
from datetime import date
from decimal import Decimal

from leanto.assessment import Assessment
from leanto.bids.form import bid_form, hidden_asks
from leanto.bids.model import Allowance, Alternate, BidForm
from leanto.decision.model import Course, SurfaceDecision
from leanto.decision.whole import other_course
from leanto.reports.contents.numbering import numbering
from leanto.scope.work import Trade, Work

_MOST_COURSES = 3


def form_of(
    assessment: Assessment,
    *,
    job_id: str,
    addendum: int = 0,
    made_on: date | None = None,
    allowances: tuple[Allowance, ...] = (),
    often_found: Sequence[str] = (),
    hours: Sequence[Trade] = (),
) -> BidForm:
    """The form that goes to every bidder; it holds no figure of ours but ``allowances``.

    ``often_found`` are ids of works, and ``hours`` trades, that unit prices are asked for besides.
    """
    return bid_form(
        assessment.scope,
        numbering(assessment).items,
        job_id=job_id,
        unit_prices=hidden_asks(asked_works(assessment, often_found), hours),
        alternates=course_alternates(assessment),
        allowances=allowances,
        addendum=addendum,
        made_on=made_on,
    )


def asked_works(assessment: Assessment, often_found: Sequence[str] = ()) -> tuple[Work, ...]:
    """The works whose unit prices are asked for: what may be found once something is open.

    Ids that the catalog does not have are left out.
    """
    works, hidden = assessment.library.works, assessment.library.hidden
    linings = {surface.lining for surface in assessment.surfaces.values() if surface.is_lined}
    patches = (one.patch for one in hidden.linings if one.lining in linings)
    ids = dict.fromkeys((hidden.repair_open, *patches, *often_found))
    return tuple(works[id_] for id_ in ids if id_ in works)


def course_alternates(assessment: Assessment) -> tuple[Alternate, ...]:
    """The other course of gut or keep where both come close, the closest first; at least one."""
    free = [one for one in assessment.decision.surfaces if not one.decisive]
    free.sort(key=lambda one: (_gap(one), one.surface_id))
    close = [one for one in free if one.is_close][:_MOST_COURSES] or free[:1]
    return tuple(_alternate(one) for one in close)


def _gap(one: SurfaceDecision) -> float:
    least = min(one.keep.expected, one.gut.expected)
    return abs(one.keep.expected - one.gut.expected) / least if least > 0 else 0.0


def _alternate(one: SurfaceDecision) -> Alternate:
    other = other_course(one.chosen)
    verb, stays = ("Strip", "keeping") if other is Course.GUT else ("Keep", "stripping")
    certain = {course: _certain(one, course) for course in Course}
    return Alternate(
        id=f"{other}@{one.surface_id}",
        title=f"{verb} the lining instead of {stays} it: {one.surface_name}",
        text=_parts(one, other),
        kind="add" if certain[other] >= certain[one.chosen] else "deduct",
    )


def _certain(one: SurfaceDecision, course: Course) -> Decimal:
    return sum((line.total.likely for line in one.cost_of(course).lines), Decimal(0))


def _parts(one: SurfaceDecision, course: Course) -> str:
    """What the course consists of, without a figure."""
    works = dict.fromkeys(line.item.work.title.lower() for line in one.cost_of(course).lines)
    told = ", ".join(works)
    return f"In place of the base bid's lines for this surface: {told}. Give the difference."
