"""JPEG files freed of everything that is no picture: camera data, places, thumbnails, remarks."""

from __future__ import annotations

from collections.abc import Iterator

_START, _END, _SCAN = 0xD8, 0xD9, 0xDA
_ALONE = {0x01, *range(0xD0, 0xD8)}
_KEPT_APPS = {0xE0, 0xEE}
"""JFIF, and how the colors are stored: a decoder needs them."""
_NO_PICTURE = {*range(0xE0, 0xF0), 0xFE} - _KEPT_APPS


def bare_jpeg(content: bytes) -> bytes:
    """The same picture, pixel for pixel, without its remarks; ValueError when it is no JPEG.

    What follows the end of the picture is cut off too.
    """
    return b"".join(_kept(content))


def _kept(content: bytes) -> Iterator[bytes]:
    if content[:2] != bytes((0xFF, _START)):
        raise ValueError("no JPEG")
    yield content[:2]
    at = 2
    while True:
        at = _marker(content, at)
        marker = content[at + 1]
        if marker == _END:
            yield content[at : at + 2]
            return
        if marker in _ALONE:
            yield content[at : at + 2]
            at += 2
            continue
        end = at + 2 + int.from_bytes(content[at + 2 : at + 4], "big")
        if end > len(content) or end < at + 4:
            raise ValueError("cut short")
        if marker == _SCAN:
            end = _scan_end(content, end)
        if marker == 0xE0:
            yield _jfif(content[at:end])
        elif marker not in _NO_PICTURE:
            yield content[at:end]
        at = end


def _marker(content: bytes, at: int) -> int:
    """Where the marker at or behind ``at`` begins; fill bytes may stand before it."""
    while content[at : at + 2] == b"\xff\xff":
        at += 1
    if at + 4 > len(content) + 2 or content[at : at + 1] != b"\xff" or at + 1 >= len(content):
        raise ValueError("cut short")
    return at


def _scan_end(content: bytes, at: int) -> int:
    """Where the picture data that begin at ``at`` end: at a marker other than a restart."""
    while True:
        at = content.find(b"\xff", at)
        if at < 0 or at + 1 >= len(content):
            raise ValueError("cut short")
        following = content[at + 1]
        if following != 0 and following != 0xFF and following not in range(0xD0, 0xD8):
            return at
        at += 1 if following == 0xFF else 2


def _jfif(segment: bytes) -> bytes:
    """The first sixteen bytes of JFIF data, without a thumbnail; nothing for its extension."""
    if segment[4:9] != b"JFIF\0" or len(segment) < 18:
        return b""
    return segment[:2] + b"\0\x10" + segment[4:16] + b"\0\0"
