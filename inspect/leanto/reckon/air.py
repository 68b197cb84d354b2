"""Which air was measured for a station, and what it says about wood."""

from __future__ import annotations

from collections.abc import Mapping

from leanto.building.kinds import PlaceKind
from leanto.building.station import Station
from leanto.building.surface import Surface
from leanto.record.observation import Air
from leanto.trade.emc import emc_pct

_OUTSIDE = (PlaceKind.SITE, PlaceKind.WALL_OUTSIDE, PlaceKind.ROOF, PlaceKind.FEED)


def air_at(
    station: Station,
    surfaces: Mapping[str, Surface],
    stations: Mapping[str, Station],
    airs: Mapping[str, Air],
) -> Air | None:
    """The air taken here; else the latest outdoors, or the latest inside the same block."""
    if station.id in airs:
        return airs[station.id]
    is_outside = station.kind in _OUTSIDE
    block = _block_of(station, surfaces)
    for station_id in reversed(list(airs)):
        other = stations.get(station_id)
        if other is None or (other.kind in _OUTSIDE) != is_outside:
            continue
        if is_outside or block in (None, _block_of(other, surfaces)):
            return airs[station_id]
    return None


def settled_pct(air: Air) -> float | None:
    """What wood settles at in this air, percent; None for air that the equation refuses."""
    try:
        return emc_pct(air.temp_f, air.humidity_pct)
    except ValueError:
        return None


def _block_of(station: Station, surfaces: Mapping[str, Surface]) -> str | None:
    surface = surfaces.get(station.surface_id or "")
    return surface.block if surface else None
