"""Whether a record could be kept in a folder: a small one is made there and taken away."""

from __future__ import annotations

import contextlib
import sqlite3
import tempfile
from pathlib import Path


def sqlite_version() -> str:
    return f"SQLite {sqlite3.sqlite_version}"


def sqlite_fault(folder: Path) -> str:
    """Why no record can be kept there, in a few words; empty when one can."""
    try:
        with tempfile.TemporaryDirectory(dir=folder, prefix=".leanto-trial-") as trial:
            record = Path(trial, "record.db")
            with contextlib.closing(sqlite3.connect(record, isolation_level=None)) as connection:
                (mode,) = connection.execute("PRAGMA journal_mode = WAL").fetchone()
                connection.execute("PRAGMA synchronous = FULL")
                connection.execute("CREATE TABLE trial (x)")
                connection.execute("INSERT INTO trial VALUES (1)")
                if mode != "wal":
                    return "no write-ahead log on this disk: choose a folder on a local disk"
    except (sqlite3.Error, OSError) as error:
        return f"no record can be kept here ({error}): choose a folder on a local disk"
    return ""
