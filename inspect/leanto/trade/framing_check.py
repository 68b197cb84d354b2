"""One joist or rafter against the spans its loads allow: verdict, margin, size that would do."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from enum import StrEnum
from typing import Final

from leanto.source import Source
from leanto.trade.adjustment import REPETITIVE_SPACING_IN
from leanto.trade.design_values import DesignValues, known_grade, known_species
from leanto.trade.framing_member import (
    NOISE_IN,
    Member,
    SpanLoad,
    candidates,
    counted_grade,
    member_limit,
    required_size,
)
from leanto.trade.section_loss import rectangle
from leanto.trade.section_remedy import BRASH_SOURCE, ENGINEER_FROM, ENGINEER_SOURCE
from leanto.trade.span import SpanLimit, bearing_needed_in, feet_inches, line_load_lb_in

BREADTH_RANGE_IN: Final = (1.5, 4.0)
DEPTH_RANGE_IN: Final = (3.5, 14.0)
SIZE_SOURCE = Source(
    "NDS Supplement, Design Values for Wood Construction",
    "2018",
    "Table 4A: dimension lumber, 2 to 4 in. thick",
)
GRADE_SOURCE = Source(
    "International Residential Code", "2018", "R502.1.1 and R802.1.1: grade mark", "from memory"
)
LEAST_BEARING_IN: Final = 1.5
BEARING_SOURCE = Source("International Residential Code", "2018", "R502.6", "from memory")
END_NOTCH_SHARE: Final = 0.25
END_NOTCH_SOURCE = Source("International Residential Code", "2018", "R502.8.1")

ROT_NOTE: Final = (
    "Soft wood counts as gone. Early decay takes strength before it shows, so the rest may be "
    f"weaker than it looks ({BRASH_SOURCE})."
)


class Verdict(StrEnum):
    """The words for a framing check; none of them says that a building can be trusted."""

    PASSES = "passes by the table"
    FAILS = "does not pass"
    ENGINEER = "ask an engineer"
    NO_SPAN = "no span to check"


@dataclass(frozen=True, slots=True)
class FramingCheck:
    """A verdict that explains itself; lengths in inches."""

    verdict: Verdict
    span_in: float | None
    allowed_in: float | None
    """The least of the spans that the loads and the possible species allow."""
    margin_in: float | None
    """Allowed less actual; negative when the span is too long."""
    governs: str
    required_size: str
    """The smallest dressed size that carries the span at this spacing; empty when none does."""
    reasons: tuple[str, ...]
    questions: tuple[str, ...] = ()
    """What else has to be looked at, since no span table answers it."""
    cautions: tuple[str, ...] = ()


def check_member(
    member: Member,
    span_in: float,
    loads: Sequence[SpanLoad],
    *,
    doubts: Sequence[str] = (),
    failures: Sequence[str] = (),
    notes: Sequence[str] = (),
    questions: Sequence[str] = (),
    cautions: Sequence[str] = (),
    least: Sequence[SpanLoad] | None = None,
) -> FramingCheck:
    """Whether the member carries every load over a clear span of ``span_in`` inches.

    ``doubts`` turn a pass into a question for an engineer, ``failures`` fail it, and ``least``
    are the loads below which it fails when the loads themselves are in doubt. Lumber without a
    grade is taken as No. 2 at best and never passes by a table, whatever the sums say.
    """
    if span_in <= 0 or not loads:
        raise ValueError("a member to check has a span and a load")
    possible = candidates(member)
    worst = min(
        (member_limit(member, values, load) for values in possible for load in loads),
        key=lambda limit: limit.span_in,
    )
    best_in = max(
        min(member_limit(member, values, load).table_in for load in (least or loads))
        for values in possible
    )
    failures = [*failures, *_member_failures(member, span_in, worst, loads)]
    doubts = [*doubts, *_member_doubts(member)]
    allowed_in = worst.table_in
    if best_in + NOISE_IN < span_in or failures:
        verdict = Verdict.FAILS
    elif doubts or allowed_in + NOISE_IN < span_in:
        verdict = Verdict.ENGINEER
    else:
        verdict = Verdict.PASSES
    size = required_size(member, span_in, loads)
    reasons = (
        _answer(member, span_in, worst, possible),
        *failures,
        *doubts,
        *worst.reasons,
        *((ROT_NOTE,) if member.remaining is not None else ()),
        *notes,
        _size_reason(size, span_in),
    )
    return FramingCheck(
        verdict=verdict,
        span_in=span_in,
        allowed_in=float(allowed_in),
        margin_in=allowed_in - span_in,
        governs=worst.governs,
        required_size=size,
        reasons=tuple(dict.fromkeys(reasons)),
        questions=tuple(questions),
        cautions=tuple(cautions),
    )


def _member_failures(
    member: Member, span_in: float, worst: SpanLimit, loads: Sequence[SpanLoad]
) -> list[str]:
    """What fails whatever the span."""
    failures = []
    if member.bearing_in is not None:
        total = max(load.live_psf + load.dead_psf for load in loads)
        reaction = line_load_lb_in(total, member.spacing_in) * span_in / 2.0
        crush = bearing_needed_in(reaction, member.breadth_in, worst.values.fc_perp_psi)
        needed = max(LEAST_BEARING_IN, crush)
        if member.bearing_in + NOISE_IN < needed:
            failures.append(
                f"The end bears on {member.bearing_in:g} in.; {needed:.2g} in. on wood or metal "
                f"are needed ({BEARING_SOURCE})."
            )
    if member.end_depth_in is not None:
        lost = member.depth_in - member.end_depth_in
        limit = END_NOTCH_SHARE * member.depth_in
        if lost > limit + NOISE_IN:
            failures.append(
                f"The end has lost {lost:.2g} in. of its depth; an end notch may take "
                f"{limit:.3g} in. ({END_NOTCH_SOURCE})."
            )
    return failures


def _member_doubts(member: Member) -> list[str]:
    """Why a table cannot answer for this member."""
    doubts = []
    if known_species(member.species) is None:
        given = f"{member.species} has none here" if member.species else "the species is not known"
        doubts.append(f"Design values go by species and {given}; all groups were tried.")
    if not member.graded:
        counted = "No. 3" if counted_grade(member) == "no_3" else "No. 2"
        doubts.append(
            f"No grade stamp: a span table does not cover it ({GRADE_SOURCE}). Counted as "
            f"{counted}; an engineer or a lumber grader may grade it in place."
        )
    elif known_grade(member.grade) is None:
        doubts.append(f"No design values for the grade {member.grade}; counted as No. 2.")
    lowest, highest = BREADTH_RANGE_IN
    shallow, deep = DEPTH_RANGE_IN
    breadth_fits = lowest - NOISE_IN <= member.breadth_in <= highest + NOISE_IN
    if not (breadth_fits and shallow - NOISE_IN <= member.depth_in <= deep + NOISE_IN):
        doubts.append(f"{member.size} is no dimension lumber; other values hold ({SIZE_SOURCE}).")
    if member.spacing_in > REPETITIVE_SPACING_IN + NOISE_IN:
        doubts.append(
            f"Members are {member.spacing_in:g} in. on center; the tables stop at "
            f"{REPETITIVE_SPACING_IN:g} in."
        )
    if member.remaining is not None:
        whole = rectangle(member.breadth_in, member.depth_in)
        lost = 1.0 - min(
            member.remaining.section_modulus_in3 / whole.section_modulus_in3,
            member.remaining.area_sqin / whole.area_sqin,
        )
        if lost >= ENGINEER_FROM - NOISE_IN:
            doubts.append(f"{lost:.0%} of its strength is gone ({ENGINEER_SOURCE}).")
    return doubts


def _answer(
    member: Member, span_in: float, worst: SpanLimit, possible: Sequence[DesignValues]
) -> str:
    margin = worst.table_in - span_in
    left = f"{margin:.0f} in. to spare" if margin >= 0 else f"{-margin:.0f} in. too long"
    part = "what is left of " if member.remaining is not None else ""
    weakest = " as the weakest species group" if len(possible) > 1 else ""
    return (
        f"Clear span {feet_inches(span_in)}; {part}{member.size} at {member.spacing_in:g} in. on "
        f"center{weakest} may span {feet_inches(worst.table_in)}: {left}."
    )


def _size_reason(size: str, span_in: float) -> str:
    if not size:
        return (
            f"No size up to 2x12 carries {feet_inches(span_in)} at this spacing: shorten the span "
            "with a beam, or set members closer."
        )
    return f"New lumber of this kind and spacing would have to be {size} or deeper."
