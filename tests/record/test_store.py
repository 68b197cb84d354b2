from __future__ import annotations

import os
import sqlite3
import subprocess
import sys
import tempfile
from collections.abc import Iterator
from contextlib import closing
from datetime import UTC, datetime
from pathlib import Path

import pytest

from leanto.errors import JobError, ReadOnlyJob
from leanto.record.checksum import entry_crc
from leanto.record.entry import Entry, MovedTo, Noted
from leanto.record.migrations import SCHEMA_VERSION
from leanto.record.store import Store

AT = datetime(2026, 11, 25, 15, 0, tzinfo=UTC)
INSPECT = Path(__file__).resolve().parents[2] / "inspect"


def note(text: str = "soft") -> Noted:
    return Noted(station="site", item="sill", text=text)


def add(store: Store, *texts: str) -> list[Entry]:
    return [store.append(note(text), at=AT, who="tester") for text in texts]


@pytest.fixture
def path(tmp_path: Path) -> Path:
    """A closed record with two entries."""
    path = tmp_path / "record.db"
    with Store.create(path) as store:
        add(store, "one", "two")
    return path


@pytest.fixture
def raw(path: Path) -> Iterator[sqlite3.Connection]:
    """The record as any other program opens it."""
    with closing(sqlite3.connect(path, isolation_level=None)) as connection:
        yield connection


def test_what_was_appended_is_read_back_in_order(tmp_path: Path) -> None:
    with Store.create(tmp_path / "record.db") as store:
        added = add(store, "one", 'quotes " and \x00 and 台', "three")
    with Store.open(tmp_path / "record.db") as store:
        read = store.entries()

    assert read == tuple(added)
    assert [entry.id for entry in read] == [1, 2, 3]
    assert not (tmp_path / "record.db-wal").exists()


def test_a_record_is_made_with_its_first_entries(tmp_path: Path) -> None:
    first = Entry(id=1, at=AT, who="tester", body=note())

    with Store.create(tmp_path / "record.db", [first]) as store:
        assert store.entries() == (first,)
        assert add(store, "next")[0].id == 2
    assert sorted(path.name for path in tmp_path.iterdir()) == ["record.db", "record.lock"]


def test_a_record_that_cannot_be_made_leaves_no_record(tmp_path: Path) -> None:
    gap = Entry(id=2, at=AT, who="tester", body=note())

    with pytest.raises(JobError, match="numbered without gaps"):
        Store.create(tmp_path / "record.db", [gap])

    assert not (tmp_path / "record.db").exists()


def test_time_needs_a_zone_and_is_kept_to_the_microsecond(path: Path) -> None:
    at = datetime.fromisoformat("2026-11-25T09:30:00.123456-05:00")
    with Store.open(path) as store:
        entry = store.append(note(), at=at, who="tester")
        assert store.entries()[-1].at == at == entry.at

        with pytest.raises(ValueError, match="time zone"):
            store.append(note(), at=datetime(2026, 11, 25), who="tester")
        assert len(store.entries()) == 3


def test_the_file_is_marked_durable_and_versioned(path: Path) -> None:
    with Store.open(path) as store:
        pragmas = {
            name: store._connection.execute(f"PRAGMA {name}").fetchone()[0]
            for name in ("application_id", "journal_mode", "synchronous", "recursive_triggers")
        }
        meta = dict(store._connection.execute("SELECT key, value FROM meta").fetchall())

    assert pragmas == {
        "application_id": int.from_bytes(b"lean", "big"),
        "journal_mode": "wal",
        "synchronous": 2,
        "recursive_triggers": 1,
    }
    assert meta["schema_version"] == str(SCHEMA_VERSION)
    assert meta["created_by"].startswith("leanto ")
    assert meta["step 1"] == "entries"


