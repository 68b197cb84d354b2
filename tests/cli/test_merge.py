"""``leanto merge``: two laptops, one building."""

from __future__ import annotations

import hashlib
import shutil
from datetime import UTC, datetime, timedelta
from pathlib import Path

import pytest
from PIL import Image

from leanto.building.model import Building
from leanto.checklist.condition import Condition
from leanto.cli.main import main
from leanto.job import Job
from leanto.record.entry import Answered, BuildingSet, Measured, Noted
from leanto.record.observation import ObservationKey

NOON = datetime(2026, 11, 25, 12, tzinfo=UTC)
WALL, OTHER_WALL = "main.north.inside", "main.south.inside"
FEET = ObservationKey(WALL, "stud-feet")


class Laptop:
    """A copy of a job, and somebody who walks on with it."""

    def __init__(self, folder: Path, who: str, start: datetime = NOON) -> None:
        self.folder, self.who, self._now = folder, who, start

    def _clock(self) -> datetime:
        self._now += timedelta(seconds=7)
        return self._now

    def open(self) -> Job:
        return Job.open(self.folder, clock=self._clock, who=self.who)

    def answer(self, condition: Condition, key: ObservationKey = FEET, note: str = "") -> None:
        about = {"station": key.station, "item": key.item, "number": key.number}
        with self.open() as job:
            job.record(Answered.model_validate({**about, "condition": condition}))
            if note:
                job.record(Noted.model_validate({**about, "text": note}))


@pytest.fixture
def two(tmp_path: Path, shed: Building) -> tuple[Laptop, Laptop]:
    """One job, copied to a second laptop once the building was described."""
    Job.create(tmp_path / "ann", shed, clock=lambda: NOON, who="ann").close()
    shutil.copytree(tmp_path / "ann", tmp_path / "bo")
    later = NOON + timedelta(seconds=3)
    return Laptop(tmp_path / "ann", "ann"), Laptop(tmp_path / "bo", "bo", later)


def contents(folder: Path) -> dict[str, str]:
    """Every file of a job but those that opening it makes anew."""
    return {
        path.relative_to(folder).as_posix(): hashlib.sha256(path.read_bytes()).hexdigest()
        for path in sorted(folder.rglob("*"))
        if path.is_file()
    }


