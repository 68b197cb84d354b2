"""The rows of a damaged record that can still be read, found in the bytes of its pages.

SQLite refuses what hangs on a damaged page; the entries on it are mostly whole. Each is found by
its time stamp, read from there by SQLite's record format, and believed when its checksum fits.
The layout is that of "Database File Format", sections 1.5, 1.6 and 2.1 (sqlite.org/fileformat2).
"""

from __future__ import annotations

import re
from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from pathlib import Path

from leanto.record.checksum import entry_crc
from leanto.record.log_check import frames

_TIME = re.compile(rb"\d{4}-\d\d-\d\dT\d\d:\d\d:\d\d(?:\.\d{6})?\+00:00")
_USUAL_PAGE_SIZE = 4096
_COLUMNS = (5, 6)
"""Of an entry, without and with its checksum."""
_INTEGER_SIZES = {1: 1, 2: 2, 3: 3, 4: 4, 5: 6, 6: 8, 8: 0, 9: 0}
_MAX_BODY = 1_000_000
_MAX_FILE = 64_000_000
"""Far more than a record of ten thousand answers takes."""


@dataclass(frozen=True, slots=True)
class Row:
    """An entry as it was stored."""

    id: int
    at: str
    who: str
    kind: str
    body: str
    checked: bool
    """Whether a checksum says that it is what was written."""


@dataclass(frozen=True, slots=True)
class _Pages:
    """The pages of the record by number, as stored and as the log has them."""

    size: int
    stored: Mapping[int, bytes]
    logged: Mapping[int, bytes]


def salvage(record: Path) -> dict[int, tuple[Row, ...]]:
    """By id every row found in the record and its log, those with a checksum first.

    Nothing is written. A file that is missing or is no record gives no rows.
    """
    database, log = _read(record), _read(record.with_name(record.name + "-wal"))
    size = _page_size(database)
    stored = {n: database[at : at + size] for n, at in enumerate(range(0, len(database), size), 1)}
    logged = frames(log, size)
    pages = _Pages(size, stored, {f.page: f.content for f in logged if not f.is_left})
    found: dict[int, dict[Row, None]] = {}
    for image in (*stored.values(), *(frame.content for frame in logged)):
        for row in _rows(image, pages):
            found.setdefault(row.id, {})[row] = None
    return {
        id_: tuple(sorted(rows, key=lambda row: not row.checked))
        for id_, rows in sorted(found.items())
    }


def _read(path: Path) -> bytes:
    try:
        with path.open("rb") as file:
            return file.read(_MAX_FILE)
    except OSError:
        return b""


def _page_size(database: bytes) -> int:
    said = int.from_bytes(database[16:18], "big")
    size = 65_536 if said == 1 else said
    is_possible = 512 <= size <= 65_536 and size & (size - 1) == 0
    return size if is_possible else _USUAL_PAGE_SIZE


def _rows(image: bytes, pages: _Pages) -> Iterator[Row]:
    for match in _TIME.finditer(image):
        row = _row(image, match.start(), pages)
        if row is not None:
            yield row


def _row(image: bytes, start: int, pages: _Pages) -> Row | None:
    """The row whose first text starts there; None when no header fits, or a part is lost."""
    for length in range(6, 16):
        header = start - length
        # The id stands beside the row, so that its own column is empty.
        if header < 2 or image[header] != length or image[header + 1] != 0:
            continue
        types = _varints(image[header + 1 : start])
        if types is None or len(types) not in _COLUMNS:
            continue
        sizes = [_size(kind) for kind in types]
        if None in sizes or sum(size for size in sizes if size) > _MAX_BODY:
            continue
        total = length + sum(size for size in sizes if size)
        id_ = _id_before(image, header, total)
        if id_ is None:
            continue
        for newest in (pages.logged, {}):
            payload = _payload(image, header, total, pages, newest)
            row = None if payload is None else _decoded(id_, payload[length:], types)
            if row is not None:
                return row
    return None


def _id_before(image: bytes, header: int, total: int) -> int | None:
    """The row's id, which stands between the length of the row and its header."""
    for id_bytes in range(1, 6):
        ids = _varints(image[header - id_bytes : header]) if header >= id_bytes else None
        if ids is None or len(ids) != 1:
            continue
        for length_bytes in range(1, 5):
            begin = header - id_bytes - length_bytes
            if begin >= 0 and _varints(image[begin : header - id_bytes]) == [total]:
                return ids[0]
    return None


def _payload(
    image: bytes, begin: int, total: int, pages: _Pages, newest: Mapping[int, bytes]
) -> bytes | None:
    """The row's bytes, gathered over overflow pages; None when one is lost."""
    here = _local_size(total, pages.size)
    parts = [image[begin : begin + here]]
    missing = total - here
    following = image[begin + here : begin + here + 4]
    seen: set[int] = set()
    while missing > 0:
        number = int.from_bytes(following, "big")
        page = newest.get(number) or pages.stored.get(number)
        if page is None or number in seen:
            return None
        seen.add(number)
        parts.append(page[4 : 4 + missing])
        missing -= pages.size - 4
        following = page[:4]
    payload = b"".join(parts)
    return payload if len(payload) == total else None


def _local_size(total: int, page_size: int) -> int:
    """How much of a row stands on its own page."""
    if total <= page_size - 35:
        return total
    least = (page_size - 12) * 32 // 255 - 23
    some = least + (total - least) % (page_size - 4)
    return some if some <= page_size - 35 else least


def _decoded(id_: int, content: bytes, types: list[int]) -> Row | None:
    texts = []
    place = 0
    for kind in types[1:5]:
        size = _size(kind) or 0
        try:
            texts.append(content[place : place + size].decode("utf-8"))
        except UnicodeDecodeError:
            return None
        place += size
    at, who, kind_text, body = texts
    checked = len(types) == 6
    if checked:
        crc = _integer(types[5], content[place:])
        if crc != entry_crc(id_, at, who, kind_text, body):
            return None
    return Row(id_, at, who, kind_text, body, checked)


def _size(kind: int) -> int | None:
    """The bytes that a value of this serial type takes; None for one that no entry holds."""
    if kind == 0:
        return 0
    if kind >= 13 and kind % 2:
        return (kind - 13) // 2
    return _INTEGER_SIZES.get(kind)


def _integer(kind: int, content: bytes) -> int | None:
    if kind in (8, 9):
        return kind - 8
    size = _INTEGER_SIZES.get(kind)
    return None if size is None else int.from_bytes(content[:size], "big", signed=True)


def _varints(content: bytes) -> list[int] | None:
    """The numbers of 7 bits a byte that fill the content; None when they do not end with it."""
    numbers, number, is_open = [], 0, False
    for byte in content:
        number = number << 7 | byte & 0x7F
        is_open = byte >= 0x80
        if not is_open:
            numbers.append(number)
            number = 0
    return None if is_open else numbers