@pytest.mark.parametrize("recursive_triggers", ["ON", "OFF"])
@pytest.mark.parametrize(
    ("statement", "refusal"),
    [
        ("UPDATE entries SET who = 'someone else' WHERE id = 1", "not changed"),
        ("DELETE FROM entries WHERE id = 2", "not deleted"),
        ("DELETE FROM entries", "not deleted"),
        (
            "INSERT OR REPLACE INTO entries VALUES (1, '', '', '', '', 0)",
            "without gaps|not deleted",
        ),
        ("REPLACE INTO entries VALUES (2, '', '', '', '', 0)", "without gaps|not deleted"),
        ("INSERT INTO entries VALUES (4, '', '', '', '', 0)", "without gaps"),
        ("INSERT INTO entries VALUES (NULL, '', '', '', '', 0)", "without gaps"),
        (
            "INSERT INTO entries VALUES (2, '', '', '', '', 0) "
            "ON CONFLICT (id) DO UPDATE SET who = 'x'",
            "not changed|without gaps",
        ),
    ],
)
def test_entries_are_only_ever_added(
    raw: sqlite3.Connection, statement: str, refusal: str, recursive_triggers: str
) -> None:
    raw.execute(f"PRAGMA recursive_triggers = {recursive_triggers}")
    before = raw.execute("SELECT * FROM entries").fetchall()

    with pytest.raises(sqlite3.IntegrityError, match=refusal):
        raw.execute(statement)

    assert raw.execute("SELECT * FROM entries").fetchall() == before


def test_a_second_program_reads_what_the_first_writes_and_is_told_why_it_only_reads(
    path: Path,
) -> None:
    with Store.open(path) as first, Store.open(path) as second:
        add(first, "three")

        assert not first.read_only
        assert second.read_only_reason == "This job is open in another program."
        assert len(second.entries()) == 3
        with pytest.raises(ReadOnlyJob, match="Nothing was added: this job is open in another"):
            add(second, "four")
        assert add(first, "four")[0].id == 4


def test_the_lock_goes_with_the_first_program(path: Path) -> None:
    code = (
        "import sys; from pathlib import Path; from leanto.record.store import Store\n"
        "store = Store.open(Path(sys.argv[1])); print(store.read_only, flush=True)\n"
        "sys.stdin.read()"
    )
    other = subprocess.Popen(
        [sys.executable, "-c", code, str(path)],
        env={**os.environ, "PYTHONPATH": str(INSPECT)},
        stdin=subprocess.PIPE,
        stdout=subprocess.PIPE,
        text=True,
    )
    with other:
        assert other.stdout is not None
        assert other.stdout.readline() == "False\n"
        with Store.open(path) as store:
            assert store.read_only
        other.kill()
        other.wait()
    with Store.open(path) as store:
        assert not store.read_only
        add(store, "three")


def test_a_newer_record_is_read_and_never_written(path: Path, raw: sqlite3.Connection) -> None:
    raw.execute("UPDATE meta SET value = '99' WHERE key = 'schema_version'")

    with Store.open(path) as store, Store.open(path) as second:
        assert store.read_only_reason == "This job was written by a newer version of leanto."
        assert second.read_only_reason == store.read_only_reason
        assert len(store.entries()) == 2
        with pytest.raises(ReadOnlyJob, match="newest leanto"):
            add(store, "three")


@pytest.mark.parametrize(
    ("kind", "body", "said"),
    [
        ("scanned", '{"kind": "scanned"}', 'kind "scanned" is not known'),
        ("noted", '{"kind": "noted", "station": "site", "item": "sill"}', "noted.text: Field"),
        ("noted", "{", "Invalid JSON"),
        ("answered", note().model_dump_json(), 'called "answered" and holds "noted"'),
    ],
)
def test_an_entry_that_cannot_be_read_is_named(
    path: Path, raw: sqlite3.Connection, kind: str, body: str, said: str
) -> None:
    row = (AT.isoformat(), "tester", kind, body)
    raw.execute("INSERT INTO entries VALUES (3, ?, ?, ?, ?, ?)", (*row, entry_crc(3, *row)))

    with Store.open(path) as store, pytest.raises(JobError) as refused:
        store.entries()

    assert refused.value.what.startswith("Entry 3 of the record cannot be read: ")
    assert said in refused.value.what
    assert "\n" not in str(refused.value)
    assert refused.value.remedy


def test_a_file_that_is_no_record_is_left_as_it_is(tmp_path: Path) -> None:
    path = tmp_path / "record.db"
    with closing(sqlite3.connect(tmp_path / "other.db")) as other:
        other.execute("CREATE TABLE t (x)")
    contents = {
        "is no SQLite file": [b"", b"notes", b"\0" * 4096],
        "is not a record of leanto": [(tmp_path / "other.db").read_bytes()],
    }
    for said, samples in contents.items():
        for content in samples:
            path.write_bytes(content)
            with pytest.raises(JobError, match=said) as refused:
                Store.open(path)
            assert "copy" in refused.value.remedy
            assert path.read_bytes() == content
    assert not (tmp_path / "record.lock").exists()


