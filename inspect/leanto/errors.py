"""Errors a user can cause, in one small tree.

LeantoError            what is wrong, what to do, exit code 2
  InputProblems        one or more faults in files, each with file, line and field
  JobError             a job folder that cannot be opened or written
    ReadOnlyJob        the job is open elsewhere, or was written by a newer version
    NotKept            the disk refused an entry; it may be tried again
  PhotoError           a picture that is missing or is none
  ReportError          a report that could not be written
"""

from __future__ import annotations

import unicodedata
from collections.abc import Sequence
from dataclasses import dataclass

EXIT_OK = 0
EXIT_USER_ERROR = 2
EXIT_INTERRUPTED = 130


@dataclass(frozen=True, slots=True)
class Problem:
    """One fault in a file a user can edit."""

    file: str
    line: int
    """1-based; 0 when the fault belongs to the whole file."""
    field: str
    """Dotted path of the key, such as ``items.3.answers.failed``; empty for the whole file."""
    message: str
    remedy: str = ""

    def __post_init__(self) -> None:
        # What a file quotes must not steer the terminal that the message is shown on.
        for name in ("field", "message", "remedy"):
            object.__setattr__(self, name, _harmless(getattr(self, name)))

    def __str__(self) -> str:
        where = f"{self.file}:{self.line}" if self.line else self.file
        field = f" {self.field}:" if self.field else ""
        remedy = f" {self.remedy}" if self.remedy else ""
        return f"{where}:{field} {self.message}{remedy}"


def _harmless(text: str) -> str:
    """The text with control, direction and zero-width characters as codes: ``[U+202E]``."""
    if text.isascii() and text.isprintable():
        return text
    return "".join(
        f"[U+{ord(character):04X}]"
        if character != "\n" and unicodedata.category(character) in ("Cc", "Cf", "Zl", "Zp")
        else character
        for character in text
    )


class LeantoError(Exception):
    """Something a user can put right: what is wrong, and what to do."""

    exit_code = EXIT_USER_ERROR

    def __init__(self, what: str, remedy: str = "") -> None:
        super().__init__(what)
        self.what = what
        self.remedy = remedy

    def __str__(self) -> str:
        return f"{self.what} {self.remedy}".strip()


class InputProblems(LeantoError):
    """Every fault found in the files that were read, not only the first."""

    def __init__(self, problems: Sequence[Problem]) -> None:
        super().__init__("\n".join(str(problem) for problem in problems))
        self.problems = tuple(problems)


class JobError(LeantoError):
    """A job folder that cannot be opened, read or written."""


class ReadOnlyJob(JobError):
    """A job that may be looked at but not added to."""


class NotKept(JobError):
    """An entry that the disk refused; everything before it is kept, and it may be tried again."""


class PhotoError(LeantoError):
    """A picture that is missing, unreadable or no picture at all."""


class ReportError(LeantoError):
    """A report that could not be written."""
