"""A call for work: one wish for one repair item at one place, before anything is merged."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass

from leanto.building.rectangle import Rectangle
from leanto.rules.finding import Finding
from leanto.rules.model import RESERVED_WORKS, Take


@dataclass(frozen=True, slots=True)
class Call:
    """Who wants which work where; either ``take`` or ``quantity`` says how much."""

    work: str
    surface_id: str | None
    """None at the site, the wiring and the feed."""
    zone: Rectangle | None = None
    """None when the whole surface is meant."""
    take: Take | None = None
    quantity: float | None = None
    largest: bool = False
    """Of several quantities the largest counts, not the sum."""
    widen_ft: float = 0.0
    finding_id: str | None = None
    behind_lining: bool = False
    poor_access: bool = False


def calls_of(findings: Iterable[Finding]) -> tuple[Call, ...]:
    """Every call of the findings, the reserved works left out: those are for gut or keep."""
    return tuple(
        Call(
            work=called.call.work,
            surface_id=finding.surface_id,
            zone=finding.zone,
            take=called.call.take,
            quantity=called.quantity,
            largest=called.call.merge == "largest",
            widen_ft=called.call.widen_ft,
            finding_id=finding.id,
            behind_lining=called.call.behind_lining,
        )
        for finding in findings
        for called in finding.work
        if called.call.work not in RESERVED_WORKS
    )
