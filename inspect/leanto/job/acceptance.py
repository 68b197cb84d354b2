"""What may be recorded: a body is held against the building and the checklist."""

from __future__ import annotations

from collections.abc import Iterable
from difflib import get_close_matches

from leanto.building.check import building_problems
from leanto.building.model import Building
from leanto.building.rectangle import Rectangle
from leanto.building.station import Station
from leanto.building.zones import check_zone
from leanto.checklist.model import Measure
from leanto.errors import InputProblems, LeantoError, Problem
from leanto.job.grounds import Grounds
from leanto.job.probing import probe_fault
from leanto.quantities import shown
from leanto.reckon.section import POST_SIZE, PROBE
from leanto.record.entry import (
    AboutObservation,
    AirMeasured,
    Body,
    Entry,
    Measured,
    MovedTo,
    ObservationBody,
    Overruled,
    Zoned,
)
from leanto.record.fold import folded_on
from leanto.record.observation import ObservationKey
from leanto.record.walk import Walk


def check_building(building: Building) -> None:
    """Nothing for a building that holds together; InputProblems with every fault otherwise."""
    problems = [
        Problem("building", 0, field, message) for field, message in building_problems(building)
    ]
    if problems:
        raise InputProblems(problems)


def check_body(body: Body, grounds: Grounds, walk: Walk | None = None) -> None:
    """Nothing for a body that fits the building and the checklist; LeantoError otherwise.

    ``walk`` holds the answers so far, which a measure may not contradict.
    """
    match body:
        case AboutObservation():
            check_about(body, grounds)
            if isinstance(body, Measured) and body.value is not None:
                _check_probe(body, body.value, grounds, walk)
        case AirMeasured(station=station):
            _station(station, grounds)
        case MovedTo(station=station, item=item):
            _station(station, grounds)
            if item and item not in grounds.items:
                raise _unknown("item", item, list(grounds.items))
        case Overruled(surface_id=surface_id):
            surface = grounds.surfaces.get(surface_id)
            if surface is None:
                raise _unknown("surface", surface_id, list(grounds.surfaces))
            if not surface.is_lined:
                raise LeantoError(f"{surface.name} has no lining to keep or to strip.")
            if body.course != "as computed" and not body.reason.strip():
                raise LeantoError("A choice of your own needs a reason.", "Type it in a few words.")


def check_together(bodies: Iterable[ObservationBody], grounds: Grounds, walk: Walk) -> None:
    """Nothing for facts that fit, each after those before it; LeantoError otherwise."""
    for body in bodies:
        check_body(body, grounds, walk)
        tried = Entry.model_construct(id=0, at=None, who="", body=body)
        walk = folded_on(walk, tried, ()) or walk


def measure_fault(measure: Measure, value: float | str) -> str:
    """Why the value can't be this measure's, in words; empty when it can."""
    if measure.unit == "choice":
        if value in measure.choices:
            return ""
        return f"{measure.label}: choose one of {', '.join(measure.choices)}."
    if isinstance(value, str):
        return f"{measure.label}: a number is needed."
    if measure.unit == "yes_no":
        return "" if value in (0.0, 1.0) else f"{measure.label}: yes or no is needed."
    if measure.unit == "count" and not value.is_integer():
        return f"{measure.label}: a whole number is needed."
    assert measure.low is not None and measure.high is not None
    if measure.low <= value <= measure.high:
        return ""
    low, high, given = (
        shown().measured(one, measure.unit)[0] for one in (measure.low, measure.high, value)
    )
    return f"{measure.label}: {low:.6g} to {high:.6g} is possible, not {given:.6g}."


def check_about(body: AboutObservation, grounds: Grounds) -> None:
    """Nothing for a fact about an item that is asked at its station; LeantoError otherwise."""
    station = _station(body.station, grounds)
    if all(item.id != body.item for item in grounds.occurring[station.id]):
        if body.item not in grounds.items:
            raise _unknown("item", body.item, list(grounds.items))
        raise LeantoError(
            f"The item {body.item} is not asked at {station.name}.", "Enter it where it is asked."
        )
    match body:
        case Measured(measure=measure_id, value=value):
            measure = grounds.measures.get(measure_id)
            if measure is None:
                raise _unknown("measure", measure_id, list(grounds.measures))
            if value is not None and (fault := measure_fault(measure, value)):
                raise LeantoError(fault)
        case Zoned():
            surface = grounds.surface_at(station.id)
            if surface is None:
                raise LeantoError(
                    f"{station.name} has no surface for a zone.", "Say where it is in a note."
                )
            check_zone(
                Rectangle(body.left_ft, body.bottom_ft, body.width_ft, body.height_ft), surface
            )


def _check_probe(body: Measured, value: float | str, grounds: Grounds, walk: Walk | None) -> None:
    key = ObservationKey(body.station, body.item, body.number)
    held = walk.observations.get(key) if walk else None
    measures = {**(held.measures if held else {}), body.measure: value}
    if body.measure in (PROBE, POST_SIZE) and (
        fault := probe_fault(body.station, body.item, measures, grounds)
    ):
        raise LeantoError(fault, "Measure again, or correct the size in the building.")


def _station(id_: str, grounds: Grounds) -> Station:
    if id_ not in grounds.stations:
        raise _unknown("station", id_, list(grounds.stations))
    return grounds.stations[id_]


def _unknown(noun: str, word: str, known: list[str]) -> LeantoError:
    near = get_close_matches(word, known, n=1)
    remedy = f'Did you mean "{near[0]}"?' if near else ""
    return LeantoError(f'There is no {noun} "{word}" in this job.', remedy)
