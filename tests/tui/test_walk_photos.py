"""Photos on the walk: dropped, watched for, looked at."""

from __future__ import annotations

from datetime import datetime
from pathlib import Path

import pytest
from PIL import Image
from textual import events
from textual.pilot import Pilot
from tui_walking import SOUTH, said, screen_text, seen, typed, walking

from leanto.job import Job
from leanto.record.observation import ObservationKey
from leanto.tui.screens.watching import WatchingScreen


def picture(path: Path, color: str = "tan", taken: datetime | None = None) -> Path:
    exif = Image.Exif()
    if taken is not None:
        exif.get_ifd(0x8769)[0x9003] = taken.strftime("%Y:%m:%d %H:%M:%S")
    Image.new("RGB", (400, 300), color).save(path, exif=exif)
    return path


async def copied(pilot: Pilot[None]) -> None:
    await pilot.pause()
    await pilot.app.workers.wait_for_complete()
    await pilot.pause()


async def looked_twice(pilot: Pilot[None]) -> None:
    """As if the watched folder's timer had gone twice."""
    screen = pilot.app.screen
    assert isinstance(screen, WatchingScreen)
    for _ in range(2):
        screen._look_again()
        await copied(pilot)


@pytest.mark.parametrize("form", ["{}", "'{}'", "file://{}"])
async def test_a_picture_dropped_on_the_walk_is_a_photo_of_the_item(
    job: Job, tmp_path: Path, form: str
) -> None:
    path = picture(tmp_path / "sill.jpg")
    async with walking(job) as pilot:
        pilot.app.post_message(events.Paste(form.format(path)))
        await copied(pilot)

        assert [photo.original_name for photo in seen(job, "ground", "site").photos] == ["sill.jpg"]
        await pilot.press("u")
        assert not job.walk.observations


async def test_other_text_dropped_on_the_walk_does_nothing(job: Job, tmp_path: Path) -> None:
    async with walking(job) as pilot:
        pilot.app.post_message(events.Paste("1 2 3 u"))
        await copied(pilot)

        assert not job.walk.observations


async def test_new_pictures_of_a_watched_folder_go_where_the_walker_stood(
    job: Job, tmp_path: Path
) -> None:
    folder = tmp_path / "phone"
    folder.mkdir()
    picture(folder / "old.jpg")
    async with walking(job) as pilot:
        await pilot.press("1", "pagedown", "w")
        await typed(pilot, str(folder))
        assert "already (1)" in said(pilot)
        assert "watching" in screen_text(pilot)
        picture(folder / "untimed.jpg", "red")
        picture(folder / "holiday.jpg", "blue", datetime(2020, 1, 1, 12))
        await looked_twice(pilot)

        # One without a time goes where the walker stands; one of another day nowhere.
        assert [photo.original_name for photo in seen(job, "sill").photos] == ["untimed.jpg"]
        assert len(job.photos) == 1
        # The answer at the site came just now, so a picture of just now belongs there.
        picture(folder / "now.jpg", "green", datetime.now())
        await looked_twice(pilot)
        held = {photo.original_name: key for key, one in job.walk.observations.items()
                for photo in one.photos}  # fmt: skip
        assert held["now.jpg"] in {
            ObservationKey("site", "ground"),
            ObservationKey(SOUTH, "sill"),
        }
        await pilot.press("w")
        assert "No folder is watched" in said(pilot)
        assert "watching" not in screen_text(pilot).splitlines()[0]


async def test_a_picture_of_another_day_is_named_and_left_out(job: Job, tmp_path: Path) -> None:
    async with walking(job) as pilot:
        await pilot.press("1", "w")
        await typed(pilot, str(tmp_path))
        picture(tmp_path / "holiday.jpg", "blue", datetime(2020, 1, 1, 12))
        await looked_twice(pilot)

        assert "holiday.jpg was taken 2020-01-01 12:00" in said(pilot)
        assert not job.photos


async def test_a_folder_that_is_not_there_is_asked_again(job: Job, tmp_path: Path) -> None:
    async with walking(job) as pilot:
        await pilot.press("w")
        await typed(pilot, str(tmp_path / "gone"))
        assert "There is no folder" in screen_text(pilot)
        await pilot.press("escape")
        assert "watching" not in screen_text(pilot)


async def test_photos_are_looked_at_one_by_one(
    job: Job, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setenv("TERM", "xterm-256color")
    key = ObservationKey("site", "ground")
    for name, color in (("first.jpg", "red"), ("second.jpg", "blue")):
        job.add_photo(key, picture(tmp_path / name, color, datetime(2026, 11, 25, 10)))
    async with walking(job) as pilot:
        await pilot.press("v")
        await pilot.pause()
        text = screen_text(pilot)
        assert "Photo 2 of 2: second.jpg, taken 2026-11-25 10:00" in text
        assert "▄▄▄" in text
        await pilot.press("left")
        assert "Photo 1 of 2: first.jpg" in screen_text(pilot)
        await pilot.press("v")
        assert "Does the ground fall away?" in screen_text(pilot)


async def test_with_16_colors_a_photo_is_told_in_words(
    job: Job, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    photo = job.add_photo(ObservationKey("site", "ground"), picture(tmp_path / "first.jpg"))
    monkeypatch.setenv("TERM", "linux")
    monkeypatch.delenv("COLORTERM", raising=False)
    async with walking(job) as pilot:
        await pilot.press("v")
        await pilot.pause()

        text = screen_text(pilot)
        assert "too few colors" in text
        assert "▄" not in text
        assert photo.digest in text.replace("\n", "")


async def test_without_photos_there_is_nothing_to_look_at(job: Job) -> None:
    async with walking(job) as pilot:
        await pilot.press("v")

        assert "no photo here" in said(pilot)
