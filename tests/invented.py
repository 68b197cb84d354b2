"""The invented buildings with their walks, and every place where they stand: for tests of data."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import UTC, datetime, time
from functools import cache
from pathlib import Path

import leanto.demo
from leanto.assessment import Assessment, assess
from leanto.building.load import read_building
from leanto.building.model import Building
from leanto.demo.walk import DemoWalk, Picture, steps_of
from leanto.library import read_library
from leanto.record.entry import BuildingSet, Entry
from leanto.record.fold import fold
from leanto.record.walk import Walk
from leanto.yaml_input import read_model

JOBS = Path(__file__).parent / "jobs"
FOLDERS = {path.name: path for path in sorted(JOBS.iterdir()) if path.is_dir()} | {
    "demo": Path(leanto.demo.__file__).parent
}


@dataclass(frozen=True, slots=True)
class Invented:
    """One building and what was written down on its walk; pictures are left out."""

    building: Building
    written: DemoWalk
    walk: Walk


@cache
def invented(name: str) -> Invented:
    """The building and the walk in one of the ``FOLDERS``."""
    folder = FOLDERS[name]
    building = read_building(folder / "building.yaml")
    written = read_model(folder / "walk.yaml", DemoWalk)
    at = datetime.combine(written.date, time(12), tzinfo=UTC)
    bodies = [BuildingSet(building=building)]
    bodies += [step for step in steps_of(written) if not isinstance(step, Picture)]
    entries = [
        Entry(id=number, at=at, who=written.who, body=body)
        for number, body in enumerate(bodies, start=1)
    ]
    return Invented(building, written, fold(entries))


@cache
def assessed(name: str) -> Assessment:
    """What follows from the walk by the shipped library."""
    made = invented(name)
    return assess(made.building, made.walk, read_library(), made.written.date)
