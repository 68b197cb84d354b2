"""Every screen opens on an empty job, on one observation and on thousands, and bears any size."""

from __future__ import annotations

from pathlib import Path

import pytest
from invented import invented
from large_walk import large_job
from textual.pilot import Pilot

from leanto.job import Job
from leanto.library import read_library
from leanto.tui.app import SCREENS, LeantoApp
from leanto.tui.screens.origin import OriginScreen
from leanto.tui.screens.rows_screen import RowsScreen

SIZE = (80, 24)


@pytest.fixture(scope="module", params=[0, 1, 2_000], ids=["none", "one", "thousands"])
def folder(request: pytest.FixtureRequest, tmp_path_factory: pytest.TempPathFactory) -> Path:
    """A job with so many observations; with none it has not even a building."""
    folder = tmp_path_factory.mktemp("jobs") / "job"
    if not request.param:
        Job.create(folder).close()
        return folder
    return large_job(folder, invented("demo").building, read_library().checklist, request.param)


async def settle(pilot: Pilot[None]) -> None:
    """Wait until nothing is worked on; workers that were cancelled count as done."""
    await pilot.pause()
    while any(not worker.is_finished for worker in pilot.app.workers):
        await pilot.pause(0.05)
    await pilot.pause()


async def test_every_screen_opens_and_its_rows_are_moved_over(folder: Path) -> None:
    with Job.open(folder) as job:
        app, before = LeantoApp(job), len(job.entries)
        async with app.run_test(size=SIZE) as pilot:
            opened = set()
            for name in ("walk", *SCREENS):
                app.action_show(name)
                await settle(pilot)
                screen = app.screen
                opened.add(type(screen))
                if not isinstance(screen, RowsScreen):
                    continue
                await pilot.press("end", "s", "w")
                shown, there = screen.table.counts
                assert shown == there
                assert isinstance(app.screen, OriginScreen) == (screen.table.selected is not None)
            assert len(opened) == 1 + len(SCREENS)
        assert all(entry.body.kind == "moved to" for entry in job.entries[before:])


@pytest.mark.parametrize("folder", [1], indirect=True, ids=["one"])
async def test_a_screen_may_change_its_size_at_any_moment(folder: Path) -> None:
    with Job.open(folder) as job:
        app = LeantoApp(job)
        async with app.run_test(size=SIZE) as pilot:
            for name in ("walk", *SCREENS):
                app.action_show(name)
                for width, height in ((1, 1), (30, 5), (200, 60)):
                    await pilot.resize_terminal(width, height)
                await settle(pilot)
                assert app.screen.size == (200, 60)
