"""One key for several facts: all sound here, and the same answer again."""

from __future__ import annotations

from textual.binding import Binding
from tui_walking import SOUTH, WEST, is_asking, said, screen_text, seen, typed, walking

from leanto.checklist.condition import Condition
from leanto.job import Job
from leanto.record.entry import Answered, DangerMarked
from leanto.record.observation import ObservationKey
from leanto.tui.app import LeantoApp
from leanto.tui.walk_keys import WALK_KEYS


async def test_all_sound_here_lists_marks_and_is_undone_as_one(job: Job) -> None:
    async with walking(job) as pilot:
        await pilot.press("pagedown", "e")
        listed = screen_text(pilot)
        assert "2 items" in listed
        assert "Is the sill soft?" in listed
        assert "Are the boards tight?" in listed
        await pilot.press("e")

        assert seen(job, "sill").condition is Condition.SOUND
        assert seen(job, "boards").condition is Condition.SOUND
        assert "2 items" in said(pilot)
        await pilot.press("u")
        assert not job.walk.observations
        assert "and 1 more" in said(pilot)
        await pilot.press("r")
        assert len(job.walk.observations) == 2


async def test_all_sound_here_marks_nothing_when_it_is_left(job: Job) -> None:
    async with walking(job) as pilot:
        await pilot.press("pagedown", "e", "enter", "escape")

        assert not job.walk.observations
        assert not is_asking(pilot)


async def test_all_sound_here_leaves_what_has_an_answer_or_something_noted(job: Job) -> None:
    job.record(Answered(station=SOUTH, item="sill", condition=Condition.WORN))
    job.record(DangerMarked(station=SOUTH, item="boards", on=True))
    async with walking(job) as pilot:
        await pilot.press("pagedown", "e")

        assert "something is noted already" in said(pilot)
        assert seen(job, "sill").condition is Condition.WORN
        assert seen(job, "boards").condition is None


async def test_the_same_again_gives_answer_and_measures_and_is_undone_as_one(job: Job) -> None:
    async with walking(job) as pilot:
        await pilot.press("pagedown", "2")
        await typed(pilot, "0.7")
        await pilot.press("pagedown")
        assert "same again: worn, Awl sinks in 0.7 in" in screen_text(pilot)
        await pilot.press("l")

        given = seen(job, "sill", WEST)
        assert given.condition is Condition.WORN
        assert given.measures == {"probe_depth_in": 0.7}
        assert not is_asking(pilot)
        await pilot.press("u")
        assert ObservationKey(WEST, "sill") not in job.walk.observations


async def test_the_same_again_fits_the_length_and_asks_for_the_place(job: Job) -> None:
    async with walking(job) as pilot:
        await pilot.press("pagedown", "3")
        await typed(pilot, "1.5")
        await typed(pilot, "24")  # all of this wall
        await pilot.press("a", "enter", "pagedown", "l")

        given = seen(job, "sill", WEST)
        assert given.measures == {"probe_depth_in": 1.5, "run_ft": 12.0}  # all of that one
        assert given.zone is None
        assert is_asking(pilot)
        await pilot.press("enter")
        zone = seen(job, "sill", WEST).zone
        assert zone is not None
        assert (zone.left_ft, zone.width_ft) == (0.0, 12.0)


async def test_the_same_again_never_changes_an_answer(job: Job) -> None:
    async with walking(job) as pilot:
        await pilot.press("l")
        assert "no answer yet" in said(pilot)
        await pilot.press("pagedown", "1", "pagedown", "3", "escape", "escape", "escape", "l")

        assert seen(job, "sill", WEST).condition is Condition.FAILED
        assert "has its answer" in said(pilot)


async def test_what_stands_in_the_way_of_one_item_is_offered_for_the_next(job: Job) -> None:
    async with walking(job) as pilot:
        await pilot.press("pagedown", "down", "1", "pagedown", "4", "1", "enter", "l")

        given = seen(job, "boards", WEST)
        assert (given.condition, given.reason) == (Condition.NO_ACCESS, "stored goods")
        assert not is_asking(pilot)


async def test_the_last_reason_is_offered(job: Job) -> None:
    async with walking(job) as pilot:
        await pilot.press("4", "4", "pagedown", "4", "enter")

        assert seen(job, "sill").reason == "unsafe"


def test_no_key_of_the_walk_does_two_things() -> None:
    walk = [key for binding in WALK_KEYS for key in binding.key.split(",")]
    app = [
        key for one in LeantoApp.BINDINGS if isinstance(one, Binding) for key in one.key.split(",")
    ]

    assert len(set(walk)) == len(walk)
    assert not set(walk) & set(app)
