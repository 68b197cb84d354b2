"""A joist or rafter as measured, the loads on it, and the size that would carry them."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from typing import Final

from leanto.trade.adjustment import Duration
from leanto.trade.design_values import (
    DesignValues,
    Grade,
    Species,
    design_values,
    known_grade,
    known_species,
    species_names,
)
from leanto.trade.section_loss import Section
from leanto.trade.span import SpanLimit, span_limit

DRESSED_SIZES: Final = (
    ("2x4", 1.5, 3.5),
    ("2x6", 1.5, 5.5),
    ("2x8", 1.5, 7.25),
    ("2x10", 1.5, 9.25),
    ("2x12", 1.5, 11.25),
)
"""The sizes the span tables print: name, breadth and depth in inches."""
NOISE_IN: Final = 1e-6
"""Below any tape; keeps a span equal to its limit within it."""


@dataclass(frozen=True, slots=True)
class Member:
    """A joist or rafter as it was measured; sizes are the actual ones, before any loss."""

    breadth_in: float
    depth_in: float
    spacing_in: float
    """Center to center."""
    species: str | None = None
    """A species group of the design values, or None when nobody knows."""
    grade: str | None = None
    graded: bool = False
    """True when a grade stamp was read or a lumber grader graded it in place."""
    wet: bool = False
    """True when the wood stays above 19 percent moisture."""
    load_sharing: bool = True
    """True for three or more members joined by boards, sheathing or decking."""
    remaining: Section | None = None
    """What rot or cutting has left at the worst place; None when the member is whole."""
    end_depth_in: float | None = None
    """Depth left over the bearing when the end is notched or rotted from below."""
    bearing_in: float | None = None
    """Length of wood or metal under the end."""

    def __post_init__(self) -> None:
        if min(self.breadth_in, self.depth_in, self.spacing_in) <= 0:
            raise ValueError(f"a member has a size and a spacing: {self}")

    @property
    def size(self) -> str:
        return f"{self.breadth_in:g} x {self.depth_in:g} in."


@dataclass(frozen=True, slots=True)
class SpanLoad:
    """One load a member has to carry."""

    name: str
    live_psf: float
    dead_psf: float
    deflection_limit: float
    """The 360 of L/360."""
    duration: Duration = "floor live"


def required_size(member: Member, span_in: float, loads: Sequence[SpanLoad]) -> str:
    """The smallest dressed size that carries the span at the member's spacing, or empty.

    Sound new lumber of the member's species and grade; unknown ones count as the weakest group
    and as No. 2.
    """
    for name, breadth_in, depth_in in DRESSED_SIZES:
        new = Member(
            breadth_in=breadth_in,
            depth_in=depth_in,
            spacing_in=member.spacing_in,
            species=member.species,
            grade=member.grade,
            graded=member.graded,
            wet=member.wet,
            load_sharing=member.load_sharing,
        )
        limits = [member_limit(new, values, load) for values in candidates(new) for load in loads]
        if min(limit.table_in for limit in limits) + NOISE_IN >= span_in:
            return name
    return ""


def candidates(member: Member) -> list[DesignValues]:
    """The values the member may have: one of a stamped piece, else every group's at No. 2."""
    species = known_species(member.species)
    groups: list[Species] = [species] if species is not None else list(species_names())
    return [design_values(group, counted_grade(member), member.depth_in) for group in groups]


def counted_grade(member: Member) -> Grade:
    """The grade it counts as: No. 2 at best when nobody graded it."""
    grade = known_grade(member.grade)
    if grade is None:
        return "no_2"
    return grade if member.graded or grade == "no_3" else "no_2"


def member_limit(member: Member, values: DesignValues, load: SpanLoad) -> SpanLimit:
    """The span that these values allow the member under one load."""
    return span_limit(
        values,
        breadth_in=member.breadth_in,
        depth_in=member.depth_in,
        spacing_in=member.spacing_in,
        live_psf=load.live_psf,
        dead_psf=load.dead_psf,
        deflection_limit=load.deflection_limit,
        duration=load.duration,
        wet=member.wet,
        load_sharing=member.load_sharing,
        remaining=member.remaining,
        end_depth_in=member.end_depth_in,
    )
