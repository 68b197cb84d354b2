"""A small building, a walk put down answer by answer, and what is reckoned from it."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass, field
from datetime import date
from typing import Any

import pytest

from leanto.building.check import building_problems
from leanto.building.model import Building
from leanto.building.rectangle import Rectangle
from leanto.building.stations import stations_of
from leanto.building.surfaces import surfaces_of
from leanto.checklist.condition import Condition
from leanto.reckon.all import reckon
from leanto.reckon.model import Reckoning
from leanto.record.observation import Air, Observation, ObservationKey
from leanto.record.walk import Walk

MAIN: dict[str, Any] = {
    "id": "main",
    "name": "Main room",
    "length": 24,
    "width": 12,
    "eave_height": 8,
    "walls": {"member": "2x4", "spacing": "24 in", "full_size": True, "lining": "beaded board"},
    "roof": {
        "form": "gable",
        "pitch": "6:12",
        "overhang": 1,
        "member": "2x4",
        "spacing": "24 in",
        "full_size": True,
        "covering": "asphalt shingle",
    },
    "ceiling": {"member": "2x4", "spacing": "24 in", "full_size": True, "lining": "fiberboard"},
    "floor": {"member": "2x8", "spacing": "16 in", "clear_span": "9 ft"},
}
LEAN_TO: dict[str, Any] = {
    "id": "lean-to",
    "name": "Lean-to",
    "length": 12,
    "width": 6,
    "eave_height": 5,
    "roof": {
        "form": "shed",
        "pitch": "3:12",
        "high_side": "south",
        "covering": "corrugated steel",
    },
    "attached": {"to": "main", "side": "north", "offset": 6},
}


def merged(base: dict[str, Any], changes: dict[str, Any]) -> dict[str, Any]:
    """The base with what differs, mappings merged one level down."""
    together = dict(base)
    for key, value in changes.items():
        held = together.get(key)
        together[key] = (
            {**held, **value} if isinstance(held, dict) and isinstance(value, dict) else value
        )
    return together


@dataclass(slots=True)
class Case:
    """One building and its walk."""

    facts: dict[str, Any] = field(default_factory=dict)
    main: dict[str, Any] = field(default_factory=dict)
    lean_to: dict[str, Any] | None = None
    openings: list[dict[str, Any]] = field(default_factory=list)
    observations: dict[ObservationKey, Observation] = field(default_factory=dict)
    air: dict[str, Air] = field(default_factory=dict)

    @property
    def building(self) -> Building:
        blocks = [merged(MAIN, self.main)]
        if self.lean_to is not None:
            blocks.append(merged(LEAN_TO, self.lean_to))
        building = Building.model_validate(
            {
                "name": "A shed",
                "year_built": 1938,
                "blocks": blocks,
                "openings": self.openings,
                **self.facts,
            }
        )
        assert not building_problems(building)
        return building

    def answer(
        self,
        station: str,
        item: str,
        condition: str | None = "failed",
        zone: tuple[float, float, float, float] | None = None,
        number: int = 1,
        **measures: float | str,
    ) -> ObservationKey:
        key = ObservationKey(station, item, number)
        self.observations[key] = Observation(
            key,
            Condition(condition) if condition else None,
            measures=measures,
            zone=Rectangle(*zone) if zone else None,
        )
        return key

    def reckoned(self) -> dict[str, Reckoning]:
        """Everything by its id."""
        building = self.building
        walk = Walk(building=building, observations=dict(self.observations), air=self.air)
        surfaces = {surface.id: surface for surface in surfaces_of(building)}
        made = reckon(building, surfaces, stations_of(building), walk, date(2026, 6, 1))
        assert len({one.id for one in made}) == len(made)
        return {one.id: one for one in made}

    def one(self, id_: str) -> Reckoning:
        return self.reckoned()[id_]


def texts(one: Reckoning) -> dict[str, str]:
    """Its figures by their labels."""
    return {figure.label: figure.text for figure in one.figures}


@pytest.fixture
def case() -> Case:
    return Case()


@pytest.fixture
def figures() -> Callable[[Reckoning], dict[str, str]]:
    return texts
