"""The record's file: opened, added to and read. The only SQL besides its tables.

1. An entry is on the disk when ``append`` returns (write-ahead log, synchronous FULL).
2. Entries are numbered 1, 2, 3 ... and are never changed or deleted; triggers hold that.
3. One program writes at a time; others read. The right to write ends with the process.
4. A record of a newer schema is read and never written.
5. A record that is damaged is refused before a byte of it is changed.
"""

from __future__ import annotations

import contextlib
import sqlite3
import threading
from collections.abc import Iterator, Sequence
from datetime import UTC, datetime
from pathlib import Path
from typing import Self

from pydantic import TypeAdapter, ValidationError

from leanto import __version__
from leanto.errors import JobError
from leanto.record import refusal
from leanto.record.backups import back_up
from leanto.record.checksum import entry_crc
from leanto.record.connection import (
    connect,
    connect_for_reading,
    connect_for_writing,
    connect_untouched,
)
from leanto.record.entry import Body, Entry
from leanto.record.kept_file import sync_folder
from leanto.record.lock import JobLock
from leanto.record.log_check import log_is_damaged
from leanto.record.migrations import (
    APPLICATION_ID,
    CHECKSUMS_SINCE,
    SCHEMA_VERSION,
    migrate,
    remember,
    schema_version,
)

_BODY: TypeAdapter[Body] = TypeAdapter(Body)


class Store:
    """The entries of one job. ``create`` or ``open`` makes one."""

    def __init__(
        self, path: Path, connection: sqlite3.Connection, lock: JobLock, read_only_reason: str
    ) -> None:
        self.path = path
        self.read_only_reason = read_only_reason
        """One sentence; empty when entries can be added."""
        self._connection = connection
        self._lock = lock
        self._one_at_a_time = threading.Lock()

    @property
    def read_only(self) -> bool:
        return bool(self.read_only_reason)

    @classmethod
    def create(cls, path: Path, entries: Sequence[Entry] = ()) -> Store:
        """A new record that holds the entries, there whole or not at all; JobError when refused."""
        beside = path.with_name(path.name + ".new")
        try:
            beside.unlink(missing_ok=True)
            with contextlib.closing(connect(beside)) as connection:
                migrate(connection)
                connection.execute("BEGIN IMMEDIATE")
                remember(connection, "created_by", f"leanto {__version__}")
                for entry in entries:
                    _insert(connection, entry)
                connection.execute("COMMIT")
            beside.rename(path)
        except sqlite3.Error as error:
            raise refusal.not_kept(error) from error
        except OSError as error:
            reason = error.strerror or str(error)
            raise JobError(
                f"{path} cannot be made: {reason}.", "Check the folder's permissions and the disk."
            ) from error
        sync_folder(path.parent)
        return cls.open(path)

    @classmethod
    def open(cls, path: Path) -> Store:
        """The record at ``path``, for reading only where it can't be written; else JobError."""
        _check_header(path)
        with contextlib.ExitStack() as on_failure:
            lock = JobLock.take(path.with_name("record.lock"))
            on_failure.callback(lock.release)
            try:
                if not lock.reason:
                    with contextlib.closing(connect_untouched(path)) as untouched:
                        _check_whole(path, untouched)
                connection, read_only_reason = _connected(path, lock.reason)
                on_failure.callback(connection.close)
                if read_only_reason:
                    _check_whole(path, connection)
                if schema_version(connection) > SCHEMA_VERSION:
                    connection.execute("PRAGMA query_only = ON")
                    read_only_reason = read_only_reason or refusal.NEWER
                elif not read_only_reason:
                    migrate(connection)
            except sqlite3.Error as error:
                raise refusal.not_opened(path, error) from error
            except UnicodeDecodeError as error:
                # SQLite names the broken table, and its name is broken too.
                raise refusal.damaged(path, "its tables cannot be read") from error
            if read_only_reason:
                lock.release()
            on_failure.pop_all()
        return cls(path, connection, lock, read_only_reason)

    def append(self, body: Body, *, at: datetime, who: str) -> Entry:
        """The entry, on the disk when this returns; raises what ``append_all`` raises."""
        (entry,) = self.append_all((body,), at=at, who=who)
        return entry

    def append_all(self, bodies: Sequence[Body], *, at: datetime, who: str) -> tuple[Entry, ...]:
        """The entries, all of them on the disk when this returns, or none.

        Raises ReadOnlyJob, or NotKept when it could not be written: nothing else is lost then,
        and it may be tried again. ``at`` needs a time zone.
        """
        with self._adding() as last:
            entries = tuple(
                Entry(id=id_, at=at, who=who, body=body)
                for id_, body in enumerate(bodies, start=last + 1)
            )
            for entry in entries:
                _insert(self._connection, entry)
        return entries

    def add(self, entries: Sequence[Entry]) -> None:
        """Adds entries that were made when the disk refused them; raises as ``append_all``.

        They must follow the last one that is kept.
        """
        with self._adding() as last:
            for id_, entry in enumerate(entries, start=last + 1):
                if entry.id != id_:
                    raise ValueError(f"entry {entry.id} cannot be added as number {id_}")
                _insert(self._connection, entry)

    @contextlib.contextmanager
    def _adding(self) -> Iterator[int]:
        """The id of the last entry; what is added meanwhile is kept whole or not at all."""
        if self.read_only:
            raise refusal.read_only(self.read_only_reason)
        with self._one_at_a_time:
            try:
                self._connection.execute("BEGIN IMMEDIATE")
                (last,) = self._connection.execute("SELECT max(id) FROM entries").fetchone()
                yield last or 0
                self._connection.execute("COMMIT")
            except sqlite3.ProgrammingError:
                raise
            except sqlite3.Error as error:
                raise refusal.not_kept(error) from error
            finally:
                if self._connection.in_transaction:
                    self._connection.execute("ROLLBACK")

    def entries(self) -> tuple[Entry, ...]:
        """Every entry in order; JobError that names the first one that can't be read."""
        with self._one_at_a_time:
            try:
                rows = self._connection.execute(
                    "SELECT id, at, who, kind, body FROM entries ORDER BY id"
                ).fetchall()
            except sqlite3.ProgrammingError:
                raise
            except sqlite3.Error as error:
                raise refusal.not_opened(self.path, error) from error
        return tuple(entry_of(*row) for row in rows)

    def back_up(self, folder: Path, now: datetime) -> str:
        """A dated copy in the folder, unless the last start made the same one.

        Returns why there is none, in one sentence; empty when all is well. Never raises for a
        disk that is full or a folder that may not be written: the walk goes on without.
        """
        with self._one_at_a_time:
            try:
                back_up(self._connection, folder, now.astimezone(UTC))
            except OSError as error:
                return f"No backup was made: {error.strerror or error}."
            except sqlite3.Error as error:
                return f"No backup was made: {error}."
        return ""

    def close(self) -> None:
        self._connection.close()
        self._lock.release()

    def __enter__(self) -> Self:
        return self

    def __exit__(self, *_: object) -> None:
        self.close()


