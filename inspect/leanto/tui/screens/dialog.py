"""A small screen over another one that asks for one thing and returns it."""

from __future__ import annotations

from typing import Generic, TypeVar

from textual import events
from textual.screen import ModalScreen
from textual.widgets import Input, TextArea

Answer = TypeVar("Answer")


class Dialog(ModalScreen[Answer], Generic[Answer]):
    """Has one place to type in; keys pressed before it stood there are not lost."""

    AUTO_FOCUS = ""

    @property
    def editor(self) -> Input | TextArea:
        raise NotImplementedError

    def on_mount(self) -> None:
        self.set_focus(self.editor)

    def submit(self) -> None:
        """As if Enter were pressed in the editor."""
        if isinstance(self.editor, Input):
            self.call_later(self.editor.action_submit)

    def on_key(self, event: events.Key) -> None:
        """A key for the editor gets here only when it was not there yet to take it."""
        if event.key == "enter":
            event.stop()
            self.submit()
            return
        if event.character is None or not event.character.isprintable():
            return
        event.stop()
        if isinstance(self.editor, Input):
            self.editor.insert_text_at_cursor(event.character)
        else:
            self.editor.insert(event.character)

    def on_paste(self, event: events.Paste) -> None:
        """Text gets here only when the editor was not there yet to take it."""
        event.stop()
        if isinstance(self.editor, Input):
            self.editor.insert_text_at_cursor(event.text.partition("\n")[0])
        else:
            self.editor.insert(event.text)
