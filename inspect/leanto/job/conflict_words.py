"""A conflict between two records in words: what it is about, and what each side says."""

from __future__ import annotations

from collections.abc import Mapping

from leanto.building.model import Building
from leanto.building.stations import stations_of
from leanto.building.surfaces import surfaces_of
from leanto.checklist.model import Item, Measure
from leanto.job.merging import Sides
from leanto.library import Library
from leanto.quantities import format_ft_in, shown
from leanto.record.conflict import Conflict, Side, subject_of
from leanto.record.entry import (
    AirMeasured,
    Body,
    BuildingSet,
    NoteToBidders,
    Overruled,
    ScopeAdded,
    ScopeMarked,
    ScopeQuantity,
)
from leanto.record.observation import Observation
from leanto.record.told import told
from leanto.reports.contents.measures import measured_in_words
from leanto.reports.contents.words import size_in_words


class ConflictWords:
    """Puts the conflicts of two jobs into words."""

    def __init__(self, sides: Sides, library: Library) -> None:
        self._items: Mapping[str, Item] = {item.id: item for item in library.checklist.items()}
        self._measures: Mapping[str, Measure] = {one.id: one for one in library.checklist.measures}
        building = sides.walk_a.building or sides.walk_b.building
        self._names = _names(building) if building else {}
        self._walks = {"a": sides.walk_a, "b": sides.walk_b}
        self._tales = {"a": told(sides.entries_a), "b": told(sides.entries_b)}

    def about(self, conflict: Conflict) -> str:
        """``Does the sill hold, Main room, north wall, outside``."""
        if conflict.key is not None:
            key = conflict.key
            item = self._items.get(key.item)
            number = f" (number {key.number})" if key.number > 1 else ""
            prompt = item.prompt if item else key.item
            return f"{prompt}{number}, {self._names.get(key.station, key.station)}"
        named = self._names.get(conflict.where, conflict.where)
        match conflict.about:
            case "building":
                return "The description of the building"
            case "air":
                return f"The air at {named}"
            case "gut or keep":
                return f"Gut or keep, {named}"
            case "scope":
                return f"Line {conflict.where.partition('+')[0]} of the scope"
            case "added line":
                return f"A line that both added: {conflict.where.strip()}"
            case "bid":
                return "An answer about a bid"
            case _:
                return named[:1].upper() + named[1:]

    def said(self, conflict: Conflict, side: Side) -> str:
        """What one side says, on one line."""
        if conflict.key is not None:
            seen = self._walks[side].observations.get(conflict.key)
            return self._observation(seen) if seen else "nothing"
        subject = (conflict.about, conflict.where)
        bodies = [
            body
            for tale in self._tales[side].values()
            if tale.is_live
            for body in tale.bodies
            if subject_of(body, tale) == subject
        ]
        last = {body.kind: body for body in bodies}
        return "; ".join(_body(body) for body in last.values())

    def _observation(self, seen: Observation) -> str:
        parts = [str(seen.condition) if seen.condition else "no answer"]
        if seen.reason:
            parts.append(seen.reason)
        parts += measured_in_words(seen.measures, self._measures)
        if seen.zone is not None:
            parts.append(f"zone {size_in_words(seen.zone)}")
        if seen.danger:
            parts.append("danger")
        if seen.note:
            parts.append(f"note “{' '.join(seen.note.split())}”")
        return "; ".join(parts)


def _names(building: Building) -> dict[str, str]:
    names = {surface.id: surface.name for surface in surfaces_of(building)}
    return names | {station.id: station.name for station in stations_of(building)}


def _body(body: Body) -> str:
    match body:
        case BuildingSet(building=building):
            blocks = ", ".join(
                f"{block.name} {format_ft_in(block.length)} × {format_ft_in(block.width)}"
                for block in building.blocks
            )
            return f"{building.name}, built {building.year_built}: {blocks}"
        case AirMeasured():
            return f"{shown().temperature(body.temp_f)}, {body.humidity_pct:g} %"
        case Overruled():
            return f"{body.course} ({body.reason})" if body.reason else body.course
        case ScopeMarked():
            return body.mark
        case ScopeQuantity():
            return "our quantity" if body.quantity is None else f"quantity {body.quantity:g}"
        case NoteToBidders():
            return f"note “{body.text}”"
        case ScopeAdded():
            return f"quantity {body.quantity:g}" + (f", note “{body.note}”" if body.note else "")
        case _:
            said = body.model_dump(mode="json", exclude={"kind", "lines", "rates", "digest"})
            return ", ".join(f"{name} {value}" for name, value in said.items() if value)[:200]
