"""A returned file: what it is, and whether it may be opened at all."""

from __future__ import annotations

import hashlib
import io
import zipfile
from dataclasses import dataclass
from pathlib import Path
from typing import Literal

from leanto.bids.reading.refusal import BidFileError

MOST_BYTES = 20_000_000
MOST_UNPACKED = 30_000_000
MOST_PARTS = 2_000
_OLD_OFFICE = b"\xd0\xcf\x11\xe0\xa1\xb1\x1a\xe1"
_SEND = "Ask the bidder for the form that was sent, filled in."

Kind = Literal["pdf", "xlsx", "csv"]


@dataclass(frozen=True, slots=True)
class ReturnedFile:
    name: str
    content: bytes
    kind: Kind

    @property
    def digest(self) -> str:
        return hashlib.sha256(self.content).hexdigest()


def read_file(path: Path) -> ReturnedFile:
    """The file with its kind, told by its content; BidFileError for one that is not opened."""
    name = "".join(char if char.isprintable() else "\ufffd" for char in path.name)
    try:
        if path.is_dir():
            raise BidFileError(f"{name} is a folder.", "Name one file in it.")
        if path.exists() and not path.is_file():
            raise BidFileError(f"{name} is no ordinary file.", "Name a PDF, XLSX or CSV file.")
        with path.open("rb") as file:
            content = file.read(MOST_BYTES + 1)
    except FileNotFoundError:
        raise BidFileError(f"There is no file {name}.", "Check its name.") from None
    except (OSError, ValueError) as error:
        reason = getattr(error, "strerror", None) or "its name is not valid"
        raise BidFileError(f"{name} cannot be read: {reason}.", "Check the file.") from None
    if len(content) > MOST_BYTES:
        raise BidFileError(
            f"{name} is larger than {MOST_BYTES // 1_000_000} MB; a bid form is far smaller.", _SEND
        )
    return ReturnedFile(name, content, _kind(name, content))


def _kind(name: str, content: bytes) -> Kind:
    if not content.strip():
        raise BidFileError(f"{name} is empty.", _SEND)
    if b"%PDF-" in content[:1024]:
        return "pdf"
    if content.startswith(b"PK"):
        _check_workbook(name, content)
        return "xlsx"
    if content.startswith(_OLD_OFFICE):
        raise BidFileError(
            f"{name} is protected by a password, or a workbook of an old kind.",
            "Open it, take the password off, and save it as XLSX.",
        )
    if content.startswith((b"\xff\xd8", b"\x89PNG", b"II*\0", b"MM\0*", b"GIF8")):
        raise BidFileError(f"{name} is a picture; no figure can be read from it.", _SEND)
    if b"\0" in content and not content.startswith((b"\xff\xfe", b"\xfe\xff")):
        raise BidFileError(f"{name} is neither PDF, XLSX nor CSV.", _SEND)
    return "csv"


def _check_workbook(name: str, content: bytes) -> None:
    """Refuses macros, other containers, and what would unpack to too much."""
    try:
        with zipfile.ZipFile(io.BytesIO(content)) as archive:
            parts = archive.infolist()
    except (zipfile.BadZipFile, ValueError, OSError, EOFError):
        raise BidFileError(f"{name} is broken or cut short.", "Ask for it again.") from None
    if len(parts) > MOST_PARTS or sum(part.file_size for part in parts) > MOST_UNPACKED:
        raise BidFileError(
            f"{name} would unpack to far more than a bid form holds; it was not opened.", _SEND
        )
    names = {part.filename.lower() for part in parts}
    if any(one.endswith(("vbaproject.bin", ".xlm")) or "macrosheets/" in one for one in names):
        raise BidFileError(f"{name} holds macros; it was not opened.", "Save it as XLSX.")
    if "xl/workbook.xml" not in names:
        raise BidFileError(
            f"{name} is no XLSX workbook.", "Open it and save it as XLSX, or send the PDF form."
        )
    if any(part.flag_bits & 1 for part in parts):
        raise BidFileError(f"{name} is protected by a password.", "Take the password off.")
