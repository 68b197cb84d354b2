"""What two copies of a record say differently, and the entries that settle it. Pure.

Only what both changed since they parted, and changed differently, is a conflict: where one side
alone answered, measured or noted, its word stands. Every entry of both sides is kept whatever is
chosen; the choice is made of further entries.
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass
from typing import Literal

from leanto.record.agreed_entry import (
    BidAwarded,
    ChangeAsked,
    ChangeSettled,
    Opened,
    OpeningStruck,
    Paid,
    PaymentStruck,
)
from leanto.record.bid_entry import BidAnswered
from leanto.record.entry import (
    AboutItem,
    AboutObservation,
    AirMeasured,
    Answered,
    Body,
    BuildingSet,
    Entry,
    NoteToBidders,
    Overruled,
    ScopeAdded,
    ScopeMarked,
    ScopeQuantity,
)
from leanto.record.fold import fold
from leanto.record.merge import joined
from leanto.record.observation import ObservationKey
from leanto.record.observation_entries import DAMAGE, kept_apart, kept_as, notes_joined
from leanto.record.told import Key, Tale, entries_of, told
from leanto.record.walk import Walk

Side = Literal["a", "b"]
Choice = Literal["a", "b", "both"]
About = Literal[
    "building", "observation", "air", "gut or keep", "scope", "added line", "bid", "after bids"
]


@dataclass(frozen=True, slots=True)
class Conflict:
    """One thing that both sides say differently."""

    about: About
    where: str
    """The id of the place or thing: an observation's key, a station, a surface, a repair item."""
    key: ObservationKey | None = None
    later: Side = "b"
    """Whose word came last."""
    both: Literal["", "apart", "notes"] = ""
    """How both can be kept: as two damages, or with their notes joined; empty where they can't."""


def conflicts(one: Iterable[Entry], other: Iterable[Entry]) -> tuple[Conflict, ...]:
    """What ``one``, side a, and ``other``, side b, say differently, in a fixed order."""
    mine, theirs = told(one), told(other)
    changed = {
        "a": _changed(mine, theirs),
        "b": _changed(theirs, mine),
    }
    return tuple(
        conflict
        for name in sorted(changed["a"].keys() & changed["b"].keys())
        if (conflict := _conflict(name, changed["a"][name], changed["b"][name])) is not None
    )


@dataclass(slots=True)
class _Said:
    """What one side said about one thing since they parted."""

    bodies: list[Body]
    """In order, those that count and the other side has not."""
    last: Key


def _changed(
    mine: Mapping[Key, Tale], theirs: Mapping[Key, Tale]
) -> dict[tuple[About, str], _Said]:
    """By subject, what one side alone entered, or took back or brought back."""
    found: dict[tuple[About, str], _Said] = {}
    for key, tale in mine.items():
        if key in theirs and theirs[key].is_live == tale.is_live:
            continue
        for body in tale.bodies:
            name = subject_of(body, tale)
            if name is None:
                continue
            said = found.setdefault(name, _Said([], key))
            said.last = key
            if tale.is_live and key not in theirs:
                said.bodies.append(body)
    return {name: said for name, said in found.items() if said.bodies}


def subject_of(body: Body, tale: Tale | None = None) -> tuple[About, str] | None:
    """What the body is about, so that two about the same can differ; None where none can."""
    match body:
        case BuildingSet():
            return ("building", "building")
        case AboutObservation():
            return ("observation", str(ObservationKey(body.station, body.item, body.number)))
        case AirMeasured(station=station):
            return ("air", station)
        case Overruled(surface_id=surface_id):
            return ("gut or keep", surface_id)
        case AboutItem(item_id=item_id):
            stem, plus, number = item_id.rpartition("+")
            line = tale.lines.get(number, "") if tale and plus else ""
            return ("scope", f"{stem}+{line}" if line else item_id)
        case ScopeAdded():
            return ("added line", f"{body.work}@{body.surface_id or 'building'} {body.place}")
        case BidAnswered(digest=digest, field=field):
            return ("bid", f"{digest} {field}")
        case BidAwarded():
            return ("after bids", "the chosen bid")
        case Paid(number=number) | PaymentStruck(number=number):
            return ("after bids", f"payment {number}")
        case Opened(number=number) | OpeningStruck(number=number):
            return ("after bids", f"opening {number}")
        case ChangeAsked(number=number) | ChangeSettled(number=number):
            return ("after bids", f"change {number}")
        case _:
            return None


