"""The steps that make the record's tables, each named and each in one transaction."""

from __future__ import annotations

import sqlite3
from dataclasses import dataclass

from leanto.record.checksum import entry_crc

APPLICATION_ID = 0x6C65616E
"""``lean`` in ASCII: tells a record from any other SQLite file."""


@dataclass(frozen=True, slots=True)
class Migration:
    name: str
    statements: tuple[str, ...]


_ONLY_ADDED = (
    """CREATE TRIGGER entries_are_not_changed BEFORE UPDATE ON entries
    BEGIN SELECT RAISE(ABORT, 'entries are not changed'); END""",
    """CREATE TRIGGER entries_are_not_deleted BEFORE DELETE ON entries
    BEGIN SELECT RAISE(ABORT, 'entries are not deleted'); END""",
    # REPLACE deletes without the trigger above where recursive_triggers is off.
    """CREATE TRIGGER entries_follow_without_gap BEFORE INSERT ON entries
    WHEN NEW.id IS NOT (SELECT coalesce(max(id), 0) + 1 FROM entries)
    BEGIN SELECT RAISE(ABORT, 'entries are numbered without gaps'); END""",
)

MIGRATIONS = (
    Migration(
        "entries",
        (
            f"PRAGMA application_id = {APPLICATION_ID}",
            "CREATE TABLE meta (key TEXT PRIMARY KEY, value TEXT NOT NULL) WITHOUT ROWID",
            """CREATE TABLE entries (
                id INTEGER PRIMARY KEY,
                at TEXT NOT NULL,
                who TEXT NOT NULL,
                kind TEXT NOT NULL,
                body TEXT NOT NULL
            )""",
        ),
    ),
    Migration("entries are only ever added", _ONLY_ADDED),
    Migration(
        "entries carry a checksum",
        (
            """CREATE TABLE checked_entries (
                id INTEGER PRIMARY KEY,
                at TEXT NOT NULL,
                who TEXT NOT NULL,
                kind TEXT NOT NULL,
                body TEXT NOT NULL,
                crc INTEGER NOT NULL
            )""",
            """INSERT INTO checked_entries
            SELECT id, at, who, kind, body, entry_crc(id, at, who, kind, body)
            FROM entries ORDER BY id""",
            "DROP TABLE entries",
            "ALTER TABLE checked_entries RENAME TO entries",
            *_ONLY_ADDED,
        ),
    ),
)
SCHEMA_VERSION = len(MIGRATIONS)
CHECKSUMS_SINCE = 3
"""The schema from which on every entry has a checksum."""


def schema_version(connection: sqlite3.Connection) -> int:
    """How many steps were applied; 0 for a new file."""
    known = "SELECT count(*) FROM sqlite_master WHERE type = 'table' AND name = 'meta'"
    if connection.execute(known).fetchone() == (0,):
        return 0
    row = connection.execute("SELECT value FROM meta WHERE key = 'schema_version'").fetchone()
    return int(row[0]) if row else 0


def migrate(connection: sqlite3.Connection) -> None:
    """Every pending step, each with the row that remembers it. Needs autocommit mode."""
    connection.create_function("entry_crc", 5, entry_crc, deterministic=True)
    for number in range(schema_version(connection) + 1, SCHEMA_VERSION + 1):
        step = MIGRATIONS[number - 1]
        connection.execute("BEGIN IMMEDIATE")
        try:
            for statement in step.statements:
                connection.execute(statement)
            remember(connection, "schema_version", str(number))
            remember(connection, f"step {number}", step.name)
            connection.execute("COMMIT")
        except BaseException:
            if connection.in_transaction:
                connection.execute("ROLLBACK")
            raise


def remember(connection: sqlite3.Connection, key: str, value: str) -> None:
    """The key and value in ``meta``, instead of the value before."""
    connection.execute(
        "INSERT INTO meta (key, value) VALUES (?, ?) "
        "ON CONFLICT (key) DO UPDATE SET value = excluded.value",
        (key, value),
    )
