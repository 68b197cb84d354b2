"""Two records of one job joined: every tale of both, once. Pure.

The union is commutative, associative and idempotent, and holds whatever either record holds; see
``leanto.record.told`` for how an entry is known again. What both sides changed is for
``leanto.record.conflict`` to find.
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import replace

from leanto.record.entry import Entry
from leanto.record.told import Key, Tale, entries_of, told


def merged(one: Iterable[Entry], other: Iterable[Entry]) -> tuple[Entry, ...]:
    """The entries of both in order of time, numbered anew; what either took back is taken back."""
    return entries_of(joined(told(one), told(other)).values())


def joined(one: Mapping[Key, Tale], other: Mapping[Key, Tale]) -> dict[Key, Tale]:
    """The tales of both; of one that both have, the undos and redos of both."""
    tales = dict(one)
    for key, tale in other.items():
        held = tales.get(key)
        if held is None:
            tales[key] = tale
            continue
        turns = {turn.key: turn for turn in (*held.turns, *tale.turns)}
        tales[key] = replace(held, turns=tuple(turns[at] for at in sorted(turns)))
    return tales
