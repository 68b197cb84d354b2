"""Connections to a record's file, to write or only to read."""

from __future__ import annotations

import contextlib
import shutil
import sqlite3
import tempfile
from pathlib import Path

from leanto.record.refusal import MAY_NOT_WRITE, OPEN_ELSEWHERE, is_busy

_WAIT_S = 5.0
"""How long to wait for another program's commit."""


def connect(path: Path) -> sqlite3.Connection:
    """A connection in autocommit mode that writes each commit through to the disk."""
    connection = _connection(str(path), uri=False)
    try:
        connection.execute("PRAGMA synchronous = FULL")
        connection.execute("PRAGMA foreign_keys = ON")
        connection.execute("PRAGMA recursive_triggers = ON")
    except sqlite3.Error:
        connection.close()
        raise
    return connection


def connect_for_writing(path: Path) -> tuple[sqlite3.Connection | None, str]:
    """A connection that can write, with a write-ahead log; or None and the reason why not.

    SQLite opens what it may not write without a word, and says so only when asked to begin.
    Raises sqlite3.DatabaseError for a damaged file.
    """
    with contextlib.ExitStack() as on_failure:
        try:
            connection = connect(path)
            on_failure.callback(connection.close)
            connection.execute("PRAGMA journal_mode = WAL")
            connection.execute("BEGIN IMMEDIATE")
            connection.execute("ROLLBACK")
        except sqlite3.OperationalError as error:
            return None, OPEN_ELSEWHERE if is_busy(error) else MAY_NOT_WRITE
        on_failure.pop_all()
    return connection, ""


def connect_for_reading(path: Path) -> sqlite3.Connection:
    """A connection that reads, also beside a writer and in a folder that can't be written."""
    try:
        return _reading(f"{path.resolve().as_uri()}?mode=ro")
    except sqlite3.OperationalError:
        # The log's index can't be made here, and no writer has it open. Read a copy.
        return _reading_copy(path)


def connect_untouched(path: Path) -> sqlite3.Connection:
    """A connection that changes no byte in the folder; of use only while nobody writes there."""
    log = path.with_name(path.name + "-wal")
    if log.exists() and log.stat().st_size:
        return _reading_copy(path)
    return _reading(f"{path.resolve().as_uri()}?mode=ro&immutable=1")


def _reading_copy(path: Path) -> sqlite3.Connection:
    with tempfile.TemporaryDirectory() as folder:
        copy = Path(folder, path.name)
        for suffix in ("", "-wal"):
            part = path.with_name(path.name + suffix)
            if part.exists():
                shutil.copyfile(part, copy.with_name(part.name))
        with contextlib.ExitStack() as on_failure:
            memory = _connection(":memory:", uri=False)
            on_failure.callback(memory.close)
            with contextlib.closing(_connection(str(copy), uri=False)) as source:
                source.backup(memory)
            memory.execute("PRAGMA query_only = ON")
            on_failure.pop_all()
    return memory


def _reading(uri: str) -> sqlite3.Connection:
    connection = _connection(uri, uri=True)
    try:
        connection.execute("PRAGMA query_only = ON")
        connection.execute("SELECT count(*) FROM sqlite_master").fetchone()
    except sqlite3.Error:
        connection.close()
        raise
    return connection


def _connection(name: str, *, uri: bool) -> sqlite3.Connection:
    # Used from one thread at a time; the store sees to that.
    return sqlite3.connect(
        name, timeout=_WAIT_S, isolation_level=None, check_same_thread=False, uri=uri
    )
