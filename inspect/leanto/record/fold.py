"""Entries -> the walk as it stands now, and what undo and redo would take next. Pure."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import replace
from typing import Any

from leanto.building.model import Building
from leanto.building.rectangle import Rectangle
from leanto.record.entry import (
    AboutObservation,
    AirMeasured,
    Answered,
    BuildingSet,
    DangerMarked,
    Entry,
    Measured,
    MovedTo,
    Noted,
    Overruled,
    PhotoAdded,
    PhotoRemoved,
    Zoned,
)
from leanto.record.history import History
from leanto.record.observation import Air, Observation, ObservationKey, Overruling, Photo
from leanto.record.walk import Walk


def fold(entries: Iterable[Entry]) -> Walk:
    """The walk that the entries lead to, undone ones left out.

    Entries come in the order of their ids. An observation that holds nothing any more is none.
    """
    building: Building | None = None
    observations: dict[ObservationKey, Observation] = {}
    air: dict[str, Air] = {}
    overrulings: dict[str, Overruling] = {}
    stands = MovedTo(station="")
    for entry in History.of(entries).live:
        match entry.body:
            case BuildingSet() as body:
                building = body.building
            case AboutObservation() as body:
                key = ObservationKey(body.station, body.item, body.number)
                observations[key] = _changed(observations.get(key, Observation(key)), body, entry)
            case AirMeasured() as body:
                # The latest stands last: readers take the last one for a place without its own.
                air.pop(body.station, None)
                air[body.station] = Air(body.temp_f, body.humidity_pct)
            case Overruled(surface_id=surface_id, course="as computed"):
                overrulings.pop(surface_id, None)
            case Overruled(surface_id=surface_id) as body:
                overrulings[surface_id] = Overruling(surface_id, body.course, body.reason)
            case MovedTo() as body:
                stands = body
    return Walk(
        building=building,
        observations={key: seen for key, seen in observations.items() if _holds_something(seen)},
        air=air,
        overrulings=overrulings,
        station=stands.station,
        item=stands.item,
    )


def next_undo(entries: Iterable[Entry]) -> Entry | None:
    """The entry that undo would take back, or None."""
    kept = History.of(entries).kept
    return kept[-1] if kept else None


def next_redo(entries: Iterable[Entry]) -> Entry | None:
    """The entry that redo would bring back, or None."""
    undone = History.of(entries).undone
    return undone[-1] if undone else None


def _changed(before: Observation, body: AboutObservation, entry: Entry) -> Observation:
    """The observation after one more entry about it."""
    return replace(before, entries=(*before.entries, entry.id), **_changes(before, body))


def _changes(seen: Observation, body: AboutObservation) -> dict[str, Any]:
    """The fields that the entry sets anew.

    A new answer keeps the measures, zone, note and photos: who mistypes loses nothing.
    """
    match body:
        case Answered():
            return {"condition": body.condition, "reason": body.reason}
        case Measured(value=None):
            others = {id_: value for id_, value in seen.measures.items() if id_ != body.measure}
            return {"measures": others}
        case Measured():
            return {"measures": {**seen.measures, body.measure: body.value}}
        case Zoned():
            return {"zone": Rectangle(body.left_ft, body.bottom_ft, body.width_ft, body.height_ft)}
        case Noted():
            return {"note": body.text}
        case DangerMarked():
            return {"danger": body.on}
        case PhotoAdded() if all(photo.digest != body.digest for photo in seen.photos):
            photo = Photo(body.digest, body.original_name, body.taken_at)
            return {"photos": (*seen.photos, photo)}
        case PhotoRemoved():
            kept = tuple(photo for photo in seen.photos if photo.digest != body.digest)
            return {"photos": kept}
    return {}


def _holds_something(seen: Observation) -> bool:
    has_answer = seen.condition is not None
    return has_answer or bool(seen.measures or seen.zone or seen.note or seen.danger or seen.photos)
