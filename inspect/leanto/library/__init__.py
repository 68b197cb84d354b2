"""The checklists, rules, work, prices and shares, read together; every problem of every file."""

from __future__ import annotations

from leanto.library.model import Library
from leanto.library.read import library_problems, read_library

__all__ = ["Library", "library_problems", "read_library"]
