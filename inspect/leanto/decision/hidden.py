"""What may be bad where nobody can see, and the works of both courses: ``checklists/hidden.yaml``.

Every chance, ratio and share in it is a planning assumption that an owner may change.
"""

from __future__ import annotations

from typing import Annotated, Self

from pydantic import Field, model_validator

from leanto.building.kinds import Foundation, Lining
from leanto.checklist.model import Identifier
from leanto.cost.price import Three
from leanto.strict import Strict

Chance = Annotated[float, Field(ge=0, le=1)]
Ratio = Annotated[float, Field(gt=0, le=1000)]
"""How many times likelier a sign is where there is damage than where there is none."""
Reference = Annotated[str, Field(min_length=3, max_length=300)]


class AgeRatio(Strict):
    up_to_years: Annotated[float, Field(gt=0)]
    ratio: Ratio


class Prior(Strict):
    """The chance of damage behind a lining before anything was seen."""

    chance: Chance
    """For a lining, an age and a foundation whose ratio is 1."""
    linings: dict[Lining, Ratio] = Field(default_factory=dict)
    foundations: dict[Foundation, Ratio] = Field(default_factory=dict)
    ages: Annotated[tuple[AgeRatio, ...], Field(min_length=1)]
    """Youngest first; the last one also holds for older buildings."""
    source: Reference

    @model_validator(mode="after")
    def _youngest_first(self) -> Self:
        years = [band.up_to_years for band in self.ages]
        if years != sorted(set(years)):
            raise ValueError("ages must go from the youngest to the oldest")
        return self


class Extent(Strict):
    """How much of the unseen part is bad when there is damage: Beta(a, b), mean a / (a + b)."""

    a: Annotated[float, Field(ge=1, le=50)]
    b: Annotated[float, Field(ge=1, le=50)]
    source: Reference


class HiddenKind(Strict):
    """A kind of evidence for, or against, damage behind a lining."""

    id: Identifier
    group: Identifier
    """Evidence of one cause counts once: from a group only the strongest."""
    text: Annotated[str, Field(max_length=120)]
    ratio: Ratio | None = None
    """Over 1 speaks for damage, under 1 against it."""
    is_proof: bool = False
    """True when damage was seen by opening: the chance is then 1, and no ratio is given."""
    is_clean_hole: bool = False
    """True for a test hole that showed none: its ratio follows from what a hole shows, see
    ``decision.opening``, so that looking and planning to look reckon alike."""
    falls: bool = False
    """True when it also speaks for the surfaces below the one where it was found."""
    source: Reference

    @model_validator(mode="after")
    def _ratio_or_proof(self) -> Self:
        if [self.ratio is not None, self.is_proof, self.is_clean_hole].count(True) != 1:
            raise ValueError("give one of ratio, is_proof: true and is_clean_hole: true")
        return self


class HoleTerms(Strict):
    """What one opening costs and how likely it shows the damage when there is some."""

    work: Identifier
    shows_at_evidence: Chance
    """Made at the place that the evidence points to; elsewhere it follows from the extent."""
    source: Reference


class HeatTerms(Strict):
    """What heat that a kept lining lets through costs its owner."""

    reached_closed: Chance
    """Share of the closed bays that blown fill reaches."""
    degree_hours: Three
    """A year: hours that the room is heated, times how much warmer it is than outdoors, deg F."""
    usd_per_kwh: Three
    """Heat as the room gets it."""
    years: Annotated[float, Field(gt=0, le=50)]
    """How far ahead the owner looks."""
    source: Reference


class LiningWork(Strict):
    """The works of both courses for one lining."""

    lining: Lining
    strip: Identifier
    patch: Identifier
    """Cut out and patch, per sf."""
    line: Identifier
    """New lining, per sf."""
    finish: Identifier
    """Finish of the new lining, per sf."""


class HiddenFile(Strict):
    prior: Prior
    extent: Extent
    kinds: tuple[HiddenKind, ...]
    not_reached: Identifier
    """The kind that counts for a surface nobody walked."""
    test_hole: HoleTerms
    linings: tuple[LiningWork, ...]
    repair_open: Identifier
    """Repair of damaged framing and sheathing behind the lining, per sf."""
    insulate_open: Identifier
    insulate_closed: Identifier
    wire_open: Identifier
    wire_closed: Identifier
    wire_ft_per_sqft: Annotated[float, Field(gt=0, le=5)]
    wire_source: str
    protect: Identifier
    """Set-up of a gutted room, once a building."""
    heat: HeatTerms | None = None
    """Left out, heat is no part of the decision."""

    @model_validator(mode="after")
    def _not_reached_is_a_kind(self) -> Self:
        if self.not_reached not in {kind.id for kind in self.kinds}:
            raise ValueError(f"not_reached names {self.not_reached!r}, which is none of the kinds")
        return self
