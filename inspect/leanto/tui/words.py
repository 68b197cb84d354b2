"""Recorded values and entries as people say them."""

from __future__ import annotations

from leanto.building.rectangle import Rectangle
from leanto.checklist.model import Measure
from leanto.job import Job
from leanto.quantities import format_ft_in, plain_number, shown
from leanto.record.agreed_entry import BidAwarded, ChangeAsked, ChangeSettled, Opened, Paid
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
    NoteToBidders,
    Overruled,
    PhotoAdded,
    PhotoRemoved,
    ScopeAdded,
    ScopeMarked,
    ScopeQuantity,
    UnitsSet,
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
    number, unit = shown().measured(value, measure.unit)
    if unit:
        return f"{plain_number(number, 2 if measure.unit == 'sqft' else 1)} {unit}"
    return f"{value:.6g} {UNITS[measure.unit]}".rstrip()


def zone_in_words(zone: Rectangle) -> str:
    return (
        f"{format_ft_in(zone.width_ft)} wide x {format_ft_in(zone.height_ft)} high, "
        f"{format_ft_in(zone.left_ft)} from left, {format_ft_in(zone.bottom_ft)} up"
    )


def air_in_words(air: Air) -> str:
    return f"{shown().temperature(air.temp_f)}, {air.humidity_pct:g} % humidity"


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
        case ScopeMarked(mark=mark):
            return f'"{mark}" for {_line(body.item_id, job)}'
        case ScopeQuantity(quantity=quantity):
            own = "your own quantity" if quantity is not None else "the quantity by the walk"
            return f"{own} for {_line(body.item_id, job)}"
        case NoteToBidders():
            return f"the note to bidders for {_line(body.item_id, job)}"
        case ScopeAdded(work=work, surface_id=surface_id):
            return f"the added line {_line(f'{work}@{surface_id}', job)}"
        case BuildingSet():
            return "the facts of the building"
        case BidAdded(bidder=bidder):
            return f"the bid of {on_one_line(bidder)}"
        case BidsSent():
            return "the package for bidders"
        case BidAwarded(bidder=bidder):
            return f"the choice of {on_one_line(bidder)}"
        case Paid(number=count):
            return f"payment {count}"
        case Opened(number=count):
            return f"opening {count}"
        case ChangeAsked(number=count):
            return f"the request for change {count}"
        case ChangeSettled(number=count):
            return f"what was agreed on change {count}"
        case UnitsSet(system=system):
            return f"shown in {system}"
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


def _line(item_id: str, job: Job) -> str:
    """The work of a repair item and its surface, such as ``Mend the sill, Main room, floor``."""
    work_id, _, where = item_id.partition("@")
    work = job.library.works.get(work_id)
    surface = job.grounds.surfaces.get(where.partition("+")[0])
    named = work.title if work else work_id
    return on_one_line(f"{named}, {surface.name}" if surface else named)


def _place(station_id: str, job: Job) -> str:
    station = job.grounds.stations.get(station_id)
    return on_one_line(station.name) if station else station_id
