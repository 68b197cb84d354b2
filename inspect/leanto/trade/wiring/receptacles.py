"""Receptacles for the use of a building, and the protection they call for."""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass
from enum import StrEnum

from leanto.source import COMMON_PRACTICE, Source
from leanto.trade.wiring.confirm import CONFIRM, code
from leanto.trade.wiring.load import use_row, use_table

LEAST_SOURCE = code(
    "210.52(G)(1), one in each powered accessory building and each vehicle bay", edition="2017"
)
SPACING_SOURCE = code("210.52(A), habitable rooms of a dwelling", from_memory=True)
GFCI_SOURCE = code("210.8(A)(2), garages and accessory buildings with a floor at or below grade")
GFCI_OUTDOOR_SOURCE = code("210.8(A)(3), outdoors")
AFCI_SOURCE = code("210.12(A), rooms of a dwelling unit", from_memory=True)
ANIMALS_SOURCE = code("Article 547, agricultural buildings", from_memory=True)
SPACE_FROM_FT = 2.0
"""A habitable wall space from this width counts for spacing."""
REACH_FT = 6.0
"""No point along a habitable wall is farther than this from a receptacle."""


class Call(StrEnum):
    """How strongly a protection is called for."""

    CODE = "called for by the code"
    ADVISED = "advised"
    ASK = "ask an electrician"


@dataclass(frozen=True, slots=True)
class Protection:
    """A protective device and why it is wanted."""

    device: str
    """``GFCI`` or ``AFCI``."""
    call: Call
    reason: str
    source: Source


@dataclass(frozen=True, slots=True)
class ReceptaclePlan:
    """How many receptacles, and how they are protected."""

    least: int
    """The least the code asks for; 0 without power."""
    least_source: Source
    planned: int
    """What suits the use; at least ``least``."""
    planned_source: Source
    protections: tuple[Protection, ...]
    confirm: str = CONFIRM


def by_spacing(wall_spaces_ft: Sequence[float]) -> int:
    """Receptacles for habitable wall spaces: one to each 12 ft begun, from 2 ft of width.

    A space is unbroken by doors. Source: 210.52(A).
    """
    if any(not math.isfinite(width) or width < 0 for width in wall_spaces_ft):
        raise ValueError(f"widths are zero or more: {wall_spaces_ft}")
    counted = (width for width in wall_spaces_ft if width >= SPACE_FROM_FT)
    return sum(math.ceil(width / (2 * REACH_FT) - 1e-9) for width in counted)


def plan_receptacles(
    use: str,
    wall_spaces_ft: Sequence[float],
    *,
    vehicle_bays: int = 0,
    has_power: bool = True,
    floor_at_or_below_grade: bool | None = None,
    has_outdoor_receptacle: bool = False,
) -> ReceptaclePlan:
    """Receptacles for a detached building of a house, by its use.

    ``wall_spaces_ft``: lengths of wall unbroken by doors. Without power none is required and
    none planned. ``floor_at_or_below_grade`` None means nobody has looked. ValueError for an
    unknown use.
    """
    row = use_row(use)
    if not has_power:
        return ReceptaclePlan(0, LEAST_SOURCE, 0, LEAST_SOURCE, ())
    if row.is_habitable:
        least, least_source = max(1, by_spacing(wall_spaces_ft)), SPACING_SOURCE
    else:
        least, least_source = max(1, vehicle_bays), LEAST_SOURCE
    planned, planned_source = least, least_source
    if row.receptacle_every_ft > 0 and not row.is_habitable:
        along_walls = math.ceil(sum(wall_spaces_ft) / row.receptacle_every_ft - 1e-9)
        if along_walls > least:
            planned, planned_source = along_walls, use_table().source
    protections = protections_for(
        use,
        floor_at_or_below_grade=floor_at_or_below_grade,
        has_outdoor_receptacle=has_outdoor_receptacle,
    )
    return ReceptaclePlan(least, least_source, planned, planned_source, protections)


def protections_for(
    use: str, *, floor_at_or_below_grade: bool | None, has_outdoor_receptacle: bool = False
) -> tuple[Protection, ...]:
    """The ground-fault and arc-fault protection a use calls for."""
    protections = []
    if use_row(use).is_habitable:
        protections.append(
            Protection(
                "AFCI",
                Call.ASK,
                "Living space brings the rules for rooms of a dwelling; their list is local.",
                AFCI_SOURCE,
            )
        )
        protections.append(
            Protection(
                "GFCI",
                Call.ASK,
                "Kitchen, bath, laundry and outdoor receptacles have rules of their own.",
                GFCI_SOURCE,
            )
        )
    else:
        protections.append(_accessory_gfci(floor_at_or_below_grade))
    if use == "animals":
        protections.append(
            Protection(
                "GFCI",
                Call.ASK,
                "Dust, damp and animals bring rules of their own for the wiring and its bonding.",
                ANIMALS_SOURCE,
            )
        )
    if has_outdoor_receptacle:
        protections.append(
            Protection("GFCI", Call.CODE, "Every outdoor receptacle.", GFCI_OUTDOOR_SOURCE)
        )
    return tuple(protections)


def _accessory_gfci(floor_at_or_below_grade: bool | None) -> Protection:
    if floor_at_or_below_grade is None:
        return Protection(
            "GFCI",
            Call.ASK,
            "The floor's level is not recorded. Plan on protecting every receptacle.",
            GFCI_SOURCE,
        )
    if floor_at_or_below_grade:
        return Protection(
            "GFCI", Call.CODE, "Every receptacle; the floor is at or below grade.", GFCI_SOURCE
        )
    return Protection(
        "GFCI",
        Call.ADVISED,
        "Every receptacle. A raised floor stands outside the wording, and the hazard remains.",
        COMMON_PRACTICE,
    )
