"""What speaks for damage behind a lining that cannot be seen."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from decimal import Decimal

from leanto.building.relations import above, other_face
from leanto.building.surface import Surface
from leanto.decision.hidden import HiddenFile, HiddenKind
from leanto.decision.model import Evidence
from leanto.money import Spread, exact
from leanto.rules.finding import Finding


def evidence_for(
    surface: Surface,
    surfaces: Mapping[str, Surface],
    findings: Iterable[Finding],
    hidden: HiddenFile,
    reached: bool,
) -> tuple[Evidence, ...]:
    """The evidence on a lined surface: from each group of causes only the strongest.

    Findings count when they are on the surface, on the other face of its wall, or on what is above.
    """
    other = other_face(surface, surfaces.values())
    near = {surface.id} | ({other.id} if other else set())
    over = {found.id for found in above(surface, surfaces.values())}
    kinds = {kind.id: kind for kind in (*hidden.kinds, hidden.no_access)}
    told: dict[str, list[str]] = {}
    for finding in findings:
        if finding.hidden is None or finding.surface_id is None:
            continue
        from_above = finding.surface_id in over and kinds[finding.hidden].falls
        if finding.surface_id in near or from_above:
            told.setdefault(finding.hidden, []).append(finding.id)
    if not reached:
        told.setdefault(hidden.no_access.id, [])
    strongest: dict[str, HiddenKind] = {}
    for kind_id in told:
        kind = kinds[kind_id]
        held = strongest.get(kind.group)
        if held is None or (kind.likely, kind.id) > (held.likely, held.id):
            strongest[kind.group] = kind
    if not strongest:
        return (_evidence(hidden.base, ()),)
    return tuple(_evidence(kind, tuple(told[kind.id])) for kind in strongest.values())


def combined_share(evidence: Iterable[Evidence]) -> Spread:
    """The damaged share of what cannot be seen: 1 - the product of (1 - share) over the evidence.

    Taken as if the groups of causes were independent of each other.
    """
    clean = [Decimal(1), Decimal(1), Decimal(1)]
    for piece in evidence:
        for index, share in enumerate((piece.share.low, piece.share.likely, piece.share.high)):
            clean[index] *= 1 - share
    return Spread(*(1 - part for part in clean))


def _evidence(kind: HiddenKind, findings: tuple[str, ...]) -> Evidence:
    share = Spread(exact(kind.low), exact(kind.likely), exact(kind.high))
    return Evidence(kind.id, kind.text, share, findings)
