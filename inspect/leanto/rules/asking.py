"""Which items are asked at a station."""

from __future__ import annotations

from collections.abc import Mapping
from datetime import date
from functools import cache

from leanto.building.model import Building
from leanto.building.station import Station
from leanto.building.stations import stations_of
from leanto.building.surface import Surface
from leanto.building.surfaces import surfaces_by_id
from leanto.checklist.model import Checklist, Item
from leanto.reckon.all import reckon
from leanto.record.walk import Walk
from leanto.remembered import remembered
from leanto.rules.expression import CompiledExpression, ExpressionError, compile_expression
from leanto.rules.facts import RECKONED_FACTS, STATIC_FACTS
from leanto.rules.place_values import place_values
from leanto.rules.reckoned import reckoned_at
from leanto.rules.terms import Value
from leanto.rules.undecidable import Undecidable
from leanto.trade.tables import OwnTables, tables_in_use

_FACTS = {spec.name: spec for spec in STATIC_FACTS}
_RECKONED = frozenset(spec.name for spec in RECKONED_FACTS)


def occurring_at(building: Building, checklist: Checklist) -> Mapping[str, tuple[Item, ...]]:
    """What can be asked at each station, before any answer: ``items_at`` of all of them."""
    return _occurring_at(building, checklist, tables_in_use())


@remembered(4)
def _occurring_at(
    building: Building, checklist: Checklist, _: OwnTables
) -> Mapping[str, tuple[Item, ...]]:
    surfaces = surfaces_by_id(building)
    return {
        station.id: items_at(station, building, surfaces, checklist)
        for station in stations_of(building)
    }


def items_at(
    station: Station,
    building: Building,
    surfaces: Mapping[str, Surface],
    checklist: Checklist,
) -> tuple[Item, ...]:
    """The items asked at the station, in the order of the checklist.

    An item is left out where its ``only_if`` is false; where that cannot be told it is asked.
    """
    items = tuple(item for item in checklist.items() if station.kind in item.at)
    values = place_values(station, building, surfaces)
    if any(only_if(item.only_if).names & _RECKONED for item in items if item.only_if):
        values |= _reckoned_before(station, building, surfaces)

    def is_asked(item: Item) -> bool:
        if not item.only_if:
            return True
        try:
            return only_if(item.only_if).evaluate(values) is True
        except Undecidable:
            return True

    return tuple(item for item in items if is_asked(item))


def _reckoned_before(
    station: Station, building: Building, surfaces: Mapping[str, Surface]
) -> dict[str, Value]:
    """What the computations give before anything was observed."""
    nothing_seen = Walk(building=building)
    reckonings = reckon(building, surfaces, stations_of(building), nothing_seen, date.min)
    return reckoned_at(station, surfaces, reckonings)


@cache
def only_if(text: str) -> CompiledExpression:
    """The condition of an item, compiled once; ExpressionError when it is none.

    It may name only what is known before anything was observed.
    """
    compiled = compile_expression(text, _FACTS)
    for name in sorted(compiled.names):
        if not _FACTS[name].before_walk:
            raise ExpressionError(f"{name} is known only once something was observed")
    if compiled.kind != "flag":
        raise ExpressionError(f"a yes or no is needed; this is a {compiled.kind}")
    if compiled.calls:
        raise ExpressionError("what is asked cannot hang on findings; leave found_... out")
    return compiled
