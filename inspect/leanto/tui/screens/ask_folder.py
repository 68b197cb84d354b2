"""Asks which folder to watch for new pictures."""

from __future__ import annotations

from pathlib import Path

from textual.app import ComposeResult
from textual.binding import Binding
from textual.containers import Vertical
from textual.widgets import Input, Static

from leanto.tui.pictures import typed_paths
from leanto.tui.screens.dialog import Dialog
from leanto.tui.shown import on_one_line


class AskFolder(Dialog[Path | None]):
    """Returns a folder that is there; None when it was left."""

    BINDINGS = [
        Binding("escape", "leave", "Leave", id="folder.leave", tooltip="Watch nothing"),
    ]

    def __init__(self, likely: Path) -> None:
        super().__init__()
        self._likely = likely
        self._input = Input(placeholder=str(likely), compact=True)
        self._said = Static(f"Enter alone: {on_one_line(str(likely))}", markup=False)

    @property
    def editor(self) -> Input:
        return self._input

    def compose(self) -> ComposeResult:
        with Vertical(classes="dialog"):
            yield Static("Watch which folder for new photos?", classes="question", markup=False)
            yield self._input
            yield self._said
            yield Static(
                "Such as the folder your phone syncs to. Each new photo goes to the item where "
                "you stood when it was taken, by the phone's clock.  Esc leaves.",
                markup=False,
            )

    def on_input_submitted(self, event: Input.Submitted) -> None:
        event.stop()
        paths = typed_paths(event.value) or (self._likely,)
        if len(paths) == 1 and paths[0].is_dir():
            self.dismiss(paths[0].absolute())
        else:
            self._said.add_class("refused")
            self._said.update(f"! There is no folder {on_one_line(str(paths[0]))}.")

    def action_leave(self) -> None:
        self.dismiss(None)
