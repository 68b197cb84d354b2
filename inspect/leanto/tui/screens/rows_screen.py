"""What the screens that list parts of an assessment share: answer, table, preview, filter."""

from __future__ import annotations

from abc import abstractmethod
from collections.abc import Callable, Sequence
from typing import ClassVar, Literal

from textual.app import ComposeResult
from textual.binding import Binding, BindingType
from textual.containers import Horizontal, VerticalScroll
from textual.content import Content
from textual.screen import Screen
from textual.widgets import DataTable, Footer, Input, Static

from leanto.assessment import Assessment
from leanto.errors import InputProblems, LeantoError
from leanto.job import Job
from leanto.tui.origin import Origin
from leanto.tui.paragraphs import paragraph
from leanto.tui.screens.details import Details, DetailsScreen
from leanto.tui.screens.origin import OriginScreen
from leanto.tui.shown import visible
from leanto.tui.widgets.rows_table import RowsTable
from leanto.tui.words import entry_in_words

PREVIEW_LINES = 4


_KEYS = "s sorts, / filters, Esc goes back"


def _unseen(key: str, action: str, word: str, tooltip: str) -> Binding:
    """A key that the last line names, so that the footer has room for the screen's own."""
    return Binding(key, action, word, show=False, id=f"rows.{action}", tooltip=tooltip)


