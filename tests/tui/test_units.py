"""One key shows every screen in the other units; nothing recorded changes by it."""

from __future__ import annotations

from collections.abc import AsyncIterator
from contextlib import asynccontextmanager

import pytest
from textual import events
from textual.pilot import Pilot

from leanto.checklist.condition import Condition
from leanto.job import Job
from leanto.quantities import System
from leanto.record.entry import AirMeasured, Answered, Measured, MovedTo, UnitsSet, Zoned
from leanto.record.observation import ObservationKey
from leanto.tui.app import LeantoApp

NORTH = "main.north.outside"
SILL = {"station": NORTH, "item": "sill"}


@asynccontextmanager
async def open_app(job: Job) -> AsyncIterator[Pilot[None]]:
    app = LeantoApp(job)
    async with app.run_test(size=(120, 40)) as pilot:
        await pilot.pause()
        yield pilot


def on_screen(pilot: Pilot[None]) -> str:
    """Every character that is shown now."""
    width, height = pilot.app.size
    lines = pilot.app.screen._compositor.render_strips()  # what a terminal gets
    assert len(lines) == height and width
    return "\n".join(line.text for line in lines)


@pytest.fixture
def walked(job: Job) -> Job:
    job.record(Answered(**SILL, condition=Condition.FAILED))
    job.record(Measured(**SILL, measure="probe_depth_in", value=1.5))
    job.record(Measured(**SILL, measure="run_ft", value=7.25))
    job.record(Zoned(**SILL, left_ft=2.0, bottom_ft=0.0, width_ft=7.25, height_ft=1.0))
    job.record(AirMeasured(station=NORTH, temp_f=68.0, humidity_pct=50.0))
    return job


async def test_a_key_switches_every_screen_and_records_no_other_fact(walked: Job) -> None:
    async with open_app(walked) as pilot:
        await pilot.press("j", *"north", "enter", "up")
        feet = on_screen(pilot)
        assert "1.5 in" in feet and "7' 3\"" in feet and " m " not in feet
        facts = (walked.walk.observations, walked.walk.air, walked.walk.building)

        before = walked.entries[-1].id
        await pilot.press("m")
        await pilot.pause()
        metric = on_screen(pilot)
        assert "38.1 mm" in metric and "2.21 m" in metric
        assert "7' 3" not in metric and "1.5 in" not in metric

        for key, wanted in (("f5", " m "), ("f7", " m²")):
            await pilot.press(key)
            await pilot.pause()
            assert wanted in on_screen(pilot), key
            await pilot.press("escape")

        await pilot.press("m")
        await pilot.pause()
        assert walked.units is System.FEET
        assert (walked.walk.observations, walked.walk.air, walked.walk.building) == facts
        later = [type(e.body) for e in walked.entries if e.id > before]
        assert set(later) <= {UnitsSet, MovedTo} and later.count(UnitsSet) == 2
        assert "7' 3\"" in on_screen(pilot)


async def test_a_bare_number_means_what_is_shown_and_either_is_understood(job: Job) -> None:
    job.show_in(System.METRIC)
    async with open_app(job) as pilot:
        await pilot.press("j", *"north", "enter", "3")
        assert "0 to" in on_screen(pilot) and "mm" in on_screen(pilot)
        await typed(pilot, "38.1")
        await typed(pilot, "7' 3\"")
        seen = job.walk.observations[ObservationKey(NORTH, "sill")]
        assert seen.measures == {"probe_depth_in": pytest.approx(1.5), "run_ft": 7.25}


async def test_the_units_wait_while_a_building_is_being_typed(job: Job) -> None:
    async with open_app(job) as pilot:
        await pilot.press("f7", *"xy", "escape")
        await pilot.press("m")
        assert job.units is System.FEET


async def typed(pilot: Pilot[None], text: str) -> None:
    pilot.app.post_message(events.Paste(text))
    await pilot.press("enter")
