"""What speaks for damage behind a lining that cannot be seen, and the chance that follows."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import dataclass

from leanto.building.kinds import Foundation
from leanto.building.rectangle import Rectangle
from leanto.building.relations import above, other_face
from leanto.building.surface import Surface
from leanto.decision.hidden import HiddenFile, HiddenKind, Prior
from leanto.decision.model import Evidence
from leanto.decision.unseen import posterior
from leanto.rules.finding import Finding


@dataclass(frozen=True, slots=True)
class Believed:
    """What is thought of the unseen part of one surface, and why."""

    prior: float
    evidence: tuple[Evidence, ...]
    chance: float
    place: Rectangle | None
    """The zone of the strongest sign on the surface itself; None when none has one."""


def believed(
    surface: Surface,
    surfaces: Mapping[str, Surface],
    findings: Iterable[Finding],
    hidden: HiddenFile,
    *,
    reached: bool,
    age_years: float,
    foundation: Foundation,
) -> Believed:
    """The chance of damage behind a lined surface: from each group only the strongest sign.

    Findings count when they are on the surface, on the other face of its wall, or, where their
    kind falls, on what is above.
    """
    kinds = {kind.id: kind for kind in hidden.kinds}
    told = _told(surface, surfaces, findings, kinds)
    if not reached:
        told.setdefault(hidden.not_reached, [])
    strongest: dict[str, HiddenKind] = {}
    for kind_id in sorted(told):
        kind = kinds[kind_id]
        held = strongest.get(kind.group)
        if held is None or _strength(kind) > _strength(held):
            strongest[kind.group] = kind
    chosen = sorted(strongest.values(), key=lambda kind: (-_strength(kind), kind.id))
    evidence = tuple(
        Evidence(kind.id, kind.text, kind.weight, tuple(dict.fromkeys(f.id for f in told[kind.id])))
        for kind in chosen
    )
    prior = prior_chance(hidden.prior, surface, age_years, foundation)
    chance = posterior(prior, tuple(piece.ratio for piece in evidence))
    zones = [
        finding.zone
        for kind in chosen
        if kind.weight > 1
        for finding in told[kind.id]
        if finding.surface_id == surface.id and finding.zone is not None
    ]
    return Believed(prior, evidence, chance, zones[0] if zones else None)


def prior_chance(prior: Prior, surface: Surface, age_years: float, foundation: Foundation) -> float:
    """The chance of damage before anything was seen, by lining, age and foundation."""
    age = next((b.ratio for b in prior.ages if age_years <= b.up_to_years), prior.ages[-1].ratio)
    lining = prior.linings.get(surface.lining, 1.0) if surface.lining else 1.0
    return posterior(prior.chance, (age, lining, prior.foundations.get(foundation, 1.0)))


def _told(
    surface: Surface,
    surfaces: Mapping[str, Surface],
    findings: Iterable[Finding],
    kinds: Mapping[str, HiddenKind],
) -> dict[str, list[Finding]]:
    other = other_face(surface, surfaces.values())
    near = {surface.id} | ({other.id} if other else set())
    over = {found.id for found in above(surface, surfaces.values())}
    told: dict[str, list[Finding]] = {}
    for finding in findings:
        if finding.hidden is None or finding.surface_id is None:
            continue
        falls = finding.surface_id in over and kinds[finding.hidden].falls
        if finding.surface_id in near or falls:
            told.setdefault(finding.hidden, []).append(finding)
    return told


def _strength(kind: HiddenKind) -> float:
    """How far a sign moves the odds, for or against."""
    return max(kind.weight, 1 / kind.weight)
