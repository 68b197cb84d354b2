"""Opening up: what each surface showed, what it changes, and what is left of the contingency."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from functools import partial
from pathlib import Path
from typing import ClassVar, TypeVar

from textual import work
from textual.binding import Binding, BindingType
from textual.content import Content

from leanto.assessment import Assessment
from leanto.contract.pricing import amount_of
from leanto.contract.typed import (
    KINDS,
    typed_area_sqft,
    typed_kinds,
    typed_usd,
    typed_works,
)
from leanto.errors import LeantoError
from leanto.job import Job
from leanto.job.opening_up import Openable
from leanto.money import format_usd
from leanto.quantities import Unit, shown
from leanto.reports.contents.costs import contingency_in_words
from leanto.reports.contents.missed import headline
from leanto.reports.contents.openings import NO_AWARD, asked_in_words, change_in_words
from leanto.tui.origin import Origin
from leanto.tui.origin_of import of_surface
from leanto.tui.pictures import first_folder
from leanto.tui.screens.ask_photo import AskPhoto
from leanto.tui.screens.ask_reason import AskReasonScreen
from leanto.tui.screens.details import Details, labeled, listed, said
from leanto.tui.screens.rows_screen import RowsScreen
from leanto.tui.shown import on_one_line, visible
from leanto.tui.widgets import opening_table as table

_Read = TypeVar("_Read")


class OpeningScreen(RowsScreen):
    """One row a surface; a asks what it showed."""

    BINDINGS: ClassVar[list[BindingType]] = [
        Binding("a", "open", "It shows", id="opening.open", tooltip="Record an opening"),
        Binding("p", "ask", "Change", id="opening.ask", tooltip="Write the change request"),
        Binding("g", "settle", "Agreed", id="opening.settle", tooltip="What both agreed on"),
        Binding("e", "missed", "At the end", id="opening.missed", tooltip="What was missed, PDF"),
        Binding("x", "strike", "Strike", id="opening.strike", tooltip="Take an opening out"),
        Binding("u", "turn('undo')", "Undo", id="opening.undo", tooltip="Take back the last entry"),
        Binding(
            "r", "turn('redo')", "Redo", id="opening.redo", show=False, tooltip="Bring it back"
        ),
    ]

    def __init__(self, job: Job) -> None:
        super().__init__(job)
        self.surfaces: tuple[Openable, ...] = ()

    def answer_of(self, assessment: Assessment) -> str:
        told = [headline(self.job.opening.compared())]
        if self.job.walk.award is None:
            told.append(NO_AWARD)
        else:
            told.append(f"Contingency {contingency_in_words(self.job.contract.view())}.")
        waiting = [
            x for one in self.job.opening.open_openings for x in self.job.opening.lines_of(one)
        ]
        if waiting:
            total = format_usd(sum(amount_of(line) for line in waiting))
            told.append(f"In no change request yet: {total}; p writes one.")
        return " ".join(told)

    def fill(self, assessment: Assessment) -> None:
        self.surfaces = self.job.opening.surfaces
        rows = table.rows(self.surfaces, self.job.opening.compared())
        self.table.fill(table.COLUMNS, rows, table.SORTINGS)

    def preview_of(self, assessment: Assessment, key: str) -> Sequence[Content]:
        return self.details_of(assessment, key).lines()

    def details_of(self, assessment: Assessment, key: str) -> Details:
        one = next((x for x in self.surfaces if x.surface.id == key), None)
        if one is None:
            return Details("Without a lining", (said("Nothing is hidden here by a lining."),))
        parts: list[Content] = []
        if tests := self.job.opening.test_first(key):
            parts.append(labeled("Test before anything is disturbed", "; ".join(tests)))
        for opening in one.openings:
            lines = [asked_in_words(line) for line in self.job.opening.lines_of(opening)]
            found = ", ".join(opening.found) or "sound"
            opened, bad = (_area(x) for x in (opening.opened_sqft, opening.bad_sqft))
            told = f"{opened} opened, {bad} bad: {found}"
            parts.append(listed(f"Opening {opening.number}: {told}", lines))
            if opening.note:
                parts.append(labeled("Note", opening.note))
        if one.decision is not None:
            parts.append(_thought(one))
        changes = [
            change_in_words(change)
            for change in self.job.walk.changes.values()
            if any(opening.number in change.openings for opening in one.openings)
        ]
        if changes:
            parts.append(listed("Changes", changes))
        if not one.openings:
            parts.append(said("a records what it shows once it is open."))
        return Details(one.surface.name, tuple(parts))

    def origin_of(self, key: str) -> Callable[[], Origin | None] | None:
        one = next((x for x in self.surfaces if x.surface.id == key), None)
        return partial(of_surface, self.job, key) if one and one.decision else None

    @work(exclusive=True)
    async def action_open(self) -> None:
        one = self._selected()
        if one is None or not self._may_write():
            return
        left = one.surface.net_area_sqft - sum(x.opened_sqft for x in one.openings)
        name = one.surface.name
        opened = await self._asked(
            f"{name}: how many {shown().area_unit} are open now?",
            lambda text: typed_area_sqft(text, "Opened"),
            _number(left),
        )
        if opened is None:
            return
        bad = await self._asked(
            f"How many {shown().area_unit} are bad beyond the scope? 0 where it is sound.",
            lambda text: typed_area_sqft(text, "Bad"),
            "0",
        )
        if bad is None:
            return
        kinds = await self._asked(
            f"What is it? {', '.join(KINDS)}; first letters do. Empty for nothing.",
            lambda text: typed_kinds([text]),
        )
        if kinds is None:
            return
        works = await self._asked(
            "Work it takes, such as sister-stud=3; empty: repair of what is bad.",
            lambda text: typed_works([text]),
        )
        note = await self._asked("Note; it goes to the contractor.", str)
        if works is None or note is None:
            return
        pictures = await self.app.push_screen_wait(
            AskPhoto(f"Pictures: {on_one_line(name)}. Esc for none.", first_folder(Path.home()))
        )
        try:
            body = self.job.opening.record(
                one.surface.id,
                opened_sqft=opened,
                bad_sqft=bad,
                found=kinds,
                works=works,
                note=note,
                pictures=pictures or (),
            )
        except LeantoError as error:
            self.refuse(str(error))
            return
        total = format_usd(sum(amount_of(line) for line in self.job.opening.lines_of(body)))
        self.notify(
            visible(f"Opening {body.number} is kept: {total} beyond the scope."), markup=False
        )
        self.reload()

    async def _asked(
        self, question: str, read: Callable[[str], _Read], text: str = ""
    ) -> _Read | None:
        """What was typed, read; None when it was left."""
        held: list[_Read] = []

        def take(typed: str) -> None:
            held[:] = [read(typed)]

        kept = await self.app.push_screen_wait(AskReasonScreen(question, take, text))
        return held[0] if kept and held else None

    def action_ask(self) -> None:
        if not self._may_write():
            return
        change = self.job.opening.ask()
        written = self.job.opening.write_request(change.number)
        self.notify(visible(f"Change {change.number}: wrote {written.path}."), markup=False)
        self.reload()

    def action_settle(self) -> None:
        open_ones = [x for x in self.job.walk.changes.values() if x.settled_usd is None]
        if not open_ones or not self._may_write():
            self.refuse("No change waits for an amount.")
            return
        change = open_ones[0]

        def take(typed: str) -> None:
            self.job.opening.settle(change.number, typed_usd(typed))

        question = f"{change_in_words(change)}. What did both agree on? 0 for nothing to be done."
        self.app.push_screen(AskReasonScreen(question, take), self._after)

    def action_strike(self) -> None:
        one = self._selected()
        if one is None or not one.openings or not self._may_write():
            self.refuse("Nothing was opened here.")
            return
        taken = self.job.opening.strike(one.openings[-1].number)
        self.notify(f"Opening {taken.number} counts no more; u brings it back.", markup=False)
        self.reload()

    def action_missed(self) -> None:
        written = self.job.opening.write()
        self.notify(visible(f"Wrote {written.path}, {written.pages} pages."), markup=False)

    def _selected(self) -> Openable | None:
        row = self.table.selected
        return next((x for x in self.surfaces if row and x.surface.id == row.key), None)

    def _may_write(self) -> bool:
        if self.job.read_only:
            self.refuse(self.job.read_only_reason)
        return not self.job.read_only

    def _after(self, recorded: bool | None) -> None:
        if recorded:
            self.reload()


def _area(sqft: float) -> str:
    return f"{_number(sqft)} {shown().area_unit}"


def _number(sqft: float) -> str:
    """An area as a bare number that can be typed again."""
    return f"{shown().number(sqft, Unit.SQFT):.2f}" if shown().is_metric else f"{sqft:.0f}"


def _thought(one: Openable) -> Content:
    decision = one.decision
    assert decision is not None
    lines = [
        f"seen bad: {shown().area(decision.damaged_sqft)} of {shown().area(decision.area_sqft)}",
        f"chance of more: {decision.unseen.p:.0%}, {decision.prior:.0%} before the walk",
        *(piece.text for piece in decision.evidence),
    ]
    return listed("What was seen and assumed", lines)
