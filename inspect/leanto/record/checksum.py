"""The checksum of an entry, so that bytes that changed on the disk do not pass for an answer."""

from __future__ import annotations

import zlib


def entry_crc(id_: int, at: str, who: str, kind: str, body: str) -> int:
    """CRC-32 of the stored row; it tells damage, not intent."""
    return zlib.crc32("\0".join((str(id_), at, who, kind, body)).encode("utf-8"))
