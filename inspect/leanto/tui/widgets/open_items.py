"""The items of the station, the open ones first to be seen; shown on wide screens."""

from __future__ import annotations

from dataclasses import dataclass

from textual import events
from textual.content import Content
from textual.message import Message
from textual.reactive import reactive
from textual.widget import Widget

from leanto.checklist.condition import Condition
from leanto.tui.marks import mark, style
from leanto.tui.paragraphs import one_line
from leanto.tui.shown import on_one_line


@dataclass(frozen=True, slots=True)
class ItemRow:
    """One item of the station with its latest answer."""

    id: str
    prompt: str
    condition: Condition | None
    is_current: bool


class OpenItems(Widget, can_focus=False):
    """One line an item: its mark, and the word of its answer or that it is open."""

    @dataclass
    class Chosen(Message):
        """An item was clicked."""

        item: str

    rows: reactive[tuple[ItemRow, ...]] = reactive(())

    def render(self) -> Content:
        shown = self._shown()
        return Content("\n").join(_line(row, self.size.width) for row in shown)

    def on_click(self, event: events.Click) -> None:
        shown = self._shown()
        if event.y < len(shown):
            self.post_message(self.Chosen(shown[event.y].id))

    def _shown(self) -> tuple[ItemRow, ...]:
        """As many rows as fit, with the current one among them."""
        height = max(self.size.height, 1)
        at = next((at for at, row in enumerate(self.rows) if row.is_current), 0)
        start = max(0, min(at - height // 2, len(self.rows) - height))
        return self.rows[start : start + height]


def _line(row: ItemRow, width: int) -> Content:
    pointer = ">" if row.is_current else " "
    word = Content.styled(str(row.condition or "open"), style(row.condition))
    left = Content.assemble(
        pointer, (mark(row.condition), style(row.condition)), " ", on_one_line(row.prompt)
    )
    return one_line(left, word, width).stylize("bold" if row.is_current else "")
