"""Which version of the demo's data a job was made from."""

from __future__ import annotations

import hashlib
from pathlib import Path

_HERE = Path(__file__).parent
_NAME = "demo.stamp"


def data_stamp() -> str:
    """A digest of the building, the walk and the code that draws the pictures."""
    files = [
        _HERE / "building.yaml",
        _HERE / "walk.yaml",
        *sorted((_HERE / "pictures").glob("*.py")),
    ]
    digest = hashlib.sha256()
    for file in files:
        # Read as text: a checkout may have changed the line ends.
        text = file.read_text("utf-8").encode("utf-8")
        digest.update(f"{file.name} {len(text)}\n".encode())
        digest.update(text)
    return digest.hexdigest()


def stamp_of(folder: Path) -> str:
    """The stamp that a demo job carries; empty for any other folder."""
    try:
        return (folder / _NAME).read_text("ascii").strip()
    except (OSError, UnicodeDecodeError):
        return ""


def put_stamp(folder: Path, stamp: str) -> None:
    (folder / _NAME).write_text(stamp + "\n", "ascii")
