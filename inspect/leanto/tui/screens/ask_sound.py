"""Asks whether everything open at a station is sound, and lists what that would mark."""

from __future__ import annotations

from itertools import groupby

from textual.app import ComposeResult
from textual.binding import Binding
from textual.containers import VerticalScroll
from textual.content import Content
from textual.screen import ModalScreen
from textual.widgets import Static

from leanto.checklist.condition import Condition
from leanto.tui.marks import FAINT, OPEN_MARK, mark, style
from leanto.tui.shown import on_one_line
from leanto.tui.sound_here import SoundHere


class AskSound(ModalScreen[bool]):
    """True when all of it is to be marked."""

    # Not Enter: it is pressed often, and this must be meant.
    BINDINGS = [
        Binding("e,y", "take", "Mark them", id="sound.take", tooltip="Mark all of them sound"),
        Binding("escape,n", "leave", "Leave", id="sound.leave", tooltip="Mark nothing"),
    ]

    def __init__(self, station: str, offered: SoundHere) -> None:
        super().__init__()
        self._station = station
        self._offered = offered

    def compose(self) -> ComposeResult:
        count = len(self._offered.marked)
        items = "1 item" if count == 1 else f"{count} items"
        question = f"Did you look at all of it, and is it sound? {self._station}: {items}"
        with VerticalScroll(classes="dialog"):
            yield Static(question, classes="question", markup=False)
            yield Static("e or y: mark them sound.  Esc: mark nothing.", markup=False)
            yield Static(_lines(self._offered), markup=False)

    def on_mount(self) -> None:
        self.query_one(VerticalScroll).focus()

    def action_take(self) -> None:
        self.dismiss(True)

    def action_leave(self) -> None:
        self.dismiss(False)


def _lines(offered: SoundHere) -> Content:
    lines = [
        Content.assemble(
            (f"{mark(Condition.SOUND)} ", style(Condition.SOUND)), on_one_line(item.prompt)
        )
        for item in offered.marked
    ]
    for why, items in groupby(offered.left, lambda one: one[1]):
        lines.append(Content.styled(f"These stay open ({why}):", FAINT))
        lines += [Content(f"{OPEN_MARK} {on_one_line(item.prompt)}") for item, _ in items]
    return Content("\n").join(lines)
