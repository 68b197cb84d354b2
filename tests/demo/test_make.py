"""Making the demo job, finding it again, and leaving alone what is somebody's."""

from __future__ import annotations

from pathlib import Path

import pytest

import leanto.demo.make
import leanto.demo.pictures
from leanto.demo.make import make_demo
from leanto.demo.stamp import data_stamp, put_stamp, stamp_of
from leanto.demo.walk import DemoWalk
from leanto.errors import JobError
from leanto.job import Job
from leanto.record.entry import Noted

SHORT = slice(0, 3)
"""The stops that are enough where the story does not matter."""


@pytest.fixture
def short_walk(monkeypatch: pytest.MonkeyPatch) -> None:
    whole = leanto.demo.make.read_walk()
    short = whole.model_copy(update={"stops": whole.stops[SHORT]})

    def read_walk() -> DemoWalk:
        return short

    monkeypatch.setattr(leanto.demo.make, "read_walk", read_walk)


@pytest.mark.usefixtures("short_walk")
def test_two_demos_are_equal(tmp_path: Path) -> None:
    with make_demo(tmp_path / "one") as one, make_demo(tmp_path / "other") as other:
        assert other.entries == one.entries
        assert other.walk == one.walk
        assert len(one.photos) >= 2
        assert [other.photo_path(photo).read_bytes() for photo in other.photos] == [
            one.photo_path(photo).read_bytes() for photo in one.photos
        ]


def test_the_walk_is_of_one_day_everywhere(demo: Job) -> None:
    first, last = demo.entries[0].at, demo.entries[-1].at

    assert {entry.who for entry in demo.entries} == {"demo"}
    assert first.hour >= 10
    assert (last.date(), last.hour) <= (first.date(), 11)


def test_the_photos_are_jpegs_in_the_job(demo: Job) -> None:
    assert len(demo.photos) >= 20
    assert demo.notices == ()
    for photo in demo.photos:
        assert demo.photo_path(photo).read_bytes().startswith(b"\xff\xd8\xff")


@pytest.mark.usefixtures("short_walk")
def test_what_somebody_entered_in_the_demo_is_there_again(tmp_path: Path) -> None:
    with make_demo(tmp_path / "demo-job") as job:
        made = len(job.entries)
        job.record(Noted(station="site", item="fit-to-enter", text="I was here."))

    with make_demo(tmp_path / "demo-job") as job:
        assert job.places.folder == tmp_path / "demo-job"
        assert len(job.entries) == made + 1

    assert [path.name for path in tmp_path.iterdir()] == ["demo-job"]


@pytest.mark.usefixtures("short_walk")
def test_a_demo_of_older_data_is_left_alone_and_a_new_one_made_beside(tmp_path: Path) -> None:
    with make_demo(tmp_path / "demo-job") as job:
        old = job.places.record.read_bytes()
    put_stamp(tmp_path / "demo-job", "older")

    for _ in range(2):
        with make_demo(tmp_path / "demo-job") as job:
            assert job.places.folder == tmp_path / "demo-job-2"

    assert (tmp_path / "demo-job" / "record.db").read_bytes() == old
    assert {path.name for path in tmp_path.iterdir()} == {"demo-job", "demo-job-2"}


@pytest.mark.usefixtures("short_walk")
def test_a_folder_that_is_no_demo_is_left_alone(tmp_path: Path) -> None:
    (tmp_path / "demo-job").mkdir()
    (tmp_path / "demo-job" / "mine.txt").write_text("mine")

    with make_demo(tmp_path / "demo-job") as job:
        assert job.places.folder == tmp_path / "demo-job-2"

    assert [path.name for path in (tmp_path / "demo-job").iterdir()] == ["mine.txt"]


@pytest.mark.usefixtures("short_walk")
def test_a_demo_that_cannot_be_finished_leaves_nothing_behind(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    def full(name: str, folder: Path) -> Path:
        raise OSError(28, "No space left on device")

    monkeypatch.setattr(leanto.demo.pictures, "draw_picture", full)

    with pytest.raises(JobError, match="No space left on device"):
        make_demo(tmp_path / "demo-job")

    assert list(tmp_path.iterdir()) == []


def test_a_place_that_cannot_be_written_is_an_error_to_read(tmp_path: Path) -> None:
    (tmp_path / "file").write_text("")

    with pytest.raises(JobError, match="cannot be made"):
        make_demo(tmp_path / "file" / "demo-job")


def test_the_stamp_follows_the_data(tmp_path: Path) -> None:
    put_stamp(tmp_path, data_stamp())

    assert stamp_of(tmp_path) == data_stamp()
    assert stamp_of(tmp_path / "elsewhere") == ""
