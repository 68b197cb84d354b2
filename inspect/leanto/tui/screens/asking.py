"""Questions of the walk at the bottom of the screen, one after the other."""

from __future__ import annotations

from collections.abc import Sequence

from textual import on
from textual.message import Message

from leanto.errors import LeantoError
from leanto.job import Job
from leanto.tui.asking import Asking, Step
from leanto.tui.screens.watching import WatchingScreen
from leanto.tui.showing import sketch_here
from leanto.tui.widgets.field_bar import FieldBar, FieldInput
from leanto.tui.widgets.follows import Follows
from leanto.tui.widgets.item_view import ItemView
from leanto.tui.widgets.placing_view import PlacingView


class AskingScreen(WatchingScreen):
    """Puts the steps of an answer, and keeps each value as soon as it is given."""

    def __init__(self, job: Job) -> None:
        super().__init__(job)
        self._asking = Asking([])

    def _ask(self, steps: Sequence[Step]) -> None:
        self._asking = Asking(steps)
        self._ask_on()

    def _ask_on(self) -> None:
        bar = self.query_one(FieldBar)
        step = self._asking.step
        if step is not None:
            bar.ask(step.field(), self._asking.left)
        elif bar.is_open:
            bar.close()
        self._show_placing()

    def _show_placing(self) -> None:
        """The surface with the rectangle that is being placed stands in for the item."""
        placer = self.query_one(FieldBar).placer
        # Not by a class of the screen, which would have every style computed anew.
        self.query_one(PlacingView).display = placer is not None
        self.query_one(ItemView).display = placer is None
        self.query_one(Follows).display = placer is None
        if placer is not None:
            sketch = sketch_here(self.job, self.standing)
            self.query_one(PlacingView).show(sketch, placer.zone)

    @on(FieldInput.Entered)
    @on(FieldInput.Skipped)
    @on(FieldInput.WentBack)
    @on(FieldInput.Placed)
    def _on_field(self, message: Message) -> None:
        """Act on what was done in the field bar."""
        match message:
            case FieldInput.Entered(typed=typed):
                self._take(typed)
            case FieldInput.Placed(key=key):
                self.query_one(FieldBar).place(key)
                self._show_placing()
            case FieldInput.Skipped():
                self._asking.skip()
                self._ask_on()
            case FieldInput.WentBack():
                self._asking.back()
                self._ask_on()

    def _take(self, typed: str) -> None:
        bar = self.query_one(FieldBar)
        before = len(self.job.entries)
        try:
            self._asking.take(bar.read(typed))
        except LeantoError as error:
            bar.refuse(typed, str(error))
            return
        if len(self.job.entries) > before:
            self.recorded()
        self._ask_on()
