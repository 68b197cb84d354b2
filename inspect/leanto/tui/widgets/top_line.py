"""The first line of the walk: which building, which station, how far."""

from __future__ import annotations

from dataclasses import dataclass

from textual.content import Content
from textual.reactive import reactive
from textual.widget import Widget

from leanto.tui.paragraphs import one_line
from leanto.tui.short_place import short_place
from leanto.tui.shown import on_one_line

_LEAST_STATION = 16


@dataclass(frozen=True, slots=True)
class Headline:
    building: str = ""
    station: str = ""
    answered: int = 0
    asked: int = 0
    skipped: int = 0
    """Open items where the walker stood already."""
    no_access: int = 0
    here_answered: int = 0
    here_asked: int = 0
    here_skipped: int = 0
    read_only: bool = False
    watched: str = ""
    """The folder that is watched for photos."""
    held: int = 0
    """Entries that the disk refuses: they are in memory only."""


class TopLine(Widget):
    """Station and progress always; the building's name as far as there is room."""

    headline: reactive[Headline] = reactive(Headline())

    def render(self) -> Content:
        shown, width = self.headline, self.size.width
        notice = f"NOT SAVED: {shown.held}  " if shown.held else ""
        notice += "READ ONLY  " if shown.read_only else ""
        notice += "watching  " if shown.watched else ""
        station = on_one_line(shown.station)
        progress = notice + _progress(shown)
        if len(progress) + len(station) + 2 > width:
            progress = notice + _progress_in_short(shown)
            station = short_place(station, max(width - len(progress) - 1, _LEAST_STATION))
        room = width - len(progress) - len(station) - 4
        building = on_one_line(shown.building)
        left = Content.styled(station, "bold")
        if room >= 12 and building:
            name = Content.styled(building, "").truncate(room, ellipsis=True)
            left = Content.assemble(name, ": ", left)
        return one_line(left, Content(progress), width)


def _progress(shown: Headline) -> str:
    if not shown.asked:
        return "no building yet"
    return (
        f"here {shown.here_answered} of {shown.here_asked}, skipped {shown.here_skipped};  "
        f"answered {shown.answered} of {shown.asked}, open {shown.asked - shown.answered}, "
        f"skipped {shown.skipped}, no access {shown.no_access}"
    )


def _progress_in_short(shown: Headline) -> str:
    if not shown.asked:
        return "no building yet"
    here_skipped = f" skip {shown.here_skipped}" if shown.here_skipped else ""
    return (
        f"here {shown.here_answered}/{shown.here_asked}{here_skipped}, "
        f"answered {shown.answered} of {shown.asked}, open {shown.asked - shown.answered}, "
        f"skip {shown.skipped}"
    )
