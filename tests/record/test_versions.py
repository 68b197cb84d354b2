"""A job of every schema version that was ever released opens here: ``versions/<version>``.

A record of a version is made once, with the program of that version, and never made again. All of
them hold the same entries.
"""

from __future__ import annotations

import shutil
import sqlite3
from contextlib import closing
from pathlib import Path

import pytest

from leanto.job import Job
from leanto.record.migrations import MIGRATIONS, SCHEMA_VERSION
from leanto.record.observation import ObservationKey
from leanto.record.store import Store

VERSIONS = Path(__file__).resolve().parent / "versions"
KINDS = [
    *("building set", "moved to", "answered", "measured", "zoned", "noted"),
    *("danger marked", "danger marked", "undone", "undone", "redone"),
    *("photo added", "air measured", "overruled"),
]


def test_there_is_a_job_of_every_version() -> None:
    assert sorted(int(path.name) for path in VERSIONS.iterdir()) == [
        number for number, _ in enumerate(MIGRATIONS, 1)
    ]


@pytest.mark.parametrize("version", range(1, SCHEMA_VERSION + 1))
def test_a_job_of_an_older_version_opens_and_can_be_added_to(version: int, tmp_path: Path) -> None:
    shutil.copytree(VERSIONS / str(version), tmp_path / "job")
    record = tmp_path / "job" / "record.db"

    with Store.open(record) as store:
        assert [entry.body.kind for entry in store.entries()] == KINDS
    with Job.open(tmp_path / "job") as job:
        assert not job.read_only
        seen = job.walk.observations[ObservationKey("main.south.outside", "sill")]
        assert job.undo() is not None
    assert (seen.measures, seen.danger) == ({"probe_depth_in": 1.5}, True)
    assert seen.note.startswith("soft to the awl; \u00e9\u53f0 ")
    with closing(sqlite3.connect(record)) as raw:
        said = raw.execute("SELECT value FROM meta WHERE key = 'schema_version'").fetchone()
        assert said == (str(SCHEMA_VERSION),)
        for statement in ("DELETE FROM entries", "UPDATE entries SET crc = 0"):
            with pytest.raises(sqlite3.IntegrityError, match="entries are not"):
                raw.execute(statement)
        assert raw.execute("SELECT count(*) FROM entries").fetchone() == (len(KINDS) + 1,)
