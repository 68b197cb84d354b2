"""Asks for one of a few things, chosen by its number."""

from __future__ import annotations

from collections.abc import Sequence

from textual import events
from textual.app import ComposeResult
from textual.binding import Binding
from textual.containers import Vertical
from textual.content import Content
from textual.screen import ModalScreen
from textual.widgets import OptionList, Static

from leanto.tui.shown import on_one_line


class AskChoice(ModalScreen[int | None]):
    """Returns the place of the choice in the list, or None."""

    BINDINGS = [
        Binding("escape", "leave", "Leave", id="choice.leave", tooltip="Choose nothing"),
    ]

    def __init__(self, question: str, choices: Sequence[str]) -> None:
        super().__init__()
        self._question = question
        self._choices = choices

    def compose(self) -> ComposeResult:
        lines = [
            Content.assemble((str(number), "bold $text-accent"), f"  {on_one_line(choice)}")
            for number, choice in enumerate(self._choices, start=1)
        ]
        with Vertical(classes="dialog"):
            yield Static(self._question, classes="question", markup=False)
            yield OptionList(*lines, compact=True)
            yield Static("Its number, or arrows and Enter.  Esc leaves.", markup=False)

    def on_key(self, event: events.Key) -> None:
        digit = event.character or ""
        if digit.isdecimal() and 1 <= int(digit) <= len(self._choices):
            event.stop()
            self.dismiss(int(digit) - 1)

    def on_option_list_option_selected(self, event: OptionList.OptionSelected) -> None:
        self.dismiss(event.option_index)

    def action_leave(self) -> None:
        self.dismiss(None)
