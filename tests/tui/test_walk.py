"""The walk at 80x24: keys are pressed, and the job's record is read."""

from __future__ import annotations

from collections.abc import AsyncIterator
from contextlib import asynccontextmanager
from pathlib import Path
from typing import Any

import pytest
from PIL import Image
from textual import events
from textual.pilot import Pilot
from textual.widgets import Input, Static

from leanto.building.rectangle import Rectangle
from leanto.checklist.condition import Condition
from leanto.errors import JobError
from leanto.job import Job
from leanto.record.entry import Answered, Body, Measured, MovedTo
from leanto.record.observation import Air, Observation, ObservationKey
from leanto.tui.app import LeantoApp
from leanto.tui.assessing import REST_S
from leanto.tui.screens.ask_text import AskText
from leanto.tui.screens.help import Help
from leanto.tui.screens.walk import WalkScreen
from leanto.tui.widgets.field_bar import FieldBar
from leanto.tui.widgets.follows import Follows
from leanto.tui.widgets.item_view import ItemView
from leanto.tui.widgets.top_line import TopLine

SOUTH = "main.south.outside"


@asynccontextmanager
async def walking(job: Job, size: tuple[int, int] = (80, 24)) -> AsyncIterator[Pilot[None]]:
    app = LeantoApp(job)
    async with app.run_test(size=size) as pilot:
        await pilot.pause()
        yield pilot


async def at_the_south_wall(pilot: Pilot[None]) -> None:
    await pilot.press("pagedown")


def seen(job: Job, item: str, station: str = SOUTH, number: int = 1) -> Observation:
    return job.walk.observations[ObservationKey(station, item, number)]


def is_asking(pilot: Pilot[None]) -> bool:
    return pilot.app.screen.query_one(FieldBar).is_open


def said(pilot: Pilot[None]) -> str:
    return str(pilot.app.screen.query_one("#said", Static).content)


def beside(pilot: Pilot[None]) -> str:
    return str(pilot.app.screen.query_one("#beside", Static).content)


async def typed(pilot: Pilot[None], text: str) -> None:
    """Type a text and Enter; the text arrives as a paste, which costs one wait instead of many."""
    pilot.app.post_message(events.Paste(text))
    await pilot.press("enter")


async def test_an_answer_is_kept_with_one_key(job: Job) -> None:
    async with walking(job) as pilot:
        await pilot.press("1")

        assert seen(job, "ground", "site").condition is Condition.SOUND
        assert not is_asking(pilot)


async def test_a_failed_item_asks_for_its_measures_and_its_zone(job: Job) -> None:
    async with walking(job) as pilot:
        await at_the_south_wall(pilot)
        await pilot.press("3")
        assert seen(job, "sill").condition is Condition.FAILED  # before anything is typed
        await typed(pilot, "1 1/2")
        await typed(pilot, "7-3")
        await typed(pilot, "2.5")
        await pilot.press("enter")  # above the floor line: as offered
        await pilot.press("enter")  # width: the length that was measured
        await typed(pilot, '18"')

        kept = seen(job, "sill")
        assert kept.measures == {"probe_depth_in": 1.5, "run_ft": 7.25}
        assert kept.zone == Rectangle(2.5, 0.0, 7.25, 1.5)
        assert not is_asking(pilot)
        await pilot.pause(1.2 * REST_S)  # assessing waits until the keys rest
        await pilot.app.workers.wait_for_complete()
        await pilot.pause()
        follows = pilot.app.screen.query_one(Follows).following
        assert [finding.text for finding in follows.findings] == ["The sill is rotten."]
        assert follows.findings[0].repairs[0].startswith("Mend the sill: 8 lin ft")
        assert "P50" in follows.total


async def test_a_value_that_is_refused_stays_to_be_put_right(job: Job) -> None:
    async with walking(job) as pilot:
        await at_the_south_wall(pilot)
        await pilot.press("2")
        await typed(pilot, "44")

        assert "0 to 12" in beside(pilot)
        assert pilot.app.screen.query_one("FieldBar Input", Input).value == "44"
        await pilot.press("backspace", "enter")
        assert seen(job, "sill").measures == {"probe_depth_in": 4.0}


