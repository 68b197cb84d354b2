"""A file a user can edit -> its text, or the one reason why it can't be read."""

from __future__ import annotations

from pathlib import Path

from leanto.errors import InputProblems, Problem

MAX_BYTES = 2_000_000


def read_text(path: Path, file: str) -> str:
    """The text of a UTF-8 file of at most 2 MB; InputProblems otherwise."""
    try:
        if path.is_dir():
            raise _refusal(file, "This is a folder, not a file.", "Name a file in it.")
        if path.exists() and not path.is_file():
            raise _refusal(file, "This is not an ordinary file.", "Name a YAML file.")
        with path.open("rb") as stream:
            content = stream.read(MAX_BYTES + 1)
    except FileNotFoundError:
        raise _refusal(file, "There is no such file.", "Check its name and folder.") from None
    except PermissionError:
        raise _refusal(file, "You may not read this file.", "Change its permissions.") from None
    except (OSError, ValueError) as error:
        reason = getattr(error, "strerror", None) or "its name is not valid"
        raise _refusal(file, f"The file cannot be read: {reason}.", "Check the disk.") from None
    if len(content) > MAX_BYTES:
        raise _refusal(file, "The file is larger than 2 MB.", "Split it.")
    try:
        return content.decode("utf-8")
    except UnicodeDecodeError as error:
        line = content[: error.start].count(b"\n") + 1
        message = "The text is not in UTF-8."
        raise _refusal(file, message, "Save the file as UTF-8.", line) from None


def _refusal(file: str, message: str, remedy: str, line: int = 0) -> InputProblems:
    return InputProblems([Problem(file, line, "", message, remedy)])
