"""The bar at the bottom of the walk: one question, a line to type in, and what is wrong with it."""

from __future__ import annotations

from dataclasses import dataclass

from textual import events
from textual.app import ComposeResult
from textual.containers import Horizontal, Vertical
from textual.content import Content
from textual.message import Message
from textual.widgets import Input, Static

from leanto.tui.fields import YES_NO, Field, Value
from leanto.tui.marks import FAINT
from leanto.tui.paragraphs import packed
from leanto.tui.placer import KEYS, Placer
from leanto.tui.shown import on_one_line
from leanto.tui.words import zone_in_words


class FieldInput(Input):
    """A line to type in that answers as soon as the answer is whole.

    Keys that come while an answer is on its way belong to what follows it, so they are passed on
    instead of being added to the answer.
    """

    @dataclass
    class Entered(Message):
        """An answer was typed."""

        typed: str

    @dataclass
    class Skipped(Message):
        """The question is left open."""

    @dataclass
    class WentBack(Message):
        """The question before is wanted again."""

    @dataclass
    class Placed(Message):
        """A key for the rectangle on the sketch."""

        key: str

    @dataclass
    class TypedOn(Message):
        """A key came while the answer was on its way."""

        key: str
        character: str | None

    def __init__(self) -> None:
        super().__init__(compact=True, select_on_focus=False)
        self.field: Field | None = None
        """The question; None while an answer is on its way."""

    def on_key(self, event: events.Key) -> None:
        if self.field is None:
            self.post_message(self.TypedOn(event.key, event.character))
        elif message := self.answer_to(event.key, event.character):
            self.post_message(message)
        else:
            return
        event.stop()
        event.prevent_default()

    def answer_to(self, key: str, character: str | None) -> Message | None:
        """What a key that ends or leaves the question leads to; None for any other key."""
        typed = character if character is not None and character.isprintable() else ""
        if key == "enter":
            return self._entered(self.value)
        if key == "escape":
            return self.Skipped()
        if not self.value and self.field is not None and self.field.placer is not None:
            if key in KEYS or typed.lower() in KEYS:
                return self.Placed(key)
        elif key == "up":
            return self.WentBack()
        if key == "backspace" and not self.value:
            return self.WentBack()
        if typed and self.field is not None and self.field.is_whole(self.value + typed):
            return self._entered(self.value + typed)
        return None

    def _entered(self, typed: str) -> Message:
        self.field = None
        return self.Entered(typed)


class FieldBar(Vertical):
    """Shows a field and passes on what is typed."""

    def __init__(self) -> None:
        super().__init__(id="field-bar")
        self.display = False
        self._field: Field | None = None
        self._question = Static(id="question", markup=False)
        self._input = FieldInput()
        self._beside = Static(id="beside", markup=False)

    def compose(self) -> ComposeResult:
        yield self._question
        with Horizontal():
            yield Static(">", id="prompt", markup=False)
            yield self._input
        yield self._beside

    @property
    def is_open(self) -> bool:
        return self._field is not None

    @property
    def placer(self) -> Placer | None:
        """The rectangle that is being placed."""
        return self._field.placer if self._field is not None else None

    def place(self, key: str) -> None:
        """Move or size the rectangle, and say where it lies now."""
        if self._field is not None and self._field.placer is not None:
            self._field.placer.press(key)
            self._put(self._field)

    def ask(self, field: Field, left: int) -> None:
        """Put a question; ``left`` is how many come after it."""
        self._field = field
        self._put(field)
        self._input.placeholder = field.default
        self._input.value = ""
        self._beside.remove_class("refused")
        more = f"{left} more after this. " if left else ""
        self._beside.update(Content(f"{on_one_line(field.help)} {more}Esc leaves it open.".strip()))
        self._reopen()

    def read(self, typed: str) -> Value:
        """The value of what was typed into the open field; raises LeantoError."""
        if self._field is None:
            raise ValueError("no field is open")
        return self._field.value_of(typed)

    def refuse(self, typed: str, why: str) -> None:
        """Say why an answer cannot be taken; what was typed stays."""
        self._input.value = typed
        self._input.cursor_position = len(typed)
        self._beside.add_class("refused")
        self._beside.update(Content(f"! {why}"))
        self._reopen()

    def close(self) -> None:
        self._field = None
        self._input.field = None
        self.display = False
        self.screen.set_focus(None)

    def feed(self, key: str, character: str | None) -> Message | None:
        """Take a key that was pressed before the line was there to receive it.

        The message that it leads to is not posted but returned, to be acted on before the next
        key is looked at.
        """
        message = self._input.answer_to(key, character)
        if message is None and character is not None:
            self._input.insert_text_at_cursor(character)
        return message

    def _put(self, field: Field) -> None:
        self._question.update(_question(field, self.screen.size.width - 2))

    def _reopen(self) -> None:
        self._input.field = self._field
        self.display = True
        # At once and not after the next refresh: the next key may be here already.
        self.screen.set_focus(self._input)


def _question(field: Field, width: int) -> Content:
    pieces = [Content.styled(f"{on_one_line(field.label)}  ", "bold")]
    if field.limits:
        pieces.append(Content.styled(f"{field.limits}  ", FAINT))
    for number, option in enumerate(field.options, start=1):
        key = option[0] if field.options == YES_NO else str(number)
        pieces.append(Content.assemble((key, "bold $text-accent"), f" {on_one_line(option)}  "))
    if field.placer is not None:
        pieces.append(Content.styled(f"Enter: {zone_in_words(field.placer.zone)}", "bold"))
    if field.default:
        origin = f" ({field.default_from})" if field.default_from else ""
        pieces.append(Content.styled(f"Enter: {on_one_line(field.default)}{origin}", FAINT))
    return Content("\n").join(packed(pieces, width))