class RowsScreen(Screen[None]):
    """The answer on top, the rows below it, and what the row under the cursor says."""

    BINDINGS: ClassVar[list[BindingType]] = [
        _unseen("escape", "back", "Back", "Back to where you came from"),
        _unseen("s", "sort", "Sort", "Sort by the next column"),
        _unseen("slash", "filter", "Filter", "Show rows with a word"),
        Binding(
            "w",
            "origin",
            "Where from",
            id="rows.origin",
            tooltip="Where the numbers of this row come from",
        ),
    ]
    HORIZONTAL_BREAKPOINTS = [(0, "-narrow"), (110, "-wide")]
    DEFAULT_CSS = """
    RowsScreen #answer { padding: 0 1; background: $panel; height: auto; max-height: 6; }
    RowsScreen #main { height: 1fr; }
    RowsScreen #side { width: 40; border-left: solid $foreground 40%; padding: 0 1; display: none;
        scrollbar-size-vertical: 1; }
    RowsScreen #preview { height: 5; padding: 0 1; border-top: solid $foreground 40%; }
    RowsScreen.-wide #side { display: block; }
    RowsScreen.-wide #preview { display: none; }
    RowsScreen #state { height: 1; padding: 0 1; color: $text-muted; }
    RowsScreen #filter { height: 1; border: none; padding: 0 1; display: none; }
    RowsScreen #filter.-open { display: block; }
    """

    def __init__(self, job: Job) -> None:
        super().__init__()
        self.job = job
        self.assessment: Assessment | None = None
        self._entries_shown = -1

    def compose(self) -> ComposeResult:
        yield Static(id="answer", markup=False)
        with Horizontal(id="main"):
            yield RowsTable()
            with VerticalScroll(id="side", can_focus=False):
                yield Static(id="side-text", markup=False)
        yield Static(id="preview", markup=False)
        yield Input(id="filter", placeholder="words to look for; Enter keeps them", compact=True)
        yield Static(id="state", markup=False)
        yield Footer(compact=True, show_command_palette=False)

    def on_mount(self) -> None:
        self.reload()
        self.table.focus()

    def on_screen_resume(self) -> None:
        if len(self.job.entries) != self._entries_shown:
            self.reload()

    @property
    def help_text(self) -> Content:
        """For the help screen: how such a table is read."""
        return Content(
            "Up and down choose a row, Enter shows all of it; there left and right go to its "
            "neighbors. w shows where its numbers come from: the observation, the rule and the "
            "price; from there Enter goes to the walk. s sorts by the next column. / shows only "
            "rows with the words you type; Esc shows all again.\n"
        )

    @property
    def table(self) -> RowsTable:
        return self.query_one(RowsTable)

    def reload(self) -> None:
        """Assess again and show it; a fault is said where the answer stands."""
        self._entries_shown = len(self.job.entries)
        try:
            self.assessment = self.job.assess()
        except LeantoError as error:
            self.assessment = None
            self.table.fill((), (), ("",))
            self._answer(in_one_line(error))
            return
        self._answer(self.answer_of(self.assessment))
        self.fill(self.assessment)

    @abstractmethod
    def answer_of(self, assessment: Assessment) -> str:
        """The one answer that the screen gives, in a sentence or two."""

    @abstractmethod
    def fill(self, assessment: Assessment) -> None:
        """Put the rows into the table."""

    @abstractmethod
    def preview_of(self, assessment: Assessment, key: str) -> Sequence[Content]:
        """What matters most about a row, one text a line; cut where there is no more room."""

    @abstractmethod
    def details_of(self, assessment: Assessment, key: str) -> Details:
        """Everything about a row."""

    def origin_of(self, key: str) -> Callable[[], Origin | None] | None:
        """What reads off where a row's numbers come from; None for a row without."""
        return None

    def legend_of(self, assessment: Assessment) -> str:
        """What the marks in the rows mean, for the last line; empty without marks."""
        return ""

    def close_filter(self) -> None:
        """Show all rows again."""
        field = self.query_one("#filter", Input)
        field.remove_class("-open")
        field.value = ""
        self.table.focus()

    def action_back(self) -> None:
        if self.query_one("#filter").has_class("-open"):
            self.close_filter()
        else:
            self.dismiss()

    def action_sort(self) -> None:
        self.table.next_sorting()

    def action_filter(self) -> None:
        field = self.query_one("#filter", Input)
        field.add_class("-open")
        field.focus()

    def action_origin(self) -> None:
        row = self.table.selected
        make = self.origin_of(row.key) if row else None
        if make is None:
            self.refuse("There is nothing behind this row to show.")
        else:
            self.app.push_screen(OriginScreen(self.job, make))

    def action_turn(self, way: Literal["undo", "redo"]) -> None:
        """Take the last entry back, or bring it back; for screens that bind a key to it."""
        try:
            entry = self.job.undo() if way == "undo" else self.job.redo()
        except LeantoError as error:
            self.refuse(in_one_line(error))
            return
        if entry is None:
            self.refuse(f"There is nothing to {way}.")
            return
        done = "Taken back" if way == "undo" else "Back again"
        self.notify(visible(f"{done}: {entry_in_words(entry, self.job)}"), markup=False)
        self.reload()

    def refuse(self, why: str) -> None:
        self.notify(visible(why), severity="warning", markup=False)

    def on_input_changed(self, event: Input.Changed) -> None:
        if event.input.id == "filter":
            self.table.narrow_down(event.value)

    def on_input_submitted(self, event: Input.Submitted) -> None:
        if event.input.id == "filter":
            event.input.set_class(bool(event.value), "-open")
            self.table.focus()

    def on_data_table_row_highlighted(self, event: DataTable.RowHighlighted) -> None:
        self._show_row()

    def on_data_table_row_selected(self, event: DataTable.RowSelected) -> None:
        details = self._details()
        if details is not None:
            self.app.push_screen(DetailsScreen(details, self._neighbor))

    def on_rows_table_changed(self, event: RowsTable.Changed) -> None:
        shown, there = self.table.counts
        parts = [f"{shown} of {there} rows" if self.table.filter_text else f"{there} rows"]
        if self.table.filter_text:
            parts.append(f'with "{visible(self.table.filter_text)}"')
        if self.table.sorting:
            parts.append(f"by {self.table.sorting}")
        legend = self.legend_of(self.assessment) if self.assessment else ""
        said = "; ".join(part for part in (" ".join(parts), legend, _KEYS) if part)
        self.query_one("#state", Static).update(said, layout=False)
        self._show_row()

    def _answer(self, text: str) -> None:
        mark = f"READ ONLY. {self.job.read_only_reason} " if self.job.read_only else ""
        self.query_one("#answer", Static).update(Content.styled(visible(mark + text), "bold"))

    def _show_row(self) -> None:
        row, assessment = self.table.selected, self.assessment
        preview = side = Content("")
        if row is not None and assessment is not None:
            if self.has_class("-wide"):
                side = self.details_of(assessment, row.key).as_column()
            else:
                preview = self._cut(self.preview_of(assessment, row.key))
        # The preview has one height for all rows: nothing has to be laid out anew.
        self.query_one("#preview", Static).update(preview, layout=False)
        if self.has_class("-wide"):
            self.query_one("#side-text", Static).update(side)

    def _cut(self, preview: Sequence[Content]) -> Content:
        """As much of the lines as the preview has room for, with a sign that there is more."""
        width = max(self.size.width - 2, 8)
        lines: list[Content] = []
        for text in preview:
            room = PREVIEW_LINES - len(lines)
            if room > 0:
                lines += paragraph(text, width, at_most=room)
        return Content("\n").join(lines)

    def _details(self) -> Details | None:
        row, assessment = self.table.selected, self.assessment
        return None if row is None or assessment is None else self.details_of(assessment, row.key)

    def _neighbor(self, by: int) -> Details | None:
        return self._details() if self.table.step(by) else None


def in_one_line(error: LeantoError) -> str:
    """What is wrong and what to do; of several faults the first, and how many there are."""
    if isinstance(error, InputProblems) and len(error.problems) > 1:
        return f"{len(error.problems)} faults in the files; the first: {error.problems[0]}"
    return str(error)
