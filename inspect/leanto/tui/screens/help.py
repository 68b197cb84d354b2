"""What can be pressed here, and the whole text of what is shown."""

from __future__ import annotations

from collections.abc import Iterable

from textual.app import ComposeResult
from textual.binding import Binding
from textual.containers import VerticalScroll
from textual.content import Content
from textual.screen import ModalScreen, Screen
from textual.widgets import Static

from leanto.tui.marks import FAINT


class Help(ModalScreen[None]):
    """Text to scroll through; any of the usual keys leaves."""

    BINDINGS = [
        Binding("escape,enter,q,question_mark", "leave", "Back", id="help.leave"),
    ]

    def __init__(self, text: Content, keys: Iterable[tuple[str, str]]) -> None:
        super().__init__()
        self._text = text
        self._keys = tuple(keys)

    def compose(self) -> ComposeResult:
        with VerticalScroll(classes="dialog full"):
            if self._text:
                yield Static(self._text, markup=False)
            yield Static("Keys", classes="question", markup=False)
            yield Static(_key_lines(self._keys), markup=False)
            yield Static(Content.styled("Esc goes back. Arrows scroll.", FAINT), markup=False)

    def on_mount(self) -> None:
        self.query_one(VerticalScroll).focus()

    def action_leave(self) -> None:
        self.dismiss(None)


def keys_of(screen: Screen[object]) -> list[tuple[str, str]]:
    """Each key of a screen with what it does, keys of one action together."""
    said: dict[str, list[str]] = {}
    for active in screen.active_bindings.values():
        binding = active.binding
        if binding.tooltip:  # keys of the framework have none
            said.setdefault(binding.tooltip, []).append(screen.app.get_key_display(binding))
    return [(", ".join(dict.fromkeys(keys)), words) for words, keys in said.items()]


def _key_lines(keys: Iterable[tuple[str, str]]) -> Content:
    lines = [
        Content.assemble((f"{key:>12}", "bold $text-accent"), f"  {words}") for key, words in keys
    ]
    return Content("\n").join(lines)
