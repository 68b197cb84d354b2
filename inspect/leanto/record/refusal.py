"""Why a record can't be opened, read or written, in words."""

from __future__ import annotations

import sqlite3
from pathlib import Path

from pydantic import ValidationError

from leanto.errors import JobError, NotKept, ReadOnlyJob

OPEN_ELSEWHERE = "This job is open in another program."
MAY_NOT_WRITE = "Nothing can be written into this job's folder."
NEWER = "This job was written by a newer version of leanto."

_REMEDIES = {
    OPEN_ELSEWHERE: "Close it there, then open it here again.",
    MAY_NOT_WRITE: "Check its permissions and the space on the disk, then open the job again.",
    NEWER: "Install the newest leanto to add to it.",
}
_FROM_COPY = "Put record.db back from a copy of the job folder."


def read_only(reason: str) -> ReadOnlyJob:
    """What is said to somebody who wants to add to a job that can only be looked at."""
    return ReadOnlyJob(f"Nothing was added: {reason[0].lower()}{reason[1:]}", _REMEDIES[reason])


def no_record(path: Path, what: str) -> JobError:
    return JobError(f"{path} {what}.", _recover(path))


def damaged(path: Path, how: str) -> JobError:
    plain = " ".join(how.split())
    return JobError(
        f"{path} is damaged ({plain}).",
        f"Keep the damaged file; the photos are not touched by this. {_recover(path)}",
    )


def _recover(path: Path) -> str:
    return f"Save what can be read into a copy: leanto recover {path.parent} NEW-FOLDER"


def not_opened(path: Path, error: sqlite3.Error) -> JobError:
    if primary_code(error) in (sqlite3.SQLITE_CORRUPT, sqlite3.SQLITE_NOTADB):
        return damaged(path, str(error))
    if is_busy(error):
        return JobError(f"{path} is held by another program.", "Close it there, then try again.")
    return JobError(
        f"{path} cannot be opened ({error}).", "Check its permissions and the disk, then try again."
    )


def not_kept(error: sqlite3.Error) -> NotKept:
    """What is said when an entry could not be written; everything before it is kept."""
    said = {
        sqlite3.SQLITE_FULL: "the disk is full",
        sqlite3.SQLITE_IOERR: "the disk is full or failing",
        sqlite3.SQLITE_READONLY: "nothing can be written into this job's folder any more",
        sqlite3.SQLITE_BUSY: "another program holds the record",
    }.get(primary_code(error), str(error))
    return NotKept(
        f"This was not kept: {said}. Everything before it is.",
        "Put that right (free some space, say), then enter it again.",
    )


def unreadable_entry(entry_id: object, cause: Exception) -> JobError:
    first = cause.errors(include_url=False)[0] if isinstance(cause, ValidationError) else None
    if first is not None and first["type"] == "union_tag_invalid":
        why = f'its kind "{first["ctx"]["tag"]}" is not known to this version'
    elif first is not None:
        where = ".".join(str(step) for step in first["loc"])
        why = f"{where}: {first['msg']}" if where else first["msg"]
    else:
        why = str(cause)
    return JobError(
        f"Entry {entry_id} of the record cannot be read: {' '.join(why.split())}.",
        "If a newer leanto wrote it, install the newest one; else put record.db back from a copy.",
    )


def is_busy(error: sqlite3.Error) -> bool:
    return primary_code(error) in (sqlite3.SQLITE_BUSY, sqlite3.SQLITE_LOCKED)


def primary_code(error: sqlite3.Error) -> int:
    """SQLite's result code without its details; 0 for an error of Python's own."""
    code: int = getattr(error, "sqlite_errorcode", 0)
    return code & 0xFF
