"""What speaks for damage behind a lining that cannot be seen, and the chance that follows."""

from __future__ import annotations

import math
from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass

from leanto.building.kinds import Foundation
from leanto.building.rectangle import Rectangle
from leanto.building.relations import above, other_face
from leanto.building.surface import Surface
from leanto.decision.hidden import HiddenFile, HiddenKind, Prior
from leanto.decision.model import Evidence
from leanto.decision.opening import clean_ratio
from leanto.decision.unseen import posterior
from leanto.rules.finding import Finding


@dataclass(frozen=True, slots=True)
class Believed:
    """What is thought of the unseen part of one surface, and why."""

    prior: float
    evidence: tuple[Evidence, ...]
    chance: float
    samples: tuple[int, int]
    """Test holes where no sign is: so many showed damage, so many showed none."""
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
    place = _place(surface, told, kinds)
    signs = [
        Evidence(
            kind_id,
            kinds[kind_id].text,
            _ratio(kinds[kind_id], found, place, hidden),
            tuple(dict.fromkeys(finding.id for finding in found)),
        )
        for kind_id, found in sorted(told.items())
    ]
    strongest: dict[str, Evidence] = {}
    for sign in signs:
        held = strongest.get(kinds[sign.kind].group)
        if held is None or _strength(sign.ratio) > _strength(held.ratio):
            strongest[kinds[sign.kind].group] = sign
    evidence = tuple(sorted(strongest.values(), key=lambda one: (-_strength(one.ratio), one.kind)))
    prior = prior_chance(hidden.prior, surface, age_years, foundation)
    chance = posterior(prior, tuple(sign.ratio for sign in evidence))
    samples = (
        _samples(told, kinds, place, bad=True),
        _samples(told, kinds, place, bad=False),
    )
    return Believed(prior, evidence, chance, samples, place)


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


def _place(
    surface: Surface, told: Mapping[str, Sequence[Finding]], kinds: Mapping[str, HiddenKind]
) -> Rectangle | None:
    """The zone of the strongest sign of damage on the surface."""
    zones = [
        (-(kinds[kind_id].ratio or 0), finding.id, finding.zone)
        for kind_id, found in told.items()
        if (kinds[kind_id].ratio or 0) > 1
        for finding in found
        if finding.surface_id == surface.id and finding.zone is not None
    ]
    return min(zones)[-1] if zones else None


def _ratio(
    kind: HiddenKind, found: Iterable[Finding], place: Rectangle | None, hidden: HiddenFile
) -> float:
    """The likelihood ratio of a sign; infinite for proof."""
    if kind.is_proof:
        return math.inf
    if kind.is_clean_hole:
        holes = _zones(found)
        away = sum(not _is_at(zone, place) for zone in holes)
        ratio = clean_ratio(hidden.extent.a, hidden.extent.b, away)
        at_signs = 1 - hidden.test_hole.shows_at_evidence
        return ratio * at_signs if away < len(holes) else ratio
    assert kind.ratio is not None
    return kind.ratio


def _samples(
    told: Mapping[str, Sequence[Finding]],
    kinds: Mapping[str, HiddenKind],
    place: Rectangle | None,
    *,
    bad: bool,
) -> int:
    """How many holes away from the signs showed damage, or none."""
    return sum(
        not _is_at(zone, place)
        for kind_id, found in told.items()
        if (kinds[kind_id].is_proof if bad else kinds[kind_id].is_clean_hole)
        for zone in _zones(found)
    )


def _zones(found: Iterable[Finding]) -> list[Rectangle | None]:
    """The zone of each hole: one an observation, as one answer is one hole."""
    return list({finding.observation: finding.zone for finding in found}.values())


def _is_at(zone: Rectangle | None, place: Rectangle | None) -> bool:
    """Whether a hole was made where the signs are; without a zone it is not taken to be."""
    return zone is not None and place is not None and place.reaches_into(zone)


def _strength(ratio: float) -> float:
    """How far a sign moves the odds, for or against."""
    return math.inf if ratio == 0 else max(ratio, 1 / ratio)
