"""One observation, one main finding: what a finding says for others is not told twice."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Iterator, Mapping, Sequence
from dataclasses import replace

from leanto.rules.circle import circle_in
from leanto.rules.compiled import CompiledRule
from leanto.rules.finding import Finding
from leanto.rules.model import Decides, Replacement

_PLACES: Mapping[str, Callable[[Finding], object]] = {
    "answer": lambda finding: finding.observation,
    "place": lambda finding: finding.observation.station,
    "anywhere": lambda finding: None,
}
"""What two findings share that one may tell for the other."""


def with_replaced(
    findings: Sequence[Finding], rules: Mapping[str, CompiledRule]
) -> tuple[Finding, ...]:
    """The findings that are told, each holding those that it replaces.

    It takes on the most urgent of their urgencies, their danger, cautions and, on the same
    surface, what they decide; where it has nothing to watch, what one of its own answer watches.
    The nearest finding replaces, of equally near ones the first in the
    order given.
    """
    told_by: dict[tuple[str, object], list[int]] = {}
    for index, finding in enumerate(findings):
        for place in _PLACES.values():
            told_by.setdefault((finding.rule_id, place(finding)), []).append(index)
    teller: dict[int, tuple[int, int]] = {}
    for index, finding in enumerate(findings):
        for of in rules[finding.rule_id].rule.replaces:
            for other in _replaced(index, of, findings, told_by):
                rank = _apart(finding, findings[other]), index
                teller[other] = min(rank, teller.get(other, rank))
    told: dict[int, list[Finding]] = {}
    for index in range(len(findings)):
        first = index
        while first in teller:
            first = teller[first][1]
        told.setdefault(first, []).append(findings[index])
    return tuple(
        _telling(findings[index], told[index])
        for index in range(len(findings))
        if index not in teller
    )


def replacing_circle(rules: Iterable[CompiledRule]) -> tuple[str, ...]:
    """Rules that replace each other in a circle; empty when none do. Naming itself is no circle."""
    graph = {
        rule.id: sorted({name for of in rule.rule.replaces for name in of.rules} - {rule.id})
        for rule in rules
    }
    return circle_in(graph)


def _replaced(
    index: int,
    of: Replacement,
    findings: Sequence[Finding],
    told_by: Mapping[tuple[str, object], Sequence[int]],
) -> Iterator[int]:
    one = findings[index]
    within = _PLACES[of.where](one)
    for rule_id in of.rules:
        for other in told_by.get((rule_id, within), ()):
            if rule_id != one.rule_id or index < other:
                yield other


def _apart(one: Finding, other: Finding) -> int:
    """0 for the same answer, 1 for the same place, 2 for another place."""
    if one.observation == other.observation:
        return 0
    return 1 if one.observation.station == other.observation.station else 2


def _telling(finding: Finding, parts: Iterable[Finding]) -> Finding:
    also = tuple(
        sorted(
            (part for part in parts if part.id != finding.id),
            key=lambda part: (not part.danger, part.urgency.rank),
        )
    )
    if not also:
        return finding
    together = (finding, *also)
    return replace(
        finding,
        also=also,
        urgency=min((part.urgency for part in together), key=lambda urgency: urgency.rank),
        danger=any(part.danger for part in together),
        caution=tuple(dict.fromkeys(name for part in together for name in part.caution)),
        decides=_strongest(p.decides for p in together if p.surface_id == finding.surface_id),
        watch=next(
            (part.watch for part in together if part.watch and _apart(finding, part) == 0), ""
        ),
    )


def _strongest(decisions: Iterable[Decides | None]) -> Decides | None:
    """The first that says gut, else the first."""
    made = [decides for decides in decisions if decides is not None]
    return next((one for one in made if one.course == "gut"), made[0] if made else None)
