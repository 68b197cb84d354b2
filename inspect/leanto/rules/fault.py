"""What is wrong with one entry of a data file, before it is known where the entry stands."""

from __future__ import annotations

from dataclasses import dataclass


@dataclass(frozen=True, slots=True)
class Fault:
    path: tuple[str | int, ...]
    """Keys and list places below the entry, such as ``("work", 0, "when")``."""
    message: str
    remedy: str = ""
    is_unknown_name: bool = False
    """True when it may come of a file that could not be read."""
