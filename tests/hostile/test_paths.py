"""A job that came from a stranger leads to no file outside its folder."""

from __future__ import annotations

from pathlib import Path

import pytest
from PIL import Image
from pydantic import ValidationError
from small_shed import SHED

from leanto.building.load import parse_building
from leanto.cli.main import main
from leanto.errors import JobError
from leanto.job import Job
from leanto.record.entry import PhotoAdded

OUTSIDE = ("../../secret", "/etc/passwd", "..", "a/b", "AB" * 32, "ab" * 31 + "/x", "")


@pytest.fixture
def folder(tmp_path: Path) -> Path:
    Job.create(tmp_path / "job", parse_building(SHED, "shed.yaml")).close()
    return tmp_path / "job"


@pytest.mark.parametrize("digest", OUTSIDE)
def test_a_photo_is_named_by_its_digest_only(digest: str) -> None:
    with pytest.raises(ValidationError):
        PhotoAdded(station="site", item="grade", digest=digest, original_name="x.jpg")


@pytest.mark.parametrize("name", ["photos", "backups", "reports", "record.lock", "last-range.json"])
def test_a_job_with_a_link_out_of_it_is_not_opened(name: str, folder: Path, tmp_path: Path) -> None:
    outside = tmp_path / "outside"
    outside.mkdir()
    (outside / "mine.txt").write_text("mine")
    inside = folder / name
    if inside.is_dir():
        inside.rmdir()
    inside.unlink(missing_ok=True)
    inside.symlink_to(outside)

    with pytest.raises(JobError, match="is a link to another place") as refused:
        Job.open(folder)

    assert refused.value.remedy
    assert [path.name for path in outside.iterdir()] == ["mine.txt"]


def test_a_record_or_photo_that_is_a_link_is_not_followed(folder: Path, tmp_path: Path) -> None:
    (folder / "photos").mkdir(exist_ok=True)
    Image.new("RGB", (10, 10)).save(tmp_path / "private.jpg")
    link = folder / "photos" / f"{'ab' * 32}.jpg"
    link.symlink_to(tmp_path / "private.jpg")
    with pytest.raises(JobError, match="is a link"):
        Job.open(folder)
    link.unlink()
    (folder / "record.db").rename(tmp_path / "elsewhere.db")
    (folder / "record.db").symlink_to(tmp_path / "elsewhere.db")
    before = (tmp_path / "elsewhere.db").read_bytes()

    with pytest.raises(JobError, match="is a link"):
        Job.open(folder)

    assert (tmp_path / "elsewhere.db").read_bytes() == before
    assert not (tmp_path / "elsewhere.db-wal").exists()


def test_own_checklists_may_be_shared_by_a_link(folder: Path, tmp_path: Path) -> None:
    (tmp_path / "mine").mkdir()
    (folder / "checklists").symlink_to(tmp_path / "mine")

    with Job.open(folder) as job:
        assert job.library.rules


def test_an_export_is_never_written_over_a_file_or_through_a_link(
    folder: Path, tmp_path: Path
) -> None:
    (tmp_path / "target.yaml").write_text("mine")
    (tmp_path / "link.yaml").symlink_to(tmp_path / "target.yaml")
    (tmp_path / "dangling.yaml").symlink_to(tmp_path / "nowhere.yaml")
    for name in ("target.yaml", "link.yaml", "dangling.yaml"):
        assert main(["export", str(folder), "--to", str(tmp_path / name)]) == 2

    assert (tmp_path / "target.yaml").read_text() == "mine"
    assert not (tmp_path / "nowhere.yaml").exists()
    assert main(["export", str(folder), "--to", str(tmp_path / "new.yaml")]) == 0


def test_a_list_follows_no_links(
    folder: Path, tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    (tmp_path / "jobs").mkdir()
    (tmp_path / "jobs" / "link").symlink_to(folder)
    (tmp_path / "jobs" / "circle").symlink_to(tmp_path / "jobs")
    (tmp_path / "jobs" / "fake").mkdir()
    (tmp_path / "jobs" / "fake" / "record.db").symlink_to(folder / "record.db")

    assert main(["list", str(tmp_path / "jobs")]) == 0
    assert capsys.readouterr().out == "0 jobs.\n"
