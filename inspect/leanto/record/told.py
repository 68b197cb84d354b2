"""The entries of a record told apart from those of any other, whatever their numbers.

A *tale* is what one key entered: an entry, or a batch of them, with the undos and redos that were
made of it. It is known by its time and a digest of its content, so the same tale is found in every
copy of a record. Numbers of entries say nothing between two records and are no part of it.

1. Tales of a record stand in the order of their keys, and no two keys are equal. Where a clock
   stood or went back, a tale is given the time of the one before it, or a microsecond more.
2. A record written from tales tells the same tales: ``told(entries_of(tales)) == tales``.
"""

from __future__ import annotations

import hashlib
import json
from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass, field, replace
from datetime import UTC, datetime, timedelta
from typing import Any

from leanto.record.entry import AboutItem, AboutObservation, Body, Entry, Redone, ScopeAdded, Undone
from leanto.record.history import History, batch_of

_TICK = timedelta(microseconds=1)
_NOWHERE = 0
"""Stands for the number of an added line that never was."""
Key = tuple[datetime, str]


@dataclass(frozen=True, slots=True)
class Turn:
    """An undo or a redo of a tale."""

    at: datetime
    who: str
    is_undo: bool

    @property
    def key(self) -> tuple[datetime, str, bool]:
        return (self.at, self.who, self.is_undo)


@dataclass(frozen=True, slots=True)
class Tale:
    at: datetime
    who: str
    digest: str
    """Of time, name and bodies."""
    bodies: tuple[Body, ...]
    """As they stood in their record; an id of an added line in them goes by ``lines``."""
    lines: Mapping[str, str]
    """By the number in an id of an added line, the digest of the tale that added it."""
    turns: tuple[Turn, ...] = ()
    """In the order of their keys."""

    @property
    def key(self) -> Key:
        return (self.at, self.digest)

    @property
    def is_live(self) -> bool:
        """Whether it counts: it was not taken back last."""
        return not (self.turns and self.turns[-1].is_undo)


def told(entries: Iterable[Entry]) -> dict[Key, Tale]:
    """The tales of a record by their keys, in order. Undos that had no effect are left out."""
    found = _Groups()
    for entry in entries:
        found.take(entry)
    tales: dict[Key, Tale] = {}
    digests: dict[int, str] = {}
    last: Key | None = None
    for group in found.groups:
        spoken_of = found.lines.get(group[0].id, {})
        lines = {number: digests[id_] for number, id_ in spoken_of.items()}
        tale = _tale(group, lines, last)
        tale = replace(tale, turns=_turns(found.turns.get(group[0].id, ()), tale.at))
        last = tale.key
        tales[last] = tale
        digests[group[0].id] = tale.digest
    return tales


def entries_of(tales: Iterable[Tale]) -> tuple[Entry, ...]:
    """A record that tells these tales: in the order of their keys, each with its turns beside it.

    So an undo stands where it takes back the entry before it, as in any other record.
    """
    ordered = sorted(tales, key=lambda tale: tale.key)
    numbers = _numbers(ordered)
    made: list[Entry] = []
    for tale in ordered:
        first = len(made) + 1
        for body in tale.bodies:
            _add(made, tale.at, tale.who, _restored(body, tale, numbers))
        last = len(made)
        for turn in tale.turns:
            body = Undone(entry=last) if turn.is_undo else Redone(entry=first)
            _add(made, turn.at, turn.who, body)
    return tuple(made)


def _add(made: list[Entry], at: datetime, who: str, body: Body) -> None:
    made.append(Entry(id=len(made) + 1, at=at, who=who, body=body))