def test_a_record_that_is_not_there_or_is_a_folder_is_refused(tmp_path: Path) -> None:
    with pytest.raises(JobError, match="is not there"):
        Store.open(tmp_path / "record.db")
    with pytest.raises(JobError, match="cannot be read"):
        Store.open(tmp_path)


@pytest.mark.parametrize("start", [100, 4096, 8192])
def test_a_damaged_record_is_refused_with_what_to_do(path: Path, start: int) -> None:
    with Store.open(path) as store:
        add(store, *(f"{number} {'x' * 900}" for number in range(40)))
    content = bytearray(path.read_bytes())
    content[start : start + 3000] = b"\x55" * 3000
    path.write_bytes(content)

    with pytest.raises(JobError, match="is damaged") as refused:
        Store.open(path)

    assert "copy" in refused.value.remedy
    assert path.read_bytes() == content


def test_when_the_disk_is_full_nothing_is_lost_and_it_may_be_tried_again(path: Path) -> None:
    resource = pytest.importorskip("resource")
    soft, hard = resource.getrlimit(resource.RLIMIT_FSIZE)
    with Store.open(path) as store:
        add(store, "three")
        resource.setrlimit(resource.RLIMIT_FSIZE, (16_384, hard))
        try:
            with pytest.raises(JobError, match="was not kept: the disk is full") as refused:
                add(store, "x" * 19_000)
            assert len(store.entries()) == 3
        finally:
            resource.setrlimit(resource.RLIMIT_FSIZE, (soft, hard))
        assert "enter it again" in refused.value.remedy
        assert add(store, "x" * 19_000)[0].id == 4
    with Store.open(path) as store:
        assert len(store.entries()) == 4


@pytest.mark.parametrize("left", ["nothing", "log", "writer"])
def test_without_permission_to_write_the_record_is_read(left: str) -> None:
    # Not below tmp_path, which another user may not enter.
    with tempfile.TemporaryDirectory() as name:
        folder = Path(name)
        folder.chmod(0o755)
        path = folder / "record.db"
        writer = Store.create(path)
        add(writer, "one", "two")
        if left == "log":
            # As after a crash: entries that stand in the log only.
            crashed = [(part, part.read_bytes()) for part in folder.glob("record.db*")]
            writer.close()
            for part, content in crashed:
                part.write_bytes(content)
            (folder / "record.db-shm").unlink()
            assert (folder / "record.db-wal").stat().st_size > 0
        elif left == "nothing":
            writer.close()
        for part in folder.iterdir():
            part.chmod(0o444)
        folder.chmod(0o555)
        try:
            printed = as_another_user(folder)
        finally:
            folder.chmod(0o755)
            writer.close()

    reasons = {"writer": "This job is open in another program."}
    expected = reasons.get(left, "Nothing can be written into this job's folder.")
    assert printed == f"{expected}|2|ReadOnlyJob"


def as_another_user(folder: Path) -> str:
    """What somebody without rights meets: (reason|number of entries|error when adding)."""
    code = f"""
import os, sys
sys.path.insert(0, {str(INSPECT)!r})
from datetime import UTC, datetime
from pathlib import Path
from leanto.record.entry import Noted
from leanto.record.store import Store
import urllib.parse  # the other user may not be let in where the library lies
if os.getuid() == 0:
    os.setgroups([]); os.setgid(65534); os.setuid(65534)
with Store.open(Path({str(folder)!r}, "record.db")) as store:
    told = [store.read_only_reason, len(store.entries())]
    try:
        store.append(Noted(station="site", item="sill", text="x"), at=datetime.now(UTC), who="x")
    except Exception as error:
        told.append(type(error).__name__)
print("|".join(map(str, told)))
"""
    done = subprocess.run([sys.executable, "-c", code], capture_output=True, text=True, check=False)
    assert done.returncode == 0, done.stderr
    return done.stdout.strip()


def test_a_move_is_an_entry_like_any_other(path: Path) -> None:
    with Store.open(path) as store:
        store.append(MovedTo(station="site"), at=AT, who="tester")
        assert store.entries()[-1].body == MovedTo(station="site")
