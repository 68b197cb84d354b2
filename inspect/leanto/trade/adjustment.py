"""Adjusted design values: load duration, moisture, size and repetitive members."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal

from leanto.source import Source
from leanto.trade.design_values import DesignValues

Duration = Literal["permanent", "floor live", "snow", "roof live", "wind or seismic", "impact"]

DURATION_FACTORS: dict[Duration, float] = {
    "permanent": 0.9,
    "floor live": 1.0,
    "snow": 1.15,
    "roof live": 1.25,
    "wind or seismic": 1.6,
    "impact": 2.0,
}
"""The shortest load of a combination sets its factor; stiffness and bearing take none."""
DURATION_SOURCE = Source(
    "National Design Specification for Wood Construction", "2018", "Table 2.3.2"
)

SIZE_FACTORS = ((4.0, 1.5), (5.0, 1.4), (6.0, 1.3), (8.0, 1.2), (10.0, 1.1), (12.0, 1.0))
"""Greatest depth in inches and the factor on bending, for pieces 2 or 3 in. thick."""
THICK_SIZE_FACTORS = ((4.0, 1.5), (5.0, 1.4), (6.0, 1.3), (8.0, 1.3), (10.0, 1.2), (12.0, 1.1))
"""The same for pieces 4 in. thick."""
DEEPER_FACTOR = 0.9
THICK_DEEPER_FACTOR = 1.0
THICK_FROM_IN = 3.5
SIZE_SOURCE = Source("NDS Supplement, Design Values for Wood Construction", "2018", "Table 4A")

REPETITIVE_FACTOR = 1.15
REPETITIVE_SPACING_IN = 24.0
REPETITIVE_SOURCE = Source(
    "National Design Specification for Wood Construction", "2018", "4.3.9", "from memory"
)

WET_ABOVE_PCT = 19.0
WET_BENDING_LIMIT_PSI = 1150.0
"""At or below this, bending times its size factor loses nothing when wet."""
WET_SOURCE = Source("Building Design and Construction Handbook", place="Table 10.6")


@dataclass(frozen=True, slots=True)
class WetFactors:
    """Factors for wood that stays above 19 percent moisture."""

    fb: float
    fv: float
    fc_perp: float
    e: float


@dataclass(frozen=True, slots=True)
class AdjustedValues:
    """Values to compare stresses with, psi, and how they came about."""

    reference: DesignValues
    fb_psi: float
    fv_psi: float
    fc_perp_psi: float
    e_psi: float
    duration_factor: float
    reasons: tuple[str, ...]


def size_factor(depth_in: float, breadth_in: float = 1.5) -> float:
    """Factor on bending by actual depth, 1.5 for a 2x4 down to 0.9; NDS Supplement Table 4A.

    A depth counts as the next nominal width above it, so a full-sawn 2x8 counts as a 2x8.
    """
    _need_positive(depth_in, breadth_in)
    thick = breadth_in >= THICK_FROM_IN
    for greatest_in, factor in THICK_SIZE_FACTORS if thick else SIZE_FACTORS:
        if depth_in <= greatest_in:
            return factor
    return THICK_DEEPER_FACTOR if thick else DEEPER_FACTOR


def repetitive_factor(spacing_in: float, load_sharing: bool = True) -> float:
    """Factor on bending, 1.15 for members that share their load, else 1.0.

    Three or more members, at most 24 in. on center, joined by sheathing or decking. NDS 4.3.9.
    """
    _need_positive(spacing_in)
    return REPETITIVE_FACTOR if load_sharing and spacing_in <= REPETITIVE_SPACING_IN else 1.0


def wet_factors(sized_fb_psi: float) -> WetFactors:
    """Factors above 19 percent moisture; ``sized_fb_psi`` is bending times its size factor."""
    _need_positive(sized_fb_psi)
    bending = 1.0 if sized_fb_psi <= WET_BENDING_LIMIT_PSI else 0.85
    return WetFactors(fb=bending, fv=0.97, fc_perp=0.67, e=0.9)


def adjusted_values(
    values: DesignValues,
    *,
    breadth_in: float,
    depth_in: float,
    spacing_in: float,
    duration: Duration = "floor live",
    wet: bool = False,
    load_sharing: bool = True,
) -> AdjustedValues:
    """Reference values times every factor that applies, psi; sizes are the original ones.

    Source: National Design Specification for Wood Construction, 2018, Table 4.3.1.
    """
    size = 1.0 if values.size_factor_included else size_factor(depth_in, breadth_in)
    repetitive = repetitive_factor(spacing_in, load_sharing)
    time = DURATION_FACTORS[duration]
    moisture = wet_factors(values.fb_psi * size) if wet else WetFactors(1.0, 1.0, 1.0, 1.0)
    fb_psi = values.fb_psi * size * repetitive * time * moisture.fb
    sized = "its size is in the table" if values.size_factor_included else f"size {size:g}"
    reasons = [
        f"{values.name}: bending {values.fb_psi:,.0f} psi, shear {values.fv_psi:,.0f} psi, "
        f"stiffness {values.e_psi:,.0f} psi ({values.source}).",
        f"Bending may reach {fb_psi:,.0f} psi: {sized}, repetitive members {repetitive:g}, "
        f"{duration} load {time:g}, moisture {moisture.fb:g}.",
    ]
    if wet:
        reasons.append(
            f"Wood above {WET_ABOVE_PCT:g} percent moisture: shear x {moisture.fv:g}, bearing x "
            f"{moisture.fc_perp:g}, stiffness x {moisture.e:g} ({WET_SOURCE})."
        )
    if repetitive == 1.0:
        reasons.append("No gain for repetitive members: far apart, or nothing shares the load.")
    return AdjustedValues(
        reference=values,
        fb_psi=fb_psi,
        fv_psi=values.fv_psi * time * moisture.fv,
        fc_perp_psi=values.fc_perp_psi * moisture.fc_perp,
        e_psi=values.e_psi * moisture.e,
        duration_factor=time,
        reasons=tuple(reasons),
    )


def _need_positive(*values: float) -> None:
    if any(not value > 0 for value in values):
        raise ValueError(f"sizes and stresses must be more than zero: {values}")
