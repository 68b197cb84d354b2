"""What the assessment missed, by kind of evidence and by what was found."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from leanto.contract.compared import Compared

FEW = 5
"""Surfaces below which a count says little; common practice, no source."""
FORESEEN_BY: dict[str, frozenset[str]] = {
    "rot": frozenset({"decay", "water-from-above", "water-from-below"}),
    "wet": frozenset({"water-from-above", "water-from-below"}),
    "mold": frozenset({"water-from-above", "water-from-below", "decay"}),
    "pests": frozenset({"pests"}),
}
"""Groups of signs that let each kind of damage be foreseen; common practice, no source."""
NO_SIGN = "no sign at all"


@dataclass(frozen=True, slots=True)
class ByEvidence:
    """All opened surfaces on which one kind of evidence spoke."""

    kind: str
    """As in ``hidden.yaml``; empty for surfaces without a sign."""
    text: str
    surfaces: int
    expected_in: float
    """The sum of the chances: in so many of them damage was to be expected."""
    found_in: int
    expected_sqft: float
    found_sqft: float

    @property
    def reading(self) -> str:
        """What it says about the weight of this evidence, carefully."""
        if self.surfaces < FEW:
            return "too few to tell"
        if self.found_in > self.expected_in + 1:
            return "tells more than was assumed"
        if self.found_in < self.expected_in - 1:
            return "tells less than was assumed"
        return "about as assumed"


@dataclass(frozen=True, slots=True)
class ByFound:
    """One kind of damage over all opened surfaces."""

    kind: str
    surfaces: int
    foreseen: int
    """Where a sign of the kind that goes with it was there."""
    missed_at: tuple[str, ...]
    """Names of the others."""


def by_evidence(rows: Sequence[Compared]) -> tuple[ByEvidence, ...]:
    """One row a kind of evidence, the one found on most surfaces first; those without a sign last.

    A surface with two kinds of evidence counts under both.
    """
    told: dict[str, tuple[str, list[Compared]]] = {}
    bare: list[Compared] = []
    for row in rows:
        if row.chance is None:
            continue
        if not row.signs:
            bare.append(row)
        for sign in row.signs:
            told.setdefault(sign.kind, (sign.text, []))[1].append(row)
    found = [_evidence(kind, text, held) for kind, (text, held) in told.items()]
    found.sort(key=lambda one: (-one.surfaces, one.text))
    return (*found, _evidence("", NO_SIGN, bare)) if bare else tuple(found)


def by_found(rows: Sequence[Compared]) -> tuple[ByFound, ...]:
    """One row a kind of damage that was found, the one in most places first."""
    told: dict[str, list[Compared]] = {}
    for row in rows:
        for kind in row.found:
            told.setdefault(kind, []).append(row)
    made = []
    for kind, held in told.items():
        missed = [row for row in held if not _was_foreseen(kind, row)]
        made.append(
            ByFound(kind, len(held), len(held) - len(missed), tuple(row.name for row in missed))
        )
    return tuple(sorted(made, key=lambda one: (-one.surfaces, one.kind)))


def _evidence(kind: str, text: str, rows: Sequence[Compared]) -> ByEvidence:
    return ByEvidence(
        kind=kind,
        text=text,
        surfaces=len(rows),
        expected_in=sum(row.chance or 0.0 for row in rows),
        found_in=sum(row.found_sqft > 0 for row in rows),
        expected_sqft=sum(row.expected_sqft for row in rows),
        found_sqft=sum(row.found_sqft for row in rows),
    )


def _was_foreseen(kind: str, row: Compared) -> bool:
    groups = FORESEEN_BY.get(kind, frozenset())
    return any(sign.group in groups for sign in row.pointed)