@dataclass(slots=True)
class _Groups:
    """Entries sorted into what each key entered."""

    groups: list[list[Entry]] = field(default_factory=list)
    turns: dict[int, list[Entry]] = field(default_factory=dict)
    """By the first entry's id of a group, the undos and redos of it."""
    lines: dict[int, dict[str, int]] = field(default_factory=dict)
    """Likewise, for each number of an added line that it speaks of, the entry that added it."""
    added: list[Entry] = field(default_factory=list)
    history: History = field(default_factory=History)
    first_of: dict[int, int] = field(default_factory=dict)

    def take(self, entry: Entry) -> None:
        match entry.body:
            case Undone(entry=target):
                self._turn(entry, target, self.history.kept)
            case Redone(entry=target):
                self._turn(entry, target, self.history.undone)
            case _:
                self._group(entry)
        self.history.take(entry)

    def _turn(self, entry: Entry, target: int, source: Sequence[Entry]) -> None:
        """Of what it takes back or brings back; beside its tale it may do again what was done."""
        has_effect = bool(source) and source[-1].id == target
        is_beside = bool(self.groups) and any(one.id == target for one in self.groups[-1])
        if has_effect or is_beside:
            self.turns.setdefault(self.first_of[target], []).append(entry)

    def _group(self, entry: Entry) -> None:
        batch = batch_of(entry)
        if batch and self.groups and batch_of(self.groups[-1][-1]) == batch:
            self.groups[-1].append(entry)
        else:
            self.groups.append([entry])
        first = self.first_of[entry.id] = self.groups[-1][0].id
        if isinstance(entry.body, ScopeAdded):
            self.added.append(entry)
        elif isinstance(entry.body, AboutItem):
            _, plus, number = entry.body.item_id.rpartition("+")
            if plus and number in (numbered := self._numbered()):
                self.lines[first] = {number: numbered[number]}

    def _numbered(self) -> dict[str, int]:
        """The entries of added lines by their numbers, as they stand now."""
        live = {entry.id for entry in (*self.history.kept, *self.history.fixed)}
        numbered: dict[str, int] = {}
        last = 0
        for entry in self.added:
            assert isinstance(entry.body, ScopeAdded)
            if entry.id in live:
                number = entry.body.number or last + 1
                last = max(last, number)
                numbered[str(number)] = entry.id
        for entry in self.added:
            assert isinstance(entry.body, ScopeAdded)
            if entry.body.number:
                numbered.setdefault(str(entry.body.number), entry.id)
        return numbered


def _tale(group: Sequence[Entry], lines: Mapping[str, str], last: Key | None) -> Tale:
    """The tale of a group, after the one with the key ``last``."""
    at = group[0].at.astimezone(UTC)
    who, bodies = group[0].who, tuple(entry.body for entry in group)
    if last is not None:
        at = max(at, last[0])
    digest = _digest(at, who, bodies, lines)
    if last is not None and (at, digest) <= last:
        at = last[0] + _TICK
        digest = _digest(at, who, bodies, lines)
    return Tale(at, who, digest, bodies, lines)


def _turns(entries: Sequence[Entry], after: datetime) -> tuple[Turn, ...]:
    turns: list[Turn] = []
    for entry in entries:
        at = max(entry.at.astimezone(UTC), turns[-1].at if turns else after)
        turn = Turn(at, entry.who, isinstance(entry.body, Undone))
        if turns and turn.key <= turns[-1].key:
            turn = replace(turn, at=at + _TICK)
        turns.append(turn)
    return tuple(turns)


def _digest(at: datetime, who: str, bodies: Iterable[Body], lines: Mapping[str, str]) -> str:
    told = [at.isoformat(timespec="microseconds"), who, [_content(body, lines) for body in bodies]]
    text = json.dumps(told, sort_keys=True, ensure_ascii=True)
    return hashlib.sha256(text.encode("ascii")).hexdigest()


def _content(body: Body, lines: Mapping[str, str]) -> dict[str, Any]:
    """What the body says, without what another record would number otherwise."""
    data = body.model_dump(mode="json")
    data.pop("batch", None)
    if isinstance(body, ScopeAdded):
        data.pop("number", None)
    if isinstance(body, AboutItem):
        stem, plus, number = body.item_id.rpartition("+")
        if plus:
            data["item_id"] = f"{stem}+{lines.get(number, _NOWHERE)}"
    return data


def _numbers(ordered: Sequence[Tale]) -> dict[str, int]:
    """The numbers of added lines by the digest of their tale; those taken back come last."""
    added = [tale for tale in ordered if isinstance(tale.bodies[0], ScopeAdded)]
    added.sort(key=lambda tale: not tale.is_live)
    return {tale.digest: number for number, tale in enumerate(added, start=1)}


def _restored(body: Body, tale: Tale, numbers: Mapping[str, int]) -> Body:
    """The body for a record in which added lines have these numbers."""
    if isinstance(body, ScopeAdded):
        return body.model_copy(update={"number": numbers[tale.digest]})
    if isinstance(body, AboutItem):
        stem, plus, number = body.item_id.rpartition("+")
        if plus:
            now = numbers.get(tale.lines.get(number, ""), _NOWHERE)
            return body.model_copy(update={"item_id": f"{stem}+{now}"})
    if isinstance(body, AboutObservation) and body.batch:
        # Batches of two records may have been given the same mark.
        batch = tale.digest[:32] if len(tale.bodies) > 1 else ""
        return body.model_copy(update={"batch": batch})
    return body
