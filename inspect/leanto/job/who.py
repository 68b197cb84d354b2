"""Who enters something, where nobody said."""

from __future__ import annotations

import contextlib
import getpass


def user_name() -> str:
    """The name the system knows its user by."""
    name = ""
    with contextlib.suppress(OSError, KeyError, ImportError):
        name = "".join(char for char in getpass.getuser() if char.isprintable())
    return name or "unknown"
