"""A damaged job -> a new one with all that could be read. The damaged one is only read."""

from __future__ import annotations

import contextlib
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from itertools import groupby
from pathlib import Path

from leanto.errors import JobError
from leanto.job.bidding_text import NAME as BIDDING
from leanto.job.copying import copied_files, copied_photos
from leanto.job.folder import make_folder
from leanto.places import JobPlaces
from leanto.record.agreed_entry import pictures_of
from leanto.record.backups import backups_in
from leanto.record.entry import Entry, PhotoAdded
from leanto.record.kept_file import keep_file
from leanto.record.recovery import Recovered, recover
from leanto.record.store import Store

REPORT = "recovered.txt"
"""The list of what is missing, kept in the new job."""


@dataclass(frozen=True, slots=True)
class Rescue:
    """What was saved into the new job, in sentences."""

    folder: Path
    lines: tuple[str, ...]
    is_whole: bool
    """Whether nothing is known to be missing."""


def rescue(folder: Path, new_folder: Path) -> Rescue:
    """The job in ``folder`` saved into ``new_folder`` as far as it can be read.

    Raises JobError where nothing can be read, or the new folder is not new or empty.
    """
    old = JobPlaces(folder)
    if not folder.is_dir():
        raise JobError(f"There is no folder {folder}.", "Name the damaged job's folder.")
    if new_folder.resolve().is_relative_to(folder.resolve()):
        raise JobError(
            f"{new_folder} lies in the damaged job.",
            "Choose a folder outside: nothing there is written to.",
        )
    found = recover(old.record, backups_in(old.backups))
    if not found.entries:
        raise JobError(
            f"Nothing can be read of the record in {folder}.", "Look for a copy of the folder."
        )
    new = make_folder(new_folder)
    Store.create(new.record, found.entries).close()
    photos = copied_photos(old.photos, new.photos)
    copied = [
        *copied_files(old.checklists, new.checklists, "**/*.yaml"),
        *copied_files(old.bids, new.bids, "*"),
        *copied_files(old.folder, new.folder, BIDDING),
    ]
    lost = _missing_photos(found.entries, photos)
    pictures = list(_missing_pictures(found.entries, photos))
    about_photos = _about_photos(photos, lost, found.entries)
    lines = [*_about_entries(found), *about_photos, *pictures, *copied]
    with contextlib.suppress(OSError):
        keep_file(new.folder / REPORT, ("\n".join(lines) + "\n").encode("utf-8"))
    lacking = found.missing or found.unreadable or lost or pictures
    return Rescue(new.folder, tuple(lines), not lacking)


def _about_entries(found: Recovered) -> Iterator[str]:
    yield f"Entries saved: {len(found.entries)}."
    if found.from_backups:
        yield f"Of these, {found.from_backups} were found only in a backup."
    if found.unchecked:
        yield f"{found.unchecked} have no checksum that proves them; look them over."
    for first, last in _runs(found.missing):
        what = f"entry {first} is" if first == last else f"entries {first} to {last} are"
        before, after = found.neighbors[first][0], found.neighbors[last][1]
        between = " and ".join(_told(entry) for entry in (before, after) if entry is not None)
        yield f"Missing: {what} lost, next to {between}." if between else f"Missing: {what} lost."
    yield from found.unreadable
    if not found.missing:
        yield f"No entry up to number {found.last_id} is missing."
    yield "What came after the last entry, if anything did, would leave no trace."


def _told(entry: Entry) -> str:
    """An entry in a few words: when, what, where."""
    about = [getattr(entry.body, name, "") for name in ("station", "item")]
    where = " ".join(word for word in about if word)
    when = entry.at.astimezone().strftime("%Y-%m-%d %H:%M")
    return f'"{entry.body.kind}"{f" {where}" if where else ""} of {when}'


def _about_photos(
    photos: Sequence[str], lost: Sequence[PhotoAdded], entries: Sequence[Entry]
) -> Iterator[str]:
    yield f"Photos saved: {len(photos)}."
    for body in lost:
        name = body.original_name or body.digest[:8]
        yield f"Missing: the photo {name} at {body.station} {body.item}."
    named = {entry.body.digest for entry in entries if isinstance(entry.body, PhotoAdded)}
    named |= {kept.digest for entry in entries for kept in pictures_of(entry.body)}
    if strays := sorted(set(photos) - named):
        names = ", ".join(f"{digest[:8]}...jpg" for digest in strays)
        yield f"Belonging to no entry that was found: {names}."


def _missing_photos(entries: Sequence[Entry], photos: Sequence[str]) -> list[PhotoAdded]:
    bodies = [entry.body for entry in entries if isinstance(entry.body, PhotoAdded)]
    by_digest = {body.digest: body for body in bodies}
    return [body for digest, body in by_digest.items() if digest not in photos]


def _missing_pictures(entries: Sequence[Entry], photos: Sequence[str]) -> Iterator[str]:
    """Pictures of opened walls and receipts that are not there."""
    for entry in entries:
        for kept in pictures_of(entry.body):
            if kept.digest not in photos:
                name = kept.original_name or kept.digest[:8]
                yield f"Missing: the picture {name} of {_told(entry)}."


def _runs(ids: Sequence[int]) -> Iterator[tuple[int, int]]:
    """First and last of each run of ids that follow each other."""
    for _, run in groupby(enumerate(ids), key=lambda pair: pair[1] - pair[0]):
        numbers = [id_ for _, id_ in run]
        yield numbers[0], numbers[-1]
