"""Putting a finished report on the disk: whole, or not at all."""

from __future__ import annotations

from pathlib import Path

from leanto.errors import ReportError
from leanto.record.kept_file import keep_file


def put_report(path: Path, content: bytes) -> None:
    """Writes beside the file, then takes its place: no reader meets half a report.

    Raises ReportError when the file system refuses.
    """
    try:
        path.parent.mkdir(parents=True, exist_ok=True)
        keep_file(path, content)
    except OSError as error:
        raise ReportError(
            f"The report could not be written to {path}: {error.strerror or error}.",
            "Close the file if it is open elsewhere, free some space, or choose another folder.",
        ) from error
