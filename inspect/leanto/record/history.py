"""Which entries count: undo and redo are entries themselves, and nothing is ever deleted."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass, field

from leanto.record.entry import BuildingSet, Entry, Imported, MovedTo, Redone, Undone


@dataclass(slots=True)
class History:
    """Entries in the order they were made, sorted into what counts and what was taken back."""

    kept: list[Entry] = field(default_factory=list)
    """What can be undone, the latest last."""
    undone: list[Entry] = field(default_factory=list)
    """What can be redone, the latest undone last."""
    fixed: list[Entry] = field(default_factory=list)
    """What counts and can't be undone: moves, what was imported, the first building."""

    @classmethod
    def of(cls, entries: Iterable[Entry]) -> History:
        """The history of entries in the order of their ids.

        A new entry drops what could be redone; moving about does not. An undo or redo that names
        any but the next entry has no effect. The first building is only ever changed, not taken
        back: without a building nothing else has a place.
        """
        history = cls()
        has_building = False
        for entry in entries:
            match entry.body:
                case Undone(entry=target):
                    _shift(target, history.kept, history.undone)
                case Redone(entry=target):
                    _shift(target, history.undone, history.kept)
                case MovedTo():
                    history.fixed.append(entry)
                case Imported():
                    history.fixed += [*history.kept, entry]
                    history.kept.clear()
                    history.undone.clear()
                case BuildingSet() if not has_building:
                    has_building = True
                    history.fixed.append(entry)
                    history.undone.clear()
                case _:
                    history.kept.append(entry)
                    history.undone.clear()
        return history

    @property
    def live(self) -> list[Entry]:
        """Every entry that counts, in the order they were made."""
        return sorted([*self.fixed, *self.kept], key=lambda entry: entry.id)


def _shift(target: int, source: list[Entry], onto: list[Entry]) -> None:
    if source and source[-1].id == target:
        onto.append(source.pop())
