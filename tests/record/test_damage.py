"""Bytes that changed on the disk are seen when the record is opened, and what is whole is saved."""

from __future__ import annotations

import random
import shutil
from datetime import UTC, datetime, timedelta
from pathlib import Path

import pytest

from leanto.errors import JobError
from leanto.record.entry import Entry, MovedTo, Noted, Undone
from leanto.record.log_check import log_is_damaged
from leanto.record.recovery import recover
from leanto.record.salvage import salvage
from leanto.record.store import Store

AT = datetime(2026, 11, 25, 15, 0, tzinfo=UTC)
COUNT = 60
SEEDS = range(40)


def noted(number: int) -> Noted:
    """A note of some length; a few spill over several pages."""
    size = 19_000 if number % 17 == 0 else number * 37 % 700
    return Noted(station="site", item="sill", text=f"answer {number} 台 é " + "x" * size)


def fill(store: Store, first: int = 1, last: int = COUNT) -> None:
    for number in range(first, last + 1):
        store.append(noted(number), at=AT + timedelta(minutes=number), who="tester")


@pytest.fixture(scope="module")
def closed(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """A record as its program left it."""
    path = tmp_path_factory.mktemp("closed") / "record.db"
    with Store.create(path) as store:
        fill(store)
    return path


@pytest.fixture(scope="module")
def crashed(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """A record whose last twenty entries stand in the log only, as after a crash."""
    path = tmp_path_factory.mktemp("live") / "record.db"
    left = tmp_path_factory.mktemp("crashed")
    with Store.create(path) as store:
        fill(store, last=COUNT - 20)
    with Store.open(path) as store:
        fill(store, first=COUNT - 19)
        for name in ("record.db", "record.db-wal"):
            shutil.copyfile(path.with_name(name), left / name)
    return left / "record.db"


def placed(record: Path, folder: Path) -> Path:
    for part in record.parent.glob("record.db*"):
        shutil.copyfile(part, folder / part.name)
    return folder / "record.db"


def contents(folder: Path) -> dict[str, bytes]:
    """Of every file but the lock, which holds nothing."""
    return {
        path.name: path.read_bytes()
        for path in folder.iterdir()
        if not path.name.startswith("record.lock")
    }


def spoil(path: Path, luck: random.Random) -> None:
    """Some bytes changed, a stretch overwritten, or the end cut off."""
    content = bytearray(path.read_bytes())
    match luck.randrange(3):
        case 0:
            for _ in range(luck.randint(1, 8)):
                content[luck.randrange(len(content))] ^= luck.randint(1, 255)
        case 1:
            start = luck.randrange(len(content))
            length = luck.randint(10, 5000)
            content[start : start + length] = luck.randbytes(len(content[start : start + length]))
        case 2:
            del content[luck.randrange(len(content)) :]
    path.write_bytes(content)


def open_or_refuse(record: Path) -> tuple[Entry, ...] | None:
    """The entries; None when the record is refused, which must leave it as it is."""
    before = contents(record.parent)
    try:
        with Store.open(record) as store:
            return store.entries()
    except JobError as refused:
        assert refused.remedy
        assert "\n" not in str(refused)
        assert contents(record.parent) == before
        return None


@pytest.mark.parametrize("seed", SEEDS)
@pytest.mark.parametrize("kind", ["closed", "crashed"])
def test_a_spoiled_record_is_refused_untouched_and_saved_as_far_as_it_is_whole(
    kind: str, seed: int, tmp_path: Path, request: pytest.FixtureRequest
) -> None:
    record = placed(request.getfixturevalue(kind), tmp_path)
    spoil(record, random.Random(seed))
    spoiled = contents(tmp_path)

    found = recover(record, ())
    assert contents(tmp_path) == spoiled
    read = open_or_refuse(record)

    texts = {number: noted(number).text for number in range(1, COUNT + 1)}
    if read is not None:
        assert [entry.body.text for entry in read] == list(texts.values())  # type: ignore[union-attr]
    saved = [entry.body.text for entry in found.entries]  # type: ignore[union-attr]
    ids = [id_ for id_ in range(1, found.last_id + 1) if id_ not in found.missing]
    assert saved == [texts[id_] for id_ in ids]
    assert not found.unreadable
    assert found.unchecked == 0


@pytest.mark.parametrize("seed", SEEDS)
def test_a_spoiled_log_is_refused_unless_only_its_last_transaction_is_hit(
    seed: int, crashed: Path, tmp_path: Path
) -> None:
    record = placed(crashed, tmp_path)
    log = tmp_path / "record.db-wal"
    luck = random.Random(seed)
    content = bytearray(log.read_bytes())
    content[luck.randrange(len(content))] ^= luck.randint(1, 255)
    log.write_bytes(content)

    read = open_or_refuse(record)

    found = recover(record, ())
    if read is None:
        assert len(found.entries) >= COUNT - 2
    else:
        assert len(read) >= COUNT - 1
        assert [entry.body for entry in read] == [noted(entry.id) for entry in read]


@pytest.mark.parametrize("kind", ["closed", "crashed"])
def test_all_of_a_record_that_is_whole_is_salvaged(
    kind: str, tmp_path: Path, request: pytest.FixtureRequest
) -> None:
    record = placed(request.getfixturevalue(kind), tmp_path)

    rows = salvage(record)
    found = recover(record, ())

    assert list(rows) == list(range(1, COUNT + 1))
    assert all(of_id[0].checked for of_id in rows.values())
    assert [entry.body for entry in found.entries] == [noted(n) for n in range(1, COUNT + 1)]
    assert (found.missing, found.last_id) == ((), COUNT)
    assert not log_is_damaged(tmp_path / "record.db-wal")


def test_one_changed_letter_of_a_note_is_not_passed_off_as_the_note(
    closed: Path, tmp_path: Path
) -> None:
    record = placed(closed, tmp_path)
    content = record.read_bytes()
    assert content.count(b"answer 33 ") == 1
    record.write_bytes(content.replace(b"answer 33 ", b"answer 38 "))

    with pytest.raises(JobError, match=r"damaged .entry 33 is not what was written") as refused:
        Store.open(record)
    found = recover(record, ())

    assert f"leanto recover {tmp_path} NEW-FOLDER" in refused.value.remedy
    assert found.missing == (33,)
    before, after = found.neighbors[33]
    assert before is not None and after is not None
    assert (before.id, after.id) == (32, 34)


def test_a_backup_fills_what_the_record_lost(closed: Path, tmp_path: Path) -> None:
    record = placed(closed, tmp_path)
    backup = tmp_path / "backup.db"
    shutil.copyfile(record, backup)
    content = record.read_bytes()
    record.write_bytes(content[: len(content) // 2])
    alone = recover(record, ())
    assert alone.missing or alone.last_id < COUNT

    found = recover(record, [backup])

    assert [entry.id for entry in found.entries] == list(range(1, COUNT + 1))
    assert found.from_backups == COUNT - len(alone.entries)


def test_a_backup_of_another_job_is_left_out(closed: Path, tmp_path: Path) -> None:
    record = placed(closed, tmp_path)
    other = tmp_path / "other.db"
    with Store.create(other) as store:
        for number in range(COUNT + 5):
            store.append(MovedTo(station=f"s{number}"), at=AT, who="somebody else")

    found = recover(record, [other])

    assert len(found.entries) == COUNT
    assert found.from_backups == 0


def test_where_the_record_is_gone_the_backup_is_all(closed: Path, tmp_path: Path) -> None:
    shutil.copyfile(closed, tmp_path / "backup.db")

    found = recover(tmp_path / "record.db", [tmp_path / "backup.db"])

    assert len(found.entries) == found.from_backups == COUNT


@pytest.mark.parametrize(
    ("lost", "texts", "undone"),
    [
        # As entered: 1 2 3, undo 3, undo 2, then 6.
        ((), "1 2 3 6", [3, 2]),
        ((4,), "1 2 3 6", [3, 2]),  # the undo of 2 tells that 3 was taken back before
        ((5,), "1 2 3 6", [3]),
        ((3,), "1 2 6", [2]),
        ((2, 3), "1 6", []),
    ],
)
def test_undos_are_made_to_fit_what_is_left(
    lost: tuple[int, ...], texts: str, undone: list[int], tmp_path: Path
) -> None:
    record = tmp_path / "record.db"
    bodies = [
        *(Noted(station="site", item="sill", text=f"<{number}>") for number in (1, 2, 3)),
        *(Undone(entry=3), Undone(entry=2)),
        Noted(station="site", item="sill", text="<6>"),
    ]
    with Store.create(record) as store:
        for body in bodies:
            store.append(body, at=AT, who="tester")
    content = record.read_bytes()
    for id_ in lost:
        needle = f'"entry":{7 - id_}' if id_ in (4, 5) else f"<{id_}>"
        content = content.replace(needle.encode(), b"\xff" * len(needle))
    record.write_bytes(content)

    entries = recover(record, ()).entries

    notes = {entry.id: entry.body.text for entry in entries if isinstance(entry.body, Noted)}
    assert " ".join(text.strip("<>") for text in notes.values()) == texts
    taken_back = [
        int(notes[entry.body.entry].strip("<>"))
        for entry in entries
        if isinstance(entry.body, Undone)
    ]
    assert taken_back == undone
    assert [entry.id for entry in entries] == list(range(1, len(entries) + 1))
    Store.create(tmp_path / "new.db", entries).close()


def test_names_that_are_no_text_are_damage(closed: Path, tmp_path: Path) -> None:
    """Found by fuzzing: SQLite's own message then holds bytes that are no text."""
    record = placed(closed, tmp_path)
    content = record.read_bytes()
    assert content.count(b"CREATE TABLE") == 2
    record.write_bytes(content.replace(b"CREATE TABLE meta", b"CREATE T\xb6\xff\xfeE meta"))

    with pytest.raises(JobError, match="damaged"):
        Store.open(record)
    assert len(recover(record, ()).entries) == COUNT


@pytest.mark.parametrize("content", [b"", b"SQLite format 3\0", b"\0" * 5000, b"\xff" * 70_000])
def test_what_is_no_record_gives_no_entries(content: bytes, tmp_path: Path) -> None:
    (tmp_path / "record.db").write_bytes(content)
    (tmp_path / "record.db-wal").write_bytes(content)

    assert recover(tmp_path / "record.db", ()).entries == ()
    assert recover(tmp_path / "missing.db", ()).entries == ()
