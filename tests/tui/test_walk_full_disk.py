"""A disk that is full: the walk says so, holds the answers, tries again, and saves elsewhere."""

from __future__ import annotations

import asyncio
from collections.abc import Callable, Iterator
from pathlib import Path

import pytest
from textual.pilot import Pilot
from textual.widgets import Static

from leanto.building.model import Building
from leanto.checklist.condition import Condition
from leanto.job import Job
from leanto.record.entry import Answered, Noted
from leanto.tui.app import LeantoApp
from leanto.tui.widgets.top_line import TopLine

resource = pytest.importorskip("resource")
Fill = Callable[[], None]


@pytest.fixture
def fill(job: Job) -> Iterator[tuple[Fill, Fill]]:
    """Fills the disk for this process: no file grows beyond the record's log; and empties it."""
    soft, hard = resource.getrlimit(resource.RLIMIT_FSIZE)

    def full() -> None:
        size = job.places.record.with_name("record.db-wal").stat().st_size
        resource.setrlimit(resource.RLIMIT_FSIZE, (size, hard))

    def free() -> None:
        resource.setrlimit(resource.RLIMIT_FSIZE, (soft, hard))

    yield full, free
    free()


def said(pilot: Pilot[None]) -> str:
    return str(pilot.app.screen.query_one("#said", Static).content)


def top(pilot: Pilot[None]) -> str:
    return pilot.app.screen.query_one(TopLine).render().plain


def answers(folder: Path) -> list[Condition]:
    with Job.open(folder) as job:
        return [one.body.condition for one in job.entries if isinstance(one.body, Answered)]


async def test_answers_are_held_and_kept_once_there_is_space(
    job: Job, fill: tuple[Fill, Fill], monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr("leanto.tui.screens.holding._TRIED_AFTER_S", 0.05)
    full, free = fill
    async with LeantoApp(job).run_test(size=(80, 24)) as pilot:
        await pilot.press("1")
        full()
        await pilot.press("enter", "1", "enter", "5")
        assert "In memory only: the disk is full" in said(pilot)
        assert "s saves the job in another folder" in said(pilot)
        assert "NOT SAVED: 2" in top(pilot)
        assert len(job.walk.observations) == 3
        await pilot.press("q")
        assert pilot.app.is_running
        free()
        while job.held:
            await asyncio.sleep(0.02)
        await pilot.pause()
        assert "everything is on the disk again" in said(pilot)
        assert "NOT SAVED" not in top(pilot)
    job.close()

    assert answers(job.places.folder) == [Condition.SOUND, Condition.SOUND, Condition.NOT_THERE]


async def test_the_walk_goes_on_in_another_folder(
    job: Job, fill: tuple[Fill, Fill], tmp_path: Path
) -> None:
    for number in range(30):  # so that the log, and with it the disk, is larger than a new record
        job.record(Noted(station="site", item="ground", text=str(number)))
    first = job.places.folder
    full, _ = fill
    async with LeantoApp(job).run_test(size=(80, 24)) as pilot:
        full()
        await pilot.press("1", "s")
        for key in str(first):
            await pilot.press("slash" if key == "/" else "full_stop" if key == "." else key)
        await pilot.press("enter")
        assert "is a job already" in str(pilot.app.screen.query_one("#beside", Static).content)
        await pilot.press("2", "enter")
        assert f"The walk goes on in {first}2" in said(pilot)
        assert "NOT SAVED" not in top(pilot)
        await pilot.press("enter", "5")
        assert not job.held
    job.close()

    assert answers(Path(f"{first}2")) == [Condition.SOUND, Condition.NOT_THERE]
    assert answers(first) == []


async def test_with_space_there_is_nothing_to_save_elsewhere(job: Job) -> None:
    async with LeantoApp(job).run_test(size=(80, 24)) as pilot:
        await pilot.press("s")
        assert "Everything is on the disk" in said(pilot)


@pytest.mark.skipif(not hasattr(resource, "prlimit"), reason="cannot fill another process's disk")
def test_a_real_walk_on_a_full_disk(tmp_path: Path, shed: Building) -> None:
    from screen import Program

    folder = tmp_path / "job"
    Job.create(folder, shed).close()
    program = Program(["walk", str(folder)])
    try:
        program.wait_for("answered 0 of ")
        program.press("1")
        program.wait_for("answered 1 of ")
        size = (folder / "record.db-wal").stat().st_size
        _, hard = resource.prlimit(program.process.pid, resource.RLIMIT_FSIZE)
        resource.prlimit(program.process.pid, resource.RLIMIT_FSIZE, (size, hard))
        program.press("\r1")
        program.wait_for("NOT SAVED: 1")
        program.press("\r5")
        program.wait_for("answered 3 of ")
        resource.prlimit(program.process.pid, resource.RLIMIT_FSIZE, (hard, hard))
        program.wait_for("everything is on the disk again")
        program.kill()
    finally:
        program.close()

    assert answers(folder) == [Condition.SOUND, Condition.SOUND, Condition.NOT_THERE]
