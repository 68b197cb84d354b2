"""Each screen looks as it did: its text at both sizes, its colors in both looks.

The files under ``snapshots/`` are made anew by
``LEANTO_SNAPSHOTS=remake python3 inspect test tests/tui/test_snapshots.py``: look at the difference
before it is kept.
"""

from __future__ import annotations

import os
import time
from collections.abc import Iterator
from datetime import UTC, datetime
from itertools import groupby
from pathlib import Path

import pytest
from painted import Run, painted
from textual.pilot import Pilot
from textual.widgets import Input, TextArea

from leanto.building.model import Building
from leanto.checklist.condition import Condition
from leanto.job import Job
from leanto.library import Library
from leanto.record.entry import Answered, DangerMarked, Measured, Noted, Zoned
from leanto.tui.app import LeantoApp
from leanto.tui.themes import BRIGHT_SUN, DIM_LIGHT

SNAPSHOTS = Path(__file__).resolve().parent / "snapshots"
REMAKE = os.environ.get("LEANTO_SNAPSHOTS") == "remake"
NORTH = "main.north.outside"
ALIKE = 4
"""So often the same in a row: an assessment waits for the keys to rest before it starts."""
SCREENS = {
    "walk": ("f2",),
    "help": ("question_mark",),
    "findings": ("escape", "f3"),
    "open": ("tab",),
    "decide": ("f4",),
    "scope": ("f5", "o"),
    "details": ("enter",),
    "origin": ("escape", "w"),
    "quantity": ("escape", "e"),
    "money": ("escape", "f9"),
    "reports": ("f6",),
    "bids": ("b",),
    "building": ("f7",),
}


@pytest.fixture
def walked(
    tmp_path: Path, shed: Building, small_library: Library, monkeypatch: pytest.MonkeyPatch
) -> Iterator[Job]:
    """The same job at the same hour whoever runs this, wherever and whenever."""
    monkeypatch.setattr("leanto.job.job.read_library", lambda folders: small_library)
    monkeypatch.chdir(tmp_path)
    monkeypatch.setenv("TZ", "UTC")
    if hasattr(time, "tzset"):
        time.tzset()
    at = datetime(2026, 6, 1, 9, 0, tzinfo=UTC)
    with Job.create(Path("shed"), shed, who="walker", clock=lambda: at) as job:
        job.record(Answered(station="site", item="ground", condition=Condition.WORN))
        job.record(Answered(station=NORTH, item="sill", condition=Condition.FAILED))
        job.record(Measured(station=NORTH, item="sill", measure="probe_depth_in", value=1.5))
        job.record(
            Zoned(station=NORTH, item="sill", left_ft=2, bottom_ft=0, width_ft=4, height_ft=1)
        )
        job.record(Noted(station=NORTH, item="sill", text="Soft at the downspout."))
        job.record(DangerMarked(station=NORTH, item="boards", on=True))
        job.record(
            Answered(
                station=NORTH, item="boards", condition=Condition.NO_ACCESS, reason="stored hay"
            )
        )
        yield job
    monkeypatch.undo()
    if hasattr(time, "tzset"):
        time.tzset()


async def settle(pilot: Pilot[None]) -> None:
    """Wait until nothing is worked on, no notice stands, and the screen stays as it is."""
    await pilot.pause()
    alike, before = 0, None
    while alike < ALIKE:
        pilot.app.clear_notifications()
        for typed in pilot.app.screen.query("Input, TextArea").results(Input | TextArea):
            typed.cursor_blink = False
        await pilot.pause(0.05)
        working = any(not worker.is_finished for worker in pilot.app.workers)
        now = painted(pilot.app)
        alike = 0 if working or now != before else alike + 1
        before = now


@pytest.mark.parametrize("size", [(80, 24), (120, 40)], ids=["80x24", "120x40"])
async def test_every_screen_looks_as_it_did(walked: Job, size: tuple[int, int]) -> None:
    app, changed = LeantoApp(walked), []
    async with app.run_test(size=size) as pilot:
        for name, keys in SCREENS.items():
            for key in keys:
                await pilot.press(key)
                await settle(pilot)
            looks = []
            for theme in (DIM_LIGHT, BRIGHT_SUN):
                app.theme = theme.name
                await settle(pilot)
                looks.append((theme.name, painted(app)))
            snapshot = written(looks)
            path = SNAPSHOTS / f"{name}-{size[0]}x{size[1]}.txt"
            if REMAKE:
                path.parent.mkdir(exist_ok=True)
                path.write_text(snapshot, "utf-8")
            elif not path.exists() or path.read_text("utf-8") != snapshot:
                changed.append(f"{path.name}, now:\n{snapshot}")
    assert not changed, "\n".join(changed)


def written(looks: list[tuple[str, list[list[Run]]]]) -> str:
    """The text once, and the styles of each look: what they are, and how far each one goes."""
    first = looks[0][1]
    lines = [f"|{''.join(run.text for run in line)}|" for line in first]
    for name, painting in looks:
        names: dict[str, str] = {}
        spans = [_spans(line, names) for line in painting]
        lines += ["", name, *(f"{short} {style}" for style, short in names.items())]
        for span, same in groupby(spans):
            count = len(list(same))
            lines.append(f"{count} x {span}" if count > 1 else span)
    return "\n".join(lines) + "\n"


def _spans(line: list[Run], names: dict[str, str]) -> str:
    spans = []
    for style, same in groupby(line, key=_style):
        short = names.setdefault(style, chr(ord("a") + len(names) % 26) + "'" * (len(names) // 26))
        spans.append(f"{short}{sum(len(run.text) for run in same)}")
    return " ".join(spans)


def _style(run: Run) -> str:
    color, background = (f"#{bytes(one).hex()}" for one in (run.color, run.background))
    return f"{color} on {background} {run.looks}".rstrip()
