"""The job's folder: whether it is one, and making it."""

from __future__ import annotations

import os
from pathlib import Path

from leanto.errors import JobError
from leanto.places import JobPlaces

_MAY_BE_THERE = {"checklists", "record.db.new"}
"""The owner's own checklists may wait for their job; the other is left by a creation cut short."""


def is_job(folder: Path) -> bool:
    """Whether a job's record lies in the folder; it may still refuse to open."""
    return JobPlaces(folder).record.is_file()


def find_job(folder: Path) -> JobPlaces:
    """The places of the job in the folder; JobError when there is none."""
    places = JobPlaces(folder)
    try:
        if places.record.is_file():
            _refuse_links(places)
            return places
        if not folder.exists():
            raise JobError(f"There is no folder {folder}.", f"Make a job: leanto new {folder}")
        if not folder.is_dir():
            raise JobError(f"{folder} is a file, not a job.", "Name the job's folder.")
    except OSError as error:
        raise _refused(folder, error) from error
    if places.record.is_dir() or any(
        left.exists() for left in (places.photos, places.folder / "record.lock")
    ):
        raise JobError(
            f"The record of this job is missing: there is no file {places.record}.",
            "Put record.db back from a copy, or make the job anew: leanto new FOLDER --from EXPORT",
        )
    raise JobError(
        f"{folder} is not a job: it has no record.db.", "Name another folder, or use leanto new."
    )


def _refuse_links(places: JobPlaces) -> None:
    """JobError for a link in a job: whoever sent it would have us read or write elsewhere.

    Only the checklists may be one, as they are only read.
    """
    for folder in (places.folder, places.photos):
        if not folder.is_dir():
            continue
        with os.scandir(folder) as found:
            for entry in found:
                if entry.is_symlink() and Path(entry.path) != places.checklists:
                    raise JobError(
                        f"{entry.path} is a link to another place.",
                        "A job keeps all its files itself: put the file or folder there instead.",
                    )


def make_folder(folder: Path) -> JobPlaces:
    """The places of a new job; JobError when the folder already holds something."""
    try:
        folder.mkdir(parents=True, exist_ok=True)
        has_job = is_job(folder)
        held = sorted(path.name for path in folder.iterdir() if path.name not in _MAY_BE_THERE)
    except FileExistsError:
        raise JobError(f"{folder} is a file.", "Choose another name.") from None
    except OSError as error:
        raise _refused(folder, error) from error
    if has_job:
        raise JobError(f"{folder} is a job already.", f"Open it: leanto walk {folder}")
    if held:
        raise JobError(
            f"{folder} is not empty: it holds {held[0]}.", "Choose a new or an empty folder."
        )
    return JobPlaces(folder)


def _refused(folder: Path, error: OSError) -> JobError:
    reason = error.strerror or str(error)
    return JobError(f"{folder} cannot be used: {reason}.", "Check its name and permissions.")
