"""One demo job for all tests that only look at it."""

from __future__ import annotations

from collections.abc import Iterator

import pytest

from leanto.assessment import Assessment
from leanto.demo.make import make_demo
from leanto.job import Job


@pytest.fixture(scope="session")
def demo(tmp_path_factory: pytest.TempPathFactory) -> Iterator[Job]:
    """Opened for looking; a test that enters something makes its own."""
    with make_demo(tmp_path_factory.mktemp("demo") / "demo-job") as job:
        yield job


@pytest.fixture(scope="session")
def assessed(demo: Job) -> Assessment:
    return demo.assess()
