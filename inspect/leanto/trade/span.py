"""Allowable span of joists and rafters: the least of bending, shear and stiffness.

Uniform load on a simple span; the rule behind the span tables of the International Residential
Code. Live and dead load count for bending and shear, live load alone for stiffness.
"""

from __future__ import annotations

import math
from dataclasses import dataclass
from typing import Literal

from leanto.source import Source
from leanto.trade.adjustment import DURATION_FACTORS, AdjustedValues, Duration, adjusted_values
from leanto.trade.design_values import DesignValues, Edition, Grade, Species, design_values
from leanto.trade.section_loss import Section, rectangle

Limit = Literal["bending", "shear", "deflection", "length of stock"]

LONGEST_IN = 312.0
"""The span tables stop at 26 ft."""
FLOOR_LIMIT = 360.0
CEILING_LIMIT = 240.0
RAFTER_WITH_CEILING_LIMIT = 240.0
RAFTER_LIMIT = 180.0
SPAN_SOURCE = Source(
    "Tutorial for the span tables for joists and rafters, American Wood Council",
    place="design criteria",
)
NOTCH_SOURCE = Source(
    "National Design Specification for Wood Construction", "2018", "3.4.3.2", "from memory"
)


@dataclass(frozen=True, slots=True)
class Demand:
    """What a uniform load does to one member on a simple span."""

    moment_lb_in: float
    shear_lb: float
    bending_psi: float
    shear_psi: float
    live_deflection_in: float


@dataclass(frozen=True, slots=True)
class SpanLimit:
    """The span one load allows, in inches, and what it comes from."""

    span_in: float
    governs: Limit
    bending_in: float
    shear_in: float
    deflection_in: float
    values: AdjustedValues
    reasons: tuple[str, ...]

    @property
    def table_in(self) -> int:
        """The span as the tables print it, to the nearest inch."""
        return math.floor(self.span_in + 0.5)


def line_load_lb_in(psf: float, spacing_in: float) -> float:
    """Load along one member, pounds per inch, from a load per square foot."""
    return psf * spacing_in / 144.0


def demand(
    section: Section,
    span_in: float,
    *,
    spacing_in: float,
    live_psf: float,
    dead_psf: float,
    e_psi: float,
) -> Demand:
    """Moment, shear, stresses and live deflection of one member on a simple span.

    wL^2/8, wL/2, M/S, 1.5 V/A and 5wL^4/384EI, in pounds and inches. ValueError when nothing is
    left of the section.
    """
    if min(section.area_sqin, section.section_modulus_in3, section.inertia_in4) <= 0:
        raise ValueError("nothing is left of the section to carry load")
    total = line_load_lb_in(live_psf + dead_psf, spacing_in)
    live = line_load_lb_in(live_psf, spacing_in)
    moment = total * span_in**2 / 8.0
    shear = total * span_in / 2.0
    return Demand(
        moment_lb_in=moment,
        shear_lb=shear,
        bending_psi=moment / section.section_modulus_in3,
        shear_psi=1.5 * shear / section.area_sqin,
        live_deflection_in=5.0 * live * span_in**4 / (384.0 * e_psi * section.inertia_in4),
    )


def notched_end_shear_lb(
    fv_psi: float, breadth_in: float, depth_in: float, end_depth_in: float
) -> float:
    """Shear in pounds that an end cut or rotted from below to ``end_depth_in`` can take.

    (2/3) Fv b dn (dn/d)^2; National Design Specification 3.4.3.2.
    """
    if not 0 < end_depth_in <= depth_in:
        raise ValueError(f"the end must be 0 to {depth_in} in. deep: {end_depth_in}")
    return 2.0 / 3.0 * fv_psi * breadth_in * end_depth_in * (end_depth_in / depth_in) ** 2


def bearing_needed_in(reaction_lb: float, breadth_in: float, fc_perp_psi: float) -> float:
    """Length of bearing in inches that keeps wood from being crushed at the support."""
    return reaction_lb / (breadth_in * fc_perp_psi)


