"""What has been judged so far, and whether a rule made a finding at some place."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import dataclass, field

from leanto.building.rectangle import Rectangle
from leanto.record.observation import ObservationKey
from leanto.rules.finding import Finding, Undecided
from leanto.rules.functions import (
    FOUND_ABOVE,
    FOUND_ANYWHERE,
    FOUND_BELOW,
    FOUND_BESIDE,
    FOUND_HERE,
)
from leanto.rules.nearness import Neighbors, Where
from leanto.rules.terms import Searches
from leanto.rules.undecidable import MissingFact

_SEARCHED: Mapping[str, Where] = {
    FOUND_HERE: "here",
    FOUND_ABOVE: "above",
    FOUND_BESIDE: "beside",
    FOUND_ANYWHERE: "anywhere",
}


@dataclass(frozen=True, slots=True)
class Said:
    """What one rule says of one observation."""

    rule_id: str
    observation: ObservationKey
    finding: Finding | None
    missing: tuple[str, ...]
    """What would have to be known to judge to the end, each time it was wanted."""
    missing_of_rule: str
    """What the rule itself lacked, so that it could not be judged; empty where it could."""


@dataclass(slots=True)
class Outcome:
    """The findings and what could not be judged, rule by rule."""

    findings: list[Finding] = field(default_factory=list)
    undecided: dict[Undecided, None] = field(default_factory=dict)
    found_at: dict[str, dict[str, list[Rectangle | None]]] = field(default_factory=dict)
    """The zones of what a rule found, by rule and station id."""
    undecided_at: dict[str, dict[str, str]] = field(default_factory=dict)
    """What is missing, by rule and station id."""

    def take(self, said: Said) -> None:
        """Adds what a rule says."""
        for missing in said.missing:
            self.undecided[Undecided(said.rule_id, said.observation, missing)] = None
        if said.missing_of_rule:
            here = self.undecided_at.setdefault(said.rule_id, {})
            here.setdefault(said.observation.station, said.missing_of_rule)
        if said.finding is not None:
            self.add(said.finding)

    def add(self, finding: Finding) -> None:
        self.findings.append(finding)
        here = self.found_at.setdefault(finding.rule_id, {})
        here.setdefault(finding.observation.station, []).append(finding.zone)

    def search(self, rule_id: str, within: frozenset[str] | None) -> bool:
        """Whether the rule made a finding there; MissingFact when it could not be judged there."""
        found = self.found_at.get(rule_id, {})
        if found if within is None else not within.isdisjoint(found):
            return True
        self._refuse_undecided(rule_id, within)
        return False

    def search_below(self, rule_id: str, around: Neighbors, zone: Rectangle | None) -> bool:
        """Whether the rule made a finding that water from that zone of a roof could wet."""
        for station_id, zones in self.found_at.get(rule_id, {}).items():
            if station_id in around.below and any(
                around.covers(zone, station_id, other) for other in zones
            ):
                return True
        self._refuse_undecided(rule_id, around.below)
        return False

    def _refuse_undecided(self, rule_id: str, within: frozenset[str] | None) -> None:
        for station_id, missing in self.undecided_at.get(rule_id, {}).items():
            if within is None or station_id in within:
                raise MissingFact(missing)


def searches(around: Neighbors, outcome: Outcome) -> Searches:
    """The searches of one station that do not depend on a zone."""

    def search(where: Where) -> Callable[[str], bool]:
        return lambda rule_id: outcome.search(rule_id, around.within(where))

    return {function: search(where) for function, where in _SEARCHED.items()}


def searches_of_zone(
    shared: Searches, around: Neighbors, outcome: Outcome, zone: Rectangle | None
) -> Searches:
    """Those and the search below the zone of one observation."""
    return {
        **shared,
        FOUND_BELOW: lambda rule_id: outcome.search_below(rule_id, around, zone),
    }
