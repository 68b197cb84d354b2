"""Which questions earlier answers have left without a point."""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence

from leanto.checklist.model import Item, PointlessAfter, Reach
from leanto.record.observation import Observation
from leanto.record.walk import Walk

Answers = Mapping[str, Mapping[str, Sequence[Observation]]]
"""Observations that have an answer, by item and then by station."""


def still_asked(occurring: Mapping[str, Sequence[Item]], walk: Walk) -> dict[str, tuple[Item, ...]]:
    """What is asked at each station: what occurs there, less what an earlier answer made pointless.

    ``occurring`` holds the items that ``items_at`` gives, by station. An item about which
    something was entered stays, so nothing entered is ever out of reach; the others come back as
    soon as the earlier answer is changed or taken back.
    """
    given = _answers(occurring, walk)
    touched = {(key.station, key.item) for key in walk.observations}
    return {
        station: tuple(
            item
            for item in items
            if (station, item.id) in touched
            or not any(
                _holds(after, station, occurring, given.get(after.item, {}))
                for after in item.pointless_after
            )
        )
        for station, items in occurring.items()
    }


def _answers(occurring: Mapping[str, Sequence[Item]], walk: Walk) -> Answers:
    named = {
        after.item for items in occurring.values() for i in items for after in i.pointless_after
    }
    given: dict[str, dict[str, list[Observation]]] = {}
    for key, one in walk.observations.items():
        if key.item in named and one.condition is not None:
            given.setdefault(key.item, {}).setdefault(key.station, []).append(one)
    return given


def _holds(
    after: PointlessAfter,
    station: str,
    occurring: Mapping[str, Sequence[Item]],
    given: Mapping[str, Sequence[Observation]],
) -> bool:
    if after.where is Reach.HERE:
        return _all_match(after, given.get(station, ()))
    if after.where is Reach.ANYWHERE:
        return any(_all_match(after, seen) for seen in given.values())
    asking = [place for place, items in occurring.items() if any(i.id == after.item for i in items)]
    return bool(asking) and all(_all_match(after, given.get(place, ())) for place in asking)


def _all_match(after: PointlessAfter, seen: Iterable[Observation]) -> bool:
    """Whether there is an answer, and each of several is one that leaves nothing to ask."""
    answered = [
        one.condition in after.answers
        and (not after.measure or one.measures.get(after.measure) in after.choices)
        for one in seen
    ]
    return bool(answered) and all(answered)
