"""Every computation over one walk."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Iterator, Mapping
from datetime import date
from typing import Final

from leanto.building.model import Building
from leanto.building.station import Station
from leanto.building.surface import Surface
from leanto.reckon.basis import Basis
from leanto.reckon.ceiling import ceilings
from leanto.reckon.cuts import cuts
from leanto.reckon.debris import debris
from leanto.reckon.feed import feeds
from leanto.reckon.floor import floors
from leanto.reckon.hazards import hazards
from leanto.reckon.heat import heat
from leanto.reckon.model import Reckoning
from leanto.reckon.moisture import moisture
from leanto.reckon.pests import pests
from leanto.reckon.rafters import rafters
from leanto.reckon.roof import roofs
from leanto.reckon.section import section
from leanto.reckon.water import water
from leanto.record.walk import Walk

SUBJECTS: Final[tuple[Callable[[Basis], Iterator[Reckoning]], ...]] = (
    hazards,
    floors,
    ceilings,
    rafters,
    roofs,
    section,
    cuts,
    moisture,
    water,
    pests,
    feeds,
    heat,
    debris,
)


def reckon(
    building: Building,
    surfaces: Mapping[str, Surface],
    stations: Iterable[Station],
    walk: Walk,
    as_of: date,
) -> tuple[Reckoning, ...]:
    """Every reckoning of a walk, in the order of the subjects, each along the walk.

    ``as_of`` is the day of the walk. Pure: the same walk gives the same reckonings.
    """
    by_id = {station.id: station for station in stations}
    order = {station_id: index for index, station_id in enumerate(by_id)}
    basis = Basis.of(building, surfaces, by_id, walk, as_of)
    return tuple(
        one
        for subject in SUBJECTS
        for one in sorted(subject(basis), key=lambda one: order.get(one.station_id, len(order)))
    )
