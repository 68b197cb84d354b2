"""The facts of the building: typed page by page, recorded when they hold together."""

from __future__ import annotations

import asyncio
from typing import ClassVar
from weakref import WeakKeyDictionary

from textual import events
from textual.app import ComposeResult
from textual.binding import Binding, BindingType
from textual.containers import Horizontal, Vertical
from textual.content import Content
from textual.screen import Screen
from textual.timer import Timer
from textual.widgets import DataTable, Footer, Static

from leanto.building.model import Building
from leanto.errors import InputProblems, LeantoError
from leanto.job import Job
from leanto.record.entry import BuildingSet
from leanto.tui.shown import on_one_line, visible
from leanto.tui.widgets.building_draft import Draft
from leanto.tui.widgets.building_form import BuildingForm
from leanto.tui.widgets.building_pages import Pages
from leanto.tui.widgets.building_reading import Reading, read
from leanto.tui.widgets.building_row import FieldRow
from leanto.tui.widgets.building_side import BuildingSide
from leanto.tui.widgets.rows_table import RowsTable

_CHECK_AFTER_S = 0.15
"""A pause in typing; the form is read again after it."""
_DRAFTS: WeakKeyDictionary[Job, tuple[Building | None, Draft]] = WeakKeyDictionary()
"""What was typed and not recorded, with the building it started from."""


def _key(keys: str, action: str, word: str, tooltip: str, *, show: bool = False) -> Binding:
    """Done before the next key is looked at, however fast they come."""
    name = "building." + action.replace("(", ".").rstrip(")")
    return Binding(keys, action, word, show=show, id=name, tooltip=tooltip, priority=True)


