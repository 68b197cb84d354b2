"""The four lengths that make a zone, asked one after the other and recorded together."""

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
from leanto.tui.fields import Field, Value, length_field


def zone_steps(job: Job, key: ObservationKey, surface: Surface) -> list[Step]:
    """From the left, up from the bottom, width, height."""
    zone = _Zone(job, key, surface)
    return [
        Step(zone.left_field, zone.keep_left, group="zone"),
        Step(zone.bottom_field, zone.keep_bottom, group="zone"),
        Step(zone.width_field, zone.keep_width, group="zone"),
        Step(zone.height_field, zone.keep_height, group="zone"),
    ]


@dataclass(frozen=True, slots=True)
class _Names:
    """What the four lengths are called on one kind of surface."""

    left: str
    bottom: str
    width: str = "Zone: how wide"
    height: str = "Zone: how high"


_PLAN = _Names(
    "Zone: from the west edge",
    "Zone: from the south edge",
    "Zone: how long, west to east",
    "Zone: how long, south to north",
)
_NAMES = {
    PlaceKind.WALL_OUTSIDE: _Names("Zone: from the left end", "Zone: above the floor line"),
    PlaceKind.WALL_INSIDE: _Names("Zone: from the left end", "Zone: above the floor"),
    PlaceKind.ROOF: _Names(
        "Zone: from the left end, seen from outside",
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
        self._left_ft = 0.0
        self._bottom_ft = 0.0
        self._width_ft = surface.width_ft

    def left_field(self) -> Field:
        before = self._before()
        size = f"{_ft(self._surface.width_ft)} wide, {_ft(self._surface.height_ft)} high"
        return length_field(
            self._names.left,
            before.left_ft if before else 0.0,
            self._surface.width_ft,
            f"{self._surface.name}: {size}. Four lengths make the zone; Escape leaves it out.",
        )

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

    def keep_left(self, value: Value) -> Sequence[Step]:
        self._left_ft = _below(float(value), self._surface.width_ft)
        return ()

    def keep_bottom(self, value: Value) -> Sequence[Step]:
        self._bottom_ft = _below(float(value), self._surface.height_ft)
        return ()

    def keep_width(self, value: Value) -> Sequence[Step]:
        self._width_ft = _above_zero(float(value))
        return ()

    def keep_height(self, value: Value) -> Sequence[Step]:
        height_ft = _above_zero(float(value))
        zone = Rectangle(self._left_ft, self._bottom_ft, self._width_ft, height_ft)
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
        return ()

    def _before(self) -> Rectangle | None:
        """The zone as it was entered earlier."""
        seen = self._job.walk.observations.get(self._key)
        return seen.zone if seen else None

    def _run_ft(self) -> float | None:
        """The length affected, when it was measured just before: the zone is as wide."""
        seen = self._job.walk.observations.get(self._key)
        run_ft = seen.measures.get("run_ft") if seen else None
        return run_ft if isinstance(run_ft, float) and run_ft > 0 else None


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