def span_limit(
    values: DesignValues,
    *,
    breadth_in: float,
    depth_in: float,
    spacing_in: float,
    live_psf: float,
    dead_psf: float,
    deflection_limit: float,
    duration: Duration = "floor live",
    wet: bool = False,
    load_sharing: bool = True,
    remaining: Section | None = None,
    end_depth_in: float | None = None,
) -> SpanLimit:
    """The span in inches that these design values allow, and the limit that governs.

    ``breadth_in`` and ``depth_in`` are the original size, which sets the size factor;
    ``remaining`` is what rot or cutting has left, and ``end_depth_in`` what is left at the
    bearing. ``deflection_limit`` is the 360 of L/360. Rafters: level projection of the span, the
    dead load taken per square foot of plan as the tables do. The dead load alone is checked too,
    at its own duration.
    """
    if not (live_psf > 0 and dead_psf >= 0 and deflection_limit > 0):
        raise ValueError("live load and deflection limit must be more than zero")
    adjusted = adjusted_values(
        values,
        breadth_in=breadth_in,
        depth_in=depth_in,
        spacing_in=spacing_in,
        duration=duration,
        wet=wet,
        load_sharing=load_sharing,
    )
    section = rectangle(breadth_in, depth_in) if remaining is None else remaining
    shear_lb = 2.0 / 3.0 * adjusted.fv_psi * section.area_sqin
    if end_depth_in is not None:
        notched = notched_end_shear_lb(adjusted.fv_psi, breadth_in, depth_in, end_depth_in)
        shear_lb = min(shear_lb, notched)
    full = line_load_lb_in(_heavier_psf(live_psf, dead_psf, adjusted.duration_factor), spacing_in)
    live = line_load_lb_in(live_psf, spacing_in)
    stiffness = 384.0 * adjusted.e_psi * section.inertia_in4
    spans: dict[Limit, float] = {
        "bending": math.sqrt(8.0 * adjusted.fb_psi * section.section_modulus_in3 / full),
        "shear": 2.0 * shear_lb / full,
        "deflection": math.cbrt(stiffness / (5.0 * live * deflection_limit)),
        "length of stock": LONGEST_IN,
    }
    governs = min(spans, key=lambda limit: spans[limit])
    loads = (
        f"Load {live_psf:g} psf live and {dead_psf:.3g} psf dead at {spacing_in:g} in. on center."
    )
    limits = (
        f"Limits: bending {feet_inches(spans['bending'])}, shear {feet_inches(spans['shear'])}, "
        f"deflection L/{deflection_limit:g} {feet_inches(spans['deflection'])}; "
        f"{governs} governs ({SPAN_SOURCE})."
    )
    return SpanLimit(
        span_in=spans[governs],
        governs=governs,
        bending_in=spans["bending"],
        shear_in=spans["shear"],
        deflection_in=spans["deflection"],
        values=adjusted,
        reasons=(loads, limits, *adjusted.reasons),
    )


def allowable_span(
    *,
    species: Species,
    grade: Grade,
    breadth_in: float,
    depth_in: float,
    spacing_in: float,
    live_psf: float,
    dead_psf: float,
    deflection_limit: float,
    duration: Duration = "floor live",
    edition: Edition = "current",
    wet: bool = False,
    load_sharing: bool = True,
    remaining: Section | None = None,
    end_depth_in: float | None = None,
) -> SpanLimit:
    """The span in inches of a joist, ceiling joist or rafter of this species and grade."""
    return span_limit(
        design_values(species, grade, depth_in, edition),
        breadth_in=breadth_in,
        depth_in=depth_in,
        spacing_in=spacing_in,
        live_psf=live_psf,
        dead_psf=dead_psf,
        deflection_limit=deflection_limit,
        duration=duration,
        wet=wet,
        load_sharing=load_sharing,
        remaining=remaining,
        end_depth_in=end_depth_in,
    )


def feet_inches(length_in: float) -> str:
    """A length in words, to the nearest inch: 185.2 gives ``15 ft 5 in.``"""
    if not length_in >= 0:
        raise ValueError(f"a length must be zero or more: {length_in}")
    whole = math.floor(length_in + 0.5)
    return f"{whole // 12} ft {whole % 12} in."


def _heavier_psf(live_psf: float, dead_psf: float, duration_factor: float) -> float:
    """The load that counts for strength: both together, or the dead load's longer stay."""
    return max(live_psf + dead_psf, dead_psf * duration_factor / DURATION_FACTORS["permanent"])
