"""Budget, committed, paid and to go, and the keys that record a payment."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from decimal import Decimal
from functools import partial
from pathlib import Path
from typing import ClassVar

from textual import work
from textual.binding import Binding, BindingType
from textual.content import Content

from leanto.assessment import Assessment
from leanto.contract.spending import Spending, SpendingRow
from leanto.contract.typed import typed_usd
from leanto.errors import LeantoError
from leanto.job import Job
from leanto.money import format_usd
from leanto.reports.contents.costs import headline, sums
from leanto.reports.contents.words import date_in_words
from leanto.tui.origin import Origin
from leanto.tui.origin_of import of_item
from leanto.tui.pictures import first_folder
from leanto.tui.screens.ask_photo import AskPhoto
from leanto.tui.screens.ask_reason import AskReasonScreen
from leanto.tui.screens.details import Details, labeled, listed, said
from leanto.tui.screens.rows_screen import RowsScreen
from leanto.tui.shown import visible
from leanto.tui.widgets import costs_table as table

NONE_YET = "No bid was chosen yet. Esc goes back to the bids; g there chooses one."


class CostsScreen(RowsScreen):
    """Two views: line by line, and payment by payment."""

    BINDINGS: ClassVar[list[BindingType]] = [
        Binding("tab", "other_view", "Payments", id="costs.view", tooltip="Lines, or payments"),
        Binding("a", "pay", "Paid", id="costs.pay", tooltip="Record a payment on this line"),
        Binding("x", "strike", "Strike", id="costs.strike", tooltip="Take a payment out"),
        Binding("p", "write", "PDF", id="costs.write", tooltip="Write it as PDF, with receipts"),
        Binding("u", "turn('undo')", "Undo", id="costs.undo", tooltip="Take back the last entry"),
        Binding("r", "turn('redo')", "Redo", id="costs.redo", show=False, tooltip="Bring it back"),
    ]

    def __init__(self, job: Job) -> None:
        super().__init__(job)
        self.view: Spending | None = None
        self.shows_payments = False

    def answer_of(self, assessment: Assessment) -> str:
        self.view = self.job.contract.view() if self.job.walk.award else None
        return NONE_YET if self.view is None else headline(self.view)

    def fill(self, assessment: Assessment) -> None:
        if self.view is None:
            self.table.fill((), (), ("",))
        elif self.shows_payments:
            rows = table.paid_rows(tuple(self.job.walk.payments.values()))
            self.table.fill(table.PAID_COLUMNS, rows, table.PAID_SORTINGS)
        else:
            self.table.fill(table.LINE_COLUMNS, table.line_rows(self.view), table.LINE_SORTINGS)

    def preview_of(self, assessment: Assessment, key: str) -> Sequence[Content]:
        return self.details_of(assessment, key).lines()

    def details_of(self, assessment: Assessment, key: str) -> Details:
        view, award = self.view, self.job.walk.award
        kind, _, number = key.partition(" ")
        if view is None or award is None:
            return Details(NONE_YET, ())
        if kind == "paid":
            paid = self.job.walk.payments[int(number)]
            amount = format_usd(paid.usd, cents=True)
            parts = [labeled("Day", date_in_words(paid.paid_on)), labeled("Line", paid.line)]
            parts += [labeled("Note", paid.note)] if paid.note else []
            if paid.receipt:
                parts.append(labeled("Receipt", paid.receipt.original_name))
            return Details(f"Payment {number}: {amount}", tuple(parts))
        row = _row(view, number)
        if row is None:
            return Details("All lines", (listed("", [f"{a}: {b}" for a, b in sums(award, view)]),))
        return Details(f"{row.number}. {row.title}", tuple(self._about(row)))

    def origin_of(self, key: str) -> Callable[[], Origin | None] | None:
        award = self.job.walk.award
        kind, _, number = key.partition(" ")
        lines = {line.number: line for line in award.lines} if award else {}
        held = lines.get(number) if kind == "line" else None
        if held is None or held.kind not in ("line", "by owner"):
            return None
        return partial(of_item, self.job, held.id)

    def action_other_view(self) -> None:
        self.shows_payments = not self.shows_payments
        self.close_filter()
        self.reload()
        self.table.focus()

    @work(exclusive=True)
    async def action_pay(self) -> None:
        row = self._selected()
        if self.view is None or self.shows_payments or not self._may_write():
            self.refuse("Choose a line first; Tab shows the lines.")
            return
        number = row.number if row else "all"
        named = f"line {number}, {row.title}" if row else "the contract as a whole"
        amounts: list[Decimal] = []
        notes: list[str] = []
        for question, take in (
            (f"Paid on {named}: how much?", lambda text: amounts.append(typed_usd(text))),
            ("Note: to whom, for what, check number.", notes.append),
        ):
            if not await self.app.push_screen_wait(AskReasonScreen(question, take)):
                return
        picture = await self.app.push_screen_wait(
            AskPhoto("Picture of the receipt? Esc for none.", first_folder(Path.home()))
        )
        try:
            paid = self.job.contract.pay(
                number, amounts[-1], note=notes[-1], receipt=picture[0] if picture else None
            )
        except LeantoError as error:
            self.refuse(str(error))
            return
        amount = format_usd(paid.usd, cents=True)
        self.notify(visible(f"Payment {paid.number}: {amount} on {named}."), markup=False)
        self.reload()

    def action_strike(self) -> None:
        key = self.table.selected.key if self.table.selected else ""
        if not key.startswith("paid ") or not self._may_write():
            self.refuse("Tab shows the payments; choose one there.")
            return
        taken = self.job.contract.strike_payment(int(key.partition(" ")[2]))
        self.notify(f"Payment {taken.number} counts no more; u brings it back.", markup=False)
        self.reload()

    def action_write(self) -> None:
        written = self.job.contract.write()
        self.notify(visible(f"Wrote {written.path}, {written.pages} pages."), markup=False)

    def _about(self, row: SpendingRow) -> list[Content]:
        parts = [said(row.place)] if row.place else []
        if row.planned is not None:
            parts.append(labeled("Planned", format_usd(row.planned, cents=True)))
        parts.append(labeled("Committed", format_usd(row.committed, cents=True)))
        parts.append(labeled("Paid", format_usd(row.paid, cents=True)))
        parts.append(labeled("To go", format_usd(row.to_go, cents=True)))
        if row.said:
            parts.append(said(row.said))
        paid = [
            f"{format_usd(one.usd, cents=True)}, {date_in_words(one.paid_on)} {one.note}".strip()
            for one in self.job.walk.payments.values()
            if one.line == row.number
        ]
        return [*parts, listed("Payments", paid)] if paid else parts

    def _selected(self) -> SpendingRow | None:
        row = self.table.selected
        if row is None or self.view is None:
            return None
        return _row(self.view, row.key.partition(" ")[2])

    def _may_write(self) -> bool:
        if self.job.read_only:
            self.refuse(self.job.read_only_reason)
        return not self.job.read_only


def _row(view: Spending, number: str) -> SpendingRow | None:
    return next((one for one in view.rows if one.number == number), None)
