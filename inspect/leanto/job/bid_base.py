"""What the bids of a job are compared on: the form that counts, and our own figures beside it."""

from __future__ import annotations

from dataclasses import asdict

from pydantic import TypeAdapter

from leanto.assessment import Assessment
from leanto.bids.in_feet import form_in_feet
from leanto.bids.levelled import Base
from leanto.bids.model import BidForm
from leanto.decision.model import SurfaceDecision
from leanto.decision.whole import other_course
from leanto.job.hidden_work import expected_hidden_work
from leanto.money import Spread, exact
from leanto.record.bid_entry import SentForm
from leanto.record.walk import Walk

_FORM = TypeAdapter(BidForm)


def sent_form(form: BidForm) -> SentForm:
    """The form as it is recorded."""
    return SentForm.model_validate(asdict(form))


def form_sent(sent: SentForm) -> BidForm:
    """The form as it was recorded."""
    return _FORM.validate_python(sent.model_dump())


def bid_base(assessment: Assessment, walk: Walk, form: BidForm) -> Base:
    """The base for ``form``, with our allowances, phases and the hidden work to be expected."""
    estimate = assessment.estimate
    priced = (*estimate.lines, *estimate.alternates)
    items = (*assessment.scope.items, *assessment.scope.alternates)
    asked = {ask.id for ask in form.unit_prices}
    earlier = (form_in_feet(form_sent(sent)) for sent in walk.forms_sent)
    budget = assessment.building.budget_usd
    return Base(
        form=form,
        ours={line.item.id: line.total for line in priced}
        | {
            f"{other_course(one.chosen)}@{one.surface_id}": _difference(one)
            for one in assessment.decision.surfaces
        },
        phases={item.id: item.work.phase for item in items},
        hidden=tuple(work for work in expected_hidden_work(assessment) if work.ask_id in asked),
        earlier={one.form_id: one for one in earlier if one.form_id != form.form_id},
        funds=None if budget is None else exact(budget),
    )


def _difference(one: SurfaceDecision) -> Spread:
    """Between both courses of a surface, for what is certain of them; never below zero."""
    mine, others = (
        Spread.total(line.total for line in one.cost_of(course).lines)
        for course in (one.chosen, other_course(one.chosen))
    )
    low, likely, high = (
        abs(a - b)
        for a, b in (
            (mine.low, others.low),
            (mine.likely, others.likely),
            (mine.high, others.high),
        )
    )
    return Spread(min(low, likely, high), likely, max(low, likely, high))
