"""The scope: repair items in order of work, their allowances, and the keys that change them."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from functools import partial
from typing import ClassVar

from textual.binding import Binding, BindingType
from textual.content import Content

from leanto.assessment import Assessment
from leanto.cost.estimate import CostLine
from leanto.errors import LeantoError
from leanto.job import Job
from leanto.quantities import format_quantity, shown
from leanto.record.entry import Body, NoteToBidders, ScopeAdded, ScopeMarked, ScopeQuantity
from leanto.record.entry import Mark as RecordedMark
from leanto.reports.contents.allowances import bought_in_words
from leanto.reports.contents.numbering import numbering
from leanto.reports.contents.words import capitalized, zone_in_words
from leanto.scope.item import RepairItem
from leanto.scope.mark import Mark
from leanto.tui.origin import Origin
from leanto.tui.origin_of import of_item
from leanto.tui.screens.adding import AddsLine
from leanto.tui.screens.ask_quantity import AskQuantity
from leanto.tui.screens.ask_reason import AskReasonScreen
from leanto.tui.screens.details import Details, amounts, labeled, listed, said, strong
from leanto.tui.screens.rows_screen import RowsScreen, in_one_line
from leanto.tui.shown import visible
from leanto.tui.typed_quantity import typed_quantity
from leanto.tui.widgets import scope_table as table

_DONE = {
    Mark.STRUCK: "Struck. It counts nowhere; x puts it back.",
    Mark.BY_OWNER: "By owner: only its materials count; o gives it to a contractor again.",
    Mark.ALTERNATE: "An alternate: priced apart, in no total; t puts it back.",
    Mark.PLAIN: "A plain line of the scope again.",
}


class ScopeScreen(RowsScreen):
    """Every change is an entry of the record, and goes into reports and bid forms."""

    BINDINGS: ClassVar[list[BindingType]] = [
        Binding("x", "mark('struck')", "Strike", id="scope.strike", tooltip="Strike it, or not"),
        Binding("o", "mark('by owner')", "Owner", id="scope.owner", tooltip="By owner, or not"),
        Binding(
            "t",
            "mark('alternate')",
            "Alternate",
            id="scope.alternate",
            tooltip="An alternate, priced apart, or not",
        ),
        Binding(
            "e",
            "quantity",
            "Quantity",
            id="scope.quantity",
            tooltip="Your own quantity; ours stays beside it",
        ),
        Binding("n", "note", "Note", id="scope.note", tooltip="Words to the bidders with it"),
        Binding("a", "add", "Add", id="scope.add", tooltip="Add a line by hand"),
        Binding("u", "turn('undo')", "Undo", id="scope.undo", tooltip="Take back the last entry"),
        Binding("r", "turn('redo')", "Redo", id="scope.redo", show=False, tooltip="Bring it back"),
    ]

    def __init__(self, job: Job) -> None:
        super().__init__(job)
        self._adding = AddsLine(self)

    def answer_of(self, assessment: Assessment) -> str:
        return table.answer(assessment)

    def fill(self, assessment: Assessment) -> None:
        self.table.fill(table.COLUMNS, table.rows(assessment), table.SORTINGS)

    def legend_of(self, assessment: Assessment) -> str:
        scope = assessment.scope
        struck = (one.item for one in scope.struck)
        return table.legend((*scope.items, *scope.alternates, *struck))

    def preview_of(self, assessment: Assessment, key: str) -> Sequence[Content]:
        item, line = _item(assessment, key), _line(assessment, key)
        lead = strong(_named(item))
        parts = [capitalized(item.work.trade), _bought(item)]
        parts.append(amounts(line.total) if line else "struck, counted nowhere")
        marks = (words for _, words in table.marks_of(item))
        changed = (*marks, *_own_quantity(item), *_own_note(item))
        return lead, said(" - ".join(parts)), said("; ".join(changed) or capitalized(item.reason))

    def details_of(self, assessment: Assessment, key: str) -> Details:
        item = _item(assessment, key)
        number = numbering(assessment).items.get(key)
        title = f"Struck: {_named(item)}" if number is None else f"{number}. {_named(item)}"
        return Details(title, tuple(_about(assessment, item, _line(assessment, key))))

    def origin_of(self, key: str) -> Callable[[], Origin | None] | None:
        return partial(of_item, self.job, key)

    def action_mark(self, mark: RecordedMark) -> None:
        """Mark the line, or take that mark back where the line has it."""
        item, at = self._selected(), self.table.cursor_row
        if item is None:
            return
        new: RecordedMark = "plain" if item.mark.value == mark else mark
        if self.record(ScopeMarked(item_id=item.id, mark=new)):
            self.table.stay(at)  # the line may stand elsewhere now; the next one is here
            self.notify(_DONE[Mark(new)], title=visible(_named(item)), markup=False)

    def action_quantity(self) -> None:
        item = self._selected()
        if item is None:
            return
        unit = item.work.unit
        computed = item.quantity if item.computed_quantity is None else item.computed_quantity
        ours = format_quantity(round(computed, 2), unit)
        question = (
            f"{_named(item)}: {ours} by the walk. "
            "Yours? Ours stays beside it; an empty quantity takes yours back."
        )

        def take(quantity: str, reason: str) -> None:
            own = typed_quantity(quantity, unit) if quantity else None
            self.job.record(
                ScopeQuantity(item_id=item.id, quantity=own, reason=reason if quantity else "")
            )

        before = "" if item.computed_quantity is None else f"{item.quantity:g}"
        self.app.push_screen(
            AskQuantity(question, "Your reason, for yourself", take, before), self.after
        )

    def action_note(self) -> None:
        item = self._selected()
        if item is None:
            return
        question = (
            f"{_named(item)}: what should bidders know? "
            "It is printed with the line; an empty one takes it back."
        )

        def take(text: str) -> None:
            self.job.record(NoteToBidders(item_id=item.id, text=text))

        self.app.push_screen(AskReasonScreen(question, take, item.note_to_bidders), self.after)

    def action_add(self) -> None:
        if self._may_change() and self.assessment is not None:
            self._adding.start(self.assessment)

    def add(self, line: ScopeAdded) -> None:
        """Record a line that was typed in. Raises LeantoError."""
        self.job.record(line)

    def record(self, body: Body) -> bool:
        """Keep one change and show it; False when it could not be kept, which is said."""
        try:
            self.job.record(body)
        except LeantoError as error:
            self.refuse(in_one_line(error))
            return False
        self.reload()
        return True

    def after(self, recorded: bool | None) -> None:
        """Show what a dialog has recorded."""
        if recorded:
            self.reload()

    def _selected(self) -> RepairItem | None:
        """The line under the cursor, when it may be changed."""
        row, assessment = self.table.selected, self.assessment
        if row is None or assessment is None or not self._may_change():
            return None
        return _item(assessment, row.key)

    def _may_change(self) -> bool:
        if self.job.read_only:
            self.refuse(self.job.read_only_reason)
        return not self.job.read_only


def _item(assessment: Assessment, key: str) -> RepairItem:
    item = assessment.scope.named(key)
    assert item is not None
    return item


def _line(assessment: Assessment, key: str) -> CostLine | None:
    """The allowance; None for a struck line."""
    lines = (*assessment.estimate.lines, *assessment.estimate.alternates)
    return next((line for line in lines if line.item.id == key), None)


def _named(item: RepairItem) -> str:
    return f"{item.work.title}, {item.place}"


def _bought(item: RepairItem) -> str:
    return bought_in_words(item).replace("\n", ", ")


def _own_quantity(item: RepairItem) -> tuple[str, ...]:
    """The owner's quantity with ours beside it and the reason; nothing where ours stands."""
    if item.computed_quantity is None:
        return ()
    own, ours = (
        format_quantity(round(amount, 2), item.work.unit)
        for amount in (item.quantity, item.computed_quantity)
    )
    return (f"{own} by hand, {ours} by the walk: {item.quantity_reason}",)


