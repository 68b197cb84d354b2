"""Dated copies of a record: made at a start, checked already, few and the newest kept."""

from __future__ import annotations

import contextlib
import re
import sqlite3
from datetime import datetime
from pathlib import Path

from leanto.record.connection import connect_untouched
from leanto.record.kept_file import sync_file, sync_folder

KEPT = 5
_NAME = re.compile(r"record-\d{8}-\d{6}\.db")


def backups_in(folder: Path) -> tuple[Path, ...]:
    """The backups in the folder, the newest first; none for a folder that is not there."""
    try:
        found = [path for path in folder.iterdir() if _NAME.fullmatch(path.name)]
    except OSError:
        return ()
    return tuple(sorted((path for path in found if path.is_file()), reverse=True))


def back_up(connection: sqlite3.Connection, folder: Path, now: datetime) -> Path | None:
    """A copy of the record as it is, named by the time in UTC; older ones beyond five go.

    None where the newest backup holds the same entries. Raises OSError and sqlite3.Error, and
    leaves no half file.
    """
    held = backups_in(folder)
    if held and _last_entry_of(held[0]) == _last_entry(connection):
        return None
    folder.mkdir(exist_ok=True)
    path = folder / f"record-{now:%Y%m%d-%H%M%S}.db"
    beside = folder / f".{path.name}.part"
    try:
        with contextlib.closing(sqlite3.connect(beside)) as copy:
            connection.backup(copy)
        sync_file(beside)
        beside.replace(path)
    except BaseException:
        with contextlib.suppress(OSError):
            beside.unlink(missing_ok=True)
        raise
    sync_folder(folder)
    for old in backups_in(folder)[KEPT:]:
        old.unlink(missing_ok=True)
    return path


def _last_entry_of(backup: Path) -> tuple[int, int] | None:
    try:
        with contextlib.closing(connect_untouched(backup)) as connection:
            return _last_entry(connection)
    except (sqlite3.Error, OSError, UnicodeDecodeError):
        return None


def _last_entry(connection: sqlite3.Connection) -> tuple[int, int] | None:
    """Id and checksum of the last entry, which tell records of one job apart."""
    query = "SELECT id, crc FROM entries ORDER BY id DESC LIMIT 1"
    row: tuple[int, int] | None = connection.execute(query).fetchone()
    return row
