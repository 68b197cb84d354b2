"""How near two stations are: the same place, the other face, above, the same block, anywhere."""

from __future__ import annotations

import math
from collections.abc import Mapping
from dataclasses import dataclass, field
from enum import IntEnum
from functools import cached_property
from typing import Literal

from leanto.building.kinds import PlaceKind
from leanto.building.position import Box, box_of, drop_ft, horizontal_gap_ft, slope_gap_ft
from leanto.building.rectangle import Rectangle
from leanto.building.relations import above, beside, other_face
from leanto.building.station import Station
from leanto.building.surface import Surface

Boxes = dict[tuple[str, Rectangle], Box | None]
"""Where zones lie in their blocks, by station and zone, as they are found out."""
Pair = tuple[Rectangle | None, str, Rectangle | None]
"""A zone here, another station, and a zone there."""
_MOST_PAIRS = 20_000
Where = Literal["here", "above", "beside", "below", "anywhere"]

FAR_FT = 3.0
"""A cause farther off than this gives way to a nearer one. Common practice, no source."""
WICKED_FT = 1.0
"""How far above its cause water is still taken to rise, by splash and in the wood. Common
practice, no source."""


class Distance(IntEnum):
    """Nearer is less."""

    SAME = 0
    OTHER_FACE = 1
    ABOVE = 2
    BLOCK = 3
    ELSEWHERE = 4


class Reach(IntEnum):
    """How well one place explains another; better is less. Near is within ``FAR_FT``."""

    HERE = 0
    ABOVE = 1
    BESIDE = 2
    FAR_HERE = 3
    FAR_ABOVE = 4
    BLOCK = 5
    ELSEWHERE = 6


@dataclass(frozen=True, slots=True)
class Closeness:
    """From the place of an effect to that of a cause; sorted, the best explanation is first."""

    reach: Reach
    gap_ft: float | None
    """None when one of the two has no zone, or they stand in different blocks."""
    below_ft: float
    """How far the cause lies clear below the effect."""
    distance: Distance

    @property
    def order(self) -> tuple[int, int, int]:
        """Gaps count to the foot; a place without a zone stands behind one within a foot."""
        return self.reach, round(1.5 if self.gap_ft is None else self.gap_ft), self.distance


