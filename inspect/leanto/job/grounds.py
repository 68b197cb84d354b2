"""Where a walk takes place: the building's stations and surfaces, and what occurs at each."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

from leanto.building.model import Building
from leanto.building.station import Station
from leanto.building.stations import stations_of
from leanto.building.surface import Surface
from leanto.building.surfaces import surfaces_by_id
from leanto.checklist.model import Checklist, Item, Measure
from leanto.rules.asking import occurring_at


@dataclass(frozen=True, slots=True)
class Grounds:
    """One building seen through one checklist."""

    building: Building
    stations: Mapping[str, Station]
    """By id, in walking order."""
    surfaces: Mapping[str, Surface]
    occurring: Mapping[str, tuple[Item, ...]]
    """The items that can be asked at each station, before any answer."""
    items: Mapping[str, Item]
    """Every item of the checklist."""
    measures: Mapping[str, Measure]

    @classmethod
    def of(cls, building: Building, checklist: Checklist) -> Grounds:
        stations = {station.id: station for station in stations_of(building)}
        return cls(
            building=building,
            stations=stations,
            surfaces=surfaces_by_id(building),
            occurring=occurring_at(building, checklist),
            items={item.id: item for item in checklist.items()},
            measures={measure.id: measure for measure in checklist.measures},
        )

    def surface_at(self, station_id: str) -> Surface | None:
        """The surface that the station faces; None at site, wiring and feed."""
        station = self.stations.get(station_id)
        return self.surfaces.get(station.surface_id or "") if station else None
