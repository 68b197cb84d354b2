"""Which entries count: undo and redo are entries themselves, and nothing is ever deleted."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass, field

from leanto.record.entry import (
    AboutObservation,
    BuildingSet,
    Entry,
    Imported,
    MovedTo,
    Redone,
    Undone,
    UnitsSet,
)


@dataclass(slots=True)
class History:
    """Entries in the order they were made, sorted into what counts and what was taken back."""

    kept: list[Entry] = field(default_factory=list)
    """What can be undone, the latest last."""
    undone: list[Entry] = field(default_factory=list)
    """What can be redone, the latest undone last."""
    fixed: list[Entry] = field(default_factory=list)
    """What counts and can't be undone: moves, units, what was imported, the first building."""
    has_building: bool = False

    @classmethod
    def of(cls, entries: Iterable[Entry]) -> History:
        """The history of entries in the order of their ids.

        A new entry drops what could be redone; moving about does not. An undo or redo that names
        any but the next entry has no effect. A batch goes as a whole. The first building is only
        ever changed, not taken back: without a building nothing else has a place.
        """
        history = cls()
        for entry in entries:
            history.take(entry)
        return history

    def take(self, entry: Entry) -> None:
        """One more entry."""
        match entry.body:
            case Undone(entry=target):
                _shift(target, self.kept, self.undone)
            case Redone(entry=target):
                _shift(target, self.undone, self.kept)
            case MovedTo() | UnitsSet():
                self.fixed.append(entry)
            case Imported():
                self.fixed += [*self.kept, entry]
                self.kept.clear()
                self.undone.clear()
            case BuildingSet() if not self.has_building:
                self.has_building = True
                self.fixed.append(entry)
                self.undone.clear()
            case _:
                self.kept.append(entry)
                self.undone.clear()

    @property
    def live(self) -> list[Entry]:
        """Every entry that counts, in the order they were made."""
        return sorted([*self.fixed, *self.kept], key=lambda entry: entry.id)


def batch_of(entry: Entry) -> str:
    """What marks the entries that one key made; empty for an entry of its own."""
    return entry.body.batch if isinstance(entry.body, AboutObservation) else ""


def _shift(target: int, source: list[Entry], onto: list[Entry]) -> None:
    """Moves the target over, and the neighbors that belong to its batch."""
    if source and source[-1].id == target:
        batch = batch_of(source[-1])
        onto.append(source.pop())
        while batch and source and batch_of(source[-1]) == batch:
            onto.append(source.pop())
