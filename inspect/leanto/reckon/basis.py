"""What every computation reads: the building, its surfaces and stations, the walk, the day."""

from __future__ import annotations

from collections.abc import Collection, Iterator, Mapping
from dataclasses import dataclass
from datetime import date

from leanto.building.kinds import PlaceKind
from leanto.building.model import Block, Building
from leanto.building.station import Station
from leanto.building.surface import Surface
from leanto.checklist.condition import Condition
from leanto.record.observation import Observation, in_order
from leanto.record.walk import Walk

_NO_ANSWER = (None, Condition.NOT_THERE, Condition.NO_ACCESS)


@dataclass(frozen=True, slots=True)
class Basis:
    """One walk through one building, with what is looked up in it again and again."""

    building: Building
    surfaces: Mapping[str, Surface]
    stations: Mapping[str, Station]
    walk: Walk
    as_of: date
    answers: Mapping[str, tuple[Observation, ...]]
    """What was seen, by item, in the order of the keys; what was not there or could not be
    reached is left out."""

    @classmethod
    def of(
        cls,
        building: Building,
        surfaces: Mapping[str, Surface],
        stations: Mapping[str, Station],
        walk: Walk,
        as_of: date,
    ) -> Basis:
        """The walk with its answers sorted once."""
        answers: dict[str, list[Observation]] = {}
        for key, observation in in_order(walk.observations):
            if observation.condition not in _NO_ANSWER and key.station in stations:
                answers.setdefault(key.item, []).append(observation)
        by_item = {item: tuple(seen) for item, seen in answers.items()}
        return cls(building, surfaces, stations, walk, as_of, by_item)

    def block(self, block_id: str) -> Block:
        """The block of this id."""
        return next(block for block in self.building.blocks if block.id == block_id)

    def surface_at(self, station_id: str) -> Surface | None:
        """The surface that the station faces; None at a station without one, or gone."""
        station = self.stations.get(station_id)
        return self.surfaces.get(station.surface_id or "") if station else None

    def surfaces_in(self, block_id: str, *kinds: PlaceKind) -> Iterator[Surface]:
        """The surfaces of a block that are of these kinds."""
        for surface in self.surfaces.values():
            if surface.block == block_id and surface.kind in kinds:
                yield surface

    def seen(
        self,
        items: Collection[str] = (),
        *,
        block_id: str | None = None,
        station_id: str | None = None,
    ) -> Iterator[Observation]:
        """Answers item by item: of these items or of all, in this block, at this station."""
        for item in items or self.answers:
            for observation in self.answers.get(item, ()):
                station = observation.key.station
                if station_id is not None and station != station_id:
                    continue
                if block_id is not None:
                    surface = self.surface_at(station)
                    if surface is None or surface.block != block_id:
                        continue
                yield observation

    def floor_sqft(self) -> float:
        """All floors together."""
        return sum(s.net_area_sqft for s in self.surfaces.values() if s.kind is PlaceKind.FLOOR)


def number(observation: Observation, measure: str) -> float | None:
    """The measure as a number; None when it was not taken or is a word."""
    value = observation.measures.get(measure)
    return value if isinstance(value, float | int) and not isinstance(value, bool) else None


def word(observation: Observation, measure: str) -> str | None:
    """The measure as a word; None when it was not taken or is a number."""
    value = observation.measures.get(measure)
    return value if isinstance(value, str) else None


def is_yes(observation: Observation, measure: str) -> bool | None:
    """The measure as yes or no; None when it was not taken."""
    value = number(observation, measure)
    return None if value is None else value != 0


def is_bad(observation: Observation) -> bool:
    """True for an answer of worn or failed."""
    return observation.condition in (Condition.WORN, Condition.FAILED)
