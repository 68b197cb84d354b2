"""One line that holds one of several words: left and right change it, or its first letters."""

from __future__ import annotations

import time
from collections.abc import Sequence

from textual import events
from textual.content import Content
from textual.message import Message
from textual.reactive import reactive
from textual.widget import Widget

from leanto.tui.shown import on_one_line

_TYPING_SECONDS = 1.2
"""Letters that come later than this start a new word."""


class ChoiceLine(Widget, can_focus=True):
    """Shows the word between arrows, and how many there are."""

    DEFAULT_CSS = """
    ChoiceLine { height: 1; }
    ChoiceLine:focus { background: $primary; color: $text; text-style: bold; }
    """

    value: reactive[str] = reactive("")

    class Changed(Message):
        """Another word was chosen."""

        def __init__(self, choice: ChoiceLine, value: str) -> None:
            super().__init__()
            self.choice, self.value = choice, value

        @property
        def control(self) -> ChoiceLine:
            return self.choice

    def __init__(self, value: str, choices: Sequence[str], nothing: str = "nothing") -> None:
        """``nothing`` is what an empty choice is called."""
        super().__init__()
        self.choices = tuple(choices)
        self._nothing = nothing
        self._typed = ""
        self._typed_at = 0.0
        self.set_reactive(ChoiceLine.value, value)

    def render(self) -> Content:
        number = self.choices.index(self.value) + 1 if self.value in self.choices else 0
        word = on_one_line(self.value) or self._nothing
        if not number:
            word = f"{word}?" if self.value else "choose"
        return Content.assemble(f"< {word} >", (f" {number}/{len(self.choices)}", "dim"))

    def change(self, by: int) -> None:
        if not self.choices or self.disabled:
            return
        if self.value in self.choices:
            at = (self.choices.index(self.value) + by) % len(self.choices)
        else:
            at = 0 if by > 0 else len(self.choices) - 1
        self._choose(self.choices[at])

    def on_click(self) -> None:
        self.change(1)

    def on_key(self, event: events.Key) -> None:
        """Taken here and not by bindings, so that the key is done before the next one."""
        steps = {"left": -1, "right": 1, "space": 1}
        letter = event.character
        if event.key in steps:
            self.change(steps[event.key])
        elif letter and letter.isalnum():
            self._type(letter.lower())
        else:
            return
        event.stop()

    def _type(self, letter: str) -> None:
        now = time.monotonic()
        started = self._typed if now - self._typed_at < _TYPING_SECONDS else ""
        for typed in (started + letter, letter):
            chosen = self._starting_with(typed)
            if chosen is not None:
                self._typed, self._typed_at = typed, now
                self._choose(chosen)
                return

    def _starting_with(self, typed: str) -> str | None:
        """The next word that starts so; the same letter again goes on to the next one."""
        at = self.choices.index(self.value) if self.value in self.choices else -1
        after = (*self.choices[at + 1 :], *self.choices[: at + 1])
        order = after if len(typed) == 1 else (*self.choices[max(at, 0) :], *self.choices)
        named = (word or self._nothing for word in order)
        found = [word for word, name in zip(order, named, strict=True) if name.startswith(typed)]
        return found[0] if found else None

    def _choose(self, word: str) -> None:
        if word != self.value:
            self.value = word
            self.post_message(self.Changed(self, word))
