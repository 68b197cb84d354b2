"""What an opened surface showed, against what was seen before and what was assumed of the rest."""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass

from leanto.decision.model import SurfaceDecision
from leanto.record.agreed_entry import Opened

RARE = 0.1
"""As much or more was thought less likely than this: more than expected."""
LIKELY = 0.5


@dataclass(frozen=True, slots=True)
class Sign:
    """One piece of evidence that spoke for or against damage."""

    kind: str
    group: str
    text: str
    ratio: float


@dataclass(frozen=True, slots=True)
class Compared:
    """One surface, all its openings together."""

    surface_id: str
    name: str
    openings: tuple[int, ...]
    opened_sqft: float
    """Of what nobody had seen."""
    found_sqft: float
    """Bad beyond what was seen."""
    found: tuple[str, ...]
    """What it was."""
    seen_sqft: float
    prior: float | None
    """Chance of damage behind it before anything was seen; None where nothing was assumed."""
    chance: float | None
    """The same after what the walk saw."""
    expected_sqft: float
    at_least: float | None
    """How likely so much or more was thought, beforehand."""
    signs: tuple[Sign, ...]

    @property
    def share(self) -> float:
        """Of what was opened, the part that was bad."""
        return min(1.0, self.found_sqft / self.opened_sqft) if self.opened_sqft else 0.0

    @property
    def pointed(self) -> tuple[Sign, ...]:
        """The signs that spoke for damage."""
        return tuple(sign for sign in self.signs if sign.ratio > 1)

    @property
    def verdict(self) -> str:
        """In a few words."""
        if self.chance is None:
            return "nothing was assumed here"
        if self.found_sqft and not self.pointed:
            return "missed: no sign pointed to it"
        if self.found_sqft and self.at_least is not None and self.at_least < RARE:
            return "more than expected"
        if not self.found_sqft and self.chance >= LIKELY:
            return "expected, not found"
        return "within what was expected"


def compared(
    openings: Iterable[Opened],
    decisions: Mapping[str, SurfaceDecision],
    names: Mapping[str, str],
    groups: Mapping[str, str],
) -> tuple[Compared, ...]:
    """One row for each opened surface, in the order in which they were opened.

    ``names`` are the surfaces' names, ``groups`` the group of each kind of sign.
    """
    by_surface: dict[str, list[Opened]] = {}
    for one in openings:
        by_surface.setdefault(one.surface_id, []).append(one)
    return tuple(
        _one(surface_id, opened, decisions.get(surface_id), names, groups)
        for surface_id, opened in by_surface.items()
    )


def chance_of_at_least(decision: SurfaceDecision, share: float) -> float:
    """How likely a bad share of ``share`` or more was thought of the unseen part."""
    if share <= 0:
        return 1.0
    unseen = decision.unseen
    return unseen.p * sum(weight for middle, weight in unseen.slices if middle >= share)


def _one(
    surface_id: str,
    opened: Sequence[Opened],
    decision: SurfaceDecision | None,
    names: Mapping[str, str],
    groups: Mapping[str, str],
) -> Compared:
    area = sum(one.opened_sqft for one in opened)
    bad = sum(one.bad_sqft for one in opened)
    if decision is not None:
        area = min(area, max(0.0, decision.area_sqft - decision.damaged_sqft)) or area
    share = min(1.0, bad / area)
    return Compared(
        surface_id=surface_id,
        name=names.get(surface_id, surface_id),
        openings=tuple(one.number for one in opened),
        opened_sqft=area,
        found_sqft=bad,
        found=tuple(dict.fromkeys(kind for one in opened for kind in one.found)),
        seen_sqft=decision.damaged_sqft if decision else 0.0,
        prior=decision.prior if decision else None,
        chance=decision.unseen.p if decision else None,
        expected_sqft=decision.unseen.mean * area if decision else 0.0,
        at_least=chance_of_at_least(decision, share) if decision else None,
        signs=tuple(
            Sign(piece.kind, groups.get(piece.kind, ""), piece.text, piece.ratio)
            for piece in decision.evidence
        )
        if decision
        else (),
    )
