"""The last P50 that was computed for a job, kept beside its record for lists of many jobs.

It is a note, not a part of the record: it counts only as long as the walk, the data files and the
program are those it was computed from, and may be deleted at any time.
"""

from __future__ import annotations

import contextlib
import math
from collections.abc import Mapping
from pathlib import Path

from pydantic import ValidationError

from leanto import __version__
from leanto.record.kept_file import keep_file
from leanto.strict import Strict

NAME = "last-range.json"
_MOST_BYTES = 10_000


class LastRange(Strict):
    program: str
    versions: dict[str, str]
    """Of the data files, as the library tells them."""
    last_change: int
    p50: float


def keep_last_range(
    folder: Path, p50: float, last_change: int, versions: Mapping[str, str]
) -> None:
    """Keeps the note; a disk that refuses is passed over, as nothing hangs on it."""
    note = LastRange(program=__version__, versions=dict(versions), last_change=last_change, p50=p50)
    content = note.model_dump_json().encode("utf-8")
    with contextlib.suppress(OSError):
        if not (folder / NAME).is_symlink() and _read(folder) != content:
            keep_file(folder / NAME, content)


def last_p50(folder: Path, last_change: int, versions: Mapping[str, str]) -> float | None:
    """The P50 in dollars; None when none was computed, or for another walk or other data."""
    try:
        note = LastRange.model_validate_json(_read(folder))
    except ValidationError:
        return None
    fits = note.program == __version__ and note.versions == versions
    is_number = math.isfinite(note.p50)
    return note.p50 if fits and is_number and note.last_change == last_change else None


def _read(folder: Path) -> bytes:
    try:
        with (folder / NAME).open("rb") as file:
            return file.read(_MOST_BYTES)
    except OSError:
        return b""
