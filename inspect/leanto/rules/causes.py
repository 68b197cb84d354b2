"""From effect to cause: which finding each finding follows from, and the order they read in."""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import replace

from leanto.building.rectangle import Rectangle
from leanto.rules.compiled import CompiledRule
from leanto.rules.finding import Finding
from leanto.rules.nearness import Distance, Neighbors

_Nearness = tuple[Distance, float, int, str]


def with_causes(
    findings: Sequence[Finding],
    rules: Mapping[str, CompiledRule],
    around: Mapping[str, Neighbors],
) -> tuple[Finding, ...]:
    """The findings, each with the nearest finding that explains it.

    Of equally near ones the more urgent counts, then the lower id. No finding follows from
    itself by any detour; what needs a cause is given one first. ``around`` is by station id.
    """
    by_rule: dict[str, list[Finding]] = {}
    for finding in findings:
        by_rule.setdefault(finding.rule_id, []).append(finding)
    causes: dict[str, str] = {}
    for effect in sorted(findings, key=lambda f: (not rules[f.rule_id].rule.needs_cause, f.id)):
        rule = rules[effect.rule_id]
        for cause in _candidates(effect, rule, by_rule, around[effect.observation.station]):
            if not _follows(cause, effect.id, causes):
                causes[effect.id] = cause
                break
    return tuple(replace(finding, cause_id=causes.get(finding.id)) for finding in findings)


def in_chains(findings: Iterable[Finding], order: Mapping[str, int]) -> tuple[Finding, ...]:
    """Chains of cause and effects, those with danger first, then the most urgent.

    Effects stand directly behind their cause. ``order`` is the place of each station in the walk.
    """
    effects: dict[str | None, list[Finding]] = {}
    for finding in findings:
        effects.setdefault(finding.cause_id, []).append(finding)
    weights: dict[str, tuple[bool, int]] = {}

    def weight(finding: Finding) -> tuple[bool, int]:
        """The least of the chain from this finding down; danger and urgency are low."""
        if finding.id not in weights:
            own = (not finding.danger, finding.urgency.rank)
            weights[finding.id] = min([own, *map(weight, effects.get(finding.id, ()))])
        return weights[finding.id]

    def place(finding: Finding) -> tuple[tuple[bool, int], int, str]:
        return weight(finding), order.get(finding.observation.station, len(order)), finding.id

    ordered: list[Finding] = []
    waiting = sorted(effects.get(None, ()), key=place, reverse=True)
    while waiting:
        finding = waiting.pop()
        ordered.append(finding)
        waiting += sorted(effects.get(finding.id, ()), key=place, reverse=True)
    return tuple(ordered)


def _candidates(
    effect: Finding,
    rule: CompiledRule,
    by_rule: Mapping[str, Sequence[Finding]],
    around: Neighbors,
) -> list[str]:
    """Ids of the findings that would explain the effect, the nearest first."""
    near: dict[str, _Nearness] = {}
    for search in rule.rule.causes:
        within = around.within(search.where)
        for rule_id in search.rules:
            for cause in by_rule.get(rule_id, ()):
                station = cause.observation.station
                if cause.id != effect.id and (within is None or station in within):
                    distance = around.distance(station)
                    gap = gap_ft(effect.zone, cause.zone) if distance is Distance.SAME else 0.0
                    near[cause.id] = (distance, gap, cause.urgency.rank, cause.id)
    return sorted(near, key=lambda cause_id: near[cause_id])


def gap_ft(one: Rectangle | None, other: Rectangle | None) -> float:
    """The gap between two zones of one surface; 0 when they touch or one is the whole surface."""
    if one is None or other is None:
        return 0.0
    across = max(0.0, one.left_ft - other.right_ft, other.left_ft - one.right_ft)
    up = max(0.0, one.bottom_ft - other.top_ft, other.bottom_ft - one.top_ft)
    return float((across**2 + up**2) ** 0.5)


def _follows(finding_id: str | None, cause_id: str, causes: Mapping[str, str]) -> bool:
    """True when the finding is the cause, or follows from it by any number of steps."""
    while finding_id is not None:
        if finding_id == cause_id:
            return True
        finding_id = causes.get(finding_id)
    return False