class BuildingScreen(Screen[bool]):
    """True when a building was recorded. Escape leaves, and what was typed is kept in memory."""

    AUTO_FOCUS = ""
    BINDINGS: ClassVar[list[BindingType]] = [
        _key("down,enter,tab", "step(1)", "Next field", "The next field"),
        _key("up,shift+tab", "step(-1)", "Field before", "The field before"),
        _key("ctrl+s", "record", "Record", "Record the building", show=True),
        _key("pagedown", "page(1)", "Page", "The next page", show=True),
        _key("pageup", "page(-1)", "Page before", "The page before"),
        _key(
            "ctrl+n", "add", "New", "On the openings' page a new opening, else a block", show=True
        ),
        _key("ctrl+r", "remove", "Remove", "Twice: this block or part goes", show=True),
        _key("escape", "back", "Leave", "Leave; the draft is kept", show=True),
    ]
    HORIZONTAL_BREAKPOINTS = [(0, "-narrow"), (116, "-wide")]
    DEFAULT_CSS = """
    BuildingScreen #state { padding: 0 1; background: $panel; height: auto; max-height: 3; }
    BuildingScreen #pages { padding: 0 1; height: auto; max-height: 2; }
    BuildingScreen #main { height: 1fr; }
    BuildingScreen #page { width: 1fr; height: 1fr; }
    BuildingScreen RowsTable { height: auto; max-height: 45%; min-height: 2; display: none; }
    BuildingScreen.-listing RowsTable { display: block; }
    BuildingScreen BuildingSide { width: 44; height: 1fr; padding: 0 1; display: none;
        border-left: solid $foreground 40%; }
    BuildingScreen.-wide BuildingSide { display: block; }
    BuildingScreen.-narrow FieldRow .remark { visibility: hidden; }
    BuildingScreen.-narrow FieldRow.-wrong .remark { visibility: visible; }
    BuildingScreen #help { height: 2; padding: 0 1; color: $text-muted; }
    BuildingScreen #help.-wrong { color: $text-error; text-style: bold; }
    """

    def __init__(self, job: Job) -> None:
        super().__init__()
        self.job = job
        self.draft = _draft_of(job)
        self.reading: Reading = read(self.draft)
        self.pages = Pages(self.draft)
        self._turning = asyncio.Lock()
        """A page is opened to its end before the next one."""
        self._left: set[str] = set()
        """Paths of the fields that were left once: their faults are shown."""
        self._shows_all = self.draft != Draft.of(None)
        self._timer: Timer | None = None
        self._id_before = ""
        self._removing = ""

    @property
    def help_text(self) -> Content:
        return Content(
            "Type lengths as you say them: 7' 3 1/2\", 7-3, 88 in, 2.24 m. Up, down and Enter go "
            "from field to field; left and right change a choice, and so do its first letters. "
            "What is refused stays as typed until you put it right.\n"
        )

    def compose(self) -> ComposeResult:
        yield Static(id="state", markup=False)
        yield Static(id="pages", markup=False)
        with Horizontal(id="main"):
            with Vertical(id="page"):
                yield RowsTable()
            yield BuildingSide()
        yield Static(id="help", markup=False)
        yield Footer(compact=True, show_command_palette=False)

    async def on_mount(self) -> None:
        async with self._turning:
            await self._open_page()
        self._check()

    # Pages

    @property
    def form(self) -> BuildingForm | None:
        """The fields of the page; None on the page of a list that is empty."""
        return next((form for form in self.query(BuildingForm) if form.display), None)

    async def action_step(self, by: int) -> None:
        """To the field after or before; from the last one on to the next part or page."""
        await self._settle()
        form, table = self.form, self.query_one(RowsTable)
        if table.has_focus:
            if by > 0 or not table.step(by):
                self._focus_first()
        elif form is not None and form.step(by):
            return
        elif self.pages.listed is None:
            await self.action_page(by)
        elif by < 0 or not table.step(by):
            self.set_focus(table)
        else:
            self._focus_first()

    async def action_page(self, by: int) -> None:
        await self._settle()
        self._leave_page()
        self.pages.turn(by)
        await self._show_page()

    async def _settle(self) -> None:
        """Wait until the field has taken every key that was pressed before this one."""
        if self.focused is not None:
            taken = asyncio.Event()
            if self.focused.call_later(taken.set):
                await taken.wait()
        self._collect()

    def _collect(self) -> None:
        """Put what stands in the fields into the draft."""
        if self.form is not None:
            self.form.collect()

    def _leave_page(self) -> None:
        self._collect()
        self._follow_rename()
        self._id_before = ""

    async def _show_page(self, path: str = "") -> None:
        async with self._turning:
            await self._open_page(path)
        self._check()

    async def _open_page(self, path: str = "") -> None:
        """Show the fields of the page and go to a field of it, or to the first.

        All blocks share one form, and so do all parts of a list: to build one takes longest.
        """
        shown = self.pages.shown
        self.set_class(self.pages.listed is not None, "-listing")
        for held in self.query(BuildingForm):
            held.display = shown is not None and held.fields is shown.fields
        if shown is None:
            self.set_focus(self.query_one(RowsTable))
            return
        form = self.form
        if form is None:
            form = BuildingForm(self.draft, shown)
            await self.query_one("#page").mount(form)
        else:
            form.turn_to(shown)
        form.focus_field(path)

    def _focus_first(self) -> None:
        if self.form is not None:
            self.form.focus_field()

    def on_data_table_row_highlighted(self, event: DataTable.RowHighlighted) -> None:
        row, form = self.query_one(RowsTable).selected, self.form
        if row is None or form is None or self.pages.listed is None:
            return
        self._collect()
        if self.pages.choose(int(row.key)) and (shown := self.pages.shown) is not None:
            form.turn_to(shown)
            self._show_faults()

    # Typing

    def on_field_row_changed(self, event: FieldRow.Changed) -> None:
        self._removing = ""
        if self._timer is not None:
            self._timer.stop()
        self._timer = self.set_timer(_CHECK_AFTER_S, self._check)

    def on_descendant_focus(self, event: events.DescendantFocus) -> None:
        row = self._row_with_focus()
        if row is not None and row.field.path == "id":
            self._id_before = row.text
        self._show_help()

    def on_descendant_blur(self, event: events.DescendantBlur) -> None:
        row = event.widget.parent
        if isinstance(row, FieldRow):
            self._left.add(row.path)
            self._follow_rename()
            self._show_faults()

    def _follow_rename(self) -> None:
        """What names a block follows it when its short name was changed."""
        at = self.pages.block
        if self._id_before and at is not None:
            self.draft.follow_rename(self._id_before, self.draft.blocks[at]["id"])
            self._id_before = self.draft.blocks[at]["id"]

    # Recording and leaving

    async def action_record(self) -> None:
        await self._settle()
        self._follow_rename()
        self._shows_all = True
        self._check()
        if self.job.read_only:
            self._say_state(f"READ ONLY. {self.job.read_only_reason}")
            return
        building = self.reading.building
        if building is None:
            first = next(iter(self.reading.problems))
            self._leave_page()
            self.pages.go_to(first)
            await self._show_page(first)
            return
        try:
            self.job.record(BuildingSet(building=building))
        except InputProblems as error:
            self._say_state(f"Not recorded. {error.problems[0].message}")
        except LeantoError as error:
            self._say_state(f"Not recorded. {error}")
        else:
            _DRAFTS.pop(self.job, None)
            self._tell_what_gave_way()
            self.dismiss(True)

    def _tell_what_gave_way(self) -> None:
        """Answers that no longer fit the building are kept in the record, but do not count."""
        try:
            notices = self.job.notices
        except LeantoError as error:
            notices = (str(error),)
        for notice in notices[:3]:
            self.notify(visible(notice), severity="warning", markup=False)

    async def action_back(self) -> None:
        await self._settle()
        self._check()
        if self.is_changed:
            self.notify("The draft of the building is kept until you quit.", markup=False)
        self.dismiss(False)

    @property
    def is_changed(self) -> bool:
        if self.reading.building is not None:
            return self.reading.building != self.job.walk.building
        return self.draft != Draft.of(self.job.walk.building)

    # Adding and removing

    async def action_add(self) -> None:
        await self._settle()
        self._leave_page()
        path = self.pages.add()
        group = path.partition(".")[0]
        # The parts behind the new one have other paths now.
        self._left = {left for left in self._left if not left.startswith(f"{group}.")}
        await self._show_page(path)

    async def action_remove(self) -> None:
        await self._settle()
        what = self.pages.removable
        if not what:
            self._say_state("Nothing here can be removed; a building has at least one block.")
        elif self._removing != what:
            self._removing = what
            self._say_state(f"Ctrl+R once more removes {what}.")
        else:
            self._removing = ""
            self._id_before = ""
            self.pages.remove()
            await self._show_page()

    # Showing

    def _check(self) -> None:
        """Read the draft and show what it comes to."""
        if self._timer is not None:
            # Else the check that typing asked for says once more what this one says, and writes
            # over what was said in between.
            self._timer.stop()
            self._timer = None
        self._collect()
        self.reading = read(self.draft)
        listed = self.pages.listed
        if listed is not None:
            table = self.query_one(RowsTable)
            rows = listed.rows(self.draft, self.reading.problems)
            table.fill(listed.columns, rows, ("",))
            if rows:
                table.move_cursor(row=self.pages.at)
        side = self.query_one(BuildingSide)
        side.is_old = self.reading.building is None
        if self.reading.building is not None:
            side.building = self.reading.building
        self._say_state(self._state())
        self._show_pages()
        self._show_faults()

    def _state(self) -> str:
        faults = len(self.reading.problems)
        name = on_one_line(self.draft.facts["name"]) or "The building"
        if self.job.read_only:
            return f"READ ONLY. {self.job.read_only_reason} {name}"
        if faults:
            noun = "field" if faults == 1 else "fields"
            return f"{name}: {faults} {noun} to fill in or to put right, then Ctrl+S records it."
        if self.is_changed:
            return f"{name}: a draft that holds together. Ctrl+S records it."
        return f"{name}: as recorded."

    def _say_state(self, text: str) -> None:
        self.query_one("#state", Static).update(Content.styled(visible(text), "bold"))

    def _show_pages(self) -> None:
        parts = []
        for page in self.pages.names(self.reading.problems):
            text = f"{page.title} !{page.faults}" if page.faults else page.title
            shown = f"[{text}]" if page.is_open else f" {text} "
            parts.append(Content.styled(shown, "bold reverse" if page.is_open else ""))
        self.query_one("#pages", Static).update(Content(" ").join(parts))

    def _show_faults(self) -> None:
        form = self.form
        if form is not None:
            shown = {
                path: fault
                for path, fault in self.reading.problems.items()
                if self._shows_all or path in self._left
            }
            form.show_faults(shown)
        self._show_help()

    def _show_help(self) -> None:
        """The whole of what is wrong with the field that is typed in, or what it means."""
        row = self._row_with_focus()
        help_line = self.query_one("#help", Static)
        fault = ""
        if row is not None and (self._shows_all or row.path in self._left):
            fault = self.reading.problems.get(row.path, "")
        help_line.set_class(bool(fault), "-wrong")
        if fault:
            help_line.update(f"! {visible(fault)}")
        elif row is not None:
            help_line.update(f"{row.field.label}: {row.field.help}.")
        elif self.pages.listed is not None and self.pages.shown is None:
            help_line.update(f"No {self.pages.listed.noun} yet. Ctrl+N adds one.")
        else:
            help_line.update("Enter goes to the fields below.")

    def _row_with_focus(self) -> FieldRow | None:
        parent = self.focused.parent if self.focused is not None else None
        return parent if isinstance(parent, FieldRow) else None


def _draft_of(job: Job) -> Draft:
    """What was typed before and not recorded, else the building as recorded."""
    recorded = job.walk.building
    started_from, draft = _DRAFTS.get(job, (None, None))
    is_untouched = draft is not None and draft == Draft.of(started_from)
    if draft is None or (is_untouched and started_from != recorded):
        draft = Draft.of(recorded)
        _DRAFTS[job] = (recorded, draft)
    return draft


def has_draft(job: Job) -> bool:
    """Whether something was typed into the form that is not recorded."""
    started_from, draft = _DRAFTS.get(job, (None, None))
    return draft is not None and draft != Draft.of(started_from)


def forget_draft(job: Job) -> None:
    _DRAFTS.pop(job, None)
