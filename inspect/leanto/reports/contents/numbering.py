"""The numbers that findings and repair items carry in every report of one assessment."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass

from leanto.assessment import Assessment
from leanto.record.observation import ObservationKey
from leanto.rules.finding import Finding
from leanto.scope.item import RepairItem


@dataclass(frozen=True, slots=True)
class Numbering:
    findings: dict[str, int]
    """1, 2, 3 ... by finding id, in the order they are read."""
    seen_under: dict[str, int]
    """By finding id the number of the first finding of the same observation: its place, note and
    pictures stand there."""
    items: dict[str, int]
    """Line numbers by repair item id, in order of work; alternates go on after the last line."""

    def of_findings(self, ids: Iterable[str]) -> str:
        """``3, 7``: the numbers of findings in order; empty when there are none."""
        return in_order(self.findings[one] for one in ids if one in self.findings)

    def of_items(self, items: Iterable[RepairItem]) -> str:
        return in_order(self.items[item.id] for item in items)


def numbering(assessment: Assessment) -> Numbering:
    found, scope = assessment.judged.findings, assessment.scope
    first: dict[ObservationKey, int] = {}
    for at, finding in enumerate(found, start=1):
        first.setdefault(finding.observation, at)
    return Numbering(
        findings={finding.id: at for at, finding in enumerate(found, start=1)},
        seen_under={finding.id: first[finding.observation] for finding in found},
        items={item.id: at for at, item in enumerate((*scope.items, *scope.alternates), start=1)},
    )


def chains(findings: Iterable[Finding]) -> tuple[tuple[tuple[Finding, int], ...], ...]:
    """The findings in the order given, cut before every first cause; each with the number of
    causes above it."""
    found: list[list[tuple[Finding, int]]] = []
    depths: dict[str, int] = {}
    for finding in findings:
        above = depths.get(finding.cause_id or "")
        depths[finding.id] = 0 if above is None else above + 1
        if above is None:
            found.append([])
        found[-1].append((finding, depths[finding.id]))
    return tuple(tuple(chain) for chain in found)


def in_order(numbers: Iterable[int]) -> str:
    """``3, 7, 12``: each number once."""
    return ", ".join(str(number) for number in sorted(set(numbers)))


def in_ranges(numbers: Iterable[int]) -> str:
    """``3, 7-9, 12``: each number once, three or more in a row as a range."""
    runs: list[list[int]] = []
    for number in sorted(set(numbers)):
        if runs and number == runs[-1][-1] + 1:
            runs[-1].append(number)
        else:
            runs.append([number])
    return ", ".join(
        f"{run[0]}-{run[-1]}" if len(run) > 2 else ", ".join(map(str, run)) for run in runs
    )
