"""A walk made to fit the building as it is now: facts may be put right after zones were entered."""

from __future__ import annotations

from dataclasses import dataclass, replace

from leanto.building.rectangle import Rectangle
from leanto.building.surface import Surface
from leanto.building.zones import ZoneError, check_zone
from leanto.job.acceptance import measure_fault
from leanto.job.grounds import Grounds
from leanto.job.probing import probe_fault
from leanto.reckon.section import PROBE
from leanto.record.observation import Observation, ObservationKey
from leanto.record.walk import Walk


@dataclass(frozen=True, slots=True)
class Fitted:
    """A walk that the building can hold, and a line for everything that had to give way."""

    walk: Walk
    notices: tuple[str, ...]


def fitted(walk: Walk, grounds: Grounds) -> Fitted:
    """The walk without answers at places or to items that are gone, its zones on their surfaces.

    The record keeps all of it: it counts again when the building or the checklist does.
    """
    notices: list[str] = []
    kept: dict[ObservationKey, Observation] = {}
    for key, seen in walk.observations.items():
        if key.station not in grounds.stations:
            notices.append(f"{key}: this place is no longer part of the building; left out.")
        elif key.item not in grounds.items:
            notices.append(f"{key}: this item is not in the checklists; left out.")
        else:
            kept[key] = _fitted(seen, grounds, notices)
    rulings = {
        surface_id: ruling
        for surface_id, ruling in walk.overrulings.items()
        if surface_id in grounds.surfaces and grounds.surfaces[surface_id].is_lined
    }
    notices += [
        f"{surface_id}: there is no lining here now; your gut-or-keep choice is left out."
        for surface_id in sorted(walk.overrulings.keys() - rulings.keys())
    ]
    return Fitted(replace(walk, observations=kept, overrulings=rulings), tuple(notices))


def _fitted(seen: Observation, grounds: Grounds, notices: list[str]) -> Observation:
    measures = {}
    for id_, value in seen.measures.items():
        measure = grounds.measures.get(id_)
        fault = measure_fault(measure, value) if measure else f"{id_}: no such measure now."
        if fault:
            notices.append(f"{seen.key}: {fault} Left out.")
        else:
            measures[id_] = value
    if fault := probe_fault(seen.key.station, seen.key.item, measures, grounds):
        notices.append(f"{seen.key}: {fault} Left out.")
        del measures[PROBE]
    surface = grounds.surface_at(seen.key.station)
    zone = seen.zone
    if zone is not None and surface is None:
        zone = None
    elif zone is not None and surface is not None:
        try:
            check_zone(zone, surface)
        except ZoneError as error:
            zone = _moved_in(zone, surface)
            notices.append(f"{seen.key}: {error.what} It is kept inside; measure it again.")
    return replace(seen, measures=measures, zone=zone)


def _moved_in(zone: Rectangle, surface: Surface) -> Rectangle:
    """The zone pushed into the surface's box, cut only where it is larger than that."""
    width_ft = min(zone.width_ft, surface.width_ft)
    height_ft = min(zone.height_ft, surface.height_ft)
    left_ft = min(max(zone.left_ft, 0.0), surface.width_ft - width_ft)
    bottom_ft = min(max(zone.bottom_ft, 0.0), surface.height_ft - height_ft)
    return Rectangle(left_ft, bottom_ft, width_ft, height_ft)
