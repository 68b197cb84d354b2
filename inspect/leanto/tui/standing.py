"""Where the walker stands, and where each key leads from there."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, replace

from leanto.building.station import Station
from leanto.checklist.model import Item
from leanto.job import Job
from leanto.record.observation import Observation, ObservationKey


@dataclass(frozen=True, slots=True)
class Standing:
    """A station, one of its items, and which of several observations of it."""

    station: str
    item: str = ""
    number: int = 1

    @property
    def key(self) -> ObservationKey:
        return ObservationKey(self.station, self.item, self.number)


def resumed(job: Job) -> Standing:
    """Where the walk was left, or its beginning."""
    walk = job.walk
    if walk.station in job.grounds.stations:
        return at_item(job, walk.station, walk.item)
    return at_station(job, job.stations[0].id)


def at_station(job: Job, station: str) -> Standing:
    """The first open item of the station, else its first item."""
    items, done = job.items_at(station), _answered(job)
    first = next((item for item in items if (station, item.id) not in done), None)
    first = first or next(iter(items), None)
    return Standing(station, first.id if first else "")


def at_item(job: Job, station: str, item: str, number: int = 1) -> Standing:
    """The item at the station; where it is not asked, as ``at_station``."""
    if any(asked.id == item for asked in job.items_at(station)):
        return Standing(station, item, number)
    return at_station(job, station)


def item_of(job: Job, standing: Standing) -> Item | None:
    return next((item for item in job.items_at(standing.station) if item.id == standing.item), None)


def observation_of(job: Job, standing: Standing) -> Observation | None:
    return job.walk.observations.get(standing.key)


def numbers_of(job: Job, standing: Standing) -> tuple[int, ...]:
    """The numbers of the item's observations here, with the one that is being made."""
    held = {
        key.number
        for key in job.walk.observations
        if (key.station, key.item) == (standing.station, standing.item)
    }
    return tuple(sorted(held | {1, standing.number}))


def another(job: Job, standing: Standing) -> Standing:
    """A further observation of the same item."""
    return replace(standing, number=max(numbers_of(job, standing)) + 1)


def next_number(job: Job, standing: Standing, by: int) -> Standing:
    numbers = numbers_of(job, standing)
    at = numbers.index(standing.number) + by
    return replace(standing, number=numbers[at]) if 0 <= at < len(numbers) else standing


def next_item(job: Job, standing: Standing, by: int) -> Standing:
    """The item ``by`` further at the same station; stays at the first and last."""
    ids = [item.id for item in job.items_at(standing.station)]
    if standing.item not in ids:
        return standing
    at = min(max(ids.index(standing.item) + by, 0), len(ids) - 1)
    return Standing(standing.station, ids[at]) if ids[at] != standing.item else standing


def next_station(job: Job, standing: Standing, by: int) -> Standing:
    """The station ``by`` further; stays at the first and last."""
    ids = [station.id for station in job.stations]
    at = min(max(ids.index(standing.station) + by, 0), len(ids) - 1)
    return at_station(job, ids[at]) if ids[at] != standing.station else standing


def next_open(job: Job, standing: Standing) -> Standing | None:
    """The next item without an answer: here, else further on, else from the start; or None."""
    done = _answered(job)
    for station, item in _from_here(job, standing):
        if (station.id, item.id) not in done:
            return Standing(station.id, item.id)
    return None


def _answered(job: Job) -> set[tuple[str, str]]:
    """Station and item of everything that has an answer."""
    seen = job.walk.observations.items()
    return {(key.station, key.item) for key, one in seen if one.condition is not None}


def _from_here(job: Job, standing: Standing) -> Iterator[tuple[Station, Item]]:
    """Every item once: this station's after the present one and before it, then the others'."""
    stations = list(job.stations)
    here = next(at for at, one in enumerate(stations) if one.id == standing.station)
    items = job.items_at(standing.station)
    present = next((at for at, item in enumerate(items) if item.id == standing.item), -1)
    for item in (*items[present + 1 :], *items[: present + 1]):
        yield stations[here], item
    for station in (*stations[here + 1 :], *stations[:here]):
        for item in job.items_at(station.id):
            yield station, item
