"""The stations at the left of the walk, with how much of each is done."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from textual import events
from textual.containers import VerticalScroll
from textual.content import Content
from textual.message import Message
from textual.widgets import Static

from leanto.tui.marks import DANGER_MARK, DANGER_STYLE, FAINT
from leanto.tui.paragraphs import one_line
from leanto.tui.shown import on_one_line


@dataclass(frozen=True, slots=True)
class StationRow:
    """One station as it is listed."""

    id: str
    group: str
    """The block it belongs to; empty for the whole building."""
    label: str
    answered: int
    asked: int
    danger: bool


class StationList(VerticalScroll, can_focus=False):
    """A list that is moved through by the keys of the walk, or with the mouse."""

    @dataclass
    class Chosen(Message):
        """A station was clicked."""

        station: str

    def __init__(self) -> None:
        super().__init__(id="stations")
        self._text = Static(markup=False)
        self._rows: Sequence[StationRow] = ()
        self._line_stations: list[str] = []
        self._current = ""

    def compose(self) -> list[Static]:
        return [self._text]

    def show(self, rows: Sequence[StationRow], current: str) -> None:
        if (rows, current) != (self._rows, self._current):
            self._rows, self._current = rows, current
            self._write()

    def on_resize(self) -> None:
        self._write()

    def on_click(self, event: events.Click) -> None:
        offset = event.get_content_offset(self._text)
        if offset is not None and offset.y < len(self._line_stations):
            station = self._line_stations[offset.y]
            if station:
                self.post_message(self.Chosen(station))

    def _write(self) -> None:
        width = self.scrollable_content_region.width
        lines: list[Content] = []
        self._line_stations = []
        group, at = "", 0
        for row in self._rows:
            if row.group and row.group != group:
                lines.append(Content.styled(on_one_line(row.group), FAINT).truncate(width))
                self._line_stations.append("")
            group = row.group
            if row.id == self._current:
                at = len(lines)
            lines.append(_line(row, row.id == self._current, width))
            self._line_stations.append(row.id)
        self._text.update(Content("\n").join(lines))
        self.scroll_to(y=max(0, at - self.size.height // 2), animate=False)


def _line(row: StationRow, is_current: bool, width: int) -> Content:
    done = "+" if row.asked and row.answered == row.asked else " "
    sign = Content.styled(DANGER_MARK, DANGER_STYLE) if row.danger else Content(done)
    pointer = ">" if is_current else " "
    count = Content.styled(f"{row.answered}/{row.asked}", "" if is_current else FAINT)
    left = Content.assemble(pointer, sign, " ", on_one_line(row.label))
    line = one_line(left, count, width)
    return line.stylize("bold reverse" if is_current else "")
