"""The owner's ``bidding.yaml`` as text: kept with an export, and put back from one."""

from __future__ import annotations

import contextlib
from pathlib import Path

from leanto.places import JobPlaces
from leanto.record.kept_file import keep_new_file

NAME = "bidding.yaml"
_MOST_CHARS = 200_000


def bidding_file(places: JobPlaces) -> Path:
    """Where the owner's own file lies, or would lie."""
    return places.folder / NAME


def bidding_text(places: JobPlaces) -> str:
    """The file as it was typed, faults and all; empty where there is none that can be read."""
    path = bidding_file(places)
    if path.is_symlink() or not path.is_file():
        return ""
    try:
        with path.open(encoding="utf-8-sig", errors="replace", newline=None) as file:
            return file.read(_MOST_CHARS)
    except OSError:
        return ""


def keep_bidding_text(places: JobPlaces, text: str) -> None:
    """The text as the owner's own file; nothing where it is empty or the folder refuses."""
    if text.strip():
        with contextlib.suppress(OSError):
            keep_new_file(bidding_file(places), text.encode("utf-8"))
