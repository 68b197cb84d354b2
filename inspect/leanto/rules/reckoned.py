"""Facts that computations give, as they are known at a station and for an answer."""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence

from leanto.building.station import Station
from leanto.building.surface import Surface
from leanto.reckon.model import Fact, Reckoning
from leanto.record.observation import ObservationKey
from leanto.rules.terms import Value


def reckoned_at(
    station: Station, surfaces: Mapping[str, Surface], reckonings: Sequence[Reckoning]
) -> dict[str, Value]:
    """What is known at the station: of the whole building, its block, and the place itself.

    The nearer goes before the farther. Of several places equally far, such as two slopes of one
    roof, a fact is known where all agree; site, wiring and feed know what all blocks agree on.
    """
    shared = [one for one in reckonings if one.observation is None]
    surface = surfaces.get(station.surface_id or "")
    whole = [one for one in shared if one.station_id not in surfaces]
    rest = [one for one in shared if one.station_id in surfaces]
    block = [
        one for one in rest if surface is None or surfaces[one.station_id].block == surface.block
    ]
    here = [one for one in shared if one.station_id == station.id]
    return {**_agreed(whole), **_agreed(block), **_agreed(here)}


def reckoned_of(key: ObservationKey, reckonings: Iterable[Reckoning]) -> dict[str, Value]:
    """What was reckoned about one answer alone."""
    return _agreed([one for one in reckonings if one.observation == key])


def reckoned_by_answer(reckonings: Iterable[Reckoning]) -> dict[ObservationKey, dict[str, Value]]:
    """What was reckoned about each answer alone; answers without any are left out."""
    about: dict[ObservationKey, list[Reckoning]] = {}
    for one in reckonings:
        if one.observation is not None:
            about.setdefault(one.observation, []).append(one)
    return {key: _agreed(alone) for key, alone in about.items()}


def _agreed(reckonings: Sequence[Reckoning]) -> dict[str, Value]:
    known: dict[str, Fact] = {}
    differing: set[str] = set()
    for one in reckonings:
        for name, value in one.facts.items():
            if known.setdefault(name, value) != value:
                differing.add(name)
    return {
        name: value if isinstance(value, bool | str) else float(value)
        for name, value in known.items()
        if name not in differing
    }
