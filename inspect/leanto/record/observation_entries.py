"""The entries that make one observation say what another one says. Pure."""

from __future__ import annotations

from collections.abc import Iterator
from typing import TypedDict

from leanto.checklist.condition import Condition
from leanto.record.entry import (
    Answered,
    Body,
    DangerMarked,
    Measured,
    Noted,
    PhotoAdded,
    PhotoRemoved,
    Zoned,
)
from leanto.record.observation import Observation, ObservationKey
from leanto.record.walk import Walk

DAMAGE = (Condition.WORN, Condition.FAILED)
_MOST = 99


def kept_as(wanted: Observation, now: Observation) -> tuple[Body, ...]:
    """Makes ``now`` say what ``wanted`` says. Its photos stay, and a note that it alone has."""
    return (*_said(wanted, wanted.key), *_taken_back(wanted, now))


def notes_joined(a: Observation, b: Observation) -> tuple[Body, ...]:
    """One note that holds both."""
    notes = dict.fromkeys(note for note in (a.note, b.note) if note)
    return (Noted(**_about(a.key), text="\n".join(notes)),)


def kept_apart(a: Observation, b: Observation, both: Walk) -> tuple[Body, ...]:
    """Makes two observations of one: a's under its number, b's under the next free one."""
    key = _next_key(a.key, both)
    only_b = [photo for photo in b.photos if photo not in a.photos]
    return (
        *kept_as(a, both.observations[a.key]),
        *(PhotoRemoved(**_about(a.key), digest=photo.digest) for photo in only_b),
        *_said(b, key),
        *(
            PhotoAdded(
                **_about(key),
                digest=photo.digest,
                original_name=photo.original_name,
                taken_at=photo.taken_at,
            )
            for photo in only_b
        ),
    )


def _said(seen: Observation, key: ObservationKey) -> Iterator[Body]:
    about = _about(key)
    if seen.condition is not None:
        yield Answered(**about, condition=seen.condition, reason=seen.reason)
    for measure, value in seen.measures.items():
        yield Measured(**about, measure=measure, value=value)
    if seen.zone is not None:
        zone = seen.zone
        yield Zoned(
            **about,
            left_ft=zone.left_ft,
            bottom_ft=zone.bottom_ft,
            width_ft=zone.width_ft,
            height_ft=zone.height_ft,
        )
    if seen.note:
        yield Noted(**about, text=seen.note)
    if seen.danger:
        yield DangerMarked(**about, on=True)


def _taken_back(wanted: Observation, now: Observation) -> Iterator[Body]:
    about = _about(now.key)
    for measure in now.measures:
        if measure not in wanted.measures:
            yield Measured(**about, measure=measure, value=None)
    if now.danger and not wanted.danger:
        yield DangerMarked(**about, on=False)


class _About(TypedDict):
    station: str
    item: str
    number: int


def _about(key: ObservationKey) -> _About:
    return {"station": key.station, "item": key.item, "number": key.number}


def _next_key(key: ObservationKey, both: Walk) -> ObservationKey:
    used = {
        one.number
        for one in both.observations
        if (one.station, one.item) == (key.station, key.item)
    }
    free = next(number for number in range(1, _MOST + 1) if number not in used)
    return ObservationKey(key.station, key.item, free)
