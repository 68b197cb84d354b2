"""A surface: one side of a wall, a roof slope, a ceiling, a floor."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal

from leanto.building.kinds import (
    Cladding,
    Covering,
    FloorKind,
    Insulation,
    Lining,
    OpeningKind,
    PlaceKind,
    Side,
)
from leanto.building.rectangle import Rectangle

Point = tuple[float, float]
"""Feet from the left and from the bottom, seen by somebody facing the surface."""


@dataclass(frozen=True, slots=True)
class PlacedOpening:
    """An opening in the coordinates of the surface it is seen on."""

    id: str
    kind: OpeningKind
    rectangle: Rectangle


@dataclass(frozen=True, slots=True)
class FramingGrid:
    """Where the framing members of a surface stand."""

    positions_ft: tuple[float, ...]
    """Member centers; from the left when they run up, from the bottom when they run across."""
    runs: Literal["up", "across"]
    spacing_ft: float
    member: str
    """Nominal size, such as ``2x4``."""
    full_size: bool
    """True when rough-sawn to the full nominal size."""


@dataclass(frozen=True, slots=True)
class Surface:
    """One surface with its outline, openings, framing and faces.

    Coordinates are feet from the left and the bottom, as somebody facing the surface sees it;
    a roof slope is faced from outside with the eave at the bottom, a floor or ceiling is a plan
    with west at the left and south at the bottom.
    """

    id: str
    """``main.north.outside``, ``main.north.inside``, ``main.roof.south``, ``main.ceiling``, ..."""
    name: str
    """``Main room, north wall, inside``."""
    block: str
    kind: PlaceKind
    side: Side | None
    outline: tuple[Point, ...]
    """Counterclockwise from the bottom left."""
    openings: tuple[PlacedOpening, ...]
    covered: tuple[Rectangle, ...]
    """Parts that another block hides; not part of the area."""
    grid: FramingGrid | None
    """None for a slab or dirt floor."""
    gross_area_sqft: float
    net_area_sqft: float
    """Gross, less openings and covered parts."""
    perimeter_ft: float
    width_ft: float
    height_ft: float
    lining: Lining | None = None
    cladding: Cladding | None = None
    covering: Covering | None = None
    insulation: Insulation | None = None
    floor_kind: FloorKind | None = None
    pitch_in_12: float | None = None
    meets: str | None = None
    """The outside wall that a lean-to's roof dies into, such as ``main.north.outside``."""

    @property
    def is_lined(self) -> bool:
        """True when a finish hides the framing: the surfaces that gut or keep is about."""
        return self.lining is not None and self.lining is not Lining.NONE
