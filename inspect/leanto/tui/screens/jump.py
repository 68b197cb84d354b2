"""Asks for a station by a part of its name."""

from __future__ import annotations

from collections.abc import Sequence

from textual.app import ComposeResult
from textual.binding import Binding
from textual.containers import Vertical
from textual.widgets import Input, OptionList, Static

from leanto.building.station import Station
from leanto.tui.screens.dialog import Dialog
from leanto.tui.shown import on_one_line


class Jump(Dialog[str | None]):
    """Returns the station's id; the list narrows as one types."""

    BINDINGS = [
        Binding("escape", "leave", "Leave", id="jump.leave", tooltip="Stay where you are"),
        Binding("up", "move(-1)", "Up", show=False),
        Binding("down", "move(1)", "Down", show=False),
    ]

    def __init__(self, stations: Sequence[Station]) -> None:
        super().__init__()
        self._stations = stations
        self._found = list(stations)
        self._input = Input(placeholder="part of its name: north in", compact=True)
        self._list = OptionList(compact=True)
        self._list.can_focus = False

    @property
    def editor(self) -> Input:
        return self._input

    def compose(self) -> ComposeResult:
        with Vertical(classes="dialog tall"):
            yield Static("Jump to a station", classes="question", markup=False)
            yield self._input
            yield self._list
            yield Static("Enter goes there.  Esc stays here.", markup=False)

    def on_mount(self) -> None:
        self._write()

    def on_input_changed(self, event: Input.Changed) -> None:
        event.stop()
        self._found = matching(self._stations, event.value)
        self._write()

    def on_input_submitted(self, event: Input.Submitted) -> None:
        event.stop()
        at = self._list.highlighted
        if self._found:
            self.dismiss(self._found[at or 0].id)

    def on_option_list_option_selected(self, event: OptionList.OptionSelected) -> None:
        self.dismiss(self._found[event.option_index].id)

    def action_move(self, by: int) -> None:
        at = (self._list.highlighted or 0) + by
        if self._found:
            self._list.highlighted = min(max(at, 0), len(self._found) - 1)

    def action_leave(self) -> None:
        self.dismiss(None)

    def _write(self) -> None:
        self._list.clear_options()
        self._list.add_options(on_one_line(station.name) for station in self._found)
        self._list.highlighted = 0 if self._found else None


def matching(stations: Sequence[Station], typed: str) -> list[Station]:
    """The stations whose name holds every word typed, each as the beginning of a word of it."""
    wanted = typed.lower().split()
    found = []
    for station in stations:
        words = station.name.lower().replace(",", " ").split()
        if all(any(word.startswith(want) for word in words) for want in wanted):
            found.append(station)
    return found
