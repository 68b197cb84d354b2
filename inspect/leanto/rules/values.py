"""The facts as they are for one observation: the one place that feeds the trade computations."""

from __future__ import annotations

from collections.abc import Mapping
from datetime import date

from leanto.building.kinds import PlaceKind
from leanto.building.model import Building
from leanto.building.station import Station
from leanto.building.surface import Surface
from leanto.checklist.condition import Condition
from leanto.record.observation import Air, Observation
from leanto.record.walk import Walk
from leanto.rules.facts import NO_VERDICT, FactSpec
from leanto.rules.functions import LIMIT
from leanto.rules.place_values import place_values
from leanto.rules.terms import Value
from leanto.trade.emc import emc_pct
from leanto.trade.moisture_meter import (
    METER_TEMP_F,
    CorrectedMoisture,
    corrected_moisture_pct,
)
from leanto.trade.moisture_verdict import moisture_verdict
from leanto.trade.section_loss import ProbeDepths, face_loss

UNKNOWN_WOOD = "other"
"""Row of the species table that leaves a meter reading as it is."""

_OUTSIDE = (PlaceKind.SITE, PlaceKind.WALL_OUTSIDE, PlaceKind.ROOF, PlaceKind.FEED)


def values_for(
    observation: Observation,
    station: Station,
    building: Building,
    surfaces: Mapping[str, Surface],
    stations: Mapping[str, Station],
    walk: Walk,
    facts: Mapping[str, FactSpec],
    as_of: date,
) -> dict[str, Value]:
    """Every fact that is known about the observation, by name; a missing one is left out."""
    here = station_values(station, building, surfaces, stations, walk, as_of)
    surface = surfaces.get(station.surface_id or "")
    return {**here, **observation_values(observation, surface, here, facts)}


def station_values(
    station: Station,
    building: Building,
    surfaces: Mapping[str, Surface],
    stations: Mapping[str, Station],
    walk: Walk,
    as_of: date,
) -> dict[str, Value]:
    """What every observation at the station shares: the place, the air, the day."""
    values = place_values(station, building, surfaces)
    values["building_age_years"] = float(max(0, as_of.year - building.year_built))
    air = _air_at(station, surfaces, stations, walk.air)
    if air is not None:
        values["air_temp_f"] = air.temp_f
        values["air_humidity_pct"] = air.humidity_pct
        settled_pct = _emc_pct(air)
        if settled_pct is not None:
            values["emc_pct"] = settled_pct
    return values


def observation_values(
    observation: Observation,
    surface: Surface | None,
    here: Mapping[str, Value],
    facts: Mapping[str, FactSpec],
) -> dict[str, Value]:
    """What one observation adds to the values of its station, ``here``."""
    condition = observation.condition
    values: dict[str, Value] = {
        "sound": condition is Condition.SOUND,
        "worn": condition is Condition.WORN,
        "failed": condition is Condition.FAILED,
        "no_access": condition is Condition.NO_ACCESS,
        "danger": observation.danger,
        "has_zone": observation.zone is not None,
    }
    values |= _zone(observation, surface)
    for name, entered in observation.measures.items():
        value = _typed(entered, facts.get(name))
        if value is not None:
            values[name] = value
    values |= _moisture(values, here)
    values |= _section_left(values, here)
    return values


def _zone(observation: Observation, surface: Surface | None) -> dict[str, Value]:
    zone = observation.zone
    if zone is not None:
        return {
            "zone_area_sqft": zone.area_sqft,
            "zone_width_ft": zone.width_ft,
            "zone_height_ft": zone.height_ft,
            "zone_bottom_ft": zone.bottom_ft,
            "zone_top_ft": zone.top_ft,
        }
    if surface is None:
        return {}
    return {
        "zone_area_sqft": surface.net_area_sqft,
        "zone_width_ft": surface.width_ft,
        "zone_height_ft": surface.height_ft,
        "zone_bottom_ft": 0.0,
        "zone_top_ft": surface.height_ft,
    }


def _typed(entered: float | str, spec: FactSpec | None) -> Value | None:
    """The measure as the kind of its fact; None when the checklist has changed under it."""
    if spec is None:
        return None
    if isinstance(entered, str):
        return entered if spec.kind == "text" and entered in spec.choices else None
    if spec.kind == "text" or not -LIMIT <= entered <= LIMIT:
        return None
    return float(entered) if spec.kind == "number" else entered != 0


def _air_at(
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


def _block_of(station: Station, surfaces: Mapping[str, Surface]) -> str | None:
    surface = surfaces.get(station.surface_id or "")
    return surface.block if surface else None


def _emc_pct(air: Air) -> float | None:
    try:
        return emc_pct(air.temp_f, air.humidity_pct)
    except ValueError:
        return None


def _moisture(values: Mapping[str, Value], here: Mapping[str, Value]) -> dict[str, Value]:
    """The facts that follow from the meter reading, as far as air or a dry spot are known."""
    temp_f, humidity_pct = _number(here, "air_temp_f"), _number(here, "air_humidity_pct")
    settled_pct = _number(here, "emc_pct")
    if settled_pct is None:
        temp_f = humidity_pct = None
    moisture = _corrected(_number(values, "moisture_pct"), temp_f)
    if moisture is None:
        return {}
    dry_spot = _corrected(_number(values, "dry_spot_moisture_pct"), temp_f)
    verdict = moisture_verdict(
        moisture, temp_f, humidity_pct, dry_spot.pct if dry_spot is not None else None
    )
    found: dict[str, Value] = {}
    if verdict.kind is not NO_VERDICT:
        found["moisture_verdict"] = verdict.kind.value
    if settled_pct is not None:
        found["moisture_over_air_pct"] = moisture.pct - settled_pct
    return found


def _corrected(reading_pct: float | None, temp_f: float | None) -> CorrectedMoisture | None:
    """The reading put right for the warmth of the wood, taken to be that of the air."""
    if reading_pct is None:
        return None
    try:
        warmth_f = METER_TEMP_F if temp_f is None else temp_f
        return corrected_moisture_pct(reading_pct, warmth_f, UNKNOWN_WOOD)
    except ValueError:
        return None


def _section_left(values: Mapping[str, Value], here: Mapping[str, Value]) -> dict[str, Value]:
    probe_in = _number(values, "probe_depth_in")
    breadth_in, depth_in = _number(here, "member_breadth_in"), _number(here, "member_depth_in")
    if probe_in is None or probe_in < 0 or breadth_in is None or depth_in is None:
        return {}
    loss = face_loss(breadth_in, depth_in, ProbeDepths(top_in=probe_in))
    return {"section_left_pct": loss.section_modulus_share * 100}


def _number(values: Mapping[str, Value], name: str) -> float | None:
    value = values.get(name)
    return value if isinstance(value, float) else None
