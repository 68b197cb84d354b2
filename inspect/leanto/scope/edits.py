"""The owner's changes laid over the scope that followed from the walk."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import dataclass, replace

from leanto.building.surface import Surface
from leanto.checklist.model import Caution
from leanto.record.scope_edit import AddedLine, ScopeEdit
from leanto.scope.build import in_order_of_work
from leanto.scope.by_owner import refusal_by_owner
from leanto.scope.item import RepairItem, Scope, Struck
from leanto.scope.mark import Mark
from leanto.scope.purchases import apart, together
from leanto.scope.quantity import bought
from leanto.scope.work import Work


@dataclass(frozen=True, slots=True)
class Edits:
    """Everything that the owner changed about the scope."""

    edits: Mapping[str, ScopeEdit]
    """By the id of the repair item."""
    added: tuple[AddedLine, ...] = ()


def edited(
    scope: Scope,
    changes: Edits,
    works: Mapping[str, Work],
    surfaces: Mapping[str, Surface],
    cautions: Mapping[str, Caution],
) -> Scope:
    """The scope with added lines, own quantities, notes and marks.

    Struck lines and alternates leave ``items``. What cannot be followed is left out and said in
    ``without_effect``: the record keeps it, and it counts again when the scope holds it.
    """
    lines, notices = _added_lines(changes.added, works, surfaces)
    kept: list[RepairItem] = []
    alternates: list[RepairItem] = []
    struck: list[Struck] = []
    for item in (*scope.items, *lines):
        edit = changes.edits.get(item.id)
        if edit is None:
            kept.append(item)
            continue
        changed = _changed(item, edit)
        mark = Mark(edit.mark)
        if mark is Mark.BY_OWNER and (refusal := refusal_by_owner(item.work, cautions)):
            notices.append(f"{item.id}: not by the owner. {refusal}")
            mark = Mark.PLAIN
        changed = replace(changed, mark=mark)
        match mark:
            case Mark.STRUCK:
                struck.append(Struck(changed, edit.who, edit.at))
            case Mark.ALTERNATE:
                alternates.append(changed)
            case _:
                kept.append(changed)
    there = {item.id for item in (*scope.items, *lines)}
    notices += [
        f"{item_id}: this line is not in the scope now; your change to it waits."
        for item_id in changes.edits
        if item_id not in there
    ]
    return Scope(
        items=in_order_of_work(together(kept)),
        alternates=in_order_of_work(map(apart, alternates)),
        struck=tuple(struck),
        without_effect=tuple(notices),
    )


def _changed(item: RepairItem, edit: ScopeEdit) -> RepairItem:
    """The item with the owner's quantity and note."""
    note = edit.note or item.note_to_bidders
    if edit.quantity is None:
        return replace(item, note_to_bidders=note)
    amount, purchases = bought(item.work, edit.quantity)
    return replace(
        item,
        quantity=edit.quantity,
        bought=amount,
        purchases=purchases,
        computed_quantity=item.quantity,
        quantity_reason=edit.reason,
        reason="set by hand",
        note_to_bidders=note,
    )


def _added_lines(
    added: Iterable[AddedLine], works: Mapping[str, Work], surfaces: Mapping[str, Surface]
) -> tuple[list[RepairItem], list[str]]:
    lines, notices = [], []
    for line in added:
        work = works.get(line.work)
        if work is None:
            notices.append(f"{line.id}: there is no repair item {line.work} now; left out.")
        elif line.surface_id is not None and line.surface_id not in surfaces:
            notices.append(f"{line.id}: this place is no longer part of the building; left out.")
        else:
            lines.append(_line(line, work, surfaces.get(line.surface_id or "")))
    return lines, notices


def _line(line: AddedLine, work: Work, surface: Surface | None) -> RepairItem:
    amount, purchases = bought(work, line.quantity)
    return RepairItem(
        id=line.id,
        work=work,
        place=line.place or (surface.name if surface else "Whole building"),
        surface_id=line.surface_id,
        quantity=line.quantity,
        bought=amount,
        purchases=purchases,
        zones=(),
        findings=(),
        reason="added by hand",
        note_to_bidders=line.note,
        added_by_hand=True,
    )
