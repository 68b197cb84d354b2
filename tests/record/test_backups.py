from __future__ import annotations

import shutil
import sqlite3
from contextlib import closing
from datetime import UTC, datetime, timedelta
from pathlib import Path

import pytest

from leanto.record.backups import KEPT, backups_in
from leanto.record.entry import Noted
from leanto.record.store import Store

AT = datetime(2026, 11, 25, 15, 0, tzinfo=UTC)


@pytest.fixture
def path(tmp_path: Path) -> Path:
    path = tmp_path / "record.db"
    Store.create(path).close()
    return path


def started(path: Path, hour: int, answers: int = 1) -> str:
    """What a start says about its backup, after which so many answers are entered."""
    with Store.open(path) as store:
        said = store.back_up(path.parent / "backups", AT + timedelta(hours=hour))
        for number in range(answers):
            body = Noted(station="site", item="sill", text=f"{hour}/{number}")
            store.append(body, at=AT, who="tester")
    return said


def names(path: Path) -> list[str]:
    return [backup.name for backup in backups_in(path.parent / "backups")]


def test_a_backup_holds_what_the_record_held_at_the_start(path: Path) -> None:
    assert started(path, 0, answers=3) == ""
    assert started(path, 1) == ""

    newest, oldest = backups_in(path.parent / "backups")
    assert newest.name == "record-20261125-160000.db"
    with closing(sqlite3.connect(newest)) as raw:
        assert raw.execute("PRAGMA integrity_check").fetchone() == ("ok",)
    restored = path.parent / "restored" / "record.db"
    restored.parent.mkdir()
    shutil.copyfile(newest, restored)
    with Store.open(restored) as store:
        texts = [entry.body.text for entry in store.entries()]  # type: ignore[union-attr]
        assert texts == ["0/0", "0/1", "0/2"]
    with Store.open(oldest) as store:
        assert store.entries() == ()


def test_only_the_newest_few_are_kept_and_nothing_else_is_touched(path: Path) -> None:
    (path.parent / "backups").mkdir()
    (path.parent / "backups" / "record-mine.db").write_bytes(b"my own copy")

    for hour in range(KEPT + 3):
        assert started(path, hour) == ""

    assert len(names(path)) == KEPT
    assert names(path)[0] == "record-20261125-220000.db"
    assert names(path)[-1] == "record-20261125-180000.db"
    assert (path.parent / "backups" / "record-mine.db").read_bytes() == b"my own copy"


def test_a_start_that_adds_nothing_makes_no_new_backup(path: Path) -> None:
    started(path, 0, answers=2)
    started(path, 1, answers=0)
    started(path, 2, answers=0)

    assert names(path) == ["record-20261125-160000.db", "record-20261125-150000.db"]


@pytest.mark.parametrize("newest", [b"", b"half a file", b"SQLite format 3\0" * 300])
def test_a_backup_that_was_damaged_is_followed_by_a_new_one(path: Path, newest: bytes) -> None:
    started(path, 0)
    started(path, 1, answers=0)
    (path.parent / "backups" / names(path)[0]).write_bytes(newest)

    assert started(path, 2) == ""
    assert names(path)[0] == "record-20261125-170000.db"


def test_a_backup_that_fails_stops_nothing_and_leaves_no_half_file(path: Path) -> None:
    resource = pytest.importorskip("resource")
    started(path, 0, answers=40)
    (path.parent / "elsewhere").write_text("a file where the folder should be")
    with Store.open(path) as store:
        assert "No backup was made" in store.back_up(path.parent / "elsewhere", AT)
        soft, hard = resource.getrlimit(resource.RLIMIT_FSIZE)
        resource.setrlimit(resource.RLIMIT_FSIZE, (9_000, hard))
        try:
            said = store.back_up(path.parent / "backups", AT + timedelta(hours=1))
        finally:
            resource.setrlimit(resource.RLIMIT_FSIZE, (soft, hard))
        assert said.startswith("No backup was made: ")
        store.append(Noted(station="site", item="sill", text="on"), at=AT, who="tester")
    assert [p.name for p in (path.parent / "backups").iterdir()] == ["record-20261125-150000.db"]


def test_two_starts_in_one_second_keep_the_later(path: Path) -> None:
    started(path, 0)
    started(path, 0)

    (only,) = backups_in(path.parent / "backups")
    with Store.open(only) as store:
        assert len(store.entries()) == 1