def _own_note(item: RepairItem) -> tuple[str, ...]:
    return (f"“{item.note_to_bidders}”",) if item.note_to_bidders else ()


def _about(assessment: Assessment, item: RepairItem, line: CostLine | None) -> list[Content]:
    """What is to be done, how much of it, and where each number comes from."""
    work = item.work
    licensed = " (licensed in most places; local rules govern)" if work.trade.is_licensed else ""
    parts = [said(work.description)]
    marks = ", ".join(words for _, words in table.marks_of(item))
    if marks:
        parts.append(labeled("Changed by you", marks))
    parts += [
        labeled("Trade", f"{work.trade}{licensed}; {work.phase}; UNIFORMAT II {work.element}"),
        labeled("Bought", _bought(item)),
        labeled("Quantity", "; ".join(_own_quantity(item)) or item.reason),
    ]
    parts += [labeled("Note to bidders", note) for note in _own_note(item)]
    surface = assessment.surfaces.get(item.surface_id or "")
    if surface and item.zones:
        parts.append(listed("Zones", (zone_in_words(zone, surface) for zone in item.zones)))
    if item.poor_access:
        parts.append(said("Done through an opened patch, so it takes more hours."))
    parts += _allowance(line) if line else [said("Struck: it counts nowhere. x puts it back.")]
    parts.append(_reasons(assessment, item))
    cautions = [c for c in assessment.library.checklist.cautions if c.id in work.caution]
    parts += [labeled(f"! Caution, {caution.title}", caution.text) for caution in cautions]
    return parts


def _allowance(line: CostLine) -> list[Content]:
    """The allowance, its parts, how it came about and the source of the price."""
    shares = (
        f"labor {amounts(line.labor)}",
        f"materials {amounts(line.materials)}",
        f"haul and dump {amounts(line.haul)}",
    )
    return [
        labeled("Allowance", amounts(line.total)),
        listed("Of that, with overhead and profit", shares),
        labeled("How", shown().words(line.explanation)),
        labeled("Price source", f"{line.price.source}, {line.price.dated}"),
    ]


def _reasons(assessment: Assessment, item: RepairItem) -> Content:
    """The findings that call for the item, each with the observation it was made from."""
    if not item.findings:
        by_hand = (
            "you, by hand" if item.added_by_hand else "the gut-or-keep choice for this surface"
        )
        return labeled("Called for by", by_hand)
    numbers = numbering(assessment).findings
    found = {finding.id: finding for finding in assessment.judged.findings}
    lines = []
    for finding in (found[id_] for id_ in item.findings if id_ in found):
        seen = assessment.walk.observations.get(finding.observation)
        entries = ", ".join(map(str, seen.entries)) if seen else ""
        basis = f"; record entries {entries}" if entries else ""
        lines.append(f"{numbers[finding.id]}. {finding.text} ({finding.station_name}{basis})")
    return listed("Called for by", lines)
