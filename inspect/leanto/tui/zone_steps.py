"""Where on its surface something is: placed on the sketch, or typed as four lengths."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from leanto.building.kinds import PlaceKind
from leanto.building.rectangle import Rectangle
from leanto.building.surface import Surface
from leanto.errors import LeantoError
from leanto.job import Job
from leanto.quantities import format_ft_in
from leanto.record.entry import Zoned
from leanto.record.observation import ObservationKey
from leanto.tui.asking import Step
from leanto.tui.fields import AS_PLACED, Field, Value, length_field, placed_field
from leanto.tui.placer import Placer, stops_ft

_START_HEIGHT_FT = 2.0


def zone_steps(job: Job, key: ObservationKey, surface: Surface) -> list[Step]:
    """The place; when its left end is typed, then up from the bottom, width and height too."""
    zone = _Zone(job, key, surface)
    return [Step(zone.place_field, zone.keep_place, group="zone")]


@dataclass(frozen=True, slots=True)
class _Names:
    """What the four lengths are called on one kind of surface."""

    from_left: str
    bottom: str
    width: str = "Zone: how wide"
    height: str = "Zone: how high"


_PLAN = _Names(
    "from the west edge",
    "Zone: from the south edge",
    "Zone: how long, west to east",
    "Zone: how long, south to north",
)
_NAMES = {
    PlaceKind.WALL_OUTSIDE: _Names("from the left end", "Zone: above the floor line"),
    PlaceKind.WALL_INSIDE: _Names("from the left end", "Zone: above the floor"),
    PlaceKind.ROOF: _Names(
        "from the left end, seen from outside",
        "Zone: up the slope from the eave",
        height="Zone: how far up the slope",
    ),
    PlaceKind.CEILING: _PLAN,
    PlaceKind.FLOOR: _PLAN,
}


class _Zone:
    """A zone while it is typed: what was entered so far, and what is offered next."""

    def __init__(self, job: Job, key: ObservationKey, surface: Surface) -> None:
        self._job = job
        self._key = key
        self._surface = surface
        self._names = _NAMES[surface.kind]
        self._placer = Placer(surface, self._before() or self._likely())
        self._left_ft = 0.0
        self._bottom_ft = 0.0
        self._width_ft = surface.width_ft

    def place_field(self) -> Field:
        self._placer = Placer(self._surface, self._before() or self._likely())
        return placed_field(self._placer, self._names.from_left)

    def bottom_field(self) -> Field:
        before = self._before()
        offered = before.bottom_ft if before else 0.0
        return length_field(self._names.bottom, offered, self._surface.height_ft)

    def width_field(self) -> Field:
        before, rest = self._before(), self._surface.width_ft - self._left_ft
        offered = before.width_ft if before else self._run_ft() or rest
        return length_field(self._names.width, min(offered, rest), rest)

    def height_field(self) -> Field:
        before, rest = self._before(), self._surface.height_ft - self._bottom_ft
        offered = before.height_ft if before else rest
        return length_field(self._names.height, min(offered, rest), rest)

    def keep_place(self, value: Value) -> Sequence[Step]:
        if value == AS_PLACED:
            self._record(self._placer.zone)
            return ()
        self._left_ft = _below(float(value), self._surface.width_ft)
        return (
            Step(self.bottom_field, self.keep_bottom, group="zone"),
            Step(self.width_field, self.keep_width, group="zone"),
            Step(self.height_field, self.keep_height, group="zone"),
        )

    def keep_bottom(self, value: Value) -> Sequence[Step]:
        self._bottom_ft = _below(float(value), self._surface.height_ft)
        return ()

    def keep_width(self, value: Value) -> Sequence[Step]:
        self._width_ft = _above_zero(float(value))
        return ()

    def keep_height(self, value: Value) -> Sequence[Step]:
        height_ft = _above_zero(float(value))
        self._record(Rectangle(self._left_ft, self._bottom_ft, self._width_ft, height_ft))
        return ()

    def _record(self, zone: Rectangle) -> None:
        if zone != self._before():
            self._job.record(
                Zoned(
                    station=self._key.station,
                    item=self._key.item,
                    number=self._key.number,
                    left_ft=zone.left_ft,
                    bottom_ft=zone.bottom_ft,
                    width_ft=zone.width_ft,
                    height_ft=zone.height_ft,
                )
            )

    def _likely(self) -> Rectangle:
        """Where to start: as high up as this item's last zone elsewhere, as wide as measured."""
        surface, last = self._surface, self._last_elsewhere()
        width_ft = min(self._run_ft() or _first_bay_ft(surface), surface.width_ft)
        bottom_ft = min(last.bottom_ft, surface.height_ft / 2) if last else 0.0
        height_ft = last.height_ft if last else _START_HEIGHT_FT
        return Rectangle(0.0, bottom_ft, width_ft, min(height_ft, surface.height_ft - bottom_ft))

    def _last_elsewhere(self) -> Rectangle | None:
        """The latest zone of this item on a surface of this kind."""
        grounds = self._job.grounds
        seen = [
            one
            for key, one in self._job.walk.observations.items()
            if key.item == self._key.item
            and one.zone is not None
            and (surface := grounds.surface_at(key.station)) is not None
            and surface.kind is self._surface.kind
        ]
        return max(seen, key=lambda one: one.entries[-1]).zone if seen else None

    def _before(self) -> Rectangle | None:
        """The zone as it was entered earlier."""
        seen = self._job.walk.observations.get(self._key)
        return seen.zone if seen else None

    def _run_ft(self) -> float | None:
        """The length affected, when it was measured just before: the zone is as wide."""
        seen = self._job.walk.observations.get(self._key)
        run_ft = seen.measures.get("run_ft") if seen else None
        return run_ft if isinstance(run_ft, float) and run_ft > 0 else None


def _first_bay_ft(surface: Surface) -> float:
    return stops_ft(surface, across=True)[1]


def _below(length_ft: float, whole_ft: float) -> float:
    if length_ft < whole_ft:
        return length_ft
    raise LeantoError(f"{_ft(length_ft)} lies past the end.", f"All of it is {_ft(whole_ft)}.")


def _above_zero(length_ft: float) -> float:
    if length_ft > 0:
        return length_ft
    raise LeantoError("A zone has some size.", "Type more than zero, or Escape for no zone.")


def _ft(length_ft: float) -> str:
    return format_ft_in(length_ft)
