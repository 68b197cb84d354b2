"""Where a picture belongs by the time it was taken: where the walker stood at that time."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass
from datetime import datetime, timedelta

from leanto.job.grounds import Grounds
from leanto.record.entry import (
    AboutObservation,
    Entry,
    MovedTo,
    PhotoAdded,
    PhotoRemoved,
)
from leanto.record.observation import ObservationKey

LONGEST_STAND = timedelta(hours=1)
"""A picture taken longer after the last sign of the walker belongs to no place of the walk."""
CLOCKS_DIFFER = timedelta(minutes=2)
"""A picture taken so much before the first sign still belongs there."""


@dataclass(frozen=True, slots=True)
class PhotoKey:
    """The item a picture belongs to."""

    taken_at: datetime | None
    """By the camera's clock; None when it does not say."""
    key: ObservationKey | None
    """None when the camera's time fits no place of the walk, or there is no time."""


def key_by_time(entries: Iterable[Entry], grounds: Grounds, taken_at: datetime | None) -> PhotoKey:
    """The item where the walker stood when the picture was taken.

    Cameras write local time without a zone; it is read in the zone of this machine.
    """
    if taken_at is None:
        return PhotoKey(None, None)
    local = taken_at.astimezone()
    last: tuple[datetime, ObservationKey] | None = None
    for entry in entries:
        key = _stood_at(entry)
        if key is None or (last is not None and entry.at > local):
            continue
        last = (entry.at, key)
    if last is None or not -CLOCKS_DIFFER <= local - last[0] <= LONGEST_STAND:
        return PhotoKey(taken_at, None)
    is_asked = any(item.id == last[1].item for item in grounds.occurring.get(last[1].station, ()))
    return PhotoKey(taken_at, last[1] if is_asked else None)


def _stood_at(entry: Entry) -> ObservationKey | None:
    """Where the entry says that the walker stands; pictures may have come from anywhere."""
    match entry.body:
        case PhotoAdded() | PhotoRemoved():
            return None
        case AboutObservation(station=station, item=item, number=number):
            return ObservationKey(station, item, number)
        case MovedTo(station=station, item=item):
            return ObservationKey(station, item)
    return None
