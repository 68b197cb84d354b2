"""One writer a job: the lock is a held transaction, so that it dies with its process."""

from __future__ import annotations

import sqlite3
from pathlib import Path

from leanto.record.refusal import MAY_NOT_WRITE, OPEN_ELSEWHERE, is_busy


class JobLock:
    """The right to write, or the reason why there is none. Readers need no lock."""

    def __init__(self, connection: sqlite3.Connection | None, reason: str) -> None:
        self._connection = connection
        self.reason = reason
        """Empty while the lock is held."""

    @classmethod
    def take(cls, path: Path) -> JobLock:
        """The lock on ``path``, a file that holds nothing and may stay behind."""
        try:
            # SQLite's locks rather than the system's own: the same on every system.
            connection = sqlite3.connect(
                path, timeout=0, isolation_level=None, check_same_thread=False
            )
        except sqlite3.Error:
            return cls(None, MAY_NOT_WRITE)
        try:
            connection.execute("BEGIN EXCLUSIVE")
        except sqlite3.Error as error:
            connection.close()
            return cls(None, OPEN_ELSEWHERE if is_busy(error) else MAY_NOT_WRITE)
        return cls(connection, "")

    def release(self) -> None:
        if self._connection is not None:
            self._connection.close()
            self._connection = None
