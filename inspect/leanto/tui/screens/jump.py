"""Asks for a station by a part of its name."""

from __future__ import annotations

from collections.abc import Sequence
from typing import ClassVar

from textual.binding import Binding, BindingType

from leanto.building.station import Station
from leanto.tui.screens.narrowing import Narrowing


class Jump(Narrowing[str]):
    """Returns the station's id; the list narrows as one types."""

    BINDINGS: ClassVar[list[BindingType]] = [
        Binding("escape", "leave", "Leave", id="jump.leave", tooltip="Stay where you are"),
    ]

    def __init__(self, stations: Sequence[Station]) -> None:
        super().__init__(
            "Jump to a station",
            "part of its name: north in",
            "Enter goes there.  Esc stays here.",
        )
        self._stations = stations

    def found(self, typed: str) -> Sequence[tuple[str, str]]:
        return [(station.name, station.id) for station in matching(self._stations, typed)]


def matching(stations: Sequence[Station], typed: str) -> list[Station]:
    """The stations whose name holds every word typed, each as the beginning of a word of it."""
    wanted = typed.lower().split()
    found = []
    for station in stations:
        words = station.name.lower().replace(",", " ").split()
        if all(any(word.startswith(want) for word in words) for want in wanted):
            found.append(station)
    return found
