"""The app: it wires screens, keys, looks and an orderly end, and does nothing else."""

from __future__ import annotations

import sys
import traceback
from collections.abc import Callable, Sequence
from typing import Any

from textual.app import App
from textual.binding import Binding
from textual.content import Content
from textual.screen import Screen

from leanto.errors import LeantoError
from leanto.job import Job
from leanto.quantities import show_as
from leanto.tui.screens.help import Help, keys_of
from leanto.tui.screens.walk import WalkScreen
from leanto.tui.shown import visible
from leanto.tui.signals import leave_on_signals
from leanto.tui.themes import THEMES, first, other, spoken


def _key(
    key: str, action: str, word: str, tooltip: str, *, shown: str = "", in_footer: bool = True
) -> Binding:
    """A key that works on every screen; function keys are shown in capitals."""
    return Binding(
        key,
        action,
        word,
        show=in_footer,
        key_display=shown or key.upper(),
        id=f"app.{word.lower()}",
        tooltip=tooltip,
    )


class LeantoApp(App[None]):
    """One job in the terminal. The walk lies below; every other screen lies over it."""

    CSS_PATH = "app.tcss"
    TITLE = "leanto"
    ENABLE_COMMAND_PALETTE = False
    BINDINGS = [
        _key("question_mark,f1", "help", "Help", "These keys, and how to look", shown="?"),
        _key("f2", "show('walk')", "Walk", "The walk", in_footer=False),
        _key("f3", "show('findings')", "Findings", "What was found, and what caused it"),
        _key("f4", "show('decide')", "Gut/keep", "Gut or keep, surface by surface"),
        _key("f5", "show('scope')", "Scope", "The repair items"),
        _key("f6", "show('reports')", "Reports", "Make the reports"),
        _key("f7", "show('building')", "Building", "The facts of the building"),
        _key("f8", "look", "Look", "Dim light or bright sun", in_footer=False),
        _key("f9", "show('money')", "Money", "The range, the contingency, and whether it fits"),
        _key("m", "units", "Units", "Feet and inches or metric", shown="m", in_footer=False),
        _key("b", "show('bids')", "Bids", "Bids side by side", shown="b", in_footer=False),
        _key("q", "leave", "Quit", "Quit; everything entered is kept already", shown="q"),
    ]

    def __init__(self, job: Job) -> None:
        super().__init__()
        self.job = job
        self.animation_level = "none"
        self._walk = WalkScreen(job)
        self._on_top = "walk"
        self._asked_to_leave = False
        self.fault = ""
        """What went wrong in the program itself, for a bug report; empty while nothing did."""
        self.left_with: int | None = None
        """The exit code it was told to end with; None while it goes on."""

    def get_default_screen(self) -> Screen[None]:
        return self._walk

    def on_load(self) -> None:
        # Before any screen begins: what a screen does later is done in a copy of this context.
        show_as(lambda: self.job.units)

    def on_mount(self) -> None:
        for theme in THEMES:
            self.register_theme(theme)
        self.theme = first(None if self.is_headless else self.console.color_system).name
        leave_on_signals(self)
        if self.job.walk.building is None:
            self.action_show("building")
        self._tell(self.job.notices)

    def _tell(self, notices: Sequence[str]) -> None:
        """What the owner should know, in one box; the help of the walk has all of it."""
        if notices:
            more = f"\n... and {len(notices) - 1} more: press ?" if len(notices) > 1 else ""
            self.notify(visible(notices[0]) + more, markup=False, timeout=10)

    def _fatal_error(self) -> None:
        # The framework's own prints every local value, whole assessments among them: that takes
        # minutes, in which nothing ends it.
        if self.left_with is None:  # else it was cut short half built, and that is no fault
            self.fault = "".join(traceback.format_exception(sys.exception()))
        self.panic()

    def exit(self, result: None = None, return_code: int = 0, message: Any = None) -> None:
        """As the framework does; remembers the code, which a screen cut short would lose."""
        self.left_with = return_code
        super().exit(result, return_code, message)

    async def run_action(self, *arguments: Any, **named: Any) -> bool:
        """As the framework does; an error that the user can put right becomes a notice."""
        try:
            return await super().run_action(*arguments, **named)
        except LeantoError as error:
            self.notify(error.remedy, title=error.what, severity="error", markup=False, timeout=10)
            return True

    def action_show(self, name: str) -> None:
        """Lay a screen over the walk, in place of the one that lies there."""
        while len(self.screen_stack) > 1:
            self.pop_screen()
        self._on_top = name
        if name != "walk":
            self.push_screen(SCREENS[name](self.job))

    def action_help(self) -> None:
        text = getattr(self.screen, "help_text", Content(""))
        self.push_screen(Help(text, keys_of(self.screen)))

    def action_look(self) -> None:
        theme = other(self.theme)
        self.theme = theme.name
        self.notify(f"Look: {spoken(theme)}", markup=False, timeout=3)

    def action_units(self) -> None:
        """Show everything in the other units, unless numbers typed in these wait in the form."""
        from leanto.tui.screens.building import forget_draft, has_draft

        if has_draft(self.job):
            self.notify("Record the building first (F7): it was typed in these units.")
            return
        forget_draft(self.job)
        self.job.show_in(self.job.units.other)
        self._walk.recorded()
        if len(self.screen_stack) > 1:
            self.action_show(self._on_top)
        self.notify(f"Shown in {self.job.units}.", markup=False, timeout=3)

    def action_leave(self) -> None:
        unkept = []
        if self._walk.drafts:
            unkept.append("A note was begun and not kept: n opens it.")
        if held := len(self.job.held):
            unkept.append(f"{held} entries are in memory only: s in the walk saves them elsewhere.")
        if unkept and not self._asked_to_leave:
            self._asked_to_leave = True
            told = " ".join([*unkept, "q again quits without."])
            self.notify(told, markup=False, severity="warning")
            return
        kept = f"Everything entered is kept in {self.job.places.folder}."
        if held:
            kept = f"{held} entries could not be written into {self.job.places.folder}."
        self.exit(message=visible(kept))


def _findings(job: Job) -> Screen[Any]:
    from leanto.tui.screens.findings import FindingsScreen

    return FindingsScreen(job)


def _decide(job: Job) -> Screen[Any]:
    from leanto.tui.screens.decide import DecideScreen

    return DecideScreen(job)


def _scope(job: Job) -> Screen[Any]:
    from leanto.tui.screens.scope import ScopeScreen

    return ScopeScreen(job)


def _money(job: Job) -> Screen[Any]:
    from leanto.tui.screens.money import MoneyScreen

    return MoneyScreen(job)


def _reports(job: Job) -> Screen[Any]:
    from leanto.tui.screens.reports import ReportsScreen

    return ReportsScreen(job)


def _bids(job: Job) -> Screen[Any]:
    from leanto.tui.screens.bids import BidsScreen

    return BidsScreen(job)


def _building(job: Job) -> Screen[Any]:
    from leanto.tui.screens.building import BuildingScreen

    return BuildingScreen(job)


# Loaded when they are first shown: the walk is what a cold start waits for.
SCREENS: dict[str, Callable[[Job], Screen[Any]]] = {
    "findings": _findings,
    "decide": _decide,
    "scope": _scope,
    "money": _money,
    "reports": _reports,
    "building": _building,
    "bids": _bids,
}
