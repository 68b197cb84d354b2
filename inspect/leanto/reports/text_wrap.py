"""Lines of plain text that fit a width in terminal columns."""

from __future__ import annotations

from leanto.reports.characters import columns, printable


def wrapped(text: str, width: int, first: str = "", rest: str = "") -> list[str]:
    """The text in lines of at most ``width`` columns; its own line feeds are kept.

    The first line starts with ``first`` and every other with ``rest``. A word that is too long
    for a line is cut. There is always at least one line.
    """
    lines: list[str] = []
    start = first
    for paragraph in printable(text).split("\n"):
        line = ""
        for word in paragraph.split():
            if line and columns(start) + columns(line) + 1 + columns(word) > width:
                lines.append(start + line)
                start, line = rest, ""
            room = max(1, width - columns(start))
            while columns(word) > room and not line:
                head = _head(word, room)
                lines.append(start + head)
                word, start = word[len(head) :], rest
                room = max(1, width - columns(start))
            line = f"{line} {word}" if line else word
        lines.append(start + line)
        start = rest
    return lines


def _head(word: str, room: int) -> str:
    """As much of the word as fits, one character at least."""
    end = 1
    while end < len(word) and columns(word[: end + 1]) <= room:
        end += 1
    return word[:end]
