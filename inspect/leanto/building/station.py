"""A station: one stop of the walk, a place where the walker stands."""

from __future__ import annotations

from dataclasses import dataclass

from leanto.building.kinds import PlaceKind


@dataclass(frozen=True, slots=True)
class Station:
    """One stop of the walk; it faces one surface, or none for site, wiring and feed."""

    id: str
    """The surface's id, or ``site``, ``wiring``, ``feed``."""
    name: str
    kind: PlaceKind
    surface_id: str | None
