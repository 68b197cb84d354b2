"""How near two stations are: the same place, the other face, above, the same block, anywhere."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from enum import IntEnum
from functools import cached_property
from typing import Literal

from leanto.building.relations import above, beside, other_face
from leanto.building.station import Station
from leanto.building.surface import Surface

Where = Literal["here", "above", "beside", "anywhere"]


class Distance(IntEnum):
    """Nearer is less."""

    SAME = 0
    OTHER_FACE = 1
    ABOVE = 2
    BLOCK = 3
    ELSEWHERE = 4


@dataclass(frozen=True)
class Neighbors:
    """The stations around one station, by id; site, wiring and feed have none but themselves."""

    station_id: str
    surface: Surface | None
    surfaces: Mapping[str, Surface]

    @cached_property
    def faces(self) -> tuple[Surface, ...]:
        if self.surface is None:
            return ()
        back = other_face(self.surface, self.surfaces.values())
        return (self.surface,) if back is None else (self.surface, back)

    @cached_property
    def here(self) -> frozenset[str]:
        return frozenset({self.station_id, *(face.id for face in self.faces)})

    @cached_property
    def above(self) -> frozenset[str]:
        over = (s.id for face in self.faces for s in above(face, self.surfaces.values()))
        return frozenset(over)

    @cached_property
    def beside(self) -> frozenset[str]:
        """Any face of the same block, this one too."""
        if self.surface is None:
            return self.here
        return self.here | {s.id for s in beside(self.surface, self.surfaces.values())}

    def within(self, where: Where) -> frozenset[str] | None:
        """The ids of the stations that ``where`` means; None for all of them."""
        match where:
            case "here":
                return self.here
            case "above":
                return self.above
            case "beside":
                return self.beside
            case "anywhere":
                return None

    def distance(self, station_id: str) -> Distance:
        if station_id == self.station_id:
            return Distance.SAME
        if station_id in self.here:
            return Distance.OTHER_FACE
        if station_id in self.above:
            return Distance.ABOVE
        return Distance.BLOCK if station_id in self.beside else Distance.ELSEWHERE


def neighbors(station: Station, surfaces: Mapping[str, Surface]) -> Neighbors:
    return Neighbors(station.id, surfaces.get(station.surface_id or ""), surfaces)
