"""The invented walk as written in ``walk.yaml``, and the entries that it becomes."""

from __future__ import annotations

import datetime
from collections import Counter
from collections.abc import Iterator
from dataclasses import dataclass
from typing import Annotated, Literal

from pydantic import Field

from leanto.checklist.condition import Condition
from leanto.checklist.model import FactName, Identifier
from leanto.quantities import LengthFt, parse_length_ft
from leanto.record.entry import (
    AboutObservation,
    AirMeasured,
    Answered,
    Body,
    DangerMarked,
    HumidityPct,
    Measured,
    MovedTo,
    Noted,
    Reason,
    TempF,
    Zoned,
)
from leanto.record.observation import ObservationKey
from leanto.strict import Strict


class Zone(Strict):
    """Where it is on the surface, from the left and from the bottom."""

    left: LengthFt
    bottom: LengthFt
    width: LengthFt
    height: LengthFt


class Seen(Strict):
    """One observation."""

    item: Identifier
    condition: Condition
    reason: Reason = ""
    measures: dict[FactName, bool | float | str] = Field(default_factory=dict)
    """Numbers in the unit that the id ends with; lengths may be typed as people say them."""
    zone: Zone | None = None
    note: str = ""
    danger: bool = False
    pictures: tuple[str, ...] = ()


class AirAt(Strict):
    temp_f: TempF
    humidity_pct: HumidityPct


class Stop(Strict):
    """All that was seen at one station."""

    station: str
    air: AirAt | None = None
    seen: Annotated[tuple[Seen, ...], Field(min_length=1)]


class OpensAt(Strict):
    """Where the walk stands when somebody opens the demo."""

    station: str
    item: str


class DemoWalk(Strict):
    """``walk.yaml``."""

    invented: Literal[True]
    date: datetime.date
    who: str
    opens_at: OpensAt
    stops: Annotated[tuple[Stop, ...], Field(min_length=1)]


@dataclass(frozen=True, slots=True)
class Picture:
    """A picture to draw and to add to an observation."""

    key: ObservationKey
    name: str


def steps_of(walk: DemoWalk) -> Iterator[Body | Picture]:
    """What was entered, in order; several observations of one item are numbered from 1."""
    for stop in walk.stops:
        if stop.air is not None:
            yield AirMeasured(station=stop.station, **stop.air.model_dump())
        numbers: Counter[str] = Counter()
        for seen in stop.seen:
            numbers[seen.item] += 1
            yield from _steps(seen, stop.station, numbers[seen.item])
    yield MovedTo(station=walk.opens_at.station, item=walk.opens_at.item)


def _steps(seen: Seen, station: str, number: int) -> Iterator[Body | Picture]:
    key = ObservationKey(station, seen.item, number)
    about = AboutObservation(station=station, item=seen.item, number=number).model_dump()
    yield Answered(**about, condition=seen.condition, reason=seen.reason)
    for measure, typed in seen.measures.items():
        yield Measured(**about, measure=measure, value=measured(measure, typed))
    if seen.zone is not None:
        yield Zoned(
            **about,
            left_ft=seen.zone.left,
            bottom_ft=seen.zone.bottom,
            width_ft=seen.zone.width,
            height_ft=seen.zone.height,
        )
    if seen.note:
        yield Noted(**about, text=seen.note)
    if seen.danger:
        yield DangerMarked(**about, on=True)
    for name in seen.pictures:
        yield Picture(key, name)


def measured(measure: str, typed: bool | float | str) -> float | str:
    """The value as the record keeps it: ``run_ft: 12 ft`` is 12.0, true is 1.0, a choice itself."""
    if not isinstance(typed, str):
        return float(typed)
    below_zero = typed.startswith("-")
    if measure.endswith("_ft"):
        length = parse_length_ft(typed.lstrip("-"), default_unit="ft")
    elif measure.endswith("_in"):
        length = 12 * parse_length_ft(typed.lstrip("-"), default_unit="in")
    else:
        return typed
    return round(-length if below_zero else length, 6)
