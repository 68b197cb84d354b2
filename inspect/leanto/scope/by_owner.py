"""Whether an owner may do a repair item alone. Local rules govern; this only says when not to."""

from __future__ import annotations

from collections.abc import Mapping

from leanto.checklist.model import Caution
from leanto.record.scope_edit import ScopeEdit
from leanto.scope.mark import Mark
from leanto.scope.work import Phase, Work


def refusal_by_owner(work: Work, cautions: Mapping[str, Caution]) -> str:
    """Why an owner may not do the work alone, in one sentence; empty when nothing stands against.

    Never the work of a licensed trade, and never work with a caution that names who must act.
    """
    if work.trade.is_licensed:
        return f"{work.title} is work for a licensed {work.trade}."
    for caution_id in work.caution:
        caution = cautions.get(caution_id)
        if caution is not None and caution.who:
            return f"{work.title} can hurt: {caution.title.lower()}. Who must act: {caution.who}."
    return ""


def marked_by_owner(
    edits: Mapping[str, ScopeEdit], works: Mapping[str, Work], cautions: Mapping[str, Caution]
) -> frozenset[str]:
    """Ids of the lines that the owner means to do and may do, whether or not they are there now."""
    found = set()
    for item_id, edit in edits.items():
        work = works.get(item_id.partition("@")[0])
        if edit.mark == Mark.BY_OWNER and work and not refusal_by_owner(work, cautions):
            found.add(item_id)
    return frozenset(found)


def is_offered_to_owner(work: Work, cautions: Mapping[str, Caution]) -> bool:
    """True for work that is proposed to an owner: no refusal, no ladder, no set-up.

    More may be marked by hand: an owner who is used to ladders knows that better.
    """
    return (
        not refusal_by_owner(work, cautions)
        and "ladder" not in work.caution
        and not (work.once and work.scope == "building")
        and work.phase is not Phase.PROTECT
    )
