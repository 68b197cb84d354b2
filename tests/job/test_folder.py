from __future__ import annotations

from pathlib import Path

import pytest

from leanto.building.model import Building
from leanto.errors import JobError
from leanto.job import Job, is_job


def refusal(act: object, *arguments: object) -> str:
    assert callable(act)
    with pytest.raises(JobError) as refused:
        act(*arguments)
    assert refused.value.remedy
    assert "\n" not in str(refused.value)
    return str(refused.value)


def test_what_is_no_job_is_not_opened(tmp_path: Path, folder: Path) -> None:
    (tmp_path / "empty").mkdir()
    (tmp_path / "file").write_text("x")
    (tmp_path / "lost" / "photos").mkdir(parents=True)
    (tmp_path / "odd" / "record.db").mkdir(parents=True)

    assert "There is no folder" in refusal(Job.open, folder)
    assert "is not a job: it has no record.db" in refusal(Job.open, tmp_path / "empty")
    assert "is a file, not a job" in refusal(Job.open, tmp_path / "file")
    assert "record of this job is missing" in refusal(Job.open, tmp_path / "lost")
    assert "record of this job is missing" in refusal(Job.open, tmp_path / "odd")
    assert not any(is_job(path) for path in tmp_path.iterdir())
    assert [path.name for path in (tmp_path / "empty").iterdir()] == []


def test_a_job_is_made_only_where_nothing_is(tmp_path: Path, folder: Path, shed: Building) -> None:
    Job.create(folder, shed).close()
    (tmp_path / "file").write_text("x")
    (tmp_path / "full").mkdir()
    (tmp_path / "full" / "letter.txt").write_text("x")
    (tmp_path / "empty").mkdir()

    assert "is a job already" in refusal(Job.create, folder, shed)
    assert "is a file" in refusal(Job.create, tmp_path / "file", shed)
    assert "cannot be used" in refusal(Job.create, tmp_path / "file" / "below", shed)
    assert "it holds letter.txt" in refusal(Job.create, tmp_path / "full", shed)
    Job.create(tmp_path / "empty", shed).close()
    assert is_job(tmp_path / "empty")


def test_a_creation_that_was_cut_short_can_be_made_again(folder: Path, shed: Building) -> None:
    folder.mkdir(parents=True)
    (folder / "record.db.new").write_bytes(b"half a file")

    with Job.create(folder, shed) as job:
        assert job.walk.building == shed
    assert not (folder / "record.db.new").exists()


def test_a_record_that_cannot_be_read_leaves_the_job_closed(folder: Path, shed: Building) -> None:
    Job.create(folder, shed).close()
    (folder / "record.db").write_bytes(b"gone")

    assert "is no SQLite file" in refusal(Job.open, folder)
