"""From effect to cause: which finding each finding follows from, and the order they read in."""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import replace

from leanto.rules.circle import circle_in
from leanto.rules.compiled import CompiledRule
from leanto.rules.finding import Finding
from leanto.rules.nearness import Neighbors

_Rank = tuple[tuple[int, int, int], int, int, str]

CLIMBED_FT = 3.0
"""Nothing that lies this far below an effect on the same wall has wetted it. Water wicks to about
2 ft, ANSI/IICRC S500, from memory."""


def with_causes(
    findings: Sequence[Finding],
    rules: Mapping[str, CompiledRule],
    around: Mapping[str, Neighbors],
) -> tuple[Finding, ...]:
    """The findings, each with the nearest finding that explains it.

    Of equally near ones the more urgent counts, then the one that the rule lists first, then the
    lower id. A finding that replaces others explains what they explain, and is explained by what
    explains them, unless it is itself what they follow from. No finding follows from itself by any
    detour; what needs a cause is given one first. ``around`` is by station id.
    """
    by_rule: dict[str, list[tuple[Finding, str]]] = {}
    for finding in findings:
        for part in finding.parts:
            by_rule.setdefault(part.rule_id, []).append((part, finding.id))
    causes: dict[str, str] = {}
    for effect in sorted(findings, key=lambda f: (not needs_cause(f, rules), f.id)):
        explaining = (
            cause
            for part in (effect, *_explaining(effect, rules))
            for cause in _candidates(
                part, rules[part.rule_id], by_rule, around[part.observation.station]
            )
        )
        for cause in explaining:
            if not _follows(cause, effect.id, causes):
                causes[effect.id] = cause
                break
    return tuple(replace(finding, cause_id=causes.get(finding.id)) for finding in findings)


def causing_circle(rules: Iterable[CompiledRule]) -> tuple[str, ...]:
    """Rules each of which may be the cause of the next, round to the first; empty without any."""
    graph = {
        rule.id: sorted({name for search in rule.rule.causes for name in search.rules})
        for rule in rules
    }
    return circle_in(graph)


def needs_cause(finding: Finding, rules: Mapping[str, CompiledRule]) -> bool:
    """True when the finding, or one that it replaces, is an effect that wants its cause."""
    own = rules[finding.rule_id].rule
    return own.needs_cause or any(
        rules[part.rule_id].rule.needs_cause for part in unexplained(finding, rules)
    )


def unexplained(finding: Finding, rules: Mapping[str, CompiledRule]) -> tuple[Finding, ...]:
    """The findings that it replaces and that do not follow from itself by their own rule."""
    return tuple(
        part
        for part in finding.also
        if not any(finding.rule_id in of.rules for of in rules[part.rule_id].rule.causes)
    )


def _explaining(finding: Finding, rules: Mapping[str, CompiledRule]) -> tuple[Finding, ...]:
    """The findings that it replaces whose causes are its own causes as well.

    Where its own rule names no cause, only those that need one: it may be where all began.
    """
    has_causes = bool(rules[finding.rule_id].rule.causes)
    return tuple(
        part
        for part in unexplained(finding, rules)
        if has_causes or rules[part.rule_id].rule.needs_cause
    )


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
    by_rule: Mapping[str, Sequence[tuple[Finding, str]]],
    around: Neighbors,
) -> list[str]:
    """Ids of the findings that would explain the effect, the best explanation first."""
    ranks: dict[str, _Rank] = {}
    listed = 0
    for search in rule.rule.causes:
        within = around.within(search.where)
        for rule_id in search.rules:
            listed += 1
            for cause, told_as in by_rule.get(rule_id, ()):
                station = cause.observation.station
                if cause.id == effect.id or not (within is None or station in within):
                    continue
                close = around.closeness(effect.zone, station, cause.zone)
                if search.where == "here" and close.below_ft > CLIMBED_FT:
                    continue
                rank = close.order, cause.urgency.rank, listed, cause.id
                ranks[told_as] = min(rank, ranks.get(told_as, rank))
    return sorted(ranks, key=lambda cause_id: ranks[cause_id])


def _follows(finding_id: str | None, cause_id: str, causes: Mapping[str, str]) -> bool:
    """True when the finding is the cause, or follows from it by any number of steps."""
    while finding_id is not None:
        if finding_id == cause_id:
            return True
        finding_id = causes.get(finding_id)
    return False
