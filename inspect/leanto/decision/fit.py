"""Whether the budget holds, and the steps that would make it hold, the least regret first.

A step saves money now. Its *regret* is what it is expected to cost later, or in the owner's own
time, in dollars that would not be spent without it:

- to wait: the share by which such work grows in a year, times its expected cost. That the work
  itself must be paid later is not regret; it is put off, not lost.
- to do it alone: the owner's hours, at what an hour is worth to the owner.
- to take the other course of a surface: the heat that then is lost. What the other course brings
  up later is in the total already, and so lessens what the step saves.

Steps are put in the order of regret for each dollar saved, and taken until four in five draws of
the total stay inside the budget. Steps that turn out not to be needed are given up again.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from datetime import date
from enum import StrEnum

from leanto.checklist.model import Caution
from leanto.cost.estimate import CostLine
from leanto.cost.simulation import Distribution, Draws
from leanto.decision.plan import Change, Plan, redrawn
from leanto.decision.turns import CourseTurn, turns
from leanto.decision.waiting import may_wait
from leanto.scope.by_owner import is_offered_to_owner
from leanto.scope.item import RepairItem
from leanto.scope.mark import Mark

LEAST_USD = 100
"""A step that saves less is not worth a row."""
ENOUGH = 0.8


class StepKind(StrEnum):
    WAIT = "wait with"
    ALONE = "do alone"
    TURN = "other course"


@dataclass(frozen=True, slots=True)
class Step:
    """One way to spend less now."""

    kind: StepKind
    items: tuple[RepairItem, ...]
    """Empty for the other course of a surface."""
    change: Change
    saves_usd: float
    """Expected, against the scope as it stands."""
    regret_usd: float
    because: str
    """What the step risks or asks for, in words."""
    look_again: date | None = None
    watch: str = ""
    hours: float = 0.0
    """Of the owner's own."""
    turn: CourseTurn | None = None

    @property
    def regret_share(self) -> float:
        """Regret for each dollar saved."""
        return self.regret_usd / self.saves_usd


@dataclass(frozen=True, slots=True)
class TakenStep:
    """A step of the way into the budget, with where it leads."""

    step: Step
    saves_usd: float
    """Expected, after the steps before it."""
    p50: float
    p80: float


@dataclass(frozen=True, slots=True)
class Fit:
    """The total against the budget, as it stands and after the steps."""

    budget_usd: float | None
    p50: float
    p80: float
    chance: float | None
    """That the total stays inside the budget; None without one."""
    offers: tuple[Step, ...]
    """Everything that would save something, the least regret first."""
    taken: tuple[TakenStep, ...]
    """Empty when the budget holds already, or when there is none."""
    chance_after: float | None
    turns: tuple[CourseTurn, ...]
    """Surfaces whose other course is close, the most saved now first."""

    @property
    def holds(self) -> bool:
        """True when four in five draws stay inside the budget as it stands."""
        return self.budget_usd is not None and self.p80 <= self.budget_usd

    @property
    def can_hold(self) -> bool:
        """True when they do, or would after the steps."""
        last = self.taken[-1].p80 if self.taken else self.p80
        return self.budget_usd is not None and last <= self.budget_usd

    @property
    def alternates(self) -> tuple[Step, ...]:
        """What bidders could price apart, so that it may be left out, the most saved first."""
        apart = [step for step in self.offers if step.kind is not StepKind.ALONE]
        return tuple(sorted(apart, key=lambda step: (-step.saves_usd, step.regret_share)))

    def offered(self, kind: StepKind) -> tuple[Step, ...]:
        return tuple(step for step in self.offers if step.kind is kind)


def fit(
    plan: Plan,
    draws: Draws,
    lines: Sequence[CostLine],
    cautions: Mapping[str, Caution],
    budget_usd: float | None,
    as_of: date,
) -> Fit:
    """``draws`` are those of the scope as it stands, and ``lines`` its cost lines."""
    total = draws.total()
    close = turns(plan)
    steps = [*_waits(plan, as_of), *_alone(plan, lines, cautions), *_turned(close)]
    offers = sorted(
        (step for step in steps if step.saves_usd >= LEAST_USD),
        key=lambda step: (step.regret_share, -step.saves_usd),
    )
    taken: list[TakenStep] = []
    after = total
    if budget_usd is not None and total.at(ENOUGH) > budget_usd:
        taken, after = _way_in(plan, draws, offers, budget_usd)
    return Fit(
        budget_usd=budget_usd,
        p50=total.at(0.5),
        p80=total.at(ENOUGH),
        chance=None if budget_usd is None else total.share_under(budget_usd),
        offers=tuple(offers),
        taken=tuple(taken),
        chance_after=None if budget_usd is None else after.share_under(budget_usd),
        turns=close,
    )


