"""Pests: which kind the signs fit, whether it is alive, and in what order work is done."""

from __future__ import annotations

from collections.abc import Set
from dataclasses import dataclass
from enum import StrEnum

from leanto.source import COMMON_PRACTICE, Source
from leanto.trade.outcome import Check, Outcome
from leanto.trade.pest_table import HoleShape, PestKind, SizeRange, find_pest, pest_table


class Activity(StrEnum):
    """Whether a pest is alive in the building."""

    ACTIVE = "active"
    OLD = "old"
    UNDECIDED = "undecided"


@dataclass(frozen=True, slots=True)
class PestMatch:
    """A kind the signs fit; more reasons, better fit. The pest firm names the kind."""

    kind: str
    label: str
    reasons: tuple[str, ...]
    sources: tuple[Source, ...]


@dataclass(frozen=True, slots=True)
class ActivityVerdict:
    """Whether a pest is alive, why, and when to look again."""

    activity: Activity
    reasons: tuple[str, ...]
    recheck_days: int | None
    sources: tuple[Source, ...]


@dataclass(frozen=True, slots=True)
class WorkStep:
    """One step against a pest, in its place."""

    order: int
    by: str
    what: str
    why: str


def identify_pest(
    signs: Set[str],
    hole_in: float | None = None,
    hole_shape: HoleShape | None = None,
    dropping_in: float | None = None,
) -> tuple[PestMatch, ...]:
    """Kinds that the signs and sizes fit, best first; equal fits in the order of the table.

    A kind drops out if a sign speaks against it or a hole or dropping has another size or shape.
    Sizes in inches. ValueError for a sign the table does not know.
    """
    table = pest_table()
    if unknown := signs - table.signs:
        raise ValueError(f"unknown signs: {', '.join(sorted(unknown))}")
    matches = []
    for name, kind in table.kinds.items():
        reasons = _fit(kind, signs, hole_in, hole_shape, dropping_in)
        if reasons:
            sources = [table.cite(kind)]
            sources += [table.cite(size) for size in (kind.holes, kind.droppings) if size]
            matches.append(
                PestMatch(name, kind.label, reasons, tuple(dict.fromkeys(sources))),
            )
    return tuple(sorted(matches, key=lambda match: -len(match.reasons)))


def _fit(
    kind: PestKind,
    signs: Set[str],
    hole_in: float | None,
    hole_shape: HoleShape | None,
    dropping_in: float | None,
) -> tuple[str, ...]:
    """What speaks for a kind, or nothing if something speaks against it."""
    if signs & set(kind.against):
        return ()
    reasons = [sign.replace("-", " ") for sign in kind.signs if sign in signs]
    if hole_in is not None and kind.holes is not None:
        if not _within(hole_in, kind.holes) or hole_shape not in (None, kind.holes.shape):
            return ()
        reasons.append(f"{kind.holes.shape} hole of {hole_in:g} in.")
    if dropping_in is not None and kind.droppings is not None:
        if not _within(dropping_in, kind.droppings):
            return ()
        reasons.append(f"dropping {dropping_in:g} in. long")
    return tuple(reasons)


def _within(size_in: float, sizes: SizeRange) -> bool:
    """Whether a size lies in a range, a hair beyond its ends included."""
    hair_in = 0.001
    return sizes.low_in - hair_in <= size_in <= sizes.high_in + hair_in


def judge_activity(
    kind: str, signs: Set[str], days_watched: int = 0, renewed: bool | None = None
) -> ActivityVerdict:
    """Whether a pest is alive: by signs of life, or by looking again after the days of its kind.

    `renewed` is what the second look found, None if there was none. Old means that nothing new
    came in that time; it does not clear the building.
    """
    pest, table = find_pest(kind), pest_table()
    for group in pest.active_when:
        if signs >= set(group):
            seen = " and ".join(sign.replace("-", " ") for sign in group)
            return ActivityVerdict(Activity.ACTIVE, (f"Seen: {seen}.",), None, (table.cite(pest),))
    cited = (table.cite(pest.recheck), table.sources[pest.recheck.days_source])
    source = tuple(dict.fromkeys(cited))
    if renewed:
        reason = f"The second look found {pest.recheck.look_for}."
        return ActivityVerdict(Activity.ACTIVE, (reason,), None, source)
    if renewed is False and days_watched >= pest.recheck.days:
        reason = f"Nothing new in {days_watched} days. This does not clear the building."
        return ActivityVerdict(Activity.OLD, (reason,), None, source)
    left = max(1, pest.recheck.days - days_watched)
    reasons = [f"Look again in {left} days for {pest.recheck.look_for}."]
    if "fresh-pale-dust" in signs:
        reasons.insert(0, table.powder_alone.text)
        source = (table.cite(table.powder_alone), *source)
    return ActivityVerdict(Activity.UNDECIDED, tuple(reasons), left, source)


def order_pest_work(
    kind: str, activity: Activity, is_damaged: bool, bears_load: bool
) -> tuple[WorkStep, ...]:
    """Steps against a pest in order: source, treatment, repair, closing up.

    Treatment and repair are two lines for two trades; neither does the other's work.
    """
    pest = find_pest(kind)
    plan: list[tuple[str, str, str]] = []
    if pest.marks_damp:
        plan.append(("contractor", "Find and cure the damp.", f"{pest.label} follow damp wood."))
    if activity is Activity.UNDECIDED:
        plan.append((pest.treatment.by, f"Inspect for {pest.label}.", "It may be alive."))
    if activity is not Activity.OLD:
        what = f"Treat: {pest.treatment.what}."
        plan.append((pest.treatment.by, what, "Repair does not stop insects or animals."))
    if is_damaged and bears_load:
        plan.append(
            (
                "carpenter",
                "Replace or sister damaged members; ask an engineer for main members.",
                pest_table().unknown_strength.text,
            )
        )
    elif is_damaged:
        plan.append(("carpenter", "Replace damaged wood.", "Treatment does not mend wood."))
    if plan:
        plan.append(("contractor", "Close up.", "Only after treatment and repair were seen."))
    return tuple(WorkStep(order, *step) for order, step in enumerate(plan, start=1))


ORDER_SOURCE = COMMON_PRACTICE
"""Treatment before repair, and both before closing up."""


def check_clearance(place: str, clearance_in: float) -> Check:
    """How the room between wood and grade compares with the code; inches, negative if buried."""
    table = pest_table()
    if place not in table.clearances:
        raise ValueError(f"no clearance {place}; there are {', '.join(sorted(table.clearances))}")
    row = table.clearances[place]
    outcome = Outcome.PASSES if clearance_in >= row.least_in else Outcome.FAILS
    reason = f"{row.label.capitalize()}: {clearance_in:g} in., at least {row.least_in:g} in."
    return Check(outcome, (reason,), (table.cite(row),))


def lets_in(gap_in: float) -> tuple[str, ...]:
    """Animals that a gap this wide lets in, by id: at 1/4 in. mice, at 1/2 in. rats too."""
    return tuple(name for name, gap in pest_table().gaps.items() if gap_in >= gap.least_in)
