"""Where a number comes from, step by step; from each step one key leads on, and Escape back."""

from __future__ import annotations

from collections.abc import Callable
from typing import ClassVar

from textual.app import ComposeResult
from textual.binding import Binding, BindingType
from textual.content import Content
from textual.screen import Screen
from textual.widgets import Footer, OptionList, Static

from leanto.job import Job
from leanto.record.observation import ObservationKey
from leanto.tui.origin import Origin
from leanto.tui.screens.visit import visit
from leanto.tui.shown import visible


class OriginScreen(Screen[None]):
    """Up and down choose a step; Enter opens the walk there, or where the step comes from."""

    BINDINGS: ClassVar[list[BindingType]] = [
        Binding("escape", "back", "Back", id="origin.back", tooltip="Back to the number"),
    ]
    DEFAULT_CSS = """
    OriginScreen #title { width: 1fr; padding: 0 1; text-style: bold; background: $panel; }
    OriginScreen OptionList { height: 1fr; padding: 0 1; scrollbar-size-vertical: 1; }
    """

    def __init__(self, job: Job, make: Callable[[], Origin | None]) -> None:
        """``make`` reads the origin off the assessment; None when the number is gone."""
        super().__init__()
        self.job = job
        self._make = make
        self._origin = Origin("", ())
        self._entries_shown = -1

    def compose(self) -> ComposeResult:
        yield Static(id="title", markup=False)
        yield OptionList(markup=False, compact=True)
        yield Footer(compact=True, show_command_palette=False)

    def on_mount(self) -> None:
        self._reload()
        self.query_one(OptionList).focus()

    def on_screen_resume(self) -> None:
        if len(self.job.entries) != self._entries_shown:
            self._reload()

    @property
    def help_text(self) -> Content:
        """For the help screen: how such a list is read."""
        return Content(
            "Everything that the number rests on: what was seen, the rule that read it, the price "
            "that was put on it. Enter goes to the observation in the walk, where it can be "
            "answered anew; Esc comes back.\n"
        )

    def action_back(self) -> None:
        self.dismiss()

    def on_option_list_option_selected(self, event: OptionList.OptionSelected) -> None:
        leads_to = self._origin.steps[event.option_index].leads_to
        if isinstance(leads_to, ObservationKey):
            visit(self.app, self.job, leads_to)
        elif leads_to is not None:
            self.app.push_screen(OriginScreen(self.job, leads_to))
        else:
            self.app.bell()

    def _reload(self) -> None:
        """Read it anew: what it rests on may have been answered differently since."""
        self._entries_shown = len(self.job.entries)
        origin = self._make()
        if origin is None:
            self._origin = Origin("This number is not there any more", ())
        else:
            self._origin = origin
        title = f"Where it comes from: {visible(self._origin.title)}"
        self.query_one("#title", Static).update(title)
        steps = self.query_one(OptionList)
        at = steps.highlighted or 0
        steps.clear_options()
        steps.add_options(_apart(step.text) for step in self._origin.steps)
        if self._origin.steps:
            steps.highlighted = min(at, len(self._origin.steps) - 1)


def _apart(text: Content) -> Content:
    """With an empty line below it."""
    return Content.assemble(text, "\n")
