"""Photos and returned bids of an exported job, fetched into the new one."""

from __future__ import annotations

import contextlib
import hashlib
import re
from collections.abc import Iterable
from pathlib import Path

from leanto.errors import PhotoError
from leanto.places import JobPlaces
from leanto.record.kept_bid import KeptBid
from leanto.record.kept_file import keep_file
from leanto.record.observation import Photo
from leanto.record.photos import is_whole, keep_photo, photo_file

_MOST_BYTES = 50_000_000


def fetch_photos(photos: Iterable[Photo], export: Path, job_name: str, into: Path) -> None:
    """Each photo copied where it is found; one that is not found, or not kept, is left missing.

    Looked at are ``photos`` beside the export, and those of the job of that name beside it. The
    name comes from the file, so it may lead nowhere else, and only files whose content has the
    photo's digest are taken.
    """
    sources = [export.parent / "photos", *(one.photos for one in _exported(export, job_name))]
    for photo in photos:
        for source in sources:
            if is_whole(source, photo.digest):
                with contextlib.suppress(OSError, PhotoError):
                    content = photo_file(source, photo.digest).read_bytes()
                    keep_photo(content, photo.digest, into)
                break


def fetch_bids(bids: Iterable[KeptBid], export: Path, job_name: str, places: JobPlaces) -> None:
    """Each returned file likewise, from ``bids``; what stands in it is in the export anyway."""
    sources = [export.parent / "bids", *(one.bids for one in _exported(export, job_name))]
    for bid in bids:
        name = bid_file_name(bid)
        for source in sources:
            content = _whole(source / name, bid.digest)
            if content is not None:
                with contextlib.suppress(OSError):
                    places.bids.mkdir(exist_ok=True)
                    keep_file(places.bids / name, content)
                break


def bid_file_name(bid: KeptBid) -> str:
    """What a returned file is called in ``bids``: its digest and its ending."""
    suffix = Path(bid.file_name).suffix.lower()
    is_plain = re.fullmatch(r"\.[a-z0-9]{1,4}", suffix)
    return f"{bid.digest}{suffix if is_plain else ''}"


def _exported(export: Path, job_name: str) -> tuple[JobPlaces, ...]:
    """The exported job's folder, where its name leads nowhere else."""
    if Path(job_name).name == job_name not in ("", ".", ".."):
        return (JobPlaces(export.parent / job_name),)
    return ()


def _whole(path: Path, digest: str) -> bytes | None:
    """The file's content where it is what its name says; never through a link."""
    try:
        if path.is_symlink() or not path.is_file() or path.stat().st_size > _MOST_BYTES:
            return None
        content = path.read_bytes()
    except OSError:
        return None
    return content if hashlib.sha256(content).hexdigest() == digest else None
