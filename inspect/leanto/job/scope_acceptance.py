"""What may be recorded about the scope: a change is held against the scope as it stands."""

from __future__ import annotations

from difflib import get_close_matches

from leanto.assessment import Assessment
from leanto.errors import LeantoError
from leanto.quantities import Unit
from leanto.record.entry import AboutItem, ScopeAdded, ScopeMarked, ScopeQuantity
from leanto.scope.by_owner import refusal_by_owner
from leanto.scope.work import Work


def check_scope_edit(body: AboutItem | ScopeAdded, assessment: Assessment) -> None:
    """Nothing for a change that the scope can follow; LeantoError otherwise."""
    if isinstance(body, ScopeAdded):
        _check_added(body, assessment)
        return
    item = assessment.scope.named(body.item_id)
    if item is None:
        everything = (*assessment.scope.items, *assessment.scope.alternates)
        raise _unknown("line", body.item_id, [one.id for one in everything])
    match body:
        case ScopeMarked(mark="by owner"):
            cautions = {one.id: one for one in assessment.library.checklist.cautions}
            if refusal := refusal_by_owner(item.work, cautions):
                raise LeantoError(refusal, "It stays with a firm, or strike the line.")
        case ScopeQuantity(quantity=quantity, reason=reason) if quantity is not None:
            _check_quantity(item.work, quantity)
            if not reason.strip():
                raise LeantoError(
                    "A quantity of your own needs a reason.", "Type it in a few words."
                )


def _check_added(body: ScopeAdded, assessment: Assessment) -> None:
    work = assessment.library.works.get(body.work)
    if work is None:
        raise _unknown("repair item", body.work, list(assessment.library.works))
    if body.surface_id is not None and body.surface_id not in assessment.surfaces:
        raise _unknown("surface", body.surface_id, list(assessment.surfaces))
    _check_quantity(work, body.quantity)


def _check_quantity(work: Work, quantity: float) -> None:
    if work.unit is Unit.EACH and not float(quantity).is_integer():
        raise LeantoError(f"{work.title} is counted in whole pieces, not {quantity:g}.")


def _unknown(noun: str, word: str, known: list[str]) -> LeantoError:
    near = get_close_matches(word, known, n=1)
    remedy = f'Did you mean "{near[0]}"?' if near else ""
    return LeantoError(f'There is no {noun} "{word}" in this job.', remedy)
