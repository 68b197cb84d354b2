"""The demo job: made afresh, or found as it was left."""

from __future__ import annotations

import contextlib
import shutil
import tempfile
from datetime import UTC, datetime, time, timedelta
from itertools import count
from pathlib import Path

from leanto.building.load import read_building
from leanto.demo.stamp import data_stamp, put_stamp, stamp_of
from leanto.demo.walk import DemoWalk, Picture, steps_of
from leanto.errors import JobError
from leanto.job import Job, is_job
from leanto.yaml_input import read_model

BUILDING = Path(__file__).with_name("building.yaml")
WALK = Path(__file__).with_name("walk.yaml")

STARTS_AT = time(10, 0, tzinfo=UTC)
"""With the step below, the walk falls on one and the same day from Hawaii to New Zealand."""
STEP = timedelta(seconds=6)


def make_demo(folder: Path) -> Job:
    """The demo job in ``folder``, open; the caller closes it.

    A job that was made there from the same data is opened as it is, with all that somebody has
    entered since. Anything else that lies there is left alone, and the job is made beside it, as
    ``demo-job-2`` and so on. Raises JobError when it can't be made.
    """
    stamp = data_stamp()
    for place in _places(folder):
        if stamp_of(place) == stamp and is_job(place):
            return Job.open(place)
        if not place.exists():
            _make(place, stamp)
            return Job.open(place)
    raise AssertionError("places do not end")


def read_walk() -> DemoWalk:
    """The invented walk."""
    return read_model(WALK, DemoWalk)


def _places(folder: Path) -> list[Path]:
    """The folder, then the names beside it up to the first that is free."""
    places = [folder]
    for number in count(2):
        if not places[-1].exists():
            return places
        places.append(folder.with_name(f"{folder.name}-{number}"))
    raise AssertionError("count does not end")


def _make(place: Path, stamp: str) -> None:
    """A whole demo job at ``place``, or nothing: it is made beside and then renamed."""
    try:
        place.parent.mkdir(parents=True, exist_ok=True)
        half_made = Path(tempfile.mkdtemp(prefix=f"{place.name}-making-", dir=place.parent))
    except OSError as error:
        raise _refused(place, error) from error
    try:
        _record(half_made)
        put_stamp(half_made, stamp)
        half_made.chmod(0o755)
        half_made.rename(place)
    except OSError as error:
        raise _refused(place, error) from error
    finally:
        with contextlib.suppress(OSError):
            shutil.rmtree(half_made)


def _record(folder: Path) -> None:
    # Loaded only now: an existing demo needs no pictures.
    from leanto.demo.pictures import draw_picture

    walk = read_walk()
    clock = _Clock(datetime.combine(walk.date, STARTS_AT))
    building = read_building(BUILDING)
    with (
        tempfile.TemporaryDirectory(prefix="leanto-demo-") as drawn,
        Job.create(folder, building, clock=clock, who=walk.who) as job,
    ):
        for step in steps_of(walk):
            if isinstance(step, Picture):
                job.add_photo(step.key, draw_picture(step.name, Path(drawn)))
            else:
                job.record(step)


class _Clock:
    """Goes on by one step whenever it is read, so that every demo is made at the same times."""

    def __init__(self, start: datetime) -> None:
        self._now = start

    def __call__(self) -> datetime:
        self._now += STEP
        return self._now


def _refused(place: Path, error: OSError) -> JobError:
    reason = error.strerror or str(error)
    return JobError(f"{place} cannot be made: {reason}.", "Name another folder: leanto demo --to")