async def test_escape_leaves_a_measure_open_and_a_zone_as_a_whole(job: Job) -> None:
    async with walking(job) as pilot:
        await at_the_south_wall(pilot)
        await pilot.press("3", "escape", "escape")
        await typed(pilot, "3")
        assert is_asking(pilot)
        await pilot.press("escape")

        assert not is_asking(pilot)
        assert seen(job, "sill").measures == {}
        assert seen(job, "sill").zone is None
        assert "Awl sinks in" in pilot.app.screen.query_one(ItemView).shown.missing


async def test_enter_takes_the_value_used_last(job: Job) -> None:
    async with walking(job) as pilot:
        await at_the_south_wall(pilot)
        await pilot.press("2")
        await typed(pilot, "0.7")
        await pilot.press("pagedown", "2", "enter")

        assert seen(job, "sill", "main.west.outside").measures == {"probe_depth_in": 0.7}


async def test_enter_alone_takes_nothing_where_nothing_is_offered(job: Job) -> None:
    async with walking(job) as pilot:
        await at_the_south_wall(pilot)
        await pilot.press("2", "enter")

        assert "Escape" in beside(pilot)
        assert seen(job, "sill").measures == {}


async def test_yes_no_and_choices_are_one_key(job: Job) -> None:
    async with walking(job) as pilot:
        await at_the_south_wall(pilot)
        await pilot.press("down", "3", "y", "2")

        assert seen(job, "boards").measures == {"is_active": 1.0, "test_look": "drip marks"}
        assert not is_asking(pilot)


async def test_up_goes_back_to_the_field_before(job: Job) -> None:
    async with walking(job) as pilot:
        await at_the_south_wall(pilot)
        await pilot.press("down", "3", "y", "up", "n", "1")

        assert seen(job, "boards").measures == {"is_active": 0.0, "test_look": "one ring"}


async def test_no_access_asks_for_the_reason(job: Job) -> None:
    async with walking(job) as pilot:
        await pilot.press("4")
        assert seen(job, "ground", "site").condition is Condition.NO_ACCESS
        await pilot.press("1")
        assert seen(job, "ground", "site").reason == "stored goods"
        await pilot.press("4", "7")
        await typed(pilot, "a dog")

        assert seen(job, "ground", "site").reason == "a dog"


async def test_keys_that_come_at_once_are_taken_one_after_the_other(job: Job) -> None:
    async with walking(job) as pilot:
        await at_the_south_wall(pilot)
        for key in ("3", "1", ".", "5", "enter", "4", "enter", "escape", "enter", "3", "y", "1"):
            pilot.app.post_message(events.Key(key, key if len(key) == 1 else None))
        await pilot.pause()
        await pilot.pause()

        assert seen(job, "sill").measures == {"probe_depth_in": 1.5, "run_ft": 4.0}
        assert seen(job, "sill").zone is None
        assert seen(job, "boards").condition is Condition.FAILED
        assert seen(job, "boards").measures == {"is_active": 1.0, "test_look": "one ring"}


async def test_a_disk_that_is_full_costs_no_typing(
    job: Job, monkeypatch: pytest.MonkeyPatch
) -> None:
    record = job.record

    def full(body: Body) -> Any:
        if isinstance(body, Measured):
            raise JobError("This was not kept: the disk is full.", "Free some space.")
        return record(body)

    async with walking(job) as pilot:
        await at_the_south_wall(pilot)
        await pilot.press("2")
        monkeypatch.setattr(job, "record", full)
        await typed(pilot, "0.25")
        assert "disk is full" in beside(pilot)
        assert seen(job, "sill").measures == {}
        monkeypatch.undo()
        monkeypatch.setattr(job, "record", record)
        await pilot.press("enter")

        assert seen(job, "sill").measures == {"probe_depth_in": 0.25}


async def test_an_answer_that_is_not_kept_asks_nothing(
    job: Job, monkeypatch: pytest.MonkeyPatch
) -> None:
    def full(body: Body) -> Any:
        raise JobError("This was not kept: the disk is full.", "Free some space.")

    async with walking(job) as pilot:
        monkeypatch.setattr(job, "record", full)
        await pilot.press("3")

        assert "disk is full" in said(pilot)
        assert not is_asking(pilot)
        assert not job.walk.observations


