"""A folder that pictures come into, such as one that a phone syncs to."""

from __future__ import annotations

from pathlib import Path

from leanto.tui.pictures import pictures_in

Stamp = tuple[int, int]
"""Bytes and time of change."""


class FolderWatch:
    """Tells each new picture once, when it is there to its last byte."""

    def __init__(self, folder: Path) -> None:
        """What lies there already is left alone."""
        self.folder = folder
        self._told: set[str] = set(pictures_in(folder))
        self._growing: dict[str, Stamp] = {}

    @property
    def already_there(self) -> int:
        """How many pictures were told or left alone."""
        return len(self._told)

    def look(self) -> tuple[Path, ...]:
        """The pictures that came and did not change since the last look; by name.

        A folder that cannot be read gives none: it may be back at the next look.
        """
        now = pictures_in(self.folder)
        fresh = {name: stamp for name, stamp in now.items() if name not in self._told}
        whole = sorted(name for name, stamp in fresh.items() if self._growing.get(name) == stamp)
        self._told.update(whole)
        self._growing = {name: stamp for name, stamp in fresh.items() if name not in self._told}
        return tuple(self.folder / name for name in whole)
