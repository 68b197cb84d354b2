"""The checklists, rules, work, prices and shares, read together; every problem of every file."""

from __future__ import annotations

from leanto.library.model import Library
from leanto.library.notes import Notes, notes
from leanto.library.read import library_problems, library_versions, read_library

__all__ = ["Library", "Notes", "library_problems", "library_versions", "notes", "read_library"]
