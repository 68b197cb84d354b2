"""Findings: what observations mean, with the reasons kept."""

from __future__ import annotations

from dataclasses import dataclass, replace
from functools import cached_property

from leanto.building.rectangle import Rectangle
from leanto.record.observation import ObservationKey, Photo
from leanto.rules.model import Decides, Urgency, WorkCall


@dataclass(frozen=True, slots=True)
class CalledWork:
    """A repair item that a finding calls for, before anything is merged."""

    call: WorkCall
    quantity: float | None
    """The value of the call's expression; None when it takes the quantity from the zone."""


@dataclass(frozen=True, slots=True)
class Finding:
    """What one observation means by one rule."""

    id: str
    """``<rule>@<observation key>``."""
    rule_id: str
    observation: ObservationKey
    station_name: str
    surface_id: str | None
    zone: Rectangle | None
    """As entered; None when the whole surface is meant, or no surface."""
    text: str
    advice: str
    urgency: Urgency
    danger: bool
    note: str
    photos: tuple[Photo, ...]
    work: tuple[CalledWork, ...]
    hidden: str | None
    decides: Decides | None
    caution: tuple[str, ...]
    watch: str
    source: str
    cause_id: str | None = None
    """The finding it follows from."""
    also: tuple[Finding, ...] = ()
    """The findings that it replaces, the most urgent first."""

    @property
    def parts(self) -> tuple[Finding, ...]:
        """The finding itself and those that it replaces."""
        return (self, *self.also)

    @property
    def besides(self) -> tuple[str, ...]:
        """What the replaced findings say, each sentence once."""
        said = dict.fromkeys(part.text for part in self.also)
        return tuple(text for text in said if text != self.text)


@dataclass(frozen=True, slots=True)
class OpenQuestion:
    """Something the walk could not settle, and who can."""

    finding_id: str | None
    observation: ObservationKey
    text: str
    ask: str


@dataclass(frozen=True, slots=True)
class Undecided:
    """A rule that could not be judged for want of a measure; never the same as passed."""

    rule_id: str
    observation: ObservationKey
    missing: str


@dataclass(frozen=True)
class Judged:
    """Everything the rules had to say about one walk."""

    findings: tuple[Finding, ...]
    """Most urgent first; effects directly behind their causes."""
    questions: tuple[OpenQuestion, ...]
    undecided: tuple[Undecided, ...]

    @cached_property
    def grounds(self) -> tuple[Finding, ...]:
        """Every finding on its own, each with the id it is told under; what is told comes last."""
        return tuple(
            replace(part, id=finding.id, also=())
            for finding in self.findings
            for part in (*finding.also, finding)
        )
