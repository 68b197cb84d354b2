"""One field of the building form: what it is called, what stands in it, what is wrong with it."""

from __future__ import annotations

from collections.abc import Sequence

from textual.app import ComposeResult
from textual.containers import Horizontal
from textual.content import Content
from textual.message import Message
from textual.widget import Widget
from textual.widgets import Input, Static

from leanto.quantities import shown
from leanto.tui.shown import on_one_line
from leanto.tui.widgets.building_choice import ChoiceLine
from leanto.tui.widgets.building_fields import Field, Kind

MAX_CHARS = 200


class FieldRow(Horizontal):
    """A row of the form. It holds text, right or wrong; the form knows which."""

    DEFAULT_CSS = """
    FieldRow { height: 1; }
    FieldRow.-headed { height: 2; }
    FieldRow .label { width: 22; padding: 0 1; }
    FieldRow.-headed .label { height: 2; }
    FieldRow.-headed .control, FieldRow.-headed .remark { margin-top: 1; }
    FieldRow .control { width: 30; }
    FieldRow Input { background: $panel; }
    FieldRow .remark { width: 1fr; height: 1; padding: 0 1; color: $text-muted;
        text-wrap: nowrap; text-overflow: ellipsis; }
    FieldRow.-wrong .remark { color: $text-error; text-style: bold; }
    """

    class Changed(Message):
        """Another text stands in a field."""

    def __init__(self, path: str, field: Field, text: str, choices: Sequence[str]) -> None:
        """``path`` is that of the field in the whole building.

        A change is told once, and what was put in by ``hold`` is none."""
        super().__init__(classes="-headed" if field.heading else "")
        self.path, self.field = path, field
        self._told, self._choices = text, choices
        self._fault = ""

    def compose(self) -> ComposeResult:
        label = Content(self.field.label)
        if self.field.heading:
            label = Content.assemble((self.field.heading.upper(), "bold"), "\n", label)
        yield Static(label, classes="label", markup=False)
        if self.field.kind is Kind.CHOICE:
            choice = ChoiceLine(self._told, self._choices, self.field.nothing)
            choice.add_class("control")
            yield choice
        else:
            yield Input(
                self._told,
                compact=True,
                max_length=MAX_CHARS,
                classes="control",
            )
        yield Static(on_one_line(shown().words(self.field.help)), classes="remark", markup=False)

    @property
    def box(self) -> Widget:
        """What takes the keys."""
        return self.query_one(".control")

    @property
    def text(self) -> str:
        """What stands in the field at this moment."""
        box = self.box
        return box.value if isinstance(box, Input | ChoiceLine) else self._told

    def on_input_changed(self, event: Input.Changed) -> None:
        event.stop()
        self._tell()

    def on_choice_line_changed(self, event: ChoiceLine.Changed) -> None:
        event.stop()
        self._tell()

    def _tell(self) -> None:
        if self.text != self._told:
            self._told = self.text
            self.post_message(self.Changed())

    def hold(self, text: str) -> None:
        """Show another text."""
        box = self.box
        self._told = text
        if isinstance(box, Input | ChoiceLine) and box.value != text:
            box.value = text

    def offer(self, choices: Sequence[str]) -> None:
        """Let a choice be made among these words."""
        box = self.box
        if isinstance(box, ChoiceLine) and box.choices != tuple(choices):
            box.choices = tuple(choices)
            box.refresh()

    def remark(self, fault: str) -> None:
        """Say what is wrong, or else what is meant."""
        if fault == self._fault:
            return
        self._fault = fault
        self.set_class(bool(fault), "-wrong")
        text = f"! {on_one_line(fault)}" if fault else on_one_line(shown().words(self.field.help))
        self.query_one(".remark", Static).update(text)
