"""The scope as it would be after some steps, priced and drawn again only where it differs."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import dataclass, field, replace

from leanto.checklist.model import Caution
from leanto.cost.build_up import price_lines
from leanto.cost.risk import OwnRisk, own_risk
from leanto.cost.simulation import Draws, HiddenDraw
from leanto.decision.courses import Book
from leanto.decision.decide import hidden_draws
from leanto.decision.model import Decision
from leanto.decision.whole import turned, whole_scope
from leanto.rules.finding import Finding
from leanto.scope.edits import Edits, edited
from leanto.scope.item import RepairItem, Scope
from leanto.scope.mark import Mark

Parts = tuple[Mapping[str, OwnRisk], Mapping[str, HiddenDraw]]


@dataclass(frozen=True, slots=True)
class Change:
    """What a step changes: lines left out, lines by the owner, surfaces with the other course."""

    left_out: frozenset[str] = frozenset()
    by_owner: frozenset[str] = frozenset()
    turned: frozenset[str] = frozenset()

    def also(self, other: Change) -> Change:
        return Change(
            self.left_out | other.left_out,
            self.by_owner | other.by_owner,
            self.turned | other.turned,
        )


@dataclass(frozen=True)
class Plan:
    """Everything needed to say what the scope costs after a change."""

    book: Book
    findings: tuple[Finding, ...]
    decision: Decision
    edits: Edits
    cautions: Mapping[str, Caution]
    _priced: dict[tuple[object, ...], tuple[OwnRisk, ...]] = field(default_factory=dict)
    _scopes: dict[frozenset[str], Scope] = field(default_factory=dict)

    def items(self, change: Change) -> tuple[RepairItem, ...]:
        return tuple(
            replace(item, mark=Mark.BY_OWNER) if item.id in change.by_owner else item
            for item in self._scope(change).items
            if item.id not in change.left_out
        )

    def _scope(self, change: Change) -> Scope:
        """The scope with the courses turned, built once for each set of turned surfaces."""
        if change.turned not in self._scopes:
            self._scopes[change.turned] = edited(
                whole_scope(self.findings, self.decided(change), self.book),
                self.edits,
                self.book.works,
                self.book.surfaces,
                self.cautions,
            )
        return self._scopes[change.turned]

    def decided(self, change: Change) -> Decision:
        decision = self.decision
        for surface_id in sorted(change.turned):
            decision = turned(decision, surface_id)
        return decision

    def parts(self, change: Change) -> Parts:
        """Lines by repair item and hidden damage by surface, after the change."""
        by_work: dict[str, list[RepairItem]] = {}
        for item in self.items(change):
            by_work.setdefault(item.work.id, []).append(item)
        lines = {risk.key: risk for items in by_work.values() for risk in self._risks(items)}
        hidden = hidden_draws(self.decided(change), self.book.shared)
        return lines, {one.key: one for one in hidden}

    def mean(self, change: Change) -> float:
        """Expected dollars of lines and hidden damage."""
        lines, hidden = self.parts(change)
        return self.lines_mean(lines.values()) + self.hidden_mean(hidden.values())

    def lines_mean(self, lines: Iterable[OwnRisk]) -> float:
        shared = self.book.shared
        labor = shared.wages.mean * shared.crew.mean
        return sum(
            labor * line.labor.mean + shared.prices.mean * line.materials.mean for line in lines
        )

    def hidden_mean(self, hidden: Iterable[HiddenDraw]) -> float:
        wages = self.book.shared.wages.mean
        return sum(wages * one.p * one.a / (one.a + one.b) * one.all_bad_usd for one in hidden)

    def _risks(self, items: list[RepairItem]) -> tuple[OwnRisk, ...]:
        """The lines of one work, which share its minimum charge; each set of them priced once."""
        key = tuple(
            (item.id, item.mark, item.quantity, item.bought, item.poor_access) for item in items
        )
        if key not in self._priced:
            lines = price_lines(items, self.book.prices, self.book.factors)
            self._priced[key] = tuple(own_risk(line) for line in lines)
        return self._priced[key]


def redrawn(draws: Draws, before: Parts, after: Parts) -> Draws:
    """The draws of one state of the scope made into those of another."""
    (old_lines, old_hidden), (new_lines, new_hidden) = before, after
    gone = [risk for key, risk in old_lines.items() if new_lines.get(key) != risk]
    come = [risk for key, risk in new_lines.items() if old_lines.get(key) != risk]
    healed = [one for key, one in old_hidden.items() if new_hidden.get(key) != one]
    fresh = [one for key, one in new_hidden.items() if old_hidden.get(key) != one]
    return draws.minus(gone, healed).plus(come, fresh)
