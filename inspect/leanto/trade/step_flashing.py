"""Flashing where a roof meets a wall, a flue or a skylight."""

from __future__ import annotations

from dataclasses import dataclass

from leanto.source import Source
from leanto.trade.outcome import Check, Outcome
from leanto.trade.roofing import STRIP_EXPOSURE_IN, courses

STEP_SOURCE = Source("International Residential Code", place="R905.2.8.3, code forum")
KICKOUT_SOURCE = Source("International Residential Code", "2012", "R903.2.1, trade page")
STEP_UP_WALL_IN = 4.0
STEP_ON_ROOF_IN = 4.0

CRICKET_OVER_IN = 30.0
CRICKET_SOURCE = Source("International Residential Code", "2003", "chimney crickets, archive")
RIDGE_EXCEPTION_SOURCE = Source(
    "International Residential Code", place="R1003.20", mark="from memory"
)
HIGH_BACK_SHARE = 1 / 6
HIGH_BACK_LEAST_IN = 6.0
HIGH_BACK_SOURCE = Source("Ontario Building Code", place="9.26.4.8")

CURB_LEAST_IN = 4.0
CURB_ALWAYS_TO = 3.0
CURB_BELOW = 12.0
CURB_SOURCE = Source(
    "International Building Code and International Residential Code",
    place="skylight curbs, examination notes",
)


@dataclass(frozen=True, slots=True)
class SideWall:
    """A roof edge that runs up along a wall."""

    slope_length_ft: float
    ends_at_eave: bool
    """Whether its low end is an eave that dies into the wall."""


@dataclass(frozen=True, slots=True)
class WallFlashing:
    """Pieces for the side walls of a roof."""

    step_pieces: int
    kickouts: int
    sources: tuple[Source, ...] = (STEP_SOURCE, KICKOUT_SOURCE)


@dataclass(frozen=True, slots=True)
class CurbFlashing:
    """Metal round a flue or skylight: step flashing up both sides, apron, back and counter."""

    step_pieces: int
    apron_ft: float
    back_ft: float
    perimeter_ft: float
    """All four sides; what a counterflashing let into the masonry or under the frame runs."""


@dataclass(frozen=True, slots=True)
class Cricket:
    """Whether a cricket is called for behind a flue, and why."""

    is_required: bool
    high_back_in: float
    """How far another code lets flashing run up the flue in its place."""
    reason: str
    sources: tuple[Source, ...]


def step_pieces(slope_length_ft: float, exposure_in: float = STRIP_EXPOSURE_IN) -> int:
    """Pieces of step flashing along one side, one for every course of covering."""
    return courses(slope_length_ft, exposure_in)


def flash_side_walls(
    walls: tuple[SideWall, ...], exposure_in: float = STRIP_EXPOSURE_IN
) -> WallFlashing:
    """Step flashings for every wall, and a kickout at every eave that dies into one."""
    return WallFlashing(
        step_pieces=sum(step_pieces(wall.slope_length_ft, exposure_in) for wall in walls),
        kickouts=sum(wall.ends_at_eave for wall in walls),
    )


def flash_curb(
    across_in: float,
    along_slope_in: float,
    exposure_in: float = STRIP_EXPOSURE_IN,
    lap_in: float = 4.0,
) -> CurbFlashing:
    """Flashing round a rectangular flue or skylight; apron and back pass it by `lap_in` each side.

    `along_slope_in` is measured on the roof, so a plumb flue's level depth times the slope factor.
    The side lap is common practice, no source.
    """
    if across_in <= 0 or along_slope_in <= 0:
        raise ValueError(f"a curb needs two sides: {across_in} by {along_slope_in} in.")
    return CurbFlashing(
        step_pieces=2 * step_pieces(along_slope_in / 12.0, exposure_in),
        apron_ft=(across_in + 2 * lap_in) / 12.0,
        back_ft=(across_in + 2 * lap_in) / 12.0,
        perimeter_ft=2 * (across_in + along_slope_in) / 12.0,
    )


def check_cricket(across_in: float, crosses_ridge: bool = False) -> Cricket:
    """Whether a flue this wide across the slope needs a cricket on its high side."""
    if across_in <= 0:
        raise ValueError(f"across_in must be more than zero: {across_in}")
    high_back_in = max(HIGH_BACK_LEAST_IN, across_in * HIGH_BACK_SHARE)
    if crosses_ridge:
        return Cricket(
            False,
            high_back_in,
            "The flue stands through the ridge, so no water runs against its back.",
            (RIDGE_EXCEPTION_SOURCE,),
        )
    wide = across_in > CRICKET_OVER_IN
    than = "wider than" if wide else "not wider than"
    return Cricket(
        wide,
        high_back_in,
        f"The flue is {across_in:g} in. wide across the slope, {than} {CRICKET_OVER_IN:g} in.",
        (CRICKET_SOURCE, HIGH_BACK_SOURCE) if wide else (CRICKET_SOURCE,),
    )


def check_curb_height(curb_in: float, rise_in_12: float) -> Check:
    """How a skylight's curb compares with the 4 in. the codes ask at low slopes."""
    outcome, reason = _curb_height(curb_in, rise_in_12)
    return Check(outcome, (reason,), (CURB_SOURCE,))


def _curb_height(curb_in: float, rise_in_12: float) -> tuple[Outcome, str]:
    if curb_in >= CURB_LEAST_IN:
        return Outcome.PASSES, f"The curb is {curb_in:g} in. high; 4 in. is asked."
    if rise_in_12 <= CURB_ALWAYS_TO:
        return (
            Outcome.FAILS,
            f"The curb is {curb_in:g} in. high; 4 in. is asked at 3 in 12 and less.",
        )
    if rise_in_12 < CURB_BELOW:
        return (
            Outcome.UNDECIDED,
            f"The curb is {curb_in:g} in. high; the building code asks 4 in. below 12 in 12, "
            "the residential code only to 3 in 12. Ask which one governs.",
        )
    return Outcome.PASSES, "At 12 in 12 and steeper no curb is asked."
