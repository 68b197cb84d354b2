"""Names of places, shortened where there is little room."""

from __future__ import annotations

from textual.content import Content

_SHORTER = (
    ("north", "N"),
    ("east", "E"),
    ("south", "S"),
    ("west", "W"),
    (" wall, inside", " wall in"),
    (" wall, outside", " wall out"),
)


def short_place(name: str, room: int) -> str:
    """The name in ``room`` cells; which wall and which face of it are the last to go.

    ``Main room, north wall, inside`` becomes ``Main room, N wall in``, and with less room
    ``Mai…, N wall in``.
    """
    block, comma, part = name.partition(", ")
    for word, shorter in _SHORTER:
        part = part.replace(word, shorter)
    left = room - _cells(part) - 2
    if comma and left >= _cells(block):
        return f"{block}, {part}"
    if not comma or left < 2:
        return Content(f"{block}{comma}{part}").truncate(room, ellipsis=True).plain
    return f"{Content(block).truncate(left, ellipsis=True).plain}, {part}"


def _cells(text: str) -> int:
    return Content(text).cell_length
