"""Writing a file so that it is there whole, or not at all, after a crash or a dead battery."""

from __future__ import annotations

import contextlib
import errno
import os
from pathlib import Path


def keep_file(path: Path, content: bytes) -> None:
    """The content at ``path``: written beside, brought to the disk, then renamed; else OSError."""
    beside = path.with_name(f".{path.name}.{os.getpid()}.part")
    try:
        with beside.open("wb") as file:
            file.write(content)
            file.flush()
            os.fsync(file.fileno())
        beside.replace(path)
    except OSError:
        with contextlib.suppress(OSError):
            beside.unlink(missing_ok=True)
        raise
    sync_folder(path.parent)


def keep_new_file(path: Path, content: bytes) -> None:
    """The content at ``path``, whole or not at all; FileExistsError where something is there."""
    if path.exists() or path.is_symlink():
        raise FileExistsError(errno.EEXIST, os.strerror(errno.EEXIST), str(path))
    keep_file(path, content)


def sweep(folder: Path) -> None:
    """Takes away what ``keep_file`` left half written in the folder when its process was killed.

    Only for who knows that nobody is writing there now.
    """
    with contextlib.suppress(OSError):
        for left in folder.glob(".*.part"):
            left.unlink(missing_ok=True)


def sync_file(path: Path) -> None:
    """The content of the file brought to the disk; raises OSError."""
    with path.open("rb+") as file:
        os.fsync(file.fileno())


def sync_folder(folder: Path) -> None:
    """Names in the folder brought to the disk, where the system can do that."""
    with contextlib.suppress(OSError):
        descriptor = os.open(folder, os.O_RDONLY)
        try:
            os.fsync(descriptor)
        finally:
            os.close(descriptor)
