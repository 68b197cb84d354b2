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


def dropped_pictures(text: str) -> tuple[Path, ...]:
    """The pictures that a dragged or pasted text names; none for any other text."""
    try:
        found = tuple(path for path in typed_paths(text) if path.is_file())
    except OSError:
        return ()
    return found if found and all(_is_picture(path.name) for path in found) else ()


def newest_picture(folder: Path) -> Path | None:
    """The picture that was written last in the folder; None when there is none to be had."""
    found = pictures_in(folder)
    newest = max(found, key=lambda name: (found[name][1], name), default=None)
    return None if newest is None else folder / newest


def pictures_in(folder: Path) -> dict[str, tuple[int, int]]:
    """The pictures by name, each with its bytes and time of change; empty where none can be read.

    Names that begin with a dot are left out: programs that sync put half a file there.
    """
    found: dict[str, tuple[int, int]] = {}
    try:
        with os.scandir(folder) as entries:
            for entry in entries:
                if _is_picture(entry.name) and entry.is_file():
                    stat = entry.stat()
                    found[entry.name] = (stat.st_size, stat.st_mtime_ns)
    except OSError:
        return {}
    return found


def _is_picture(name: str) -> bool:
    return Path(name).suffix.lower() in _SUFFIXES and not name.startswith(".")


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
