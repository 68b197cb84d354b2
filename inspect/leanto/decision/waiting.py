"""What may wait, when to look at it again, and what waiting risks.

May wait: work whose every finding says *with the work* or *keep watching*, and the paint and
finish of a course. Never: a danger or anything to act on now; what protects; set-up; the work of
licensed trades and work near wiring, which is done as one piece.

Work that one finding calls for, or that one trade does on one surface, waits together: a roof is
not stripped without a new one.
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass
from datetime import date, timedelta
from typing import Final

from leanto.rules.finding import Finding
from leanto.rules.model import Urgency
from leanto.scope.item import RepairItem
from leanto.scope.mark import Mark
from leanto.scope.work import Phase
from leanto.source import COMMON_PRACTICE, Source

MAY_WAIT: Final = (Urgency.WITH_THE_WORK, Urgency.KEEP_WATCHING)
_HALF_YEAR, _YEAR = timedelta(days=182), timedelta(days=365)
GROWTH_SOURCE: Final[Source] = COMMON_PRACTICE


@dataclass(frozen=True, slots=True)
class Risk:
    """What a year of waiting is expected to add to such work, and why."""

    growth: float
    """Share of its cost; a planning figure."""
    text: str


RISKS: Final[Mapping[Phase, Risk]] = {
    Phase.PROTECT: Risk(0.5, "What it guards against goes on."),
    Phase.TREAT: Risk(0.3, "What eats or rots the wood goes on."),
    Phase.STRIP: Risk(0.15, "What it would show stays hidden."),
    Phase.STRUCTURE: Risk(0.2, "Movement goes on and reaches other parts."),
    Phase.WEATHER_SHELL: Risk(0.25, "Water may get in, and what it wets must be repaired too."),
    Phase.ROUGH_IN: Risk(0.35, "Walls closed before it is done must be opened again."),
    Phase.CLOSE_IN: Risk(0.1, "Rooms stay cold and dusty; the trade comes twice."),
    Phase.FINISH: Risk(0.05, "Bare surfaces get dirty; the trade comes twice."),
}


@dataclass(frozen=True, slots=True)
class Waiting:
    """Repair items that wait together."""

    items: tuple[RepairItem, ...]
    look_again: date
    watch: str
    """What to look at meanwhile; empty when no finding says."""
    risk: Risk
    """The largest of its items' risks."""


def may_wait(
    items: Sequence[RepairItem], findings: Iterable[Finding], as_of: date
) -> tuple[Waiting, ...]:
    """The groups of items that may wait, in the order of the items.

    Several findings may carry one id: those that are told together.
    """
    by_id: dict[str, list[Finding]] = {}
    for finding in findings:
        by_id.setdefault(finding.id, []).append(finding)
    groups: list[list[RepairItem]] = []
    for item in items:
        if not _is_patient(item, _of(item, by_id)):
            continue
        joined = [group for group in groups if any(_belong(item, one) for one in group)]
        merged = [one for group in joined for one in group] + [item]
        groups = [group for group in groups if group not in joined] + [merged]
    order = {item.id: index for index, item in enumerate(items)}
    for group in groups:
        group.sort(key=lambda item: order[item.id])
    groups.sort(key=lambda group: order[group[0].id])
    return tuple(_waiting(group, by_id, as_of) for group in groups)


def _of(item: RepairItem, by_id: Mapping[str, list[Finding]]) -> list[Finding]:
    return [finding for id_ in item.findings for finding in by_id.get(id_, ())]


def _is_patient(item: RepairItem, called: Sequence[Finding]) -> bool:
    work = item.work
    set_up = work.once and work.scope == "building"
    if work.phase is Phase.PROTECT or set_up or work.trade.is_licensed:
        return False
    if "wiring" in work.caution or item.added_by_hand or item.mark is Mark.BY_OWNER:
        return False
    if not item.findings:
        return work.phase is Phase.FINISH
    return all(one.urgency in MAY_WAIT and not one.danger for one in called)


def _belong(one: RepairItem, other: RepairItem) -> bool:
    same_finding = not set(one.findings).isdisjoint(other.findings)
    same_place = one.surface_id is not None and one.surface_id == other.surface_id
    return same_finding or (same_place and one.work.trade is other.work.trade)


def _waiting(group: list[RepairItem], by_id: Mapping[str, list[Finding]], as_of: date) -> Waiting:
    called = [finding for item in group for finding in _of(item, by_id)]
    watches = dict.fromkeys(finding.watch for finding in called if finding.watch)
    only_watched = all(one.urgency is Urgency.KEEP_WATCHING for one in called)
    return Waiting(
        items=tuple(group),
        look_again=as_of + (_YEAR if only_watched else _HALF_YEAR),
        watch=" ".join(watches),
        risk=max((RISKS[item.work.phase] for item in group), key=lambda risk: risk.growth),
    )
