"""A photo in half cells: each cell shows two pixels, one above the other."""

from __future__ import annotations

from rich_pixels import Pixels
from textual.widgets import Static

from leanto.errors import PhotoError
from leanto.job import Job
from leanto.record.observation import Photo

_MANY_COLORS = ("256", "truecolor", "windows")
_LEAST_COLUMNS = 12
_LEAST_ROWS = 4


class PhotoView(Static):
    """Shows the photo as large as there is room, or says why it cannot be shown."""

    def __init__(self, job: Job) -> None:
        super().__init__(markup=False)
        self._job = job
        self._photo: Photo | None = None

    def show(self, photo: Photo) -> None:
        self._photo = photo
        self._draw()

    def on_resize(self) -> None:
        self._draw()

    def _draw(self) -> None:
        columns, rows = self.size.width, self.size.height
        if self._photo is None or not columns:
            return
        # In 16 colors nothing can be made out of a picture of wood.
        if self.app.console.color_system not in _MANY_COLORS:
            self.update("This terminal has too few colors to show it. Open the file instead.")
        elif columns < _LEAST_COLUMNS or rows < _LEAST_ROWS:
            self.update("There is too little room to show it.")
        else:
            try:
                picture = self._job.small_photo(self._photo, columns, 2 * rows)
            except PhotoError as error:
                self.update(str(error))
            else:
                self.update(Pixels.from_image(picture))
