"""What to do about a member that lost section: keep, repair beside it, replace, ask an engineer."""

from __future__ import annotations

from dataclasses import dataclass
from enum import StrEnum
from typing import Final

from leanto.source import COMMON_PRACTICE, Source
from leanto.trade.section_loss import SectionLoss

KEEP_BELOW: Final = 0.10
KEEP_SOURCE = Source(
    "AASHTO Manual for Bridge Element Inspection",
    "2019",
    "defect 1140, condition state 2: decay in less than 10 percent of the member section",
)
ENGINEER_FROM: Final = 0.20
ENGINEER_SOURCE = Source(
    "ASCE Manual of Practice 130",
    place="capacity of a primary member down by 20 percent or more: engineer before repair",
)
FULL_LENGTH_FROM: Final = 0.25
REPLACE_ABOVE: Final = 0.50
DAMAGE_SOURCE = Source(
    "New York City waterfront inspection guidelines",
    place="timber: up to 25 percent moderate, up to 50 advanced, above severe",
)
BRASH_SOURCE = Source(
    "Wood Handbook, FPL-GTR-190",
    "2010",
    "chapter 5: early decay takes strength before it shows; no strength is to be counted on",
    mark="from memory",
)
PLATE_SOURCE = Source(
    "Wood Handbook, FPL-GTR-190", "2010", "chapter 5, decay: replace loaded pieces"
)
OVERLAP_IN: Final = 24.0
OVERLAP_SOURCE = COMMON_PRACTICE
"""Two feet of sound wood past the soft wood, either way; a third of the span when that is more."""
FULL_LENGTH_SOURCE = Source(
    "Renovation, 4th edition", place="page 47: sister full length, bearing at both ends"
)


class MemberRole(StrEnum):
    """What a member does; it decides how much loss it bears."""

    REPEATED = "joist, rafter or stud in a row"
    MAIN = "beam, header, ridge or truss member"
    POST = "post"
    PLATE = "sill or plate lying on its support"


class RemedyKind(StrEnum):
    """What follows for the member."""

    KEEP = "keep"
    SISTER = "repair beside it"
    REPLACE = "replace"
    ENGINEER = "ask an engineer"


@dataclass(frozen=True, slots=True)
class Remedy:
    """What to do about one member, the share it lost and why."""

    kind: RemedyKind
    lost_share: float
    """Share of strength lost by section, 0 to 1; it says nothing about load."""
    reasons: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class SisterLength:
    """How long the piece beside the old one is."""

    length_in: float
    full_length: bool
    engineer_to_approve: bool
    reason: str


def lost_share(loss: SectionLoss, role: MemberRole) -> float:
    """Share of strength lost, 0 to 1: the worse of area and bending, and a post's stiffness."""
    shares = [loss.area_share, loss.section_modulus_share]
    if role is MemberRole.POST:
        shares += [loss.inertia_share, loss.weak_inertia_share]
    # Rounded far below any tape's reach, so that a tenth lost is a tenth and not 0.0999....
    return round(1.0 - min(shares), 9)


def remedy(
    loss: SectionLoss, role: MemberRole, *, brash: bool = False, moved: bool = False
) -> Remedy:
    """What follows from the loss of section, the pick test and any break or drop.

    ``brash``: a pried splinter snaps short although the wood feels hard. ``moved``: the member is
    cracked through, crushed or dropped. Load is not looked at: the span check does that.
    """
    lost = lost_share(loss, role)
    notes = [_share_words(loss, lost)]
    if loss.lopsided:
        notes.append("One side lost more than the other, so the rest may twist.")
    if moved:
        notes.append("Cracked through, crushed or dropped: prop it first, then an engineer looks.")
        return Remedy(RemedyKind.ENGINEER, lost, tuple(notes))
    kind, why = _by_share(lost, role)
    if brash:
        why = f"Splinters snap short: early decay, strength not known ({BRASH_SOURCE})."
        kind = _brash_kind(kind, role)
    return Remedy(kind, lost, (*notes, why))


def sister_length(
    loss_length_in: float, span_in: float | None = None, *, lost: float = 0.0
) -> SisterLength:
    """The length of the piece beside: full length where the span is known and it is wanted.

    ``loss_length_in`` is the run of soft wood, ``span_in`` the length between bearings, ``lost``
    the share of strength lost. From 25 percent, or when the overlaps reach both bearings, it runs
    full length. A shorter one is common practice and disputed: an engineer approves it.
    """
    if loss_length_in < 0 or (span_in is not None and span_in <= 0):
        raise ValueError("a loss is zero or more long, a span more than zero")
    overlap = OVERLAP_IN if span_in is None else max(OVERLAP_IN, span_in / 3.0)
    partial = loss_length_in + 2.0 * overlap
    if span_in is not None and (lost >= FULL_LENGTH_FROM or partial >= span_in):
        why = f"Full length, bearing at both ends ({FULL_LENGTH_SOURCE})."
        return SisterLength(span_in, True, False, why)
    why = f"The soft run and {overlap:.0f} in. of sound wood past either end ({OVERLAP_SOURCE})."
    return SisterLength(partial, False, True, why)


def _share_words(loss: SectionLoss, lost: float) -> str:
    return (
        f"Left: {loss.area_share:.0%} of area, "
        f"{loss.section_modulus_share:.0%} of bending strength, "
        f"{loss.inertia_share:.0%} of stiffness; {lost:.0%} of strength lost."
    )


def _by_share(lost: float, role: MemberRole) -> tuple[RemedyKind, str]:
    if lost < KEEP_BELOW:
        return (
            RemedyKind.KEEP,
            f"Under {KEEP_BELOW:.0%} lost: cut out the soft wood, dry, treat ({KEEP_SOURCE}).",
        )
    if role is MemberRole.PLATE:
        return RemedyKind.REPLACE, f"Cut out the soft length and splice in new ({PLATE_SOURCE})."
    if role is MemberRole.REPEATED:
        if lost > REPLACE_ABOVE:
            return RemedyKind.REPLACE, f"Over {REPLACE_ABOVE:.0%} lost ({DAMAGE_SOURCE})."
        if lost >= FULL_LENGTH_FROM:
            return (
                RemedyKind.SISTER,
                f"{FULL_LENGTH_FROM:.0%} or more lost: a full-length piece that carries it all "
                f"({DAMAGE_SOURCE}).",
            )
    elif lost >= ENGINEER_FROM:
        return (
            RemedyKind.ENGINEER,
            f"{ENGINEER_FROM:.0%} or more of a main member lost ({ENGINEER_SOURCE}).",
        )
    return RemedyKind.SISTER, f"{KEEP_BELOW:.0%} or more lost: a new piece beside it."


def _brash_kind(by_share: RemedyKind, role: MemberRole) -> RemedyKind:
    if role in (MemberRole.MAIN, MemberRole.POST):
        return RemedyKind.ENGINEER
    if role is MemberRole.PLATE:
        return RemedyKind.REPLACE
    return RemedyKind.SISTER if by_share is RemedyKind.KEEP else by_share