def _connected(path: Path, read_only_reason: str) -> tuple[sqlite3.Connection, str]:
    """A connection, and why it only reads; empty when it writes."""
    if not read_only_reason:
        connection, read_only_reason = connect_for_writing(path)
        if connection is not None:
            return connection, ""
    return connect_for_reading(path), read_only_reason


def _insert(connection: sqlite3.Connection, entry: Entry) -> None:
    if entry.at.tzinfo is None:
        raise ValueError("an entry's time needs a time zone")
    row = (
        entry.id,
        entry.at.astimezone(UTC).isoformat(),
        entry.who,
        entry.body.kind,
        _BODY.dump_json(entry.body).decode("utf-8"),
    )
    connection.execute(
        "INSERT INTO entries (id, at, who, kind, body, crc) VALUES (?, ?, ?, ?, ?, ?)",
        (*row, entry_crc(*row)),
    )


def entry_of(id_: int, at: str, who: str, kind: str, body: str) -> Entry:
    """The entry of a stored row; JobError for one that this version cannot read."""
    try:
        read = _BODY.validate_json(body)
        if read.kind != kind:
            raise ValueError(f'it is called "{kind}" and holds "{read.kind}"')
        return Entry(id=id_, at=datetime.fromisoformat(at), who=who, body=read)
    except (ValidationError, ValueError, TypeError) as error:
        raise refusal.unreadable_entry(id_, error) from error


def _check_header(path: Path) -> None:
    """Nothing for a record, judged by the first bytes; JobError otherwise.

    Looked at before SQLite does, which would turn an empty file into a database.
    """
    try:
        with path.open("rb") as file:
            header = file.read(100)
    except FileNotFoundError:
        raise refusal.no_record(path, "is not there") from None
    except OSError as error:
        reason = error.strerror or str(error)
        raise JobError(f"{path} cannot be read: {reason}.", "Check its permissions.") from None
    if not header.startswith(b"SQLite format 3\0") or len(header) < 100:
        raise refusal.no_record(path, "is no SQLite file, or its beginning is lost")
    if int.from_bytes(header[68:72], "big") != APPLICATION_ID:
        raise refusal.no_record(path, "is not a record of leanto")


def _check_whole(path: Path, connection: sqlite3.Connection) -> None:
    """Nothing for a record whose pages and entries are what was written; else JobError."""
    (said,) = connection.execute("PRAGMA quick_check(1)").fetchone()
    if said != "ok":
        raise refusal.damaged(path, said)
    if log_is_damaged(path.with_name(path.name + "-wal")):
        raise refusal.damaged(path, "its log cannot be read to the end")
    try:
        schema_version(connection)
    except ValueError:
        raise refusal.damaged(path, "its schema version is not a number") from None
    if (id_ := _first_changed(connection)) is not None:
        raise refusal.damaged(path, f"entry {id_} is not what was written")


def _first_changed(connection: sqlite3.Connection) -> int | None:
    """The first id that is missing, or whose entry its checksum does not fit."""
    has_checksums = CHECKSUMS_SINCE <= schema_version(connection) <= SCHEMA_VERSION
    columns = "id, at, who, kind, body, crc" if has_checksums else "id, at, who, kind, body"
    connection.text_factory = lambda stored: stored.decode("utf-8", "replace")
    rows = connection.execute(f"SELECT {columns} FROM entries ORDER BY id")
    for following, (id_, *row) in enumerate(rows, start=1):
        if id_ != following or not all(isinstance(text, str) for text in row[:4]):
            return following
        if has_checksums and entry_crc(id_, *row[:4]) != row[4]:
            return following
    connection.text_factory = str
    return None
