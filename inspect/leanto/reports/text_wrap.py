"""Lines of plain text that fit a width in terminal columns."""

from __future__ import annotations

from leanto.reports.characters import columns, printable


def wrapped(text: str, width: int, first: str = "", rest: str = "") -> list[str]:
    """The text in lines of at most ``width`` columns; its own line feeds are kept.

    The first line starts with ``first`` and every other with ``rest``. A word that is too long
    for a line is cut, behind a hyphen where it has one. There is always at least one line.
    """
    lines: list[str] = []
    start = first
    for paragraph in printable(text).split("\n"):
        line = ""
        for word in paragraph.split():
            if line and columns(start) + columns(line) + 1 + columns(word) > width:
                lines.append(start + line)
                start, line = rest, ""
            cut = 0
            while not line and (end := _fitting(word, cut, width - columns(start))) < len(word):
                lines.append(start + word[cut:end])
                cut, start = end, rest
            line = f"{line} {word}" if line else word[cut:]
        lines.append(start + line)
        start = rest
    return lines


def _fitting(word: str, begin: int, room: int) -> int:
    """The end of as much of the word from ``begin`` on as fits, one character at least.

    A word that does not fit is cut behind its last hyphen, underscore or at sign if it has one.
    """
    end = begin + 1
    taken, room = columns(word[begin:end]), max(1, room)
    while end < len(word) and (taken := taken + columns(word[end])) <= room:
        end += 1
    joint = max(word.rfind(mark, begin, end) for mark in "-_@") + 1
    return joint if end < len(word) and joint > begin + 1 else end
