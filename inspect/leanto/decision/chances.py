"""How likely it is that keeping a surface turns out cheaper, with what both courses may cost.

Both courses are drawn against the same world: the same wages, crew, prices, damage behind the
lining, and the same luck with work that both need. Only what differs between them tells.
"""

from __future__ import annotations

import random
from collections.abc import Sequence
from dataclasses import dataclass
from operator import add, itemgetter

from leanto.cost.risk import SharedRisk, own_risk
from leanto.cost.simulation import SEED, Distribution, Draws
from leanto.cost.triangle import Triangle
from leanto.decision.decide import hidden_draw
from leanto.decision.model import Course, CourseCost, SurfaceDecision

FEW = 2_000
"""Draws where no report asks for them."""


@dataclass(frozen=True, slots=True)
class Chances:
    """Both courses of one lined surface, drawn."""

    surface_id: str
    surface_name: str
    keep: Distribution
    gut: Distribution
    keep_is_cheaper: float
    """Share of the draws in which keeping costs less, 0 to 1; a tie counts half."""

    def of(self, course: Course) -> Distribution:
        return self.gut if course is Course.GUT else self.keep


def chances_of(
    surfaces: Sequence[SurfaceDecision],
    shared: SharedRisk,
    *,
    draws: int = FEW,
    seed: int = SEED,
) -> tuple[Chances, ...]:
    """Every lined surface, drawn against one world."""
    world = Draws.none(shared, draws=draws, seed=seed)
    return tuple(chances(one, shared, world) for one in surfaces)


def chances(one: SurfaceDecision, shared: SharedRisk, world: Draws) -> Chances:
    """One lined surface; ``world`` holds the shared factors and nothing else."""
    keep, gut = (_totals(one, cost, shared, world) for cost in (one.keep, one.gut))
    wins = sum(a < b for a, b in zip(keep, gut, strict=True))
    ties = sum(a == b for a, b in zip(keep, gut, strict=True))
    return Chances(
        surface_id=one.surface_id,
        surface_name=one.surface_name,
        keep=Distribution(tuple(sorted(keep))),
        gut=Distribution(tuple(sorted(gut))),
        keep_is_cheaper=(wins + ties / 2) / len(keep),
    )


def _totals(
    one: SurfaceDecision, cost: CourseCost, shared: SharedRisk, world: Draws
) -> list[float]:
    """The cost of one course in each draw: work, damage, share of the set-up, heat."""
    damage = [hidden_draw(one, cost.course, shared)] if cost.all_bad_usd > 0 else []
    totals = world.plus([own_risk(line) for line in cost.lines], damage).totals()
    if cost.setup:
        setup = world.plus([own_risk(line) for line in cost.setup]).totals()
        totals = [a + cost.setup_share * b for a, b in zip(totals, setup, strict=True)]
    if cost.heat_lost.high > 0:
        slices = Triangle.of(cost.heat_lost).sliced()
        picks = random.Random(f"{world.seed} heat {one.surface_id}").randbytes(len(totals))
        totals = list(map(add, totals, itemgetter(*picks)(slices)))
    return totals
