"""A small terminal for tests: it keeps what a program drew, so that a test sees what a user saw."""

from __future__ import annotations

import codecs
import fcntl
import os
import pty
import re
import select
import struct
import subprocess
import sys
import termios
import time
from collections.abc import Sequence
from pathlib import Path

ROOT = Path(__file__).resolve().parent.parent
ROWS, COLUMNS = 24, 80
_SEQUENCE = re.compile(
    r"\x1b(?:\[(?P<numbers>[0-9;:<=>?]*)[ -/]*(?P<final>[@-~])|\][^\x07\x1b]*(?:\x07|\x1b\\)"
    r"|P[^\x1b]*\x1b\\|[()][A-Z0-9]|[=>78cM])"
)


class Screen:
    """What stands on the screen: cursor moves, erasing and text; colors are passed over."""

    def __init__(self) -> None:
        self.raw = b""
        self._decode = codecs.getincrementaldecoder("utf-8")("replace").decode
        self._pending = ""
        self._rows = [[" "] * COLUMNS for _ in range(ROWS)]
        self._row = self._column = 0

    def feed(self, sent: bytes) -> None:
        self.raw += sent
        text = self._pending + self._decode(sent)
        place = 0
        while place < len(text):
            if text[place] != "\x1b":
                self._put(text[place])
                place += 1
            elif match := _SEQUENCE.match(text, place):
                self._obey(match["numbers"] or "", match["final"] or "")
                place = match.end()
            else:
                break
        self._pending = text[place:]

    def text(self) -> str:
        return "\n".join("".join(row).rstrip() for row in self._rows)

    def _put(self, character: str) -> None:
        if character == "\r":
            self._column = 0
        elif character == "\n":
            self._row = min(self._row + 1, ROWS - 1)
        elif character >= " ":
            if self._column < COLUMNS:
                self._rows[self._row][self._column] = character
            self._column += 1

    def _obey(self, numbers: str, final: str) -> None:
        given = [int(number) for number in numbers.split(";") if number.isdigit()]
        if final in "Hf" and final:
            row, column = (*given, 1, 1)[:2]
            self._row, self._column = min(row, ROWS) - 1, min(column, COLUMNS) - 1
        elif final == "C":
            self._column += given[0] if given else 1
        elif final == "G":
            self._column = (given[0] if given else 1) - 1
        elif final == "J":
            self._rows = [[" "] * COLUMNS for _ in range(ROWS)]
        elif final == "K":
            row = self._rows[self._row]
            row[self._column :] = [" "] * (COLUMNS - self._column)


class Program:
    """leanto in a pseudo-terminal of its own."""

    def __init__(self, arguments: Sequence[str]) -> None:
        self.screen = Screen()
        self._terminal, slave = pty.openpty()
        fcntl.ioctl(slave, termios.TIOCSWINSZ, struct.pack("HHHH", ROWS, COLUMNS, 0, 0))
        self.process = subprocess.Popen(
            [sys.executable, "-P", "-m", "leanto", *arguments],
            stdin=slave,
            stdout=slave,
            stderr=slave,
            env={
                **os.environ,
                "PYTHONPATH": str(ROOT / "inspect"),
                "TERM": "xterm-256color",
                "TEXTUAL_ANIMATIONS": "none",
            },
        )
        os.close(slave)

    def press(self, keys: str) -> None:
        os.write(self._terminal, keys.encode("utf-8"))

    def look(self, seconds: float) -> None:
        """Takes in what is drawn for so long."""
        end = time.monotonic() + seconds
        while (left := end - time.monotonic()) > 0 and self._read(left):
            pass

    def wait_for(self, words: str, patience_s: float = 120.0) -> None:
        """Takes in what is drawn until the words stand on the screen."""
        end = time.monotonic() + patience_s
        while words not in self.screen.text():
            left = end - time.monotonic()
            assert left > 0, f"{words!r} is not on the screen:\n{self.screen.text()}"
            assert self._read(left), f"it ended:\n{self.screen.text()}"

    def kill(self) -> None:
        """Ends it at once; what it had drawn by then is taken in."""
        self.process.kill()
        self.process.wait()
        while self._read(0.05):
            pass

    def close(self) -> None:
        if self.process.poll() is None:
            self.kill()
        os.close(self._terminal)

    def _read(self, seconds: float) -> bool:
        """False once nothing more is drawn within the time, or nobody draws."""
        if not select.select([self._terminal], [], [], seconds)[0]:
            return False
        try:
            sent = os.read(self._terminal, 65_536)
        except OSError:  # the other end is closed
            return False
        self.screen.feed(sent)
        return bool(sent)
