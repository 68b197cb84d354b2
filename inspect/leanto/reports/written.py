"""A report that was written to a file."""

from __future__ import annotations

from dataclasses import dataclass
from pathlib import Path


@dataclass(frozen=True, slots=True)
class WrittenReport:
    path: Path
    pages: int
    not_drawn: str = ""
    """The characters that no font could draw, each once; they are printed as codes."""
