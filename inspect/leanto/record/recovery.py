"""What can be read of a damaged record and its backups -> entries for a new record. Writes nothing.

Entries are numbered without gaps and never changed, so a backup holds the very entries of the
record up to its day, under the same ids.
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass, field
from pathlib import Path

from leanto.errors import JobError
from leanto.record.entry import BuildingSet, Entry, Imported, MovedTo, Redone, Undone, UnitsSet
from leanto.record.salvage import Row, salvage
from leanto.record.store import entry_of


@dataclass(frozen=True, slots=True)
class Recovered:
    """The entries found, numbered anew, and what is known to be missing."""

    entries: tuple[Entry, ...]
    missing: tuple[int, ...]
    """Ids, as they were, of entries that are nowhere."""
    unreadable: tuple[str, ...]
    """Entries that are there and cannot be understood, a sentence each."""
    unchecked: int
    """How many were found without a checksum that proves them."""
    from_backups: int
    """How many were found in a backup only."""
    last_id: int
    """The last id that is known of; what came after it would leave no trace."""
    neighbors: dict[int, tuple[Entry | None, Entry | None]] = field(default_factory=dict)
    """For each missing id the entries found before and after it."""


def recover(record: Path, backups: Sequence[Path]) -> Recovered:
    """All that the record, its log and its backups still hold.

    A backup that contradicts a proven entry of the record is of another job, and is left out.
    """
    found = {id_: rows[0] for id_, rows in salvage(record).items()}
    from_backups = 0
    for backup in backups:
        others = {id_: rows[0] for id_, rows in salvage(backup).items()}
        if any(_contradict(found[id_], row) for id_, row in others.items() if id_ in found):
            continue
        for id_, row in others.items():
            from_backups += id_ not in found
            if id_ not in found or row.checked > found[id_].checked:
                found[id_] = row
    entries, unreadable = _understood(found.values())
    known = {*found, *(e.body.entry for e in entries if isinstance(e.body, Undone | Redone))}
    last_id = max(known, default=0)
    missing = tuple(id_ for id_ in range(1, last_id + 1) if id_ not in found)
    return Recovered(
        entries=renumbered(entries),
        missing=missing,
        unreadable=tuple(unreadable),
        unchecked=sum(not row.checked for row in found.values()),
        from_backups=from_backups,
        last_id=last_id,
        neighbors=_neighbors(missing, entries),
    )


def renumbered(entries: Iterable[Entry]) -> tuple[Entry, ...]:
    """The entries as 1, 2, 3 ..., their undos and redos made to fit.

    An undo names what it takes back. Where the undos before it are lost, they are set in, so that
    it takes back what it did; one whose own entry is lost is left out.
    """
    made: list[Entry] = []
    kept: list[tuple[int, int]] = []
    undone: list[tuple[int, int]] = []
    has_building = False

    def add(entry: Entry) -> int:
        made.append(entry.model_copy(update={"id": len(made) + 1}))
        return len(made)

    def shift(entry: Entry, source: list[tuple[int, int]], onto: list[tuple[int, int]]) -> None:
        target = entry.body.entry if isinstance(entry.body, Undone | Redone) else 0
        while any(old == target for old, _ in source):
            old, new = source.pop()
            onto.append((old, new))
            add(entry.model_copy(update={"body": entry.body.model_copy(update={"entry": new})}))
            if old == target:
                return

    for entry in entries:
        match entry.body:
            case Undone():
                shift(entry, kept, undone)
            case Redone():
                shift(entry, undone, kept)
            case MovedTo() | UnitsSet():
                add(entry)
            case Imported():
                add(entry)
                kept.clear()
                undone.clear()
            case BuildingSet() if not has_building:
                has_building = True
                add(entry)
                undone.clear()
            case _:
                kept.append((entry.id, add(entry)))
                undone.clear()
    return tuple(made)


def _contradict(one: Row, other: Row) -> bool:
    same = (one.at, one.who, one.kind, one.body) == (other.at, other.who, other.kind, other.body)
    return one.checked and other.checked and not same


def _understood(rows: Iterable[Row]) -> tuple[list[Entry], list[str]]:
    """The entries in order, and a sentence for each row that is none."""
    entries, unreadable = [], []
    for row in sorted(rows, key=lambda row: row.id):
        try:
            entries.append(entry_of(row.id, row.at, row.who, row.kind, row.body))
        except JobError as error:
            unreadable.append(error.what)
    return entries, unreadable


def _neighbors(
    missing: Sequence[int], entries: Sequence[Entry]
) -> dict[int, tuple[Entry | None, Entry | None]]:
    found = {}
    for id_ in missing:
        before = next((entry for entry in reversed(entries) if entry.id < id_), None)
        after = next((entry for entry in entries if entry.id > id_), None)
        found[id_] = (before, after)
    return found
