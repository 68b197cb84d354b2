"""Photos of an exported job, fetched into the new one."""

from __future__ import annotations

import contextlib
from collections.abc import Iterable
from pathlib import Path

from leanto.errors import PhotoError
from leanto.places import JobPlaces
from leanto.record.observation import Photo
from leanto.record.photos import is_whole, keep_photo, photo_file


def fetch_photos(photos: Iterable[Photo], export: Path, job_name: str, into: Path) -> None:
    """Each photo copied where it is found; one that is not found, or not kept, is left missing.

    Looked at are ``photos`` beside the export, and those of the job of that name beside it. The
    name comes from the file, so it may lead nowhere else, and only files whose content has the
    photo's digest are taken.
    """
    sources = [export.parent / "photos"]
    if Path(job_name).name == job_name not in ("", ".", ".."):
        sources.append(JobPlaces(export.parent / job_name).photos)
    for photo in photos:
        for source in sources:
            if is_whole(source, photo.digest):
                with contextlib.suppress(OSError, PhotoError):
                    content = photo_file(source, photo.digest).read_bytes()
                    keep_photo(content, photo.digest, into)
                break
