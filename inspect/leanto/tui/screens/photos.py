"""The photos of one item, one at a time."""

from __future__ import annotations

from collections.abc import Sequence

from textual.app import ComposeResult
from textual.binding import Binding
from textual.content import Content
from textual.screen import Screen
from textual.widgets import Footer, Static

from leanto.job import Job
from leanto.record.observation import Photo
from leanto.tui.shown import on_one_line
from leanto.tui.widgets.photo_view import PhotoView


class PhotosScreen(Screen[None]):
    """Left and right go to the neighbors; the words stand there in every terminal."""

    BINDINGS = [
        Binding("escape,v,enter", "back", "Back", id="photos.back", tooltip="Back to the item"),
        Binding("left", "step(-1)", "Before", id="photos.before", tooltip="The photo before"),
        Binding("right", "step(1)", "Next", id="photos.next", tooltip="The photo after"),
    ]

    def __init__(self, job: Job, photos: Sequence[Photo]) -> None:
        super().__init__()
        self._job = job
        self._photos = photos
        self._at = len(photos) - 1
        """The latest is the one that was just taken."""

    def compose(self) -> ComposeResult:
        yield Static(id="photo-words", markup=False)
        yield PhotoView(self._job)
        yield Footer(compact=True, show_command_palette=False)

    def on_mount(self) -> None:
        self._show()

    def action_step(self, by: int) -> None:
        self._at = min(max(self._at + by, 0), len(self._photos) - 1)
        self._show()

    def action_back(self) -> None:
        self.dismiss()

    def _show(self) -> None:
        photo = self._photos[self._at]
        place = f"{self._at + 1} of {len(self._photos)}"
        taken = f", taken {photo.taken_at:%Y-%m-%d %H:%M}" if photo.taken_at else ""
        path = on_one_line(str(self._job.photo_path(photo)))
        words = f"Photo {place}: {on_one_line(photo.original_name)}{taken}\n{path}"
        self.query_one("#photo-words", Static).update(Content(words))
        self.query_one(PhotoView).show(photo)
