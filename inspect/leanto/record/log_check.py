"""Whether a write-ahead log was damaged, where SQLite would drop the rest of it without a word.

The layout is that of SQLite's "WAL-mode File Format", sections 3 and 4 (sqlite.org/walformat.html).
"""

from __future__ import annotations

import struct
from dataclasses import dataclass
from pathlib import Path

_MAGIC = {0x377F0682: "<", 0x377F0683: ">"}
"""The byte order in which checksums are counted."""
_HEADER = struct.Struct(">IIIIIIII")
_FRAME = struct.Struct(">IIIIII")


@dataclass(frozen=True, slots=True)
class Frame:
    """One page as it was written."""

    page: int
    """1-based."""
    content: bytes
    is_left: bool
    """Whether it stems from before the log was last begun anew."""


def log_is_damaged(path: Path) -> bool:
    """Whether whole transactions stand behind a place in the log that cannot be read.

    The last transaction may be half written when the power fails; nobody was told that it is
    kept, so that alone is no damage.
    """
    try:
        log = path.read_bytes()
    except FileNotFoundError:
        return False
    if len(log) < _HEADER.size + _FRAME.size:
        return False
    magic, _, page_size, _, salt1, salt2, sum1, sum2 = _HEADER.unpack_from(log)
    order = _MAGIC.get(magic)
    if order is None or _sums(order, log[:24], (0, 0)) != (sum1, sum2):
        # The header is on the disk before any frame is.
        return True
    sums, sound, commits_behind = (sum1, sum2), True, 0
    step = _FRAME.size + page_size
    for start in range(_HEADER.size, len(log) - step + 1, step):
        _, size, frame_salt1, frame_salt2, *said = _FRAME.unpack_from(log, start)
        same_log = (frame_salt1, frame_salt2) == (salt1, salt2)
        if sound:
            sums = _sums(order, log[start : start + 8], sums)
            sums = _sums(order, log[start + _FRAME.size : start + step], sums)
            sound = same_log and sums == tuple(said)
        if not sound:
            commits_behind += same_log and size > 0
    return commits_behind > 1


def frames(log: bytes, page_size: int) -> list[Frame]:
    """Every frame of a log, also those whose checksums are wrong and those left from before."""
    found = []
    step = _FRAME.size + page_size
    salts = log[16:24]
    for start in range(_HEADER.size, len(log) - step + 1, step):
        page = int.from_bytes(log[start : start + 4], "big")
        is_left = log[start + 8 : start + 16] != salts
        found.append(Frame(page, log[start + _FRAME.size : start + step], is_left))
    return found


def _sums(order: str, content: bytes, before: tuple[int, int]) -> tuple[int, int]:
    """SQLite's running checksum, carried on over the content."""
    first, second = before
    words = struct.unpack(f"{order}{len(content) // 4}I", content)
    for one, other in zip(words[::2], words[1::2], strict=True):
        first = (first + one + second) & 0xFFFFFFFF
        second = (second + other + first) & 0xFFFFFFFF
    return first, second
