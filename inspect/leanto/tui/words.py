"""Recorded values and entries as people say them."""

from __future__ import annotations

from leanto.building.rectangle import Rectangle
from leanto.checklist.model import Measure
from leanto.job import Job
from leanto.quantities import format_ft_in
from leanto.record.bid_entry import BidAdded, BidsSent
from leanto.record.entry import (
    AboutObservation,
    AirMeasured,
    Answered,
    BuildingSet,
    DangerMarked,
    Entry,
    Measured,
    Noted,
    Overruled,
    PhotoAdded,
    PhotoRemoved,
    Zoned,
)
from leanto.record.observation import Air
from leanto.tui.shown import on_one_line

UNITS = {
    "pct": "%",
    "in": "in",
    "ft": "ft",
    "sqft": "sq ft",
    "count": "",
    "deg_f": "F",
    "years": "years",
    "amp": "A",
    "awg": "AWG",
    "hours": "hours",
    "days": "days",
}


def value_in_words(measure: Measure, value: float | str) -> str:
    """The value with its unit, in a form that can be typed again."""
    if isinstance(value, str):
        return value
    if measure.unit == "yes_no":
        return "yes" if value else "no"
    if measure.unit == "ft":
        return format_ft_in(value)
    return f"{value:.6g} {UNITS[measure.unit]}".rstrip()


def zone_in_words(zone: Rectangle) -> str:
    return (
        f"{format_ft_in(zone.width_ft)} wide x {format_ft_in(zone.height_ft)} high, "
        f"{format_ft_in(zone.left_ft)} from left, {format_ft_in(zone.bottom_ft)} up"
    )


def air_in_words(air: Air) -> str:
    return f"{air.temp_f:g} F, {air.humidity_pct:g} % humidity"


def entry_in_words(entry: Entry, job: Job) -> str:
    """What an entry said and where, such as ``failed at "Sill", Main room, north wall``."""
    body = entry.body
    match body:
        case AboutObservation():
            item = job.grounds.items.get(body.item)
            prompt = on_one_line(item.prompt) if item else body.item
            number = f" (number {body.number})" if body.number > 1 else ""
            return f'{_about(body, job)} at "{prompt}"{number}, {_place(body.station, job)}'
        case AirMeasured():
            said = air_in_words(Air(body.temp_f, body.humidity_pct))
            return f"the air at {_place(body.station, job)}: {said}"
        case Overruled():
            surface = job.grounds.surfaces.get(body.surface_id)
            return f'"{body.course}" for {surface.name if surface else body.surface_id}'
        case BuildingSet():
            return "the facts of the building"
        case BidAdded(bidder=bidder):
            return f"the bid of {on_one_line(bidder)}"
        case BidsSent():
            return "the package for bidders"
        case _:
            return body.kind


def _about(body: AboutObservation, job: Job) -> str:
    match body:
        case Answered(reason=reason):
            return f"{body.condition} ({on_one_line(reason)})" if reason else str(body.condition)
        case Measured(measure=measure_id, value=value):
            measure = job.grounds.measures.get(measure_id)
            label = measure.label if measure else measure_id
            if value is None or measure is None:
                return label
            return f"{label} {value_in_words(measure, value)}"
        case Zoned():
            zone = Rectangle(body.left_ft, body.bottom_ft, body.width_ft, body.height_ft)
            return f"the zone {zone_in_words(zone)}"
        case Noted():
            return "the note"
        case DangerMarked(on=on):
            return "the danger mark" if on else "danger taken off"
        case PhotoAdded(original_name=name):
            return f"the photo {on_one_line(name)}"
        case PhotoRemoved():
            return "a photo taken out"
        case _:
            return "an entry"


def _place(station_id: str, job: Job) -> str:
    station = job.grounds.stations.get(station_id)
    return on_one_line(station.name) if station else station_id
