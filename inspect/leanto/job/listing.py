"""The jobs below a folder, each in short, without an assessment."""

from __future__ import annotations

import os
from collections.abc import Iterator
from dataclasses import dataclass
from datetime import date
from pathlib import Path

from leanto.errors import LeantoError
from leanto.job.last_range import last_p50
from leanto.library import library_versions
from leanto.places import JobPlaces
from leanto.record.summary import summarize

_DEPTH = 5
"""How far below the folder jobs are looked for."""


@dataclass(frozen=True, slots=True)
class ListedJob:
    folder: Path
    name: str
    walked_on: date | None
    answered: int
    p50_usd: float | None
    """As last computed; None where the walk or the data files have changed since."""
    fault: str = ""
    """Why the job cannot be read; then nothing else is known."""


def jobs_below(folder: Path) -> Iterator[ListedJob]:
    """Every job in the folder or below it, by path; links are not followed."""
    shipped = library_versions()
    for place in _job_folders(folder):
        try:
            own = JobPlaces(place).checklists
            versions = library_versions((own,)) if own.is_dir() else shipped
            held = summarize(JobPlaces(place).record)
        except LeantoError as error:
            yield ListedJob(place, "", None, 0, None, error.what)
        else:
            p50 = last_p50(place, held.last_change, versions)
            yield ListedJob(place, held.name, held.walked_on, held.answered, p50)


def _job_folders(folder: Path) -> Iterator[Path]:
    for here, below, files in os.walk(folder):
        path = Path(here)
        if "record.db" in files and not (path / "record.db").is_symlink():
            below.clear()
            yield path
        elif len(path.relative_to(folder).parts) >= _DEPTH:
            below.clear()
        else:
            below[:] = sorted(name for name in below if not name.startswith("."))
