"""The facts as they are for one observation."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from datetime import date

from leanto.building.model import Building
from leanto.building.station import Station
from leanto.building.surface import Surface
from leanto.checklist.condition import Condition
from leanto.reckon.air import air_at, settled_pct
from leanto.reckon.model import Reckoning
from leanto.reckon.moisture import DRY_SPOT, READING, judged_reading
from leanto.record.observation import Air, Observation
from leanto.record.walk import Walk
from leanto.rules.facts import NO_VERDICT, FactSpec
from leanto.rules.functions import LIMIT
from leanto.rules.place_values import place_values
from leanto.rules.reckoned import reckoned_at, reckoned_of
from leanto.rules.terms import Value
from leanto.trade.section_loss import ProbeDepths, face_loss


def values_for(
    observation: Observation,
    station: Station,
    building: Building,
    surfaces: Mapping[str, Surface],
    stations: Mapping[str, Station],
    walk: Walk,
    facts: Mapping[str, FactSpec],
    as_of: date,
    reckonings: Sequence[Reckoning] = (),
) -> dict[str, Value]:
    """Every fact that is known about the observation, by name; a missing one is left out."""
    here = station_values(station, building, surfaces, stations, walk, as_of, reckonings)
    surface = surfaces.get(station.surface_id or "")
    own = observation_values(observation, surface, here, facts)
    return {**here, **own, **reckoned_of(observation.key, reckonings)}


def station_values(
    station: Station,
    building: Building,
    surfaces: Mapping[str, Surface],
    stations: Mapping[str, Station],
    walk: Walk,
    as_of: date,
    reckonings: Sequence[Reckoning] = (),
) -> dict[str, Value]:
    """What every observation at the station shares: the place, what was reckoned, air and day."""
    values = place_values(station, building, surfaces)
    values |= reckoned_at(station, surfaces, reckonings)
    values["building_age_years"] = float(max(0, as_of.year - building.year_built))
    air = air_at(station, surfaces, stations, walk.air)
    if air is not None:
        values["air_temp_f"] = air.temp_f
        values["air_humidity_pct"] = air.humidity_pct
        settled = settled_pct(air)
        if settled is not None:
            values["emc_pct"] = settled
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


def _moisture(values: Mapping[str, Value], here: Mapping[str, Value]) -> dict[str, Value]:
    """The facts that follow from the meter reading, as far as air or a dry spot are known."""
    temp_f, humidity_pct = _number(here, "air_temp_f"), _number(here, "air_humidity_pct")
    air = None if temp_f is None or humidity_pct is None else Air(temp_f, humidity_pct)
    verdict = judged_reading(_number(values, READING), _number(values, DRY_SPOT), air)
    if verdict is None:
        return {}
    found: dict[str, Value] = {}
    if verdict.kind is not NO_VERDICT:
        found["moisture_verdict"] = verdict.kind.value
    if verdict.emc_pct is not None:
        found["moisture_over_air_pct"] = verdict.corrected_pct - verdict.emc_pct
    return found


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
