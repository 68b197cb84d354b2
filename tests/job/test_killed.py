"""A process is killed while it writes reports or copies photos: no half file is left behind."""

from __future__ import annotations

import os
import random
import signal
import time
from collections.abc import Callable, Iterator
from itertools import count
from pathlib import Path

import pytest
from PIL import Image
from pypdf import PdfReader

from leanto.building.model import Building
from leanto.job import Job
from leanto.record.entry import Answered, PhotoAdded
from leanto.record.observation import ObservationKey
from leanto.record.photos import is_whole

KILLS = 200 if os.environ.get("LEANTO_NIGHTLY") else 8
KEY = ObservationKey("main.south.outside", "sill")

pytestmark = [
    pytest.mark.skipif(not hasattr(os, "fork"), reason="needs fork"),
    # The child does nothing with the threads of who runs the tests.
    pytest.mark.filterwarnings("ignore:This process:DeprecationWarning"),
]


def killed_while(act: Callable[[Job, int], object], folder: Path, after_s: float) -> None:
    """A child does it again and again on the job, until it is killed some time after its first."""
    reading, writing = os.pipe()
    child = os.fork()
    if child == 0:
        try:
            os.close(reading)
            with Job.open(folder, who="child") as job:
                for number in count():
                    act(job, number)
                    os.write(writing, b".")
        finally:
            os._exit(1)
    os.close(writing)
    with os.fdopen(reading, "rb", buffering=0) as pipe:
        assert pipe.read(1) == b".", "the child failed"
        time.sleep(after_s)
        os.kill(child, signal.SIGKILL)
        _, status = os.waitpid(child, 0)
        assert os.WTERMSIG(status) == signal.SIGKILL


@pytest.fixture
def walked(folder: Path, shed: Building) -> Path:
    with Job.create(folder, shed, who="tester") as job:
        job.record(Answered(station=KEY.station, item=KEY.item, condition="failed"))  # type: ignore[arg-type]
        job.write_reports()
    return folder


@pytest.fixture
def moments() -> Iterator[float]:
    """Seconds to wait before each kill."""
    luck = random.Random(1938)
    return iter([luck.uniform(0.0, 0.3) for _ in range(KILLS)])


def test_a_report_is_whole_or_the_one_before(walked: Path, moments: Iterator[float]) -> None:
    for after_s in moments:
        killed_while(lambda job, _: job.write_reports(), walked, after_s)

        reports = sorted((walked / "reports").glob("*.pdf"))
        assert len(reports) >= 2
        for report in reports:
            assert report.read_bytes().rstrip().endswith(b"%%EOF")
            assert len(PdfReader(report).pages) > 0


def test_a_photo_is_whole_and_there_before_it_is_recorded(
    walked: Path, moments: Iterator[float], tmp_path: Path
) -> None:
    def copy(job: Job, _: int) -> None:
        number = len(job.entries)
        picture = tmp_path / f"{os.getpid()}-{number}.png"
        Image.effect_noise((900, 700), 60 + number % 50).save(picture)
        job.add_photo(KEY, picture)

    for after_s in moments:
        killed_while(copy, walked, after_s)

        with Job.open(walked) as job:
            added = [e.body for e in job.entries if isinstance(e.body, PhotoAdded)]
            names = [path.name for path in job.places.photos.iterdir()]
        assert added
        assert all(is_whole(job.places.photos, body.digest) for body in added)
        assert all(name.endswith(".jpg") and not name.startswith(".") for name in names)
        assert all(is_whole(job.places.photos, name.removesuffix(".jpg")) for name in names)
