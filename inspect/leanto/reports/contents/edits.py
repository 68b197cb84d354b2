"""What the owner changed about the scope: added, struck, by owner, apart, other quantities."""

from __future__ import annotations

from leanto.assessment import Assessment
from leanto.quantities import format_quantity
from leanto.reports.blocks import Block, Bullets, Heading
from leanto.reports.contents.numbering import Numbering
from leanto.reports.contents.words import about, date_in_words
from leanto.scope.item import RepairItem, Struck


def edit_blocks(assessment: Assessment, numbers: Numbering) -> tuple[Block, ...]:
    """Every change with its figures; nothing when the owner changed nothing."""
    lines = (
        *(_by_owner(assessment, numbers)),
        *(_quantity(item, numbers) for item in _all(assessment) if item.computed_quantity),
        *(_added(item, numbers) for item in _all(assessment) if item.added_by_hand),
        *_alternates(assessment, numbers),
        *(_struck(one, assessment) for one in assessment.scope.struck),
        *assessment.scope.without_effect,
    )
    return (Heading(2, "Your own changes to the scope"), Bullets(lines)) if lines else ()


def _all(assessment: Assessment) -> tuple[RepairItem, ...]:
    return (*assessment.scope.items, *assessment.scope.alternates)


def _by_owner(assessment: Assessment, numbers: Numbering) -> tuple[str, ...]:
    return tuple(
        f"By owner, {_named(line.item, numbers)}: {about(line.total.likely)} for materials, "
        f"labor $0; saves about {about(line.saved.likely)} for about "
        f"{line.own_hours.likely:,.0f} hours of a tradesman."
        for line in assessment.estimate.lines
        if line.saved.high > 0
    )


def _alternates(assessment: Assessment, numbers: Numbering) -> tuple[str, ...]:
    return tuple(
        f"Alternate, priced apart and in no total, {_named(line.item, numbers)}: about "
        f"{about(line.total.likely)} to add."
        for line in assessment.estimate.alternates
    )


def _quantity(item: RepairItem, numbers: Numbering) -> str:
    ours, yours = (
        format_quantity(round(amount, 1), item.work.unit)
        for amount in (item.computed_quantity or 0.0, item.quantity)
    )
    reason = f": {item.quantity_reason}" if item.quantity_reason else ""
    return f"Quantity, {_named(item, numbers)}: {yours} by hand, {ours} by the walk{reason}."


def _added(item: RepairItem, numbers: Numbering) -> str:
    return f"Added by hand, {_named(item, numbers)}."


def _struck(one: Struck, assessment: Assessment) -> str:
    """With a warning where a danger called for it."""
    when = f" on {date_in_words(one.at.astimezone().date())}" if one.at else ""
    who = f" by {one.who}" if one.who else ""
    dangers = [
        finding
        for finding in assessment.judged.grounds
        if finding.danger and finding.id in one.item.findings
    ]
    warned = f" DANGER stays: {dangers[0].text}" if dangers else ""
    return f"Struck{who}{when}: {one.item.work.title}, {one.item.place}.{warned}"


def _named(item: RepairItem, numbers: Numbering) -> str:
    return f"line {numbers.items[item.id]}, {item.work.title}, {item.place}"
