"""What tests of the walk share: a running walk, and what is on its screen."""

from __future__ import annotations

import html
import re
from collections.abc import AsyncIterator
from contextlib import asynccontextmanager

from textual import events
from textual.pilot import Pilot
from textual.widgets import Static

from leanto.job import Job
from leanto.record.observation import Observation, ObservationKey
from leanto.tui.app import LeantoApp
from leanto.tui.widgets.field_bar import FieldBar

SOUTH = "main.south.outside"
WEST = "main.west.outside"

_TEXT = re.compile(r'<text [^>]*\by="([\d.]+)"[^>]*>([^<]*)</text>')


@asynccontextmanager
async def walking(job: Job, size: tuple[int, int] = (80, 24)) -> AsyncIterator[Pilot[None]]:
    app = LeantoApp(job)
    async with app.run_test(size=size) as pilot:
        await pilot.pause()
        yield pilot


def seen(job: Job, item: str, station: str = SOUTH, number: int = 1) -> Observation:
    return job.walk.observations[ObservationKey(station, item, number)]


def said(pilot: Pilot[None]) -> str:
    return str(pilot.app.screen.query_one("#said", Static).content)


def is_asking(pilot: Pilot[None]) -> bool:
    return pilot.app.screen.query_one(FieldBar).is_open


def question(pilot: Pilot[None]) -> str:
    return str(pilot.app.screen.query_one("#question", Static).content)


def screen_text(pilot: Pilot[None]) -> str:
    """Everything that is painted, line by line, read off the picture of the screen."""
    lines: dict[float, str] = {}
    for at, text in _TEXT.findall(pilot.app.export_screenshot()):
        lines[float(at)] = lines.get(float(at), "") + html.unescape(text).replace("\xa0", " ")
    return "\n".join(lines[at] for at in sorted(lines))


async def typed(pilot: Pilot[None], text: str) -> None:
    """Type a text and Enter; the text arrives as a paste, which costs one wait instead of many."""
    pilot.app.post_message(events.Paste(text))
    await pilot.press("enter")
