"""Asks for one of many things, narrowed down by typing parts of their names."""

from __future__ import annotations

from collections.abc import Sequence

from textual.app import ComposeResult
from textual.binding import Binding
from textual.containers import Vertical
from textual.widgets import Input, OptionList, Static

from leanto.tui.screens.dialog import Dialog
from leanto.tui.shown import on_one_line


class Pick(Dialog[str | int | None]):
    """Returns the place of the chosen one in the list; with ``own_words`` also a typed text.

    None when nothing was chosen.
    """

    BINDINGS = [
        Binding("escape", "leave", "Leave", id="pick.leave", tooltip="Choose nothing"),
        Binding("up", "move(-1)", "Up", show=False),
        Binding("down", "move(1)", "Down", show=False),
    ]

    def __init__(self, question: str, names: Sequence[str], *, own_words: bool = False) -> None:
        super().__init__()
        self._question, self._names, self._own_words = question, names, own_words
        self._found: list[str | int] = []
        self._input = Input(placeholder="part of its name", max_length=80, compact=True)
        self._list = OptionList(compact=True)
        self._list.can_focus = False

    @property
    def editor(self) -> Input:
        return self._input

    def compose(self) -> ComposeResult:
        with Vertical(classes="dialog tall"):
            yield Static(self._question, classes="question", markup=False)
            yield self._input
            yield self._list
            yield Static("Enter takes the marked one.  Esc leaves.", markup=False)

    def on_mount(self) -> None:
        self._write("")

    def on_input_changed(self, event: Input.Changed) -> None:
        event.stop()
        self._write(event.value)

    def on_input_submitted(self, event: Input.Submitted) -> None:
        event.stop()
        if self._found:
            self.dismiss(self._found[self._list.highlighted or 0])

    def on_option_list_option_selected(self, event: OptionList.OptionSelected) -> None:
        self.dismiss(self._found[event.option_index])

    def action_move(self, by: int) -> None:
        if self._found:
            at = (self._list.highlighted or 0) + by
            self._list.highlighted = min(max(at, 0), len(self._found) - 1)

    def action_leave(self) -> None:
        self.dismiss(None)

    def _write(self, typed: str) -> None:
        own = typed.strip() if self._own_words else ""
        self._found = [*matching(self._names, typed), *([own] if own else [])]
        self._list.clear_options()
        self._list.add_options(
            on_one_line(self._names[one])
            if isinstance(one, int)
            else f'In your own words: "{on_one_line(one)}"'
            for one in self._found
        )
        self._list.highlighted = 0 if self._found else None


def matching(names: Sequence[str], typed: str) -> list[int]:
    """Where the names stand that hold every part typed."""
    wanted = typed.casefold().split()
    return [at for at, name in enumerate(names) if all(w in name.casefold() for w in wanted)]
