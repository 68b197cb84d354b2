"""Long work shows how far it is, can be stopped, and tells what went wrong."""

from __future__ import annotations

import threading
from typing import Any

import pytest
from textual.app import App
from textual.widgets import ProgressBar

from leanto.errors import ReportError
from leanto.tui.screens.working import Progress, Working


async def settle(pilot: Any) -> None:
    while any(not worker.is_finished for worker in pilot.app.workers):
        await pilot.pause(0.02)
    await pilot.pause()


async def test_it_shows_how_far_it_is_and_returns_what_was_made() -> None:
    go_on, returned = threading.Event(), []

    def work(progress: Progress) -> str:
        progress(3, 12)
        go_on.wait(30)
        return "made"

    app: App[None] = App()
    async with app.run_test(size=(80, 24)) as pilot:
        app.push_screen(Working("Writing", work), returned.append)
        await pilot.pause(0.2)
        bar = app.screen.query_one(ProgressBar)
        assert (bar.progress, bar.total) == (3, 12)
        go_on.set()
        await settle(pilot)
        assert returned == ["made"]
        assert not isinstance(app.screen, Working)


async def test_escape_stops_it_at_the_next_step() -> None:
    go_on, returned, ended = threading.Event(), [], []

    def work(progress: Progress) -> str:
        try:
            progress(1, 9)
            go_on.wait(30)
            progress(2, 9)
        except BaseException as error:
            ended.append(type(error).__name__)
            raise
        return "made"

    app: App[None] = App()
    async with app.run_test(size=(80, 24)) as pilot:
        app.push_screen(Working("Writing", work), returned.append)
        await pilot.pause(0.1)
        await pilot.press("escape")
        go_on.set()
        while not ended:
            await pilot.pause(0.02)
        await settle(pilot)
        assert ended == ["Stopped"]
        assert returned == [None]
        assert not isinstance(app.screen, Working)


@pytest.mark.parametrize("error", [ReportError("The disk is full.", "Free some space.")])
async def test_what_is_refused_is_told(error: Exception) -> None:
    returned: list[str | None] = []

    def work(progress: Progress) -> str:
        raise error

    app: App[None] = App()
    async with app.run_test(size=(80, 24), notifications=True) as pilot:
        app.push_screen(Working("Writing", work), returned.append)
        await settle(pilot)
        await pilot.pause()
        assert returned == [None]
        assert not isinstance(app.screen, Working)
