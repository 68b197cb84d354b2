"""Paths of pictures as a terminal hands them over, and the newest picture of a folder."""

from __future__ import annotations

import os
import shlex
from pathlib import Path
from urllib.parse import unquote, urlsplit

_SUFFIXES = frozenset(
    (".jpg", ".jpeg", ".png", ".webp", ".tif", ".tiff", ".bmp", ".gif", ".heic", ".heif")
)


def typed_paths(text: str) -> tuple[Path, ...]:
    """The paths in typed, pasted or dragged text: plain, quoted, escaped, or ``file://``.

    Text that names a file as it stands is that one file, whatever spaces it holds.
    """
    plain = text.strip()
    if not plain:
        return ()
    whole = _path(plain)
    if _is_there(whole):
        return (whole,)
    try:
        words = shlex.split(plain, posix=os.name != "nt")
    except ValueError:  # a quote that is part of a name
        return (whole,)
    paths = tuple(_path(word.strip("\"'")) for word in words)
    return paths if len(paths) == 1 or any(_is_there(path) for path in paths) else (whole,)


def newest_picture(folder: Path) -> Path | None:
    """The picture that was written last in the folder; None when there is none to be had."""
    newest: tuple[float, str] | None = None
    try:
        with os.scandir(folder) as entries:
            for entry in entries:
                if Path(entry.name).suffix.lower() in _SUFFIXES and entry.is_file():
                    found = (entry.stat().st_mtime, entry.path)
                    newest = found if newest is None else max(newest, found)
    except OSError:
        return None
    return Path(newest[1]) if newest else None


def first_folder(home: Path) -> Path:
    """Where pictures are likely to be before any was added."""
    likely = (home / "Pictures", home / "Downloads", home)
    return next((folder for folder in likely if folder.is_dir()), Path.cwd())


def _path(word: str) -> Path:
    if word.startswith("file:"):
        return Path(unquote(urlsplit(word).path))
    try:
        return Path(word).expanduser()
    except RuntimeError:  # a home that is not known
        return Path(word)


def _is_there(path: Path) -> bool:
    try:
        return path.exists()
    except (OSError, ValueError):
        return False