async def test_enter_goes_to_the_next_open_item_and_escape_back(job: Job) -> None:
    async with walking(job) as pilot:
        await pilot.press("1", "enter")
        await pilot.press("2", "escape")  # the measure stays open
        await pilot.press("enter", "1")
        assert seen(job, "boards").condition is Condition.SOUND
        await pilot.press("escape", "escape", "5")

        assert seen(job, "ground", "site").condition is Condition.NOT_THERE


async def test_the_walk_goes_on_where_it_was_left(job: Job) -> None:
    async with walking(job) as pilot:
        await pilot.press("pagedown", "pagedown", "down")
    moves = [entry.body for entry in job.entries if isinstance(entry.body, MovedTo)]
    assert moves[-1] == MovedTo(station="main.west.outside", item="boards")
    async with walking(job) as pilot:
        await pilot.press("1")

    assert seen(job, "boards", "main.west.outside").condition is Condition.SOUND


async def test_undo_and_redo_say_what_they_did(job: Job) -> None:
    async with walking(job) as pilot:
        await pilot.press("2", "pagedown", "u")
        assert 'Taken back: worn at "Does the ground fall away?"' in said(pilot)
        assert not job.walk.observations
        await pilot.press("r")
        assert "Back again: worn" in said(pilot)
        assert seen(job, "ground", "site").condition is Condition.WORN
        await pilot.press("u", "u")
        assert "nothing to take back" in said(pilot)


async def test_a_note_is_kept_by_enter_and_may_have_more_lines(job: Job) -> None:
    async with walking(job) as pilot:
        await pilot.press("n", "w", "e", "t", "ctrl+j", "h", "e", "r", "e", "enter")

        assert seen(job, "ground", "site").note == "wet\nhere"
        assert not isinstance(pilot.app.screen, AskText)


async def test_text_that_comes_before_the_dialog_is_there_is_not_lost(job: Job) -> None:
    async with walking(job) as pilot:
        pilot.app.post_message(events.Key("n", "n"))
        pilot.app.post_message(events.Paste("wet"))
        pilot.app.post_message(events.Key("!", "!"))
        await pilot.pause()
        await pilot.press("enter")

        assert seen(job, "ground", "site").note == "wet!"


async def test_a_note_left_by_escape_is_there_again(job: Job) -> None:
    async with walking(job) as pilot:
        await pilot.press("n")
        pilot.app.post_message(events.Paste("[bold] \x1b[31mred\nsecond line"))
        await pilot.press("escape")
        assert not job.walk.observations
        await pilot.press("n")
        assert isinstance(pilot.app.screen, AskText)
        await pilot.press("ctrl+s")

        note = seen(job, "ground", "site").note
        assert note.startswith("[bold] ")
        assert note.endswith("second line")
        shown = pilot.app.screen.query_one(ItemView).render().plain
        assert "[bold]" in shown
        assert "\x1b" not in shown


async def test_a_note_that_cannot_be_kept_stays_open(
    job: Job, monkeypatch: pytest.MonkeyPatch
) -> None:
    def full(body: Body) -> Any:
        raise JobError("This was not kept: the disk is full.", "Free some space.")

    async with walking(job) as pilot:
        await pilot.press("n", "x")
        monkeypatch.setattr(job, "record", full)
        await pilot.press("ctrl+s")
        assert isinstance(pilot.app.screen, AskText)
        monkeypatch.undo()
        monkeypatch.setattr("leanto.job.job.read_library", lambda folders: job.library)
        await pilot.press("ctrl+s")

        assert seen(job, "ground", "site").note == "x"


