"""Asks which pictures to add: a path typed, pasted or dragged here, or the newest of a folder."""

from __future__ import annotations

from dataclasses import dataclass
from pathlib import Path

from textual import work
from textual.app import ComposeResult
from textual.binding import Binding
from textual.containers import Vertical
from textual.message import Message
from textual.widgets import Input, Static

from leanto.tui.pictures import newest_picture, typed_paths
from leanto.tui.screens.dialog import Dialog
from leanto.tui.shown import on_one_line


class AskPhoto(Dialog[tuple[Path, ...] | None]):
    """Returns the paths as they were given, not looked into; None when it was left."""

    BINDINGS = [
        Binding("escape", "leave", "Leave", id="photo.leave", tooltip="Add no picture"),
    ]

    @dataclass
    class Found(Message):
        """The newest picture of a folder, or None."""

        folder: Path
        picture: Path | None

    def __init__(self, question: str, folder: Path, text: str = "") -> None:
        super().__init__()
        self._question = question
        self._folder = folder
        self._newest: Path | None = None
        self._input = Input(text, placeholder="path of the picture", compact=True)
        self._said = Static(f"Looking into {folder} ...", markup=False)

    @property
    def editor(self) -> Input:
        return self._input

    def compose(self) -> ComposeResult:
        with Vertical(classes="dialog"):
            yield Static(self._question, classes="question", markup=False)
            yield self._input
            yield self._said
            yield Static(
                "Type, paste or drag a picture here.  A folder shows its newest picture.  "
                "Esc leaves.",
                markup=False,
            )

    def on_mount(self) -> None:
        self._look()

    @work(thread=True, exclusive=True)
    def _look(self) -> None:
        # In a thread: the folder may lie on a phone or a slow share.
        self.post_message(self.Found(self._folder, newest_picture(self._folder)))

    def on_ask_photo_found(self, message: Found) -> None:
        if message.folder != self._folder:
            return
        self._newest = message.picture
        folder = on_one_line(str(message.folder))
        if message.picture is None:
            self._said.update(f"No picture in {folder}.")
        else:
            self._said.update(
                f"Enter alone takes the newest: {on_one_line(message.picture.name)} in {folder}"
            )

    def on_input_submitted(self, event: Input.Submitted) -> None:
        event.stop()
        paths = typed_paths(event.value)
        if len(paths) == 1 and paths[0].is_dir():
            self._folder, self._newest = paths[0], None
            self._input.value = ""
            self._look()
        elif paths:
            self.dismiss(paths)
        elif self._newest is not None:
            self.dismiss((self._newest,))
        else:
            self._said.add_class("refused")
            self._said.update("! There is no picture to take yet. Type its path.")

    def action_leave(self) -> None:
        self.dismiss(None)
