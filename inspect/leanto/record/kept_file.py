"""Writing a file so that it is there whole, or not at all, after a crash or a dead battery."""

from __future__ import annotations

import contextlib
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


def sync_folder(folder: Path) -> None:
    """Names in the folder brought to the disk, where the system can do that."""
    with contextlib.suppress(OSError):
        descriptor = os.open(folder, os.O_RDONLY)
        try:
            os.fsync(descriptor)
        finally:
            os.close(descriptor)
