"""Writes both reports, shows how far it is, and can be stopped."""

from __future__ import annotations

from collections.abc import Iterable
from datetime import datetime
from pathlib import Path
from typing import TYPE_CHECKING, ClassVar

from textual.app import ComposeResult
from textual.binding import Binding, BindingType
from textual.containers import VerticalScroll
from textual.content import Content
from textual.message import Message
from textual.screen import Screen
from textual.widgets import Footer, ProgressBar, Static
from textual.worker import Worker, WorkerState, get_current_worker

from leanto.errors import LeantoError
from leanto.job import Job
from leanto.record.entry import MovedTo
from leanto.tui.screens.details import labeled, listed, said
from leanto.tui.screens.rows_screen import in_one_line
from leanto.tui.screens.working import Stopped
from leanto.tui.shown import visible

if TYPE_CHECKING:
    from leanto.reports.written import WrittenReport

_FILES = (
    ("Condition report, for the owner", "condition-report.pdf"),
    ("Repair scope without prices, for bidders", "repair-scope.pdf"),
)


class ReportsScreen(Screen[None]):
    """Enter writes, Escape stops or goes back."""

    BINDINGS: ClassVar[list[BindingType]] = [
        Binding("enter", "write", "Write both", id="reports.write", tooltip="Write both PDFs"),
        Binding("escape", "back", "Stop or back", id="reports.back", tooltip="Stop, or go back"),
    ]
    DEFAULT_CSS = """
    ReportsScreen #answer { padding: 0 1; background: $panel; height: auto; text-style: bold; }
    ReportsScreen #body { padding: 1; height: 1fr; }
    ReportsScreen #progress { margin: 0 1; display: none; }
    ReportsScreen.-writing #progress { display: block; }
    """

    class Written(Message):
        """A page of a report is done."""

        def __init__(self, report: int, done: int, total: int) -> None:
            super().__init__()
            self.report, self.done, self.total = report, done, total

    def __init__(self, job: Job) -> None:
        super().__init__()
        self.job = job
        self._worker: Worker[tuple[WrittenReport, ...]] | None = None

    def compose(self) -> ComposeResult:
        yield Static(id="answer", markup=False)
        yield ProgressBar(id="progress", total=None, show_eta=False)
        with VerticalScroll(id="body"):
            yield Static(id="text", markup=False)
        yield Footer(compact=True, show_command_palette=False)

    def on_mount(self) -> None:
        self._say(_answer(self.job))
        self._show(_before(self.job))
        self.query_one("#body").focus()

    @property
    def is_writing(self) -> bool:
        return self._worker is not None and not self._worker.is_finished

    def action_write(self) -> None:
        if self.is_writing:
            return
        self.add_class("-writing")
        self.query_one(ProgressBar).update(total=None, progress=0)
        self._say("Writing the reports. Escape stops; a report is never left half written.")
        self._worker = self.run_worker(
            self._write, thread=True, exclusive=True, exit_on_error=False, group="reports"
        )

    def action_back(self) -> None:
        if self.is_writing and self._worker is not None:
            self._say("Stopping at the next page.")
            self._worker.cancel()
        else:
            self.dismiss()

    def on_reports_screen_written(self, event: Written) -> None:
        if self.is_writing:
            self.query_one(ProgressBar).update(total=event.total, progress=event.done)
            title = _FILES[min(event.report, len(_FILES)) - 1][0]
            self._say(f"{title}: {event.done} of {event.total}. Escape stops.")

    def on_worker_state_changed(self, event: Worker.StateChanged) -> None:
        if event.worker is not self._worker or not event.worker.is_finished:
            return
        self.remove_class("-writing")
        if event.state is WorkerState.SUCCESS and event.worker.result is not None:
            self._say(f"{len(event.worker.result)} reports are written.")
            self._show(_after(event.worker.result))
        elif event.state is WorkerState.CANCELLED or isinstance(event.worker.error, Stopped):
            self._say("Stopped. Press Enter to write both reports.")
            self._show(_before(self.job))
        elif isinstance(event.worker.error, LeantoError):
            self._say(in_one_line(event.worker.error))
        elif event.worker.error is not None:
            raise event.worker.error

    def _write(self) -> tuple[WrittenReport, ...]:
        """Runs in a thread of its own; tells how far it is by messages only."""
        worker = get_current_worker()
        report, last_done = 1, 0

        def progress(done: int, total: int) -> None:
            nonlocal report, last_done
            if worker.is_cancelled:
                raise Stopped
            report += done < last_done
            last_done = done
            self.post_message(self.Written(report, done, total))

        return self.job.write_reports(progress=progress)

    def _say(self, text: str) -> None:
        self.query_one("#answer", Static).update(visible(text))

    def _show(self, parts: Iterable[Content]) -> None:
        self.query_one("#text", Static).update(Content("\n\n").join(list(parts)))


def _answer(job: Job) -> str:
    """Whether the reports that stand there tell of the walk as it is now."""
    made = [_written_at(job.places.reports / name) for _, name in _FILES]
    changed = [entry.at for entry in job.entries if not isinstance(entry.body, MovedTo)]
    standing = [at for at in made if at is not None]
    if len(standing) < len(made):
        told = "are not written yet" if not standing else "are written in part"
        return f"The reports {told}. Enter writes both as PDF."
    if changed and changed[-1] > min(standing):
        return "The reports are older than your last entry. Enter writes both anew."
    return "The reports are written, and tell of everything entered. Enter writes both anew."


def _before(job: Job) -> list[Content]:
    """What will be written where, and what stands there now."""
    parts = [labeled("Folder", str(job.places.reports))]
    parts += [labeled(title, _standing(job.places.reports / name)) for title, name in _FILES]
    try:
        notices = job.notices
    except LeantoError as error:
        notices = (in_one_line(error),)
    if notices:
        parts.append(listed("Before you do", notices))
    return parts


def _written_at(path: Path) -> datetime | None:
    try:
        return datetime.fromtimestamp(path.stat().st_mtime).astimezone()
    except OSError:
        return None


def _standing(path: Path) -> str:
    written = _written_at(path)
    if written is None:
        return f"{path.name}, not written yet"
    return f"{path.name}, written {written:%Y-%m-%d %H:%M}; it will be replaced"


def _after(written: Iterable[WrittenReport]) -> list[Content]:
    parts = []
    for report in written:
        pages = "1 page" if report.pages == 1 else f"{report.pages} pages"
        parts.append(labeled(str(report.path), pages))
        if report.not_drawn:
            parts.append(
                labeled("No font here draws", f"{report.not_drawn}; a code stands in its place")
            )
    parts.append(said("Prices are planning allowances, not quotes. Nothing is called safe."))
    return parts