async def test_a_photo_is_copied_into_the_job(job: Job, tmp_path: Path) -> None:
    camera = tmp_path / "my camera"
    camera.mkdir()
    Image.new("RGB", (40, 30), "brown").save(camera / "old sill.jpg")
    async with walking(job) as pilot:
        await pilot.press("p")
        await typed(pilot, f"'{camera / 'missing.jpg'}'")
        await pilot.app.workers.wait_for_complete()
        await pilot.pause()
        assert "There is no file" in said(pilot)
        await pilot.press("p", "ctrl+u")
        await typed(pilot, str(camera))
        await pilot.app.workers.wait_for_complete()
        await pilot.pause()
        await pilot.press("enter")  # the newest picture of that folder
        await pilot.app.workers.wait_for_complete()
        await pilot.pause()

        (photo,) = seen(job, "ground", "site").photos
        assert photo.original_name == "old sill.jpg"
        assert job.photo_path(photo).is_file()
        assert "old sill.jpg" in said(pilot)
        await pilot.press("x", "1")
        assert not job.walk.observations


async def test_another_of_the_same_item_has_its_own_answer(job: Job) -> None:
    async with walking(job) as pilot:
        await pilot.press("1", "a", "2", "left", "d", "right")
        await pilot.press("a", "left")

        assert seen(job, "ground", "site").condition is Condition.SOUND
        assert seen(job, "ground", "site").danger
        assert seen(job, "ground", "site", 2).condition is Condition.WORN
        assert not seen(job, "ground", "site", 2).danger
        assert len(job.walk.observations) == 2


async def test_the_air_is_measured_at_the_station(job: Job) -> None:
    async with walking(job) as pilot:
        await at_the_south_wall(pilot)
        await pilot.press("t")
        await typed(pilot, "5 C")
        await typed(pilot, "68")

        assert job.walk.air == {SOUTH: Air(41.0, 68.0)}


async def test_a_jump_goes_by_a_part_of_the_name(job: Job) -> None:
    async with walking(job) as pilot:
        await pilot.press("j")
        await typed(pilot, "north out")
        await pilot.press("1")

        assert seen(job, "sill", "main.north.outside").condition is Condition.SOUND


async def test_a_job_that_is_open_elsewhere_takes_no_answer(
    job: Job, monkeypatch: pytest.MonkeyPatch
) -> None:
    job.record(Answered(station="site", item="ground", condition=Condition.WORN))
    with Job.open(job.places.folder) as second:
        async with walking(second) as pilot:
            before = len(second.entries)
            for key in ("1", "3", "n", "z", "p", "t", "d", "u"):
                await pilot.press(key)
                assert "open in another program" in said(pilot), key
                assert isinstance(pilot.app.screen, WalkScreen)
                assert not is_asking(pilot)
            assert pilot.app.screen.query_one(TopLine).headline.read_only
            assert len(second.entries) == before


async def test_a_job_without_a_building_asks_for_it_first(
    tmp_path: Path, shed: Any, monkeypatch: pytest.MonkeyPatch
) -> None:
    from textual.screen import Screen

    from leanto.record.entry import BuildingSet
    from leanto.tui import app as app_module

    class Form(Screen[None]):
        pass

    monkeypatch.setitem(app_module.SCREENS, "building", lambda job: Form())
    with Job.create(tmp_path / "bare") as bare:
        async with walking(bare) as pilot:
            assert isinstance(pilot.app.screen, Form)
            bare.record(BuildingSet(building=shed))
            await pilot.press("f2")
            await pilot.pause()
            assert isinstance(pilot.app.screen, WalkScreen)
            assert pilot.app.screen.query_one(TopLine).headline.station == "Site and drainage"


@pytest.mark.parametrize("size", [(60, 15), (80, 24), (120, 40)])
async def test_the_question_and_its_answers_are_there_at_every_size(
    job: Job, size: tuple[int, int]
) -> None:
    async with walking(job, size) as pilot:
        await at_the_south_wall(pilot)
        shown = pilot.app.screen.query_one(ItemView).render().plain
        aside = pilot.app.screen.query_one("#aside")

        assert "Dust" in shown
        assert "Is the sill soft?" in shown
        assert "3 x failed" in shown
        assert aside.display is (size[0] >= 120)


async def test_help_opened_while_typing_leaves_what_was_typed(job: Job) -> None:
    async with walking(job) as pilot:
        await at_the_south_wall(pilot)
        await pilot.press("2", "1", "f1")
        assert isinstance(pilot.app.screen, Help)
        await pilot.press("escape", ".", "5", "enter")

        assert seen(job, "sill").measures == {"probe_depth_in": 1.5}
