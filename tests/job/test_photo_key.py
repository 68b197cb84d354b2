"""A picture belongs where the walker stood when it was taken."""

from __future__ import annotations

from datetime import UTC, datetime, timedelta
from pathlib import Path

import pytest
from PIL import Image

from leanto.building.model import Building
from leanto.checklist.condition import Condition
from leanto.job import Job
from leanto.record.entry import Answered, MovedTo
from leanto.record.observation import ObservationKey

START = datetime(2026, 11, 25, 15, 0, tzinfo=UTC)
SILL = ObservationKey("main.south.outside", "sill")
SECOND = ObservationKey("main.south.outside", "sill", 2)
GRADE = ObservationKey("site", "grade")


def picture(path: Path, taken: datetime | None) -> Path:
    exif = Image.Exif()
    if taken is not None:
        exif.get_ifd(0x8769)[0x9003] = taken.astimezone().strftime("%Y:%m:%d %H:%M:%S")
    Image.new("RGB", (40, 30), "tan").save(path, exif=exif)
    return path


@pytest.fixture
def walked(job: Job, folder: Path, shed: Building) -> Job:
    """Grade from minute 0, the sill from minute 5, its second one from minute 8."""
    minutes = iter((0, 5, 8))
    job._journal._clock = lambda: START + timedelta(minutes=next(minutes))
    job.record(MovedTo(station=GRADE.station, item=GRADE.item))
    job.record(Answered(station=SILL.station, item="sill", condition=Condition.WORN))
    job.record(Answered(station=SILL.station, item="sill", number=2, condition=Condition.WORN))
    return job


@pytest.mark.parametrize(
    ("minute", "expected"),
    [
        (-3, None),
        (-1, GRADE),  # two clocks are never quite the same
        (0, GRADE),
        (4, GRADE),
        (5, SILL),
        (7, SILL),
        (8, SECOND),
        (67, SECOND),
        (69, None),
    ],
)
def test_the_place_by_the_minute(
    walked: Job, tmp_path: Path, minute: int, expected: ObservationKey | None
) -> None:
    taken = START + timedelta(minutes=minute)

    found = walked.key_by_time(picture(tmp_path / "a.jpg", taken))

    assert found.key == expected
    assert found.taken_at == taken.astimezone().replace(tzinfo=None)


def test_without_a_time_there_is_no_place(walked: Job, tmp_path: Path) -> None:
    found = walked.key_by_time(picture(tmp_path / "a.jpg", None))

    assert (found.key, found.taken_at) == (None, None)
    broken = tmp_path / "b.jpg"
    broken.write_bytes(b"no picture")
    assert walked.key_by_time(broken).taken_at is None


def test_a_photo_is_no_sign_of_where_the_walker_stands(walked: Job, tmp_path: Path) -> None:
    walked._journal._clock = lambda: START + timedelta(minutes=20)
    walked.add_photo(GRADE, picture(tmp_path / "a.jpg", START))

    later = picture(tmp_path / "b.jpg", START + timedelta(minutes=30))
    assert walked.key_by_time(later).key == SECOND
