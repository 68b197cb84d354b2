"""Photos that come into a watched folder, each taken in where the walker stood at its time."""

from __future__ import annotations

from dataclasses import dataclass
from pathlib import Path

from textual import on, work
from textual.message import Message
from textual.timer import Timer

from leanto.errors import LeantoError
from leanto.job import Job
from leanto.record.observation import ObservationKey
from leanto.tui.folder_watch import FolderWatch
from leanto.tui.screens.ask_folder import AskFolder
from leanto.tui.screens.attaching import AttachingScreen
from leanto.tui.shown import on_one_line

LOOKS_EVERY_S = 2.0


class WatchingScreen(AttachingScreen):
    """Looks into the folder in a thread, so that a slow share never holds up the keys."""

    @dataclass
    class Came(Message):
        """A new picture was taken in, or why it was not."""

        name: str
        key: ObservationKey | None = None
        why_not: str = ""

    @dataclass
    class Looked(Message):
        """One look into the folder is over."""

    def __init__(self, job: Job) -> None:
        super().__init__(job)
        self._watch: FolderWatch | None = None
        self._looks: Timer | None = None
        self._is_looking = False

    @property
    def watched(self) -> str:
        """The folder that is watched; empty for none."""
        return self._watch.folder.name or str(self._watch.folder) if self._watch else ""

    def action_watch(self) -> None:
        if not self.standing.station or not self.may_write():
            return
        if self._watch is not None:
            self.stop_watching()
            self.say("No folder is watched any more.")
            return

        def chosen(folder: Path | None) -> None:
            if folder is not None:
                self._start(folder)

        self.app.push_screen(AskFolder(self._photo_folder), chosen)

    def stop_watching(self) -> None:
        if self._looks is not None:
            self._looks.stop()
        self._watch, self._looks = None, None
        self.show()

    def _start(self, folder: Path) -> None:
        watch = self._watch = FolderWatch(folder)
        self._photo_folder = folder
        self._looks = self.set_interval(LOOKS_EVERY_S, self._look_again)
        self.show()
        self.say(
            f"Watching {on_one_line(str(folder))}. What is there already ({watch.already_there}) "
            "is left alone; new pictures are taken in. w stops."
        )

    def _look_again(self) -> None:
        if self._watch is not None and not self._is_looking:
            self._is_looking = True
            self._look_into(self._watch, self.standing.key)

    @work(thread=True, name="watch folder", exit_on_error=False)
    def _look_into(self, watch: FolderWatch, standing: ObservationKey) -> None:
        try:
            for path in watch.look():
                self.post_message(self._taken_in(path, standing))
        finally:
            self.post_message(self.Looked())

    def _taken_in(self, path: Path, standing: ObservationKey) -> Came:
        """Keep one picture: at the place of its time, without a time where the walker stands."""
        try:
            found = self.job.key_by_time(path)
            if found.key is None and found.taken_at is not None:
                at = f"{found.taken_at:%Y-%m-%d %H:%M}"
                return self.Came(path.name, why_not=f"was taken {at}, when nobody walked here")
            key = found.key or standing
            self.job.add_photo(key, path)
        except LeantoError as error:
            return self.Came(path.name, why_not=f"is left out: {error}")
        return self.Came(path.name, key)

    @on(Looked)
    def _looked(self) -> None:
        self._is_looking = False

    @on(Came)
    def _came(self, message: Came) -> None:
        name = on_one_line(message.name)
        if message.key is None:
            self.refuse(f"{name} {message.why_not}. p adds it by hand.")
            return
        self.recorded()
        item = self.job.grounds.items[message.key.item]
        station = self.job.grounds.stations[message.key.station]
        self.say(f"Photo {name} kept: {on_one_line(item.prompt)}, {on_one_line(station.name)}")
