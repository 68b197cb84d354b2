"""How likely it is that keeping turns out cheaper, with what both courses may cost.

Both courses are drawn against the same world: the same wages, crew, prices, damage behind the
lining, and the same luck with work that both need. Only what differs between them tells.
"""

from __future__ import annotations

import random
from collections.abc import Sequence
from dataclasses import dataclass
from itertools import repeat
from operator import add, itemgetter, mul

from leanto.cost.risk import SharedRisk, moments, own_risk
from leanto.cost.simulation import DRAWS, SEED, Distribution, Draws
from leanto.cost.triangle import Triangle
from leanto.decision.decide import hidden_draw
from leanto.decision.model import Course, CourseCost, Decision, SurfaceDecision


@dataclass(frozen=True, slots=True)
class Chances:
    """Both courses of one lined surface, or of the whole interior, drawn."""

    surface_id: str
    """Empty for the interior as a whole."""
    surface_name: str
    keep: Distribution
    gut: Distribution
    keep_is_cheaper: float
    """Share of the draws in which keeping costs less, 0 to 1; a tie counts half."""

    def of(self, course: Course) -> Distribution:
        return self.gut if course is Course.GUT else self.keep

    def is_cheaper(self, course: Course) -> float:
        return self.keep_is_cheaper if course is Course.KEEP else 1 - self.keep_is_cheaper


@dataclass(frozen=True, slots=True)
class AllChances:
    """What both courses may cost: surface by surface, for the interior, and as chosen."""

    surfaces: tuple[Chances, ...]
    interior: Chances | None
    """Keep everything against gut everything; None without a lined surface."""
    chosen: Distribution | None
    """All chosen courses together."""

    def of(self, surface_id: str) -> Chances:
        return next(one for one in self.surfaces if one.surface_id == surface_id)


def chances_of(
    decision: Decision, shared: SharedRisk, *, draws: int = DRAWS, seed: int = SEED
) -> AllChances:
    """Every lined surface and the interior, drawn against one world."""
    if not decision.surfaces:
        return AllChances((), None, None)
    world = Draws.none(shared, draws=draws, seed=seed)
    drawn = [_Drawn(one, shared, world) for one in decision.surfaces]
    keep = _sum(drawn, [Course.KEEP] * len(drawn), decision.keep_all, shared)
    gut = _sum(drawn, [Course.GUT] * len(drawn), decision.gut_all, shared)
    chosen = _sum(drawn, [one.chosen for one in decision.surfaces], decision.chosen, shared)
    return AllChances(
        surfaces=tuple(
            _chances(one.surface_id, one.surface_name, it.keep, it.gut)
            for one, it in zip(decision.surfaces, drawn, strict=True)
        ),
        interior=_chances("", "All lined surfaces", keep, gut),
        chosen=_sorted(chosen),
    )


def chances(one: SurfaceDecision, shared: SharedRisk, world: Draws) -> Chances:
    """One lined surface; ``world`` holds the shared factors and nothing else."""
    drawn = _Drawn(one, shared, world)
    return _chances(one.surface_id, one.surface_name, drawn.keep, drawn.gut)


class _Drawn:
    """The cost of both courses of a surface in each draw, with and without its set-up."""

    def __init__(self, one: SurfaceDecision, shared: SharedRisk, world: Draws) -> None:
        self.one = one
        self.own = {
            Course.KEEP: _own(one, one.keep, Course.KEEP, shared, world),
            Course.GUT: _own(one, one.gut, Course.GUT, shared, world),
        }
        lines = [own_risk(line) for line in one.gut.setup]
        self.setup = world.plus(lines).totals() if lines else [0.0] * len(world.work)
        self.setup_usd = moments(lines, (), shared).mean
        self.keep = self.own[Course.KEEP]
        share = one.gut.setup_share
        self.gut = list(map(add, self.own[Course.GUT], map(mul, self.setup, repeat(share))))


def _own(
    one: SurfaceDecision, cost: CourseCost, course: Course, shared: SharedRisk, world: Draws
) -> list[float]:
    """The cost of one course in each draw: work, damage, heat, own labor; without set-up."""
    damage = [hidden_draw(one, course, shared)] if cost.all_bad_usd > 0 else []
    totals = world.plus([own_risk(line) for line in cost.lines], damage).totals()
    for name, spread in (("heat", cost.heat_lost), ("own labor", cost.own_labor)):
        if spread.high > 0:
            slices = Triangle.of(spread).sliced()
            picks = random.Random(f"{world.seed} {name} {one.surface_id}").randbytes(len(totals))
            totals = list(map(add, totals, itemgetter(*picks)(slices)))
    return totals


def _sum(
    drawn: Sequence[_Drawn], courses: Sequence[Course], expected_usd: float, shared: SharedRisk
) -> list[float]:
    """One combination in each draw: every surface, the set-up once, and what is missing to the
    minimum charges, which is a fixed sum."""
    lists = [it.own[course] for it, course in zip(drawn, courses, strict=True)]
    known = sum(
        it.one.cost_of(course).expected
        - (it.one.gut.setup_share * it.setup_usd if course is Course.GUT else 0.0)
        for it, course in zip(drawn, courses, strict=True)
    )
    if Course.GUT in courses:
        lists.append(drawn[0].setup)
        known += drawn[0].setup_usd
    missing = expected_usd - known
    return [sum(draw) + missing for draw in zip(*lists, strict=True)]


def _chances(
    surface_id: str, surface_name: str, keep: Sequence[float], gut: Sequence[float]
) -> Chances:
    wins = sum(a < b for a, b in zip(keep, gut, strict=True))
    ties = sum(a == b for a, b in zip(keep, gut, strict=True))
    return Chances(
        surface_id, surface_name, _sorted(keep), _sorted(gut), (wins + ties / 2) / len(keep)
    )


def _sorted(totals: Sequence[float]) -> Distribution:
    return Distribution(tuple(sorted(totals)))
