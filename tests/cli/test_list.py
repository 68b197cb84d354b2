"""``leanto list``: many jobs in short, as their records tell it."""

from __future__ import annotations

import sqlite3
from collections.abc import Sequence
from contextlib import closing
from datetime import UTC, datetime
from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st

from leanto.building.model import Building
from leanto.checklist.condition import Condition
from leanto.cli.main import main
from leanto.errors import JobError
from leanto.job import Job
from leanto.job.listing import jobs_below
from leanto.record.bid_entry import AboutBid, BidAdded, BidsSent
from leanto.record.entry import (
    AirMeasured,
    Answered,
    Body,
    BuildingSet,
    Entry,
    Imported,
    MovedTo,
    Noted,
    Redone,
    Undone,
)
from leanto.record.fold import fold
from leanto.record.store import Store
from leanto.record.summary import NOT_ASSESSED, summarize

NOON = datetime(2026, 11, 25, 12).astimezone(UTC)


def walked(folder: Path, shed: Building, answers: int) -> None:
    """A job with so many answers, of which the last is taken back again."""
    with Job.create(folder, shed, clock=lambda: NOON) as job:
        station = job.stations[0].id
        for item in job.items_at(station)[: answers + 1]:
            job.record(Answered(station=station, item=item.id, condition=Condition.SOUND))
        job.undo()
        job.assess()


def test_jobs_are_listed_wherever_they_lie_below(
    tmp_path: Path, shed: Building, capsys: pytest.CaptureFixture[str]
) -> None:
    walked(tmp_path / "2026" / "north", shed, 3)
    Job.create(tmp_path / "empty").close()
    (tmp_path / "broken").mkdir()
    (tmp_path / "broken" / "record.db").write_bytes(b"SQLite format 3\0" + b"\xff" * 5000)
    (tmp_path / ".hidden").mkdir()
    Job.create(tmp_path / ".hidden" / "job").close()

    assert main(["list", str(tmp_path)]) == 0
    lines = capsys.readouterr().out.splitlines()
    listed = {job.folder.name: job for job in jobs_below(tmp_path)}

    assert list(listed) == ["north", "broken", "empty"]
    assert (listed["north"].name, listed["north"].answered) == ("Test shed", 3)
    assert str(listed["north"].walked_on) == "2026-11-25"
    assert listed["north"].p50_usd is not None
    assert (listed["empty"].name, listed["empty"].walked_on) == ("", None)
    assert "damaged" in listed["broken"].fault
    assert any("2026-11-25" in line and "Test shed" in line for line in lines)
    assert lines[-1] == "3 jobs."


def test_the_money_is_told_only_while_it_holds(tmp_path: Path, shed: Building) -> None:
    walked(tmp_path / "job", shed, 3)

    def p50() -> float | None:
        (job,) = jobs_below(tmp_path)
        return job.p50_usd

    with Job.open(tmp_path / "job") as job:
        assert p50() == job.assess().estimate.range.p50
        station = job.stations[0].id
        job.record(MovedTo(station=station))
        assert p50() is not None
        job.record(AirMeasured(station=station, temp_f=50, humidity_pct=50))
        assert p50() is None
        job.assess()
    assert p50() is not None
    (tmp_path / "job" / "checklists" / "prices").mkdir(parents=True)
    (tmp_path / "job" / "checklists" / "prices" / "mine.yaml").write_text("prices: []\n")
    assert p50() is None


@pytest.mark.parametrize("note", [b"", b"{", b"[]", b'{"p50": NaN}', b"\xff" * 20_000])
def test_a_spoiled_note_of_the_money_is_passed_over(
    note: bytes, tmp_path: Path, shed: Building
) -> None:
    walked(tmp_path / "job", shed, 3)
    (tmp_path / "job" / "last-range.json").write_bytes(note)

    (job,) = jobs_below(tmp_path)

    assert (job.answered, job.p50_usd, job.fault) == (3, None, "")


