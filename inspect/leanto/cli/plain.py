"""Output that cannot steer a terminal, whatever a name, note or file holds."""

from __future__ import annotations

import io
from collections.abc import Iterable
from typing import TextIO

from leanto.reports.characters import printable


class PlainOutput(io.TextIOBase):
    """A text stream in front of another: control and hidden characters pass as codes.

    What the other's encoding does not hold is written as ``?``.
    """

    def __init__(self, behind: TextIO) -> None:
        super().__init__()
        self.behind = behind

    def write(self, text: str, /) -> int:
        plain = text if text.isascii() and text.replace("\n", "").isprintable() else printable(text)
        encoding = self.behind.encoding or "utf-8"
        self.behind.write(plain.encode(encoding, "replace").decode(encoding))
        return len(text)

    def writelines(self, lines: Iterable[str], /) -> None:  # type: ignore[override]
        for line in lines:
            self.write(line)

    def flush(self) -> None:
        self.behind.flush()

    def isatty(self) -> bool:
        return self.behind.isatty()

    def fileno(self) -> int:
        return self.behind.fileno()

    @property
    def encoding(self) -> str:  # type: ignore[override]
        return self.behind.encoding


def raw(stream: TextIO) -> TextIO:
    """The stream without what stands in front of it: for text that is data."""
    return stream.behind if isinstance(stream, PlainOutput) else stream
