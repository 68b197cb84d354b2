"""Zip files that are the same, byte for byte, whenever they are made."""

from __future__ import annotations

import re
import zipfile
from collections.abc import Iterable
from datetime import date
from io import BytesIO

_CORE = "docProps/core.xml"
_STAMP = re.compile(rb"(<dcterms:(?:created|modified)[^>]*>)[^<]*(<)")
_FILE_MODE = 0o100644 << 16
_UNIX = 3


def fixed_zip(files: Iterable[tuple[str, bytes]], day: date) -> bytes:
    """The files under their names, in order, all dated to the same day."""
    written = BytesIO()
    with zipfile.ZipFile(written, "w", zipfile.ZIP_DEFLATED, compresslevel=6) as packed:
        for name, content in files:
            entry = zipfile.ZipInfo(name, (max(day.year, 1980), day.month, day.day, 0, 0, 0))
            entry.compress_type = zipfile.ZIP_DEFLATED
            entry.external_attr, entry.create_system = _FILE_MODE, _UNIX
            packed.writestr(entry, content)
    return written.getvalue()


def fixed_workbook(content: bytes, day: date) -> bytes:
    """The workbook with ``day`` in place of the time at which it was made."""
    stamp = rb"\g<1>" + f"{day:%Y-%m-%d}T00:00:00Z".encode() + rb"\g<2>"
    with zipfile.ZipFile(BytesIO(content)) as packed:
        files = [(name, packed.read(name)) for name in packed.namelist()]
    return fixed_zip(
        [(name, _STAMP.sub(stamp, data) if name == _CORE else data) for name, data in files], day
    )
