"""The place on the surface: a rectangle moved by keys, or typed."""

from __future__ import annotations

import pytest
from tui_walking import is_asking, question, screen_text, seen, typed, walking

from leanto.building.rectangle import Rectangle
from leanto.job import Job


@pytest.mark.parametrize("size", [(80, 24), (120, 40)])
async def test_arrows_move_the_rectangle_and_enter_takes_it(
    job: Job, size: tuple[int, int]
) -> None:
    async with walking(job, size) as pilot:
        await pilot.press("pagedown", "z")
        before = screen_text(pilot)
        assert "**" in before
        assert '2\' 0" wide x 2\' 0" high, 0" from left' in question(pilot)
        await pilot.press("right", "right", "w", "up")
        assert '4\' 0" wide x 2\' 0" high, 4\' 0" from left, 6" up' in question(pilot)
        assert screen_text(pilot) != before
        await pilot.press("enter")

        assert seen(job, "sill").zone == Rectangle(4, 0.5, 4, 2)
        assert not is_asking(pilot)
        assert "**" not in screen_text(pilot)


async def test_shift_and_arrows_size_it(job: Job) -> None:
    async with walking(job) as pilot:
        await pilot.press("pagedown", "z", "shift+right", "shift+up", "shift+up", "enter")

        assert seen(job, "sill").zone == Rectangle(0, 0, 4, 3)


async def test_lengths_typed_instead_make_the_same_zone(job: Job) -> None:
    async with walking(job) as pilot:
        await pilot.press("pagedown", "z", "right")
        for length in ("2-6", "0", "7", "1"):
            await typed(pilot, length)

        assert seen(job, "sill").zone == Rectangle(2.5, 0, 7, 1)


async def test_it_starts_where_it_was_entered_and_escape_changes_nothing(job: Job) -> None:
    async with walking(job) as pilot:
        await pilot.press("pagedown", "z", "right", "enter", "z", "right", "right", "escape")
        assert seen(job, "sill").zone == Rectangle(2, 0, 2, 2)
        await pilot.press("z", "right", "enter")
        assert seen(job, "sill").zone == Rectangle(4, 0, 2, 2)
        await pilot.press("u")
        assert seen(job, "sill").zone == Rectangle(2, 0, 2, 2)


async def test_a_place_off_the_gable_is_refused_and_can_be_moved_on(job: Job) -> None:
    async with walking(job) as pilot:
        await pilot.press("pagedown", "pagedown", "z", *("up",) * 25, "enter")

        assert is_asking(pilot)
        assert "outside the sloping edge" in screen_text(pilot)
        await pilot.press(*("right",) * 3, "enter")
        assert seen(job, "sill", "main.west.outside").zone is not None


async def test_backspace_goes_back_from_the_place(job: Job) -> None:
    async with walking(job) as pilot:
        await pilot.press("pagedown", "3")
        await typed(pilot, "1")
        await typed(pilot, "6")
        assert "Where is it?" in question(pilot)
        await pilot.press("backspace")
        assert "Where is it?" not in question(pilot)
        await typed(pilot, "8")
        await pilot.press("enter")

        assert seen(job, "sill").measures["run_ft"] == 8.0
        assert seen(job, "sill").zone == Rectangle(0, 0, 8, 2)
