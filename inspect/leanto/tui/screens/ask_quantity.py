"""Asks for a quantity and for words that go with it, and keeps both until they are taken."""

from __future__ import annotations

from collections.abc import Callable
from typing import ClassVar

from textual.app import ComposeResult
from textual.binding import Binding, BindingType
from textual.containers import Vertical
from textual.widgets import Footer, Input, Static

from leanto.errors import LeantoError
from leanto.tui.screens.dialog import Dialog
from leanto.tui.shown import visible

MAX_CHARS = 500


class AskQuantity(Dialog[bool]):
    """True when both were taken; ``take`` raises LeantoError to refuse them."""

    BINDINGS: ClassVar[list[BindingType]] = [
        Binding("enter", "take", "Next", id="quantity.take", tooltip="Next, and record it"),
        Binding("escape", "back", "Leave it", id="quantity.back", tooltip="Change nothing"),
    ]

    def __init__(
        self, question: str, words: str, take: Callable[[str, str], None], quantity: str = ""
    ) -> None:
        """``words`` says what the second line is for; ``quantity`` stands in the first one."""
        super().__init__()
        self._question, self._words, self._take = question, words, take
        self._quantity = Input(quantity, id="quantity", max_length=40, compact=True)
        self._said = Input(id="words", max_length=MAX_CHARS, compact=True)

    @property
    def editor(self) -> Input:
        return self._said if self._said.has_focus else self._quantity

    def compose(self) -> ComposeResult:
        with Vertical(classes="dialog"):
            yield Static(visible(self._question), classes="question", markup=False)
            yield Static("Quantity", markup=False)
            yield self._quantity
            yield Static(visible(self._words), markup=False)
            yield self._said
            yield Static(id="fault", classes="refused", markup=False)
            yield Static("Enter goes on, then records.  Esc changes nothing.", markup=False)
        yield Footer(compact=True, show_command_palette=False)

    def on_input_submitted(self, event: Input.Submitted) -> None:
        event.stop()
        if event.input is self._quantity and self._quantity.value.strip():
            self._said.focus()
        else:
            self.action_take()

    def action_take(self) -> None:
        try:
            self._take(self._quantity.value.strip(), self._said.value.strip())
        except LeantoError as error:
            self.query_one("#fault", Static).update(f"! {visible(str(error))}")
        else:
            self.dismiss(True)

    def action_back(self) -> None:
        self.dismiss(False)
