"""Long work in a thread, with a bar that shows how far it is; Escape stops it."""

from __future__ import annotations

from collections.abc import Callable
from typing import ClassVar, Generic, TypeVar

from textual.app import ComposeResult
from textual.binding import Binding, BindingType
from textual.containers import Vertical
from textual.message import Message
from textual.screen import ModalScreen
from textual.widgets import ProgressBar, Static
from textual.worker import Worker, WorkerState, get_current_worker

from leanto.errors import LeantoError
from leanto.tui.shown import visible

Result = TypeVar("Result")
Progress = Callable[[int, int], None]


class Stopped(Exception):
    """Raised inside the work, at its next step, once it is to stop."""


class Working(ModalScreen[Result | None], Generic[Result]):
    """Returns what the work made; None when it was stopped, or refused, which is told."""

    BINDINGS: ClassVar[list[BindingType]] = [
        Binding("escape", "stop", "Stop", id="working.stop", tooltip="Stop at the next step"),
    ]

    class Stepped(Message):
        """So much of the work is done."""

        def __init__(self, done: int, total: int) -> None:
            super().__init__()
            self.done, self.total = done, total

    def __init__(self, title: str, work: Callable[[Progress], Result]) -> None:
        """``work`` calls what it is given after each step; what that raises ends it."""
        super().__init__()
        self._title, self._work = title, work
        self._worker: Worker[Result] | None = None

    def compose(self) -> ComposeResult:
        with Vertical(classes="dialog"):
            yield Static(visible(self._title), classes="question", markup=False)
            yield ProgressBar(total=None, show_eta=False)
            yield Static("Esc stops.", id="how", markup=False)

    def on_mount(self) -> None:
        self._worker = self.run_worker(self._run, thread=True, exit_on_error=False)

    def action_stop(self) -> None:
        if self._worker is not None:
            self._worker.cancel()
            self.query_one("#how", Static).update("Stopping at the next step.")

    def on_working_stepped(self, event: Stepped) -> None:
        self.query_one(ProgressBar).update(total=event.total, progress=event.done)

    def on_worker_state_changed(self, event: Worker.StateChanged) -> None:
        if event.worker is not self._worker or not event.worker.is_finished:
            return
        error = event.worker.error
        if event.state is WorkerState.SUCCESS:
            self.dismiss(event.worker.result)
        elif event.state is WorkerState.CANCELLED or isinstance(error, Stopped):
            self.notify("Stopped. Nothing was left half done.", markup=False)
            self.dismiss(None)
        elif isinstance(error, LeantoError):
            self.notify(visible(str(error)), severity="error", markup=False, timeout=10)
            self.dismiss(None)
        elif error is not None:
            raise error

    def _run(self) -> Result:
        worker = get_current_worker()

        def progress(done: int, total: int) -> None:
            if worker.is_cancelled:
                raise Stopped
            self.post_message(self.Stepped(done, total))

        return self._work(progress)
