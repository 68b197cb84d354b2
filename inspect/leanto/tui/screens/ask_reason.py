"""Asks for the reason of a choice, and keeps what was typed until it is taken."""

from __future__ import annotations

from collections.abc import Callable
from typing import ClassVar

from textual.app import ComposeResult
from textual.binding import Binding, BindingType
from textual.containers import Vertical
from textual.screen import ModalScreen
from textual.widgets import Footer, Input, Static

from leanto.errors import LeantoError
from leanto.tui.shown import visible

MAX_CHARS = 500


class AskReasonScreen(ModalScreen[bool]):
    """True when the reason was taken; ``take`` raises LeantoError to refuse it."""

    BINDINGS: ClassVar[list[BindingType]] = [
        Binding("enter", "take", "Record", id="reason.take", tooltip="Record it", priority=True),
        Binding("escape", "back", "Leave it", id="reason.back", tooltip="Change nothing"),
    ]
    DEFAULT_CSS = """
    AskReasonScreen { align: center middle; background: transparent; }
    AskReasonScreen #box { width: 72; max-width: 100%; height: auto; padding: 1 2;
        border: solid $foreground; background: $surface; }
    AskReasonScreen #fault { height: auto; min-height: 1; text-style: bold; }
    AskReasonScreen Input { margin-top: 1; }
    """

    def __init__(self, question: str, take: Callable[[str], None], text: str = "") -> None:
        """``text`` stands there already."""
        super().__init__()
        self._question = question
        self._take = take
        self._text = text

    def compose(self) -> ComposeResult:
        with Vertical(id="box"):
            yield Static(visible(self._question), markup=False)
            yield Input(self._text, id="reason", max_length=MAX_CHARS, compact=True)
            yield Static(id="fault", markup=False)
        yield Footer(compact=True, show_command_palette=False)

    def on_mount(self) -> None:
        self.query_one(Input).focus()

    def action_take(self) -> None:
        try:
            self._take(self.query_one(Input).value.strip())
        except LeantoError as error:
            self.query_one("#fault", Static).update(visible(str(error)))
        else:
            self.dismiss(True)

    def action_back(self) -> None:
        self.dismiss(False)
