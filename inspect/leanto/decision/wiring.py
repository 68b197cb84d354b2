"""New cable: on which surfaces it is wanted, and how much of it."""

from __future__ import annotations

from collections.abc import Iterable, Mapping

from leanto.building.kinds import PlaceKind
from leanto.building.surface import Surface
from leanto.decision.hidden import HiddenFile
from leanto.rules.finding import Finding
from leanto.rules.model import NEW_WIRING
from leanto.scope.call import Call


def wiring_calls(
    findings: Iterable[Finding], surfaces: Mapping[str, Surface], hidden: HiddenFile
) -> tuple[Call, ...]:
    """New cable on the surfaces without a lining, where it is called for."""
    wanted = wants_wiring(findings, surfaces)
    return tuple(
        Call(hidden.wire_open, surface.id, quantity=wired_ft(surface, hidden))
        for surface in surfaces.values()
        if surface.id in wanted and not surface.is_lined
    )


def wired_ft(surface: Surface, hidden: HiddenFile) -> float:
    return surface.net_area_sqft * hidden.wire_ft_per_sqft


def wants_wiring(findings: Iterable[Finding], surfaces: Mapping[str, Surface]) -> frozenset[str]:
    """Ids of the surfaces whose cable is to be renewed: walls inside and ceilings."""
    carry = {
        surface.id
        for surface in surfaces.values()
        if surface.kind in (PlaceKind.WALL_INSIDE, PlaceKind.CEILING)
    }
    wanted: set[str] = set()
    for finding in findings:
        if any(called.call.work == NEW_WIRING for called in finding.work):
            wanted |= carry if finding.surface_id is None else {finding.surface_id} & carry
    return frozenset(wanted)
