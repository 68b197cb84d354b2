"""An observation: the answer to a checklist item at a station."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field
from datetime import datetime

from leanto.building.rectangle import Rectangle
from leanto.checklist.condition import Condition


@dataclass(frozen=True, slots=True, order=True)
class ObservationKey:
    """Which item, where, and which of several: two stains on one wall are number 1 and 2."""

    station: str
    item: str
    number: int = 1

    def __str__(self) -> str:
        return f"{self.station}/{self.item}#{self.number}"


@dataclass(frozen=True, slots=True)
class Photo:
    """A picture that was copied into the job folder."""

    digest: str
    """SHA-256 of the stored file, which is ``photos/<digest>.jpg``."""
    original_name: str
    taken_at: datetime | None = None


@dataclass(frozen=True, slots=True)
class Observation:
    """The present state of one answer."""

    key: ObservationKey
    condition: Condition | None = None
    """None while only a note, a photo or the danger mark was entered."""
    reason: str = ""
    """Why there was no access."""
    measures: dict[str, float | str] = field(default_factory=dict)
    """By measure id; lengths in the unit that the id ends with; yes/no as 1.0 or 0.0."""
    zone: Rectangle | None = None
    note: str = ""
    danger: bool = False
    photos: tuple[Photo, ...] = ()
    entries: tuple[int, ...] = field(default=(), compare=False)
    """Ids of the record's entries that made it so, oldest first; how it came about is not what
    it is, so observations are equal whatever these are."""


@dataclass(frozen=True, slots=True)
class Air:
    """Air temperature and relative humidity at a station."""

    temp_f: float
    humidity_pct: float


@dataclass(frozen=True, slots=True)
class Overruling:
    """The owner's own choice for a lined surface, with the reason for it."""

    surface_id: str
    course: str
    """``gut`` or ``keep``."""
    reason: str


def in_order(
    observations: Mapping[ObservationKey, Observation],
) -> tuple[tuple[ObservationKey, Observation], ...]:
    """The observations of a walk in the order of their keys."""
    return tuple(
        sorted(observations.items(), key=lambda one: (one[0].station, one[0].item, one[0].number))
    )