def test_a_list_changes_nothing_in_a_job(tmp_path: Path, shed: Building) -> None:
    walked(tmp_path / "job", shed, 3)
    before = {path: path.read_bytes() for path in (tmp_path / "job").rglob("*") if path.is_file()}

    list(jobs_below(tmp_path))

    assert before == {
        path: path.read_bytes() for path in (tmp_path / "job").rglob("*") if path.is_file()
    }


def test_a_job_that_is_open_is_listed_as_it_stands(tmp_path: Path, shed: Building) -> None:
    with Job.create(tmp_path / "job", shed) as job:
        station = job.stations[0].id
        item = job.items_at(station)[0].id
        job.record(Answered(station=station, item=item, condition=Condition.WORN))
        (listed,) = jobs_below(tmp_path)
        assert listed.answered == 1


def test_a_folder_that_is_not_there_is_told(capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["list", "no-such-folder"]) == 2
    assert "There is no folder no-such-folder" in capsys.readouterr().err


PLACES = st.sampled_from(["site", "wiring"])
ITEMS = st.sampled_from(["sill", "stain"])


@st.composite
def steps(draw: st.DrawFn) -> list[str | Body]:
    about = {"station": draw(PLACES), "item": draw(ITEMS)}
    body = st.one_of(
        st.just("undo"),
        st.just("redo"),
        st.builds(Answered, station=PLACES, item=ITEMS, condition=st.sampled_from(Condition)),
        st.just(Noted(**about, text="x")),
        st.just(MovedTo(station="site")),
        st.just(Imported(source="x")),
        st.just(AirMeasured(station="site", temp_f=50, humidity_pct=50)),
    )
    return draw(st.lists(body, max_size=25))


@given(made=steps())
def test_the_short_reading_agrees_with_the_whole_one(
    made: list[str | Body], tmp_path_factory: pytest.TempPathFactory
) -> None:
    record = tmp_path_factory.mktemp("job") / "record.db"
    entries: list[Entry] = []
    for step in made:
        body: Body
        if isinstance(step, str):
            last = next((e.id for e in reversed(entries) if not isinstance(e.body, MovedTo)), 1)
            body = Undone(entry=last) if step == "undo" else Redone(entry=last)
        else:
            body = step
        entries.append(Entry(id=len(entries) + 1, at=NOON, who="x", body=body))
    Store.create(record, entries).close()

    walk = fold(entries)

    answered = [seen for seen in walk.observations.values() if seen.condition is not None]
    assert summarize(record).answered == len(answered)


def test_the_name_is_that_of_the_building_as_it_is_now(tmp_path: Path, shed: Building) -> None:
    def named(names: Sequence[str | int]) -> str:
        record = tmp_path / "record.db"
        record.unlink(missing_ok=True)
        bodies = [
            Undone(entry=step)
            if isinstance(step, int)
            else BuildingSet(building=shed.model_copy(update={"name": step}))
            for step in names
        ]
        entries = [Entry(id=n, at=NOON, who="x", body=body) for n, body in enumerate(bodies, 1)]
        Store.create(record, entries).close()
        return summarize(record).name

    assert named(["one"]) == "one"
    assert named(["one", "two"]) == "two"
    assert named(["one", "two", 2]) == "one"
    assert named(["one", 1]) == "one"


def test_the_kinds_from_which_nothing_follows_are_those_that_a_job_passes_over() -> None:
    passed = (MovedTo, BidsSent, BidAdded, AboutBid)
    models = Body.__args__[0].__args__  # type: ignore[attr-defined]
    kinds = {m.model_fields["kind"].default for m in models if issubclass(m, passed)}
    assert kinds == NOT_ASSESSED


def test_a_record_with_a_broken_entry_is_told(tmp_path: Path) -> None:
    record = tmp_path / "record.db"
    Store.create(record).close()
    with closing(sqlite3.connect(record)) as raw:
        raw.execute("INSERT INTO entries VALUES (1, 'x', 'x', 'answered', '{', 0)")
        raw.commit()

    with pytest.raises(JobError, match="cannot be"):
        summarize(record)
