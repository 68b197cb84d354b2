"""The hidden work to be expected under the chosen courses, in quantities that bidders price."""

from __future__ import annotations

from decimal import Decimal

from leanto.assessment import Assessment
from leanto.bids.hidden_work import HiddenWork
from leanto.decision.courses import Book
from leanto.decision.model import Course
from leanto.money import Spread, exact
from leanto.scope.call import Call


def expected_hidden_work(assessment: Assessment) -> tuple[HiddenWork, ...]:
    """Square feet of repair behind linings, and of patching where the lining is kept.

    The expected share of what nobody can see, over all lined surfaces: chance times extent. Our
    own figure is for one unit, without the premium of a change order: a unit price on the form is
    agreed beforehand.
    """
    library = assessment.library
    book = Book(library.works, library.prices, library.factors, library.hidden, assessment.surfaces)
    quantities: dict[str, Decimal] = {}
    costs: dict[str, Spread] = {}
    for one in assessment.decision.surfaces:
        unseen_sqft = max(0.0, one.area_sqft - one.damaged_sqft) * one.unseen.mean
        if unseen_sqft <= 0:
            continue
        keeps = one.chosen is Course.KEEP
        calls = [
            Call(
                library.hidden.repair_open,
                one.surface_id,
                quantity=unseen_sqft,
                poor_access=keeps,
            )
        ]
        if keeps:
            patch = book.lining(assessment.surfaces[one.surface_id]).patch
            calls.append(Call(patch, one.surface_id, quantity=unseen_sqft))
        for line in book.lines(calls):
            id_ = line.item.work.id
            quantities[id_] = quantities.get(id_, Decimal(0)) + exact(line.item.quantity)
            costs[id_] = costs.get(id_, Spread.zero()) + line.total
    return tuple(
        HiddenWork(
            ask_id=id_,
            title=library.works[id_].title,
            unit=library.works[id_].unit.label,
            quantity=round(float(quantity), 1),
            ours=costs[id_].scaled(1 / quantity),
        )
        for id_, quantity in quantities.items()
        if round(float(quantity), 1) > 0
    )
