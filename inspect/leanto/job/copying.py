"""The parts of a job copied into another folder; of a damaged one, what is whole."""

from __future__ import annotations

import contextlib
from collections.abc import Sequence
from pathlib import Path

from leanto.errors import PhotoError
from leanto.job.bidding_text import NAME as BIDDING
from leanto.job.folder import make_folder
from leanto.places import JobPlaces
from leanto.record.entry import Entry
from leanto.record.kept_file import keep_file
from leanto.record.photos import is_whole, keep_photo, photo_file
from leanto.record.store import Store

_MAX_FILES = 10_000
_DIGEST_DIGITS = 64


def copied(old: JobPlaces, entries: Sequence[Entry], folder: Path) -> JobPlaces:
    """A new job in the folder with these entries and the files of the old one; else JobError.

    Files that cannot be copied are left out: the entries matter most, and tell what is missing.
    """
    new = make_folder(folder)
    Store.create(new.record, entries).close()
    copied_photos(old.photos, new.photos)
    copied_files(old.checklists, new.checklists, "**/*.yaml")
    copied_files(old.bids, new.bids, "*")
    copied_files(old.folder, new.folder, BIDDING)
    return new


def copied_photos(source: Path, target: Path) -> list[str]:
    """The digests of the photos that are whole, each copied."""
    copied = []
    for path in _files(source, "*.jpg"):
        digest = path.stem
        if len(digest) == _DIGEST_DIGITS and is_whole(source, digest):
            with contextlib.suppress(OSError, PhotoError):
                keep_photo(photo_file(source, digest).read_bytes(), digest, target)
                copied.append(digest)
    return copied


def copied_files(source: Path, target: Path, pattern: str) -> list[str]:
    """Copies ordinary files; a line for each that could not be."""
    missing = []
    for path in _files(source, pattern):
        into = target / path.relative_to(source)
        try:
            into.parent.mkdir(parents=True, exist_ok=True)
            keep_file(into, path.read_bytes())
        except OSError as error:
            name = path.relative_to(source).as_posix()
            reason = error.strerror or str(error)
            missing.append(f"Missing: {source.name}/{name} could not be copied ({reason}).")
    return missing


def _files(folder: Path, pattern: str) -> list[Path]:
    """Ordinary files only: a link may lead out of the job."""
    found = sorted(folder.glob(pattern))[:_MAX_FILES] if not folder.is_symlink() else []
    return [path for path in found if path.is_file() and not path.is_symlink()]
