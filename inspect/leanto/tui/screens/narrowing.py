"""Asks for one of many things: the list narrows as one types."""

from __future__ import annotations

from collections.abc import Sequence
from typing import ClassVar, Generic, TypeVar

from textual.app import ComposeResult
from textual.binding import Binding, BindingType
from textual.containers import Vertical
from textual.widgets import Input, OptionList, Static

from leanto.tui.screens.dialog import Dialog
from leanto.tui.shown import on_one_line

Chosen = TypeVar("Chosen")


class Narrowing(Dialog[Chosen | None], Generic[Chosen]):
    """Returns what was chosen, or None; up and down move the mark, Enter takes it."""

    BINDINGS: ClassVar[list[BindingType]] = [
        Binding("up", "move(-1)", "Up", show=False),
        Binding("down", "move(1)", "Down", show=False),
    ]

    def __init__(self, question: str, hint: str, below: str, most: int = 0) -> None:
        """``hint`` stands in the empty field, ``below`` under the list; ``most`` characters."""
        super().__init__()
        self._question, self._below = question, below
        self._found: Sequence[tuple[str, Chosen]] = ()
        self._input = Input(placeholder=hint, max_length=most, compact=True)
        self._list = OptionList(compact=True)
        self._list.can_focus = False

    def found(self, typed: str) -> Sequence[tuple[str, Chosen]]:
        """What fits the text typed, each as it is listed, and what it returns."""
        raise NotImplementedError

    @property
    def editor(self) -> Input:
        return self._input

    def compose(self) -> ComposeResult:
        with Vertical(classes="dialog tall"):
            yield Static(self._question, classes="question", markup=False)
            yield self._input
            yield self._list
            yield Static(self._below, markup=False)

    def on_mount(self) -> None:
        self._narrow("")

    def on_input_changed(self, event: Input.Changed) -> None:
        event.stop()
        self._narrow(event.value)

    def on_input_submitted(self, event: Input.Submitted) -> None:
        event.stop()
        if self._found:
            self._take(self._list.highlighted or 0)

    def on_option_list_option_selected(self, event: OptionList.OptionSelected) -> None:
        self._take(event.option_index)

    def action_move(self, by: int) -> None:
        if self._found:
            at = (self._list.highlighted or 0) + by
            self._list.highlighted = min(max(at, 0), len(self._found) - 1)

    def action_leave(self) -> None:
        self.dismiss(None)

    def _take(self, at: int) -> None:
        self.dismiss(self._found[at][1])

    def _narrow(self, typed: str) -> None:
        self._found = self.found(typed)
        self._list.clear_options()
        self._list.add_options(on_one_line(text) for text, _ in self._found)
        self._list.highlighted = 0 if self._found else None