def _conflict(name: tuple[About, str], mine: _Said, theirs: _Said) -> Conflict | None:
    about, where = name
    ours, others = _parts(mine.bodies), _parts(theirs.bodies)
    differ = {
        part
        for part in ours.keys() & others.keys()
        if about == "added line" or _content(ours[part]) != _content(others[part])
    }
    if not differ:
        return None
    later: Side = "a" if mine.last > theirs.last else "b"
    first = mine.bodies[0]
    if not isinstance(first, AboutObservation):
        return Conflict(about, where, None, later, "apart" if about == "added line" else "")
    key = ObservationKey(first.station, first.item, first.number)
    both: Literal["", "apart", "notes"] = ""
    if differ == {"noted "}:
        both = "notes"
    elif _is_damage(ours) and _is_damage(others):
        both = "apart"
    return Conflict(about, where, key, later, both)


def _is_damage(parts: Mapping[str, Body]) -> bool:
    answered = parts.get("answered ")
    return isinstance(answered, Answered) and answered.condition in DAMAGE


def _parts(bodies: Iterable[Body]) -> dict[str, Body]:
    """The last word of each kind; a measure by its own name. Photos add up and never differ."""
    last: dict[str, Body] = {}
    for body in bodies:
        if body.kind in ("photo added", "photo removed"):
            continue
        last[f"{body.kind} {getattr(body, 'measure', '')}"] = body
    return last


def _content(body: Body) -> dict[str, object]:
    return body.model_dump(exclude={"batch", "item_id"})


def settled(
    conflict: Conflict, choice: Choice, a: Sequence[Entry], b: Sequence[Entry], both: Walk
) -> tuple[Body, ...]:
    """The entries that make the joined walk ``both`` say what was chosen.

    They are written even where it says so already: that it was settled is a fact of its own.
    """
    sides = {"a": a, "b": b}
    if conflict.key is not None:
        return _observation(conflict, conflict.key, choice, sides, both)
    if choice == "both":
        return ()
    tales = told(sides[choice])
    bodies = [
        body
        for tale in tales.values()
        if tale.is_live
        for body in tale.bodies
        if subject_of(body, tale) == (conflict.about, conflict.where)
    ]
    if conflict.about == "added line":
        return _struck(conflict, sides, choice)
    if conflict.about == "scope":
        return _scope(bodies, conflict, sides)
    return tuple(_parts(bodies).values())


def _observation(
    conflict: Conflict,
    key: ObservationKey,
    choice: Choice,
    sides: Mapping[str, Sequence[Entry]],
    both: Walk,
) -> tuple[Body, ...]:
    a, b = (fold(sides[side]).observations.get(key) for side in ("a", "b"))
    now = both.observations.get(key)
    if a is None or b is None or now is None:
        return ()
    if choice != "both":
        return kept_as(a if choice == "a" else b, now)
    return kept_apart(a, b, both) if conflict.both == "apart" else notes_joined(a, b)


def _scope(
    bodies: list[Body], conflict: Conflict, sides: Mapping[str, Sequence[Entry]]
) -> tuple[Body, ...]:
    """The last mark, quantity and note of one side, under the id that the line now has."""
    stem, plus, digest = conflict.where.rpartition("+")
    item_id = conflict.where
    if plus:
        numbers = _added_numbers(sides)
        item_id = f"{stem}+{numbers.get(digest, 0)}"
    kinds = (ScopeMarked, ScopeQuantity, NoteToBidders)
    return tuple(
        body.model_copy(update={"item_id": item_id})
        for body in _parts(bodies).values()
        if isinstance(body, kinds)
    )


def _struck(
    conflict: Conflict, sides: Mapping[str, Sequence[Entry]], choice: Side
) -> tuple[Body, ...]:
    """The line of the other side struck: an added line cannot be taken out of a record."""
    numbers = _added_numbers(sides)
    mine, theirs = (told(sides[side]) for side in (choice, "b" if choice == "a" else "a"))
    return tuple(
        ScopeMarked(item_id=f"{body.work}@{body.surface_id or 'building'}+{n}", mark="struck")
        for key, tale in theirs.items()
        if key not in mine and tale.is_live
        for body in tale.bodies
        if isinstance(body, ScopeAdded)
        and subject_of(body) == (conflict.about, conflict.where)
        and (n := numbers.get(tale.digest))
    )


def _added_numbers(sides: Mapping[str, Sequence[Entry]]) -> dict[str, int]:
    """The numbers of added lines in the joined record, by the digest of their tales."""
    tales = joined(told(sides["a"]), told(sides["b"]))
    return {
        tale.digest: body.number
        for tale in told(entries_of(tales.values())).values()
        for body in tale.bodies
        if isinstance(body, ScopeAdded) and body.number
    }
