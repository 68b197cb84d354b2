"""What the disk refuses is held in memory, said, and tried again; or saved in another folder."""

from __future__ import annotations

import contextlib
from collections.abc import Sequence
from pathlib import Path

from leanto.errors import NotKept
from leanto.tui.asking import Step
from leanto.tui.fields import Value, text_field
from leanto.tui.screens.asking import AskingScreen
from leanto.tui.shown import on_one_line

_TRIED_AFTER_S = 5.0
_LONGEST_PATH = 500


class HoldingScreen(AskingScreen):
    """No answer is lost to a full disk: the top line counts those that are in memory only."""

    def on_mount(self) -> None:
        self.job.hold_what_is_refused()
        self.set_interval(_TRIED_AFTER_S, self._keep_held)

    def recorded(self) -> None:
        super().recorded()
        if self.job.held_because is not None:
            reason = self.job.held_because.what.partition(": ")[2].partition(".")[0]
            self.refuse(
                f"In memory only: {reason}. It is tried again every few seconds; s saves the job "
                "in another folder."
            )

    def _keep_held(self) -> None:
        if self.job.held:
            with contextlib.suppress(NotKept):
                self.job.keep_held()
                self.show()
                self.say("Saved: everything is on the disk again.")

    def action_save_elsewhere(self) -> None:
        if steps := self.steps_elsewhere():
            self._ask(steps)

    def steps_elsewhere(self) -> list[Step]:
        """The question for a folder; none where nothing is held, which is said."""
        if not self.job.held:
            self.say("Everything is on the disk. s is for a disk that is full or failing.")
            return []

        def save(folder: Value) -> Sequence[Step]:
            self.job.go_on_in(Path(str(folder)).expanduser())
            self.show()
            self.say(f"Saved. The walk goes on in {on_one_line(str(self.job.places.folder))}.")
            return []

        return [Step(lambda: text_field("Save in which new folder", _LONGEST_PATH), save)]
