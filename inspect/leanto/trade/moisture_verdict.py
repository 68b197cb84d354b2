"""Wet from the air or wet from a leak: a corrected reading against what the air explains."""

from __future__ import annotations

from dataclasses import dataclass
from enum import StrEnum
from typing import Final

from leanto.source import COMMON_PRACTICE, Source
from leanto.trade.emc import emc_pct, inside_emc_table
from leanto.trade.moisture_meter import CorrectedMoisture

DAMP_PCT: Final = 16.0
DAMP_SOURCE = Source(
    "Building Materials and Wood Technology, University of Massachusetts",
    "1996",
    "abstract: wood indoors cycles between 6 and 16 percent in a year",
)
KEEPS_DECAY_PCT: Final = 20.0
KEEPS_DECAY_SOURCE = Source(
    "Wood Handbook, FPL-GTR-190", "2010", "chapter 5, decay: kept from starting below 20"
)
STARTS_DECAY_PCT: Final = 28.0
STARTS_DECAY_SOURCE = Source(
    "Wood Infestation Report CL-100, Clemson Extension",
    place="section J: decay fungi are active at 28 percent and more",
)
EXCESS_POINTS: Final = 4.0
"""Points above what the air explains that point to water from elsewhere."""
EXCESS_SOURCE = COMMON_PRACTICE


class MoistureBand(StrEnum):
    """How wet a corrected figure is."""

    DRY = "dry"
    DAMP = "damp"
    WET = "wet enough to keep decay going"
    VERY_WET = "wet enough to start decay"


class MoistureKind(StrEnum):
    """What a reading says about the water behind it."""

    DRYING = "drying out with the room"
    WETTER = "wetter than the air explains"
    DECAY = "wet enough for decay"
    UNKNOWN = "cannot be judged"


@dataclass(frozen=True, slots=True)
class MoistureVerdict:
    """What one spot of wood says, with the numbers that led to it."""

    kind: MoistureKind
    corrected_pct: float
    emc_pct: float | None
    """What the air explains; None when temperature or humidity of the air is not known."""
    excess_points: float | None
    """Corrected reading less what air or dry spot explain; None when neither is known."""
    reasons: tuple[str, ...]
    borderline: bool = False
    """The doubt of the meter, or its correction alone, could move the figure to another band."""


def moisture_band(corrected_pct: float) -> MoistureBand:
    """The band of a corrected moisture content: below 16, below 20, below 28 percent, above."""
    if corrected_pct >= STARTS_DECAY_PCT:
        return MoistureBand.VERY_WET
    if corrected_pct >= KEEPS_DECAY_PCT:
        return MoistureBand.WET
    return MoistureBand.DAMP if corrected_pct >= DAMP_PCT else MoistureBand.DRY


def moisture_verdict(
    moisture: CorrectedMoisture,
    air_temp_f: float | None,
    rh_pct: float | None,
    dry_spot_pct: float | None = None,
) -> MoistureVerdict:
    """Judges one corrected reading against the air beside it and, when taken, a dry spot.

    ``dry_spot_pct`` is a corrected reading of like wood in the same room away from any stain. The
    wetter of air and dry spot is what the wood is allowed, since wood lags behind the air.
    Below 20 percent with neither known nothing can be said about a leak.
    """
    emc = None if air_temp_f is None or rh_pct is None else emc_pct(air_temp_f, rh_pct)
    reasons = list(moisture.reasons)
    if emc is not None and air_temp_f is not None and rh_pct is not None:
        reasons.append(f"Air at {air_temp_f:.0f} F and {rh_pct:.0f} % explains {emc:.1f} %.")
        if not inside_emc_table(air_temp_f, rh_pct):
            reasons.append("This air lies outside the published table; the figure is stretched.")
    if dry_spot_pct is not None:
        reasons.append(f"A dry spot nearby holds {dry_spot_pct:.1f} %.")
    explained = max((pct for pct in (emc, dry_spot_pct) if pct is not None), default=None)
    excess = None if explained is None else moisture.pct - explained
    kind = _kind(moisture.pct, excess)
    reasons.append(_why(kind, moisture.pct, excess))
    borderline = _is_borderline(moisture)
    if borderline:
        reasons.append("Near a limit: read it again before acting on it.")
    return MoistureVerdict(kind, moisture.pct, emc, excess, tuple(reasons), borderline)


def _kind(pct: float, excess: float | None) -> MoistureKind:
    if pct >= KEEPS_DECAY_PCT:
        return MoistureKind.DECAY
    if excess is None:
        return MoistureKind.UNKNOWN
    return MoistureKind.WETTER if excess > EXCESS_POINTS else MoistureKind.DRYING


def _why(kind: MoistureKind, pct: float, excess: float | None) -> str:
    if kind is MoistureKind.UNKNOWN:
        return "The humidity of the air was not taken and no dry spot was read."
    if kind is MoistureKind.DECAY:
        return f"{pct:.1f} % is {moisture_band(pct)}. {_leak(excess)}"
    assert excess is not None
    return f"{excess:+.1f} points against what is explained; more than {EXCESS_POINTS:.0f} counts."


def _leak(excess: float | None) -> str:
    if excess is None:
        return "Whether air or a leak wets it is not known."
    if excess > EXCESS_POINTS:
        return f"{excess:.1f} points more than explained: look for a leak."
    return "The air alone keeps it this wet: dry the room."


def _is_borderline(moisture: CorrectedMoisture) -> bool:
    low = moisture_band(moisture.pct - moisture.doubt_points)
    high = moisture_band(moisture.pct + moisture.doubt_points)
    return low is not high or moisture_band(moisture.reading_pct) is not moisture_band(moisture.pct)