def _way_in(
    plan: Plan, draws: Draws, offers: Sequence[Step], budget_usd: float
) -> tuple[list[TakenStep], Distribution]:
    way = _Way(plan, draws)
    chosen: list[Step] = []
    for step in offers:
        chosen.append(step)
        if way.total([one.change for one in chosen]).at(ENOUGH) <= budget_usd:
            chosen = _needed(way, chosen, budget_usd)
            break
    taken: list[TakenStep] = []
    before = plan.mean(Change())
    change, total = Change(), draws.total()
    for step in chosen:
        change = change.also(step.change)
        mean = plan.mean(change)
        total = way.total([change])
        if before - mean >= 1:  # what an earlier step left out saves nothing once more
            taken.append(TakenStep(step, before - mean, total.at(0.5), total.at(ENOUGH)))
        before = mean
    return taken, total


def _needed(way: _Way, chosen: list[Step], budget_usd: float) -> list[Step]:
    """Without the steps, most regret first, that the budget holds without."""
    for step in sorted(chosen, key=lambda one: -one.regret_share):
        rest = [one for one in chosen if one is not step]
        if way.total([one.change for one in rest]).at(ENOUGH) <= budget_usd:
            chosen = rest
    return chosen


class _Way:
    """The draws along the steps: each state is reached from the one before."""

    def __init__(self, plan: Plan, draws: Draws) -> None:
        self._plan = plan
        self._draws = draws
        self._parts = plan.parts(Change())

    def total(self, changes: Sequence[Change]) -> Distribution:
        change = Change()
        for one in changes:
            change = change.also(one)
        parts = self._plan.parts(change)
        self._draws = redrawn(self._draws, self._parts, parts)
        self._parts = parts
        return self._draws.total()


def _waits(plan: Plan, as_of: date) -> list[Step]:
    whole = plan.mean(Change())
    steps = []
    for group in may_wait(plan.items(Change()), plan.findings, as_of):
        change = Change(left_out=frozenset(item.id for item in group.items))
        saves = whole - plan.mean(change)
        steps.append(
            Step(
                kind=StepKind.WAIT,
                items=group.items,
                change=change,
                saves_usd=saves,
                regret_usd=group.risk.growth * saves,
                because=group.risk.text,
                look_again=group.look_again,
                watch=group.watch,
            )
        )
    return steps


def _alone(plan: Plan, lines: Sequence[CostLine], cautions: Mapping[str, Caution]) -> list[Step]:
    """One step for all lines of a work: who paints one wall paints the others."""
    factors = plan.book.factors
    by_work: dict[str, list[CostLine]] = {}
    for line in lines:
        open_to_owner = is_offered_to_owner(line.item.work, cautions)
        if open_to_owner and line.item.mark is Mark.PLAIN:
            by_work.setdefault(line.item.work.id, []).append(line)
    whole = plan.mean(Change())
    steps = []
    for group in by_work.values():
        change = Change(by_owner=frozenset(line.item.id for line in group))
        hours = sum(float(line.labor_hours.likely) for line in group) * float(factors.own_pace)
        steps.append(
            Step(
                kind=StepKind.ALONE,
                items=tuple(line.item for line in group),
                change=change,
                saves_usd=whole - plan.mean(change),
                regret_usd=hours * float(factors.own_hour_usd),
                because=f"About {hours:,.0f} hours of your own; you pay the materials.",
                hours=hours,
            )
        )
    return steps


def _turned(close: Sequence[CourseTurn]) -> list[Step]:
    return [
        Step(
            kind=StepKind.TURN,
            items=(),
            change=Change(turned=frozenset({turn.surface_id})),
            saves_usd=-(turn.now_usd + turn.later_usd),
            regret_usd=max(0.0, turn.heat_usd),
            because=turn.because,
            turn=turn,
        )
        for turn in close
        if turn.now_usd + turn.later_usd < 0
    ]