def test_two_walks_of_different_stations_become_one_and_neither_is_written_to(
    two: tuple[Laptop, Laptop], tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    ann, bo = two
    picture = tmp_path / "stain.png"
    Image.new("RGB", (40, 30), "tan").save(picture)
    ann.answer(Condition.SOUND)
    bo.answer(Condition.FAILED, ObservationKey(OTHER_WALL, "stud-feet"), note="Soft for 2 ft")
    with bo.open() as job:
        photo = job.add_photo(ObservationKey(OTHER_WALL, "stud-feet"), picture)
    (bo.folder / "checklists" / "walk").mkdir(parents=True)
    (bo.folder / "checklists" / "walk" / "mine.yaml").write_text("id: mine\n", encoding="utf-8")
    before = [contents(ann.folder), contents(bo.folder)]

    assert main(["merge", str(ann.folder), str(bo.folder), "--to", str(tmp_path / "both")]) == 0

    assert "settled: 0" in capsys.readouterr().out
    assert [contents(ann.folder), contents(bo.folder)] == before
    assert (tmp_path / "both" / "photos" / f"{photo.digest}.jpg").is_file()
    assert (tmp_path / "both" / "checklists" / "walk" / "mine.yaml").is_file()
    shutil.rmtree(tmp_path / "both" / "checklists")
    with Job.open(tmp_path / "both") as job:
        seen = job.walk.observations
        assert seen[FEET].condition is Condition.SOUND
        assert seen[ObservationKey(OTHER_WALL, "stud-feet")].note == "Soft for 2 ft"
        assert job.walkers == "ann, bo"
        assert job.notices == ()


@pytest.mark.parametrize(
    ("keep", "condition", "other"),
    [
        ("a", Condition.WORN, None),
        ("b", Condition.FAILED, None),
        ("later", Condition.FAILED, None),
        ("both", Condition.WORN, Condition.FAILED),
    ],
)
def test_what_both_answered_differently_is_settled_and_what_lost_stays_in_the_record(
    two: tuple[Laptop, Laptop],
    tmp_path: Path,
    keep: str,
    condition: Condition,
    other: Condition | None,
) -> None:
    ann, bo = two
    ann.answer(Condition.WORN)
    bo.answer(Condition.FAILED)
    folder = tmp_path / "both"
    command = ["merge", str(ann.folder), str(bo.folder), "--to", str(folder)]
    assert main([*command, "--settle", f"1={keep}"]) == 0
    with Job.open(folder) as job:
        assert job.walk.observations[FEET].condition is condition
        second = job.walk.observations.get(ObservationKey(WALL, "stud-feet", 2))
        assert (second.condition if second else None) is other
        said = [e.body.condition for e in job.entries if isinstance(e.body, Answered)]
        assert {Condition.WORN, Condition.FAILED} <= set(said)
        assert job.undo() is not None, "what was settled can be taken back"


def test_nothing_is_written_while_a_conflict_is_not_settled(
    two: tuple[Laptop, Laptop],
    tmp_path: Path,
    capsys: pytest.CaptureFixture[str],
    monkeypatch: pytest.MonkeyPatch,
) -> None:
    ann, bo = two
    ann.answer(Condition.SOUND)
    bo.answer(Condition.FAILED, note="A knife goes in")
    monkeypatch.setattr("sys.stdin.isatty", lambda: False, raising=False)
    assert main(["merge", str(ann.folder), str(bo.folder)]) == 2
    said = capsys.readouterr()
    assert "a: sound" in said.out and "b: failed; note “A knife goes in” (later)" in said.out
    assert "--settle 1=a" in said.err
    assert not (tmp_path / "ann-merged").exists()


def test_it_asks_at_the_prompt(
    two: tuple[Laptop, Laptop], tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    ann, bo = two
    ann.answer(Condition.SOUND)
    bo.answer(Condition.FAILED)
    answers = iter(["what", "both", "b"])
    monkeypatch.setattr("sys.stdin.isatty", lambda: True, raising=False)
    monkeypatch.setattr("builtins.input", lambda _: next(answers))
    assert main(["merge", str(ann.folder), str(bo.folder)]) == 0
    with Job.open(tmp_path / "ann-merged") as job:
        assert job.walk.observations[FEET].condition is Condition.FAILED


def test_merging_once_more_changes_no_answer_and_asks_nothing(
    two: tuple[Laptop, Laptop], tmp_path: Path
) -> None:
    ann, bo = two
    ann.answer(Condition.SOUND)
    bo.answer(Condition.FAILED)
    assert main(["merge", str(ann.folder), str(bo.folder), "--keep", "a"]) == 0
    again = ["merge", str(tmp_path / "ann-merged"), str(bo.folder), "--to", str(tmp_path / "c")]
    assert main(again) == 0
    with Job.open(tmp_path / "ann-merged") as one, Job.open(tmp_path / "c") as other:
        assert one.entries == other.entries


def test_into_first_puts_the_result_in_its_place_and_keeps_the_record_before(
    two: tuple[Laptop, Laptop],
) -> None:
    ann, bo = two
    ann.answer(Condition.SOUND)
    bo.answer(Condition.FAILED, ObservationKey(OTHER_WALL, "stud-feet"))
    assert main(["merge", str(ann.folder), str(bo.folder), "--into-first"]) == 0
    with Job.open(ann.folder) as job:
        assert len(job.walk.observations) == 2 and not job.read_only
    assert list((ann.folder / "backups").glob("record-*.db"))
    assert [path.name for path in ann.folder.parent.iterdir() if "merging" in path.name] == []


def test_a_job_that_is_open_elsewhere_is_not_merged_into(two: tuple[Laptop, Laptop]) -> None:
    ann, bo = two
    with ann.open():
        before = contents(ann.folder)["record.db"]
        assert main(["merge", str(ann.folder), str(bo.folder), "--into-first"]) == 2
        assert contents(ann.folder)["record.db"] == before


def test_two_buildings_are_refused_in_a_word(
    tmp_path: Path, shed: Building, capsys: pytest.CaptureFixture[str]
) -> None:
    Job.create(tmp_path / "one", shed, clock=lambda: NOON).close()
    barn = shed.model_copy(update={"name": "Upper barn"})
    Job.create(tmp_path / "other", barn, clock=lambda: NOON).close()
    assert main(["merge", str(tmp_path / "one"), str(tmp_path / "other")]) == 2
    assert "These are two buildings" in capsys.readouterr().err
    assert main(["merge", str(tmp_path / "one"), str(tmp_path / "one")]) == 2


def test_two_descriptions_of_one_building_are_a_conflict(
    two: tuple[Laptop, Laptop], tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    ann, bo = two
    for laptop, year in ((ann, 1940), (bo, 1951)):
        with laptop.open() as job:
            building = job.walk.building
            assert building is not None
            job.record(BuildingSet(building=building.model_copy(update={"year_built": year})))
    command = ["merge", str(ann.folder), str(bo.folder)]
    assert main([*command, "--list"]) == 0
    said = capsys.readouterr().out
    assert "description of the building" in said and "built 1940" in said and "built 1951" in said
    assert main([*command, "--settle", "1=both"]) == 2
    assert main([*command, "--settle", "1=a"]) == 0
    with Job.open(tmp_path / "ann-merged") as job:
        assert job.walk.building is not None and job.walk.building.year_built == 1940


def test_one_side_alone_is_no_conflict(two: tuple[Laptop, Laptop], tmp_path: Path) -> None:
    ann, bo = two
    ann.answer(Condition.FAILED)
    about = {"station": WALL, "item": "stud-feet"}
    with bo.open() as job:
        job.record(Measured.model_validate({**about, "measure": "moisture_pct", "value": 24.0}))
        job.record(Noted.model_validate({**about, "text": "Cold here"}))
    assert main(["merge", str(ann.folder), str(bo.folder)]) == 0
    with Job.open(tmp_path / "ann-merged") as job:
        seen = job.walk.observations[FEET]
        assert (seen.condition, seen.note) == (Condition.FAILED, "Cold here")
        assert seen.measures == {"moisture_pct": 24.0}
