"""The first line of the walk: which building, which station, how far."""

from __future__ import annotations

from dataclasses import dataclass

from textual.content import Content
from textual.reactive import reactive
from textual.widget import Widget

from leanto.tui.paragraphs import one_line
from leanto.tui.shown import on_one_line


@dataclass(frozen=True, slots=True)
class Headline:
    building: str = ""
    station: str = ""
    answered: int = 0
    asked: int = 0
    no_access: int = 0
    read_only: bool = False


class TopLine(Widget):
    """Station and progress always; the building's name as far as there is room."""

    headline: reactive[Headline] = reactive(Headline())

    def render(self) -> Content:
        shown, width = self.headline, self.size.width
        progress = (
            f"answered {shown.answered} of {shown.asked}, "
            f"open {shown.asked - shown.answered}, no access {shown.no_access}"
        )
        if not shown.asked:
            progress = "no building yet"
        if shown.read_only:
            progress = f"READ ONLY  {progress}"
        station = on_one_line(shown.station)
        room = width - len(progress) - len(station) - 4
        building = on_one_line(shown.building)
        left = Content.styled(station, "bold")
        if room >= 12 and building:
            name = Content.styled(building, "").truncate(room, ellipsis=True)
            left = Content.assemble(name, ": ", left)
        return one_line(left, Content(progress), width)
