"""Notes and photos of the item where the walker stands."""

from __future__ import annotations

from dataclasses import dataclass
from pathlib import Path

from textual import events, on, work
from textual.message import Message

from leanto.errors import LeantoError
from leanto.job import Job
from leanto.record.entry import Noted, PhotoRemoved
from leanto.record.observation import ObservationKey
from leanto.tui import standing as places
from leanto.tui.pictures import dropped_pictures, first_folder
from leanto.tui.screens.ask_choice import AskChoice
from leanto.tui.screens.ask_photo import AskPhoto
from leanto.tui.screens.ask_text import AskText, Written
from leanto.tui.screens.place import PlaceScreen, about
from leanto.tui.shown import on_one_line


class AttachingScreen(PlaceScreen):
    """Notes are kept as drafts until they are recorded; photos are copied in a thread."""

    @dataclass
    class PhotoKept(Message):
        """A picture was copied into the job."""

        path: Path
        name: str

    @dataclass
    class PhotoRefused(Message):
        """A picture was not taken."""

        path: Path
        why: str

    def __init__(self, job: Job) -> None:
        super().__init__(job)
        self.drafts: dict[ObservationKey, str] = {}
        """Notes that were begun and not kept."""
        self._photo_folder = first_folder(Path.home())
        self._photo_text = ""

    def action_note(self) -> None:
        item = self.item()
        if item is None or not self.may_write():
            return
        key = self.standing.key
        seen = self.job.walk.observations.get(key)
        text = self.drafts.get(key, seen.note if seen else "")

        def keep(note: str) -> None:
            if note != (seen.note if seen else ""):
                self.job.record(Noted(**about(key), text=note))

        def left(written: Written | None) -> None:
            if written is None or written.kept:
                self.drafts.pop(key, None)
                self.recorded()
            elif written.text != (seen.note if seen else ""):
                self.drafts[key] = written.text
                self.say("The note is not kept yet: n opens it again as you left it.")

        self.app.push_screen(AskText(f"Note: {on_one_line(item.prompt)}", text, keep), left)

    def action_photo(self) -> None:
        item = self.item()
        if item is None or not self.may_write():
            return
        key = self.standing.key

        def chosen(paths: tuple[Path, ...] | None) -> None:
            if paths:
                self._photo_text = ""
                self.say(f"Copying {', '.join(on_one_line(path.name) for path in paths)} ...")
                self._copy(key, paths)

        question = f"Photo: {on_one_line(item.prompt)}"
        self.app.push_screen(AskPhoto(question, self._photo_folder, self._photo_text), chosen)

    @work(thread=True, name="copy photos", exit_on_error=False)
    def _copy(self, key: ObservationKey, paths: tuple[Path, ...]) -> None:
        for path in paths:
            try:
                photo = self.job.add_photo(key, path)
            except LeantoError as error:
                self.post_message(self.PhotoRefused(path, str(error)))
            else:
                self.post_message(self.PhotoKept(path, photo.original_name))

    @on(PhotoKept)
    def _photo_kept(self, message: PhotoKept) -> None:
        self._photo_folder = message.path.absolute().parent
        self.recorded()
        self.say(f"Photo kept: {on_one_line(message.name)}")

    @on(PhotoRefused)
    def _photo_refused(self, message: PhotoRefused) -> None:
        self._photo_text = str(message.path)
        self.refuse(message.why)

    def on_paste(self, event: events.Paste) -> None:
        """A picture that is dragged onto the walk is a photo of the item."""
        if self.app.screen is not self:
            self.app.post_message(events.Paste(event.text))
            return
        paths = dropped_pictures(event.text)
        if self.item() is None or not paths:
            return
        event.stop()
        if self.may_write():
            self.say(f"Copying {', '.join(on_one_line(path.name) for path in paths)} ...")
            self._copy(self.standing.key, paths)

    def action_look_at_photos(self) -> None:
        seen = places.observation_of(self.job, self.standing) if self.item() else None
        if seen is None or not seen.photos:
            self.say("There is no photo here to look at.")
        else:
            # Loaded only now: the walk starts without.
            from leanto.tui.screens.photos import PhotosScreen

            self.app.push_screen(PhotosScreen(self.job, seen.photos))

    def action_photo_out(self) -> None:
        seen = places.observation_of(self.job, self.standing) if self.item() else None
        if seen is None or not seen.photos:
            self.say("There is no photo here to take out.")
            return
        key, photos = seen.key, seen.photos

        def chosen(at: int | None) -> None:
            if at is not None and self.record(PhotoRemoved(**about(key), digest=photos[at].digest)):
                self.say("Taken out. The file stays in the job's folder; u brings it back.")

        names = [photo.original_name for photo in photos]
        self.app.push_screen(AskChoice("Take out which photo?", names), chosen)
