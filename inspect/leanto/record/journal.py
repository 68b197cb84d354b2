"""An open record with the walk it leads to: entries are added, undone and redone here."""

from __future__ import annotations

import contextlib
import threading
from collections.abc import Callable, Sequence
from datetime import date, datetime

from leanto.errors import JobError, NotKept
from leanto.record import refusal
from leanto.record.entry import (
    AboutObservation,
    AirMeasured,
    Body,
    Entry,
    Imported,
    ObservationBody,
    Redone,
    Undone,
)
from leanto.record.fold import fold, folded_on, next_redo, next_undo
from leanto.record.observation import ObservationKey
from leanto.record.store import Store
from leanto.record.walk import Walk

Clock = Callable[[], datetime]
"""The present time, with its time zone."""


class Journal:
    """All entries of an open record. They are kept in memory too, as only this program adds."""

    def __init__(self, store: Store, clock: Clock, who: str) -> None:
        self.entries: tuple[Entry, ...] = store.entries()
        self._store = store
        self._clock = clock
        self._who = who
        self._one_at_a_time = threading.RLock()
        self._folded: tuple[int, Walk] | None = None
        self._known = {key for entry in self.entries if (key := _key(entry.body)) is not None}
        self.holds = False
        """Whether entries that the disk refuses are held in memory, to be tried again."""
        self.held: tuple[Entry, ...] = ()
        """The last entries, where they are not on the disk."""
        self.held_because: NotKept | None = None

    @property
    def read_only_reason(self) -> str:
        """One sentence; empty when entries can be added."""
        return self._store.read_only_reason

    def refuse_if_read_only(self) -> None:
        """ReadOnlyJob when no entry can be added."""
        if self.read_only_reason:
            raise refusal.read_only(self.read_only_reason)

    @property
    def walk(self) -> Walk:
        """The walk that the entries lead to, folded once after each new one."""
        entries, held = self.entries, self._folded
        if held is None or held[0] != len(entries):
            held = self._folded = (len(entries), fold(entries))
        return held[1]

    @property
    def walked_on(self) -> date | None:
        """The local day of the last observation; None before the first."""
        for entry in reversed(self.entries):
            match entry.body:
                case AboutObservation() | AirMeasured():
                    return entry.at.astimezone().date()
                case Imported(walked_on=date() as walked_on):
                    return walked_on
        return None

    def now(self) -> datetime:
        """The present time by this record's clock."""
        return self._clock()

    def append(self, body: Body) -> Entry:
        """The entry, on the disk when this returns; raises what the store raises.

        What the store cannot keep is held in memory instead where ``holds`` says so.
        """
        (entry,) = self._append_all((body,), self._clock())
        return entry

    def append_together(self, bodies: Sequence[ObservationBody]) -> tuple[Entry, ...]:
        """The entries, kept all or none, and undone as one; raises what the store raises."""
        at = self._clock()
        batch = {"batch": at.isoformat(timespec="microseconds")}
        return self._append_all([body.model_copy(update=batch) for body in bodies], at)

    def _append_all(self, bodies: Sequence[Body], at: datetime) -> tuple[Entry, ...]:
        with self._one_at_a_time:
            try:
                self.keep_held()
                entries = self._store.append_all(bodies, at=at, who=self._who)
            except NotKept as refused:
                if not self.holds:
                    raise
                numbered = enumerate(bodies, start=len(self.entries) + 1)
                entries = tuple(Entry(id=id_, at=at, who=self._who, body=b) for id_, b in numbered)
                self.held, self.held_because = (*self.held, *entries), refused
            for entry in entries:
                self._fold_on(entry)
                self.entries = (*self.entries, entry)
        return entries

    def keep_held(self) -> None:
        """Brings what is held to the disk; NotKept where that is refused once more."""
        with self._one_at_a_time:
            if self.held:
                self._store.add(self.held)
                self.held, self.held_because = (), None

    def go_on_in(self, store: Store) -> None:
        """Entries go into another record from now on, which holds all of these already."""
        with self._one_at_a_time:
            left, self._store = self._store, store
            self.held, self.held_because = (), None
            left.close()

    def _fold_on(self, entry: Entry) -> None:
        """Carries the walk on by one entry, where that needs no whole fold."""
        if self._folded is not None and self._folded[0] == len(self.entries):
            walk = folded_on(self._folded[1], entry, self._known)
            self._folded = None if walk is None else (len(self.entries) + 1, walk)
        key = _key(entry.body)
        if key is not None:
            self._known.add(key)

    def undo(self) -> Entry | None:
        """The entry that was taken back; None when there is none to take back."""
        self.refuse_if_read_only()
        with self._one_at_a_time:
            target = next_undo(self.entries)
            if target is not None:
                self.append(Undone(entry=target.id))
        return target

    def redo(self) -> Entry | None:
        """The entry that counts again; None when there is none."""
        self.refuse_if_read_only()
        with self._one_at_a_time:
            target = next_redo(self.entries)
            if target is not None:
                self.append(Redone(entry=target.id))
        return target

    @property
    def can_undo(self) -> bool:
        return not self.read_only_reason and next_undo(self.entries) is not None

    @property
    def can_redo(self) -> bool:
        return not self.read_only_reason and next_redo(self.entries) is not None

    def close(self) -> None:
        """Ends it; what is held is tried once more."""
        with contextlib.suppress(JobError):
            self.keep_held()
        self._store.close()


def _key(body: Body) -> ObservationKey | None:
    """The observation that an entry is about."""
    if isinstance(body, AboutObservation):
        return ObservationKey(body.station, body.item, body.number)
    return None