@dataclass(frozen=True)
class Neighbors:
    """The stations around one station, by id; site, wiring and feed have none but themselves."""

    station_id: str
    surface: Surface | None
    surfaces: Mapping[str, Surface]
    boxes: Boxes = field(default_factory=dict, compare=False, repr=False)
    _close: dict[Pair, Closeness] = field(default_factory=dict, compare=False, repr=False)
    """What was found out before: the same zones are compared after every answer."""

    @cached_property
    def faces(self) -> tuple[Surface, ...]:
        if self.surface is None:
            return ()
        back = other_face(self.surface, self.surfaces.values())
        return (self.surface,) if back is None else (self.surface, back)

    @cached_property
    def here(self) -> frozenset[str]:
        return frozenset({self.station_id, *(face.id for face in self.faces)})

    @cached_property
    def above(self) -> frozenset[str]:
        over = (s.id for face in self.faces for s in above(face, self.surfaces.values()))
        return frozenset(over)

    @cached_property
    def below(self) -> frozenset[str]:
        """What this surface lies above."""
        if self.surface is None:
            return frozenset()
        own, at_hand = self.surface.id, tuple(self.surfaces.values())
        return frozenset(
            under.id for under in at_hand if any(s.id == own for s in above(under, at_hand))
        )

    @cached_property
    def beside(self) -> frozenset[str]:
        """Any face of the same block, this one too."""
        if self.surface is None:
            return self.here
        return self.here | {s.id for s in beside(self.surface, self.surfaces.values())}

    def within(self, where: Where) -> frozenset[str] | None:
        """The ids of the stations that ``where`` means; None for all of them."""
        match where:
            case "here":
                return self.here
            case "above":
                return self.above
            case "beside":
                return self.beside
            case "below":
                return self.below
            case "anywhere":
                return None

    def distance(self, station_id: str) -> Distance:
        if station_id == self.station_id:
            return Distance.SAME
        if station_id in self.here:
            return Distance.OTHER_FACE
        if station_id in self.above:
            return Distance.ABOVE
        return Distance.BLOCK if station_id in self.beside else Distance.ELSEWHERE

    def closeness(
        self, zone: Rectangle | None, other_id: str, other_zone: Rectangle | None
    ) -> Closeness:
        """How close a zone of another station is to a zone of this one.

        Down a wall a gap counts half and down a roof nothing: that is the way the water takes.
        """
        pair = (zone, other_id, other_zone)
        close = self._close.get(pair)
        if close is None:
            if len(self._close) >= _MOST_PAIRS:
                self._close.clear()
            close = self._close[pair] = self._closeness(zone, other_id, other_zone)
        return close

    def _closeness(
        self, zone: Rectangle | None, other_id: str, other_zone: Rectangle | None
    ) -> Closeness:
        distance = self.distance(other_id)
        own, other = self.box(zone), self._box(other_id, other_zone)
        if own is None or other is None or own.block != other.block:
            return Closeness(_reach(distance, None, 0.0), None, 0.0, distance)
        level, below_ft = _level_gap_ft(self.surfaces[other_id], other, own), drop_ft(own, other)
        fall_ft = drop_ft(other, own) if distance in (Distance.SAME, Distance.OTHER_FACE) else 0.0
        gap = math.hypot(level, fall_ft / 2, below_ft)
        return Closeness(_reach(distance, gap, below_ft), gap, below_ft, distance)

    def covers(self, zone: Rectangle | None, other_id: str, other_zone: Rectangle | None) -> bool:
        """True when water that comes in here can wet that zone of a station below.

        As seen from above its middle must lie under this surface, and it must not be far from
        ``zone``. What cannot be compared passes.
        """
        if self.surface is None:
            return False
        whole = self.box(Rectangle(0.0, 0.0, self.surface.width_ft, self.surface.height_ft))
        other = self._box(other_id, other_zone)
        if whole is None or other is None or whole.block != other.block:
            return True
        east, north = other.middle
        is_under = (
            whole.east[0] <= east <= whole.east[1] and whole.north[0] <= north <= whole.north[1]
        )
        own = self.box(zone)
        return is_under and (own is None or _level_gap_ft(self.surface, own, other) <= FAR_FT)

    def box(self, zone: Rectangle | None) -> Box | None:
        return self._box(self.station_id, zone)

    def _box(self, station_id: str, zone: Rectangle | None) -> Box | None:
        surface = self.surfaces.get(station_id)
        if surface is None or zone is None:
            return None
        place = (station_id, zone)
        if place not in self.boxes:
            self.boxes[place] = box_of(zone, surface, self.surfaces)
        return self.boxes[place]


def _level_gap_ft(surface: Surface, cause: Box, effect: Box) -> float:
    """The gap as seen from above, from a cause on that surface."""
    if surface.kind is PlaceKind.ROOF and surface.side is not None:
        return slope_gap_ft(surface.side, cause, effect)
    return horizontal_gap_ft(cause, effect)


def _reach(distance: Distance, gap_ft: float | None, below_ft: float) -> Reach:
    far = gap_ft is not None and (gap_ft > FAR_FT or below_ft > WICKED_FT)
    match distance:
        case Distance.SAME | Distance.OTHER_FACE:
            return Reach.FAR_HERE if far else Reach.HERE
        case Distance.ABOVE:
            return Reach.FAR_ABOVE if far else Reach.ABOVE
        case Distance.BLOCK:
            return Reach.BLOCK if far or gap_ft is None else Reach.BESIDE
        case Distance.ELSEWHERE:
            return Reach.ELSEWHERE


def neighbors(
    station: Station, surfaces: Mapping[str, Surface], boxes: Boxes | None = None
) -> Neighbors:
    """What lies around the station; ``boxes`` is shared by all stations of one building."""
    surface = surfaces.get(station.surface_id or "")
    return Neighbors(station.id, surface, surfaces, {} if boxes is None else boxes)
