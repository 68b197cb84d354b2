"""A reckoning: one published computation with its verdict, numbers, reasons and sources."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import dataclass, field
from typing import Final

from leanto.record.observation import ObservationKey
from leanto.source import Source

Fact = float | bool | str

COUNTED: Final = "counted from the building"
"""The verdict of a take-off, which compares nothing."""
UNDECIDED: Final = "undecided"
"""Something that the computation needs is not known."""
TEST_FIRST: Final = "test first"
"""Something must be tested before it is disturbed."""
CLEARED: Final = "not suspect by the walk"
NOT_SUSPECT: Final = "not suspect by its year and kind"

CONFIRM_WIRING: Final = "For a licensed electrician and the local authority to confirm."
CONFIRM_FRAME: Final = (
    "For a structural engineer or the local building department to confirm. Local codes govern."
)
CONFIRM_ROOF: Final = "For the roofer to confirm on the roof. Local codes govern."
CONFIRM_PEST: Final = "For a licensed pest firm to confirm."
CONFIRM_WATER: Final = "For whoever traces and dries the water to confirm."
CONFIRM_HAZARD: Final = (
    "For a certified lead risk assessor and a licensed asbestos inspector to confirm."
)
CONFIRM_HAUL: Final = "For the hauler to confirm; every container has its own weight limit."
CONFIRM_HEAT: Final = (
    "For the heating contractor and the local building department to confirm. Local codes govern."
)


@dataclass(frozen=True, slots=True)
class Figure:
    """One number in words, such as ``Allowed span`` and ``9 ft 2 in.``"""

    label: str
    text: str


@dataclass(frozen=True, slots=True)
class Reckoning:
    """What one computation says about one place."""

    id: str
    """The computation and its place, such as ``floor@main.floor``."""
    title: str
    station_id: str
    """Where it is shown; its facts are known at the other stations of the block too."""
    verdict: str
    """In the words of the computation; never a promise."""
    figures: tuple[Figure, ...] = ()
    reasons: tuple[str, ...] = ()
    sources: tuple[str, ...] = ()
    confirm: str = ""
    """Who has to confirm it."""
    facts: Mapping[str, Fact] = field(default_factory=dict)
    """What rules may ask, by the name of the fact."""
    observation: ObservationKey | None = None
    """The answer that it is about; its facts are known for that answer alone."""
    asks: tuple[str, ...] = ()
    """What else has to be looked at, since no table answers it."""
    cautions: tuple[str, ...] = ()


def cited(*groups: Iterable[Source | str]) -> tuple[str, ...]:
    """Every source once, in words, in the order they were used."""
    return tuple(dict.fromkeys(str(source) for group in groups for source in group))
