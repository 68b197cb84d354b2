"""The bids side by side, what each says, and the keys that take bids and answers in."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from functools import partial
from pathlib import Path
from typing import ClassVar

from textual.binding import Binding, BindingType
from textual.content import Content

from leanto.assessment import Assessment
from leanto.bids.levelled import Levelled, LevelLine
from leanto.bids.model import Unread
from leanto.errors import LeantoError
from leanto.job import Job
from leanto.money import format_usd
from leanto.tui.origin import Origin
from leanto.tui.origin_of import of_item
from leanto.tui.screens.ask_choice import AskChoice
from leanto.tui.screens.ask_reason import AskReasonScreen
from leanto.tui.screens.details import Details, amounts, labeled, listed, said
from leanto.tui.screens.rows_screen import RowsScreen
from leanto.tui.screens.working import Progress, Working
from leanto.tui.shown import visible
from leanto.tui.widgets import bids_table as table

NONE_YET = "No bid has come back yet. a adds one: a filled PDF form, an XLSX or a CSV file."


class BidsScreen(RowsScreen):
    """Two views: line by line, and what each bid says."""

    BINDINGS: ClassVar[list[BindingType]] = [
        Binding("tab", "other_view", "Words", id="bids.view", tooltip="Lines, or what to ask"),
        Binding("a", "add", "Add", id="bids.add", tooltip="Read a returned form"),
        Binding(
            "m",
            "answer",
            "Means",
            id="bids.answer",
            tooltip="Say what a field means that could not be read",
        ),
        Binding("p", "write", "Files", id="bids.write", tooltip="Write the table: PDF and XLSX"),
        Binding("g", "choose", "Choose", id="bids.choose", tooltip="Choose one of the bids"),
        Binding("c", "costs", "Costs", id="bids.costs", tooltip="Committed, paid, to go"),
        Binding("o", "opening", "Open up", id="bids.opening", tooltip="What opened walls show"),
        Binding("u", "turn('undo')", "Undo", id="bids.undo", show=False, tooltip="Take it back"),
        Binding("r", "turn('redo')", "Redo", id="bids.redo", show=False, tooltip="Bring it back"),
    ]

    def __init__(self, job: Job) -> None:
        super().__init__(job)
        self.made: Levelled | None = None
        self.shows_words = False

    def answer_of(self, assessment: Assessment) -> str:
        self.made = self.job.bids.table() if self.job.walk.bids else None
        if self.made is None:
            return NONE_YET
        totals = "; ".join(f"{x.bid.bidder} {format_usd(x.base)}" for x in self.made.bids)
        unread = sum(len(one.bid.unread) for one in self.made.bids)
        left = f" Not read: {unread}; Tab shows them." if unread else ""
        return " ".join((f"On one base: {totals}.{left}", *self.made.notices[:1]))

    def fill(self, assessment: Assessment) -> None:
        if self.made is None:
            self.table.fill((), (), ("",))
        elif self.shows_words:
            rows = table.said_rows(self.made)
            self.table.fill(table.SAID_COLUMNS, rows, table.SAID_SORTINGS)
        else:
            columns, rows = table.line_columns(self.made), table.line_rows(self.made)
            self.table.fill(columns, rows, table.LINE_SORTINGS)

    def preview_of(self, assessment: Assessment, key: str) -> Sequence[Content]:
        made = self.made
        if made is not None and key.startswith("line "):
            return tuple(map(said, _bids_on(made, _line(made, key))))
        return self.details_of(assessment, key).lines()

    def details_of(self, assessment: Assessment, key: str) -> Details:
        made = self.made
        assert made is not None
        kind = key.partition(" ")[0]
        if kind == "line":
            return _line_details(made, _line(made, key))
        if kind == "total":
            return _total_details(made)
        at = int(kind)
        row = next(one for one in table.said_rows(made) if one.key == key)
        parts = [said(row.cells[1])]
        unread = self._unread(key)
        if unread is not None:
            parts.append(labeled("Field", unread.shown or unread.field))
            parts.append(said("m says what it means; the bid keeps what was written."))
        return Details(made.bids[at].bid.bidder, tuple(parts))

    def origin_of(self, key: str) -> Callable[[], Origin | None] | None:
        """Of our own allowance for the line."""
        kind, _, item_id = key.partition(" ")
        return partial(of_item, self.job, item_id) if kind == "line" else None

    def action_other_view(self) -> None:
        self.shows_words = not self.shows_words
        self.close_filter()
        self.reload()
        self.table.focus()

    def action_add(self) -> None:
        if self.job.read_only:
            self._refuse(self.job.read_only_reason)
            return

        def take(typed: str) -> None:
            if not typed:
                raise LeantoError("A file is needed.", "Type its path.")
            bid = self.job.bids.add(Path(typed).expanduser())
            self.notify(visible(f"Added the bid of {bid.bidder}."), markup=False)

        self.app.push_screen(AskReasonScreen("File of the returned form?", take), self._after)

    def action_answer(self) -> None:
        row = self.table.selected
        unread = self._unread(row.key) if row else None
        if row is None or unread is None or self.made is None:
            self._refuse("This row is read. Tab shows what is not.")
            return
        bidder = self.made.bids[int(row.key.partition(" ")[0])].bid.bidder
        question = f"{bidder} wrote “{unread.text}” in {unread.shown or unread.field}. {unread.why}"

        def take(typed: str) -> None:
            if not typed:
                raise LeantoError("An answer is needed.", "Write it like 1200.50, or by others.")
            self.job.bids.answer(bidder, unread.field, typed)

        self.app.push_screen(AskReasonScreen(question, take), self._after)

    def action_write(self) -> None:
        def work(progress: Progress) -> str:
            written = self.job.bids.write_table(progress=progress)
            book = self.job.bids.write_workbook()
            return f"Wrote {written.path}, {written.pages} pages, and {book.name}."

        def written(said: str | None) -> None:
            if said is not None:
                self.notify(visible(said), markup=False)

        self.app.push_screen(Working("Writing the table of the bids", work), written)

    def action_choose(self) -> None:
        """Asks which bid, then why; the figures are frozen as they are now."""
        made = self.made
        if made is None or self.job.read_only:
            self.refuse(self.job.read_only_reason or NONE_YET)
            return
        names = [one.bid.bidder for one in made.bids]
        totals = [format_usd(one.base - one.plugged) for one in made.bids]
        choices = [f"{name}, {total}" for name, total in zip(names, totals, strict=True)]

        def chosen(at: int | None) -> None:
            if at is not None:
                question = f"{names[at]}: your reason? Alternates and another sum: bids award."
                self.app.push_screen(AskReasonScreen(question, partial(take, names[at])), after)

        def take(name: str, reason: str) -> None:
            self.job.contract.choose(name, reason=reason)

        def after(recorded: bool | None) -> None:
            if recorded:
                self.reload()
                self.action_costs()

        self.app.push_screen(AskChoice("Which bid do you choose?", choices), chosen)

    def action_costs(self) -> None:
        from leanto.tui.screens.costs import CostsScreen

        self.app.push_screen(CostsScreen(self.job))

    def action_opening(self) -> None:
        from leanto.tui.screens.opening import OpeningScreen

        self.app.push_screen(OpeningScreen(self.job))

    def _unread(self, key: str) -> Unread | None:
        at, _, rest = key.partition(" ")
        kind, _, index = rest.partition(" ")
        if kind != "unread" or self.made is None:
            return None
        return self.made.bids[int(at)].bid.unread[int(index)]

    def _after(self, recorded: bool | None) -> None:
        if recorded:
            self.reload()

    def _refuse(self, why: str) -> None:
        self.notify(visible(why), severity="warning", markup=False)


def _line(made: Levelled, key: str) -> LevelLine:
    return next(one for one in made.lines if f"line {one.line.item_id}" == key)


def _bids_on(made: Levelled, line: LevelLine) -> tuple[str, ...]:
    return tuple(
        f"{one.bid.bidder}: {table.cell_in_words(cell)}"
        for one, cell in zip(made.bids, line.cells, strict=True)
    )


def _line_details(made: Levelled, line: LevelLine) -> Details:
    asked = line.line
    parts = [
        labeled("Asked for", f"{asked.quantity:,g} {asked.unit}, {asked.trade}"),
        listed("Bids", _bids_on(made, line)),
    ]
    if line.ours is not None:
        parts.insert(1, labeled("Our allowance", amounts(line.ours)))
    return Details(f"{asked.line}. {asked.title}, {asked.place}", tuple(parts))


def _total_details(made: Levelled) -> Details:
    lines = [
        f"{one.bid.bidder}: added up {format_usd(one.summed)}, on one base {format_usd(one.base)} "
        f"({format_usd(one.plugged)} plugged), with hidden work {format_usd(one.with_hidden)}, "
        f"with alternates {format_usd(one.with_alternates)}, with both {format_usd(one.with_both)}"
        for one in made.bids
    ]
    parts = [listed("Totals", lines)]
    if made.notices:
        parts.append(listed("Together", made.notices))
    return Details("The bids together; none is chosen here", tuple(parts))
