"""``leanto recover``: a damaged job saved into a new one."""

from __future__ import annotations

from collections.abc import Callable
from datetime import datetime
from pathlib import Path

import pytest
from PIL import Image

from leanto.building.model import Building
from leanto.checklist.condition import Condition
from leanto.cli.main import main
from leanto.errors import JobError
from leanto.job import Job
from leanto.job.recovering import REPORT, rescue
from leanto.record.entry import Answered, Noted
from leanto.record.observation import ObservationKey

SILL = {"station": "main.south.outside", "item": "sill"}
KEY = ObservationKey("main.south.outside", "sill")


@pytest.fixture
def damaged(folder: Path, shed: Building, clock: Callable[[], datetime], tmp_path: Path) -> Path:
    """A job with a photo, a note that lost a letter, a backup without either, own checklists."""
    Image.new("RGB", (40, 30), "brown").save(tmp_path / "sill.png")
    with Job.create(folder, shed, clock=clock, who="tester") as job:
        job.record(Answered(**SILL, condition=Condition.FAILED))
    with Job.open(folder, clock=clock, who="tester") as job:
        job.record(Noted(**SILL, text="needle in the record"))
        job.add_photo(KEY, tmp_path / "sill.png")
    (folder / "checklists" / "prices").mkdir(parents=True)
    (folder / "checklists" / "prices" / "mine.yaml").write_text("prices: []\n")
    content = (folder / "record.db").read_bytes()
    assert b"needle" in content
    (folder / "record.db").write_bytes(content.replace(b"needle", b"noodle"))
    return folder


def listing(folder: Path) -> dict[str, bytes]:
    return {
        path.relative_to(folder).as_posix(): path.read_bytes()
        for path in sorted(folder.rglob("*"))
        if path.is_file()
    }


def test_what_is_whole_is_saved_and_what_is_missing_is_listed(
    damaged: Path, tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    before = listing(damaged)

    assert main(["walk", str(damaged)]) == 2
    assert f"leanto recover {damaged} NEW-FOLDER" in capsys.readouterr().err
    assert main(["recover", str(damaged), str(tmp_path / "new")]) == 0
    said = capsys.readouterr().out

    assert listing(damaged) == before
    assert "Entries saved: 3." in said
    assert 'Missing: entry 3 is lost, next to "answered" main.south.outside sill of 2026' in said
    assert "Photos saved: 1." in said
    with Job.open(tmp_path / "new") as job:
        seen = job.walk.observations[KEY]
        assert seen.condition is Condition.FAILED
        assert (seen.note, len(seen.photos)) == ("", 1)
        assert job.photo_path(seen.photos[0]).is_file()
        assert not job.read_only
    assert (tmp_path / "new" / "checklists" / "prices" / "mine.yaml").is_file()
    assert (tmp_path / "new" / REPORT).read_text() in said


def test_a_lost_record_comes_back_from_its_backup(damaged: Path, tmp_path: Path) -> None:
    (damaged / "record.db").unlink()

    rescued = rescue(damaged, tmp_path / "new")

    # The backup is that of the second start: the photo came later, and its file is kept.
    assert "Entries saved: 2." in rescued.lines
    assert "Of these, 2 were found only in a backup." in rescued.lines
    assert any(line.startswith("Belonging to no entry that was found: ") for line in rescued.lines)
    with Job.open(tmp_path / "new") as job:
        assert job.walk.observations[KEY].condition is Condition.FAILED


def test_a_photo_that_is_lost_or_damaged_is_listed(damaged: Path, tmp_path: Path) -> None:
    (photo,) = (damaged / "photos").iterdir()
    photo.write_bytes(photo.read_bytes()[:-20])

    rescued = rescue(damaged, tmp_path / "new")

    assert "Missing: the photo sill.png at main.south.outside sill." in rescued.lines
    assert not rescued.is_whole
    assert not (tmp_path / "new" / "photos").exists()


def test_a_job_that_is_whole_is_copied_whole(folder: Path, shed: Building, tmp_path: Path) -> None:
    with Job.create(folder, shed) as job:
        job.record(Answered(**SILL, condition=Condition.WORN))

    rescued = rescue(folder, tmp_path / "new")

    assert rescued.is_whole
    with Job.open(tmp_path / "new") as new, Job.open(folder) as old:
        assert new.walk == old.walk


def test_links_out_of_the_job_are_not_followed(damaged: Path, tmp_path: Path) -> None:
    secret = tmp_path / "secret.yaml"
    secret.write_text("secret")
    (damaged / "checklists" / "prices" / "link.yaml").symlink_to(secret)
    (damaged / "checklists" / "away").symlink_to(tmp_path)

    rescue(damaged, tmp_path / "new")

    kept = [path.name for path in (tmp_path / "new" / "checklists").rglob("*.yaml")]
    assert kept == ["mine.yaml"]


def test_where_it_cannot_be_saved_it_says_so(damaged: Path, tmp_path: Path) -> None:
    (tmp_path / "full").mkdir()
    (tmp_path / "full" / "letter.txt").write_text("x")
    (tmp_path / "nothing").mkdir()
    before = listing(damaged)

    for source, target, said in (
        (damaged, tmp_path / "full", "is not empty"),
        (damaged, damaged / "photos" / "new", "lies in the damaged job"),
        (damaged, damaged, "lies in the damaged job"),
        (tmp_path / "nowhere", tmp_path / "new", "There is no folder"),
        (tmp_path / "nothing", tmp_path / "new", "Nothing can be read"),
    ):
        with pytest.raises(JobError, match=said) as refused:
            rescue(source, target)
        assert refused.value.remedy
    assert listing(damaged) == before
    assert not (tmp_path / "new").exists()
