"""Asks for a text of several lines, such as a note."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass

from textual import events, on
from textual.app import ComposeResult
from textual.binding import Binding
from textual.containers import Vertical
from textual.message import Message
from textual.widgets import Static, TextArea

from leanto.errors import LeantoError
from leanto.tui.screens.dialog import Dialog


@dataclass(frozen=True, slots=True)
class Written:
    """What stood in the dialog when it was left."""

    text: str
    kept: bool
    """False when it was left by Escape: the text is a draft."""


class _Area(TextArea):
    """Enter keeps the text. It is taken here and not by a binding, which would outrun the text."""

    class Done(Message):
        """Enter was pressed."""

    def on_key(self, event: events.Key) -> None:
        if event.key in ("enter", "ctrl+j"):
            event.stop()
            event.prevent_default()
            if event.key == "enter":
                self.post_message(self.Done())
            else:
                self.insert("\n")

    def on_paste(self, event: events.Paste) -> None:
        event.stop()


class AskText(Dialog[Written]):
    """A text area; ``keep`` records the text, and what it refuses stays to be tried again."""

    BINDINGS = [
        Binding("ctrl+s,f10", "keep", "Keep it", id="text.keep", tooltip="Keep the text"),
        Binding("escape", "leave", "Leave", id="text.leave", tooltip="Leave; the draft stays"),
    ]

    def __init__(self, question: str, text: str, keep: Callable[[str], None]) -> None:
        super().__init__()
        self._question = question
        self._keep = keep
        self._area = _Area(text, soft_wrap=True, tab_behavior="focus", compact=True)
        self._said = Static(
            "Enter keeps it.  Ctrl+J: a new line.  Esc leaves it as a draft.", markup=False
        )

    @property
    def editor(self) -> TextArea:
        return self._area

    def compose(self) -> ComposeResult:
        with Vertical(classes="dialog tall"):
            yield Static(self._question, classes="question", markup=False)
            yield self._area
            yield self._said

    def on_mount(self) -> None:
        self._area.move_cursor(self._area.document.end)

    def action_keep(self) -> None:
        try:
            self._keep(self._area.text)
        except LeantoError as error:
            self._said.add_class("refused")
            self._said.update(f"! {error}")
            return
        self.dismiss(Written(self._area.text, kept=True))

    @on(_Area.Done)
    def submit(self) -> None:
        self.action_keep()

    def action_leave(self) -> None:
        self.dismiss(Written(self._area.text, kept=False))
