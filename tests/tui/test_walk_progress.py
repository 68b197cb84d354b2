"""The progress line: answered, open and skipped, here and in all."""

from __future__ import annotations

import pytest
from tui_walking import SOUTH, walking

from leanto.checklist.condition import Condition
from leanto.job import Job
from leanto.record.entry import Answered, MovedTo
from leanto.tui.widgets.top_line import TopLine


@pytest.mark.parametrize(
    ("size", "expected"),
    [
        ((80, 24), "here 1/2, answered 1 of 9, open 8, skip 1"),
        (
            (120, 40),
            "here 1 of 2, skipped 0;  answered 1 of 9, open 8, skipped 1, no access 0",
        ),
    ],
)
async def test_progress_tells_what_is_answered_open_and_skipped(
    job: Job, size: tuple[int, int], expected: str
) -> None:
    job.record(MovedTo(station="site", item="ground"))  # stood at, and left open
    job.record(Answered(station=SOUTH, item="sill", condition=Condition.SOUND))
    job.record(MovedTo(station=SOUTH, item="boards"))
    async with walking(job, size) as pilot:
        line = pilot.app.screen.query_one(TopLine)

        assert expected in line.render().plain


async def test_where_the_walker_stands_is_not_skipped(job: Job) -> None:
    job.record(MovedTo(station="site", item="ground"))
    async with walking(job) as pilot:
        headline = pilot.app.screen.query_one(TopLine).headline
        assert (headline.skipped, headline.here_skipped) == (0, 0)
        await pilot.press("pagedown")
        headline = pilot.app.screen.query_one(TopLine).headline
        assert (headline.skipped, headline.here_skipped) == (1, 0)
        await pilot.press("pageup")
        headline = pilot.app.screen.query_one(TopLine).headline
        assert headline.skipped == 0
