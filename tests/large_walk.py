"""A job with as many observations as a test wants, written into its record in one go."""

from __future__ import annotations

from datetime import UTC, datetime
from itertools import cycle, islice
from pathlib import Path

from leanto.building.model import Building
from leanto.building.stations import stations_of
from leanto.building.surfaces import surfaces_of
from leanto.checklist.condition import Condition
from leanto.checklist.model import Checklist
from leanto.job.folder import make_folder
from leanto.record.entry import Answered, Body, BuildingSet, Entry
from leanto.record.store import Store
from leanto.rules.asking import items_at

AT = datetime(2026, 6, 1, 9, 0, tzinfo=UTC)
_CONDITIONS = (Condition.SOUND, Condition.WORN, Condition.SOUND, Condition.FAILED)


def large_job(folder: Path, building: Building, checklist: Checklist, observations: int) -> Path:
    """The folder of a job with so many answers: every item once, then each once more ..."""
    surfaces = {surface.id: surface for surface in surfaces_of(building)}
    asked = [
        (station.id, item.id)
        for station in stations_of(building)
        for item in items_at(station, building, surfaces, checklist)
    ]
    answers = (
        Answered(station=station, item=item, number=number, condition=condition)
        for ((number, (station, item)), condition) in zip(
            ((1 + at // len(asked), one) for at, one in enumerate(cycle(asked))),
            cycle(_CONDITIONS),
            strict=False,
        )
    )
    bodies: list[Body] = [BuildingSet(building=building), *islice(answers, observations)]
    entries = [Entry(id=at, at=AT, who="walker", body=body) for at, body in enumerate(bodies, 1)]
    places = make_folder(folder)
    Store.create(places.record, entries).close()
    return folder
