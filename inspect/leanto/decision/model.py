"""Gut or keep: what is computed for each lined surface."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from enum import StrEnum

from leanto.building.rectangle import Rectangle
from leanto.cost.estimate import CostLine
from leanto.decision.unseen import Line, Unseen, break_even
from leanto.money import NOTHING, Spread
from leanto.scope.call import Call


class Course(StrEnum):
    GUT = "gut"
    KEEP = "keep"


@dataclass(frozen=True, slots=True)
class Part:
    """One part of a course's cost."""

    text: str
    cost: Spread
    expected: float
    """In dollars, with wages, crew and prices at their means: the parts add up to the course."""


@dataclass(frozen=True, slots=True)
class CourseCost:
    """One course of one surface; its cost is a straight line in the share that is bad unseen."""

    course: Course
    parts: tuple[Part, ...]
    """The last one stands for damage not seen yet."""
    total: Spread
    calls: tuple[Call, ...]
    """What the course adds to the scope."""
    lines: tuple[CostLine, ...]
    """What is certain of it, without minimum charges and without set-up that surfaces share."""
    all_bad_usd: float
    """What the unseen part would cost on top if all of it were bad."""
    hidden: Spread
    """The part that stands for damage not seen yet; it is in ``parts`` and ``total`` too."""
    line: Line
    """Expected cost against the bad share, with this surface's part of the shared set-up."""
    expected: float
    """In dollars, at the expected bad share."""
    likely_by_work: Mapping[str, float]
    """Likely dollars of each work, for the minimum charges that surfaces share."""
    setup: tuple[CostLine, ...] = ()
    """Set-up of a gutted room, of which this surface bears ``setup_share``."""
    setup_share: float = 0.0
    heat_lost: Spread = NOTHING
    """Money for heat that goes through bays which insulation does not reach; in ``parts``,
    ``total`` and ``line``, but no repair: it is in no scope and no budget."""
    own_labor: Spread = NOTHING
    """What the owner's hours in marked lines are worth; likewise in no scope and no budget."""


@dataclass(frozen=True, slots=True)
class Evidence:
    """What speaks for or against damage that cannot be seen."""

    kind: str
    text: str
    ratio: float
    """How many times likelier this is where there is damage; infinite when damage was seen."""
    findings: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class Reason:
    """A condition that goes before the cost, and the source of the rule that knows it."""

    text: str
    source: str
    rule_id: str = ""


@dataclass(frozen=True, slots=True)
class HoleValue:
    """Whether it pays to open one hole before choosing, all other surfaces taken as chosen."""

    worth_usd: float
    """What the answer saves on average, before the cost of the hole."""
    perfect_usd: float
    """What knowing everything would save; the most any number of holes can be worth."""
    cost_usd: float
    shows: float
    """Chance that it shows the damage when there is some."""
    place: Rectangle | None
    """Where the evidence points to; None for a hole anywhere else."""
    away: bool
    """True where there are signs, and a hole away from them tells more: how far it goes."""
    now: Course
    """The cheaper course without an answer."""
    if_bad: Course
    if_clean: Course
    chance_bad: float
    """That the hole shows damage."""
    after_clean: float
    """Chance of damage behind the lining after a hole that shows none."""

    @property
    def pays(self) -> bool:
        return self.worth_usd > self.cost_usd

    @property
    def turns(self) -> bool:
        """True when one of the answers would change the course."""
        return self.now is not self.if_bad or self.now is not self.if_clean


@dataclass(frozen=True, slots=True)
class SurfaceDecision:
    surface_id: str
    surface_name: str
    area_sqft: float
    damaged_sqft: float
    """Union of the seen damaged zones behind the lining, widened to the framing."""
    prior: float
    """Chance of damage behind the unseen part before anything was seen."""
    evidence: tuple[Evidence, ...]
    unseen: Unseen
    """What is known of the unseen part after the evidence."""
    keep: CourseCost
    gut: CourseCost
    decisive: tuple[Reason, ...]
    """Conditions that decide whatever the cost."""
    test_first: tuple[Reason, ...]
    """What must be tested before the lining is disturbed."""
    alone: Course
    """The answer if this were the only surface."""
    computed: Course
    """The answer with set-up and minimum charges shared over all surfaces."""
    chosen: Course
    """The owner's, if overruled."""
    overruled: str
    """The owner's reason; empty when not overruled."""
    unknown: str
    """Why the answer stands on nothing: ``not walked`` or ``not reached``; empty otherwise."""
    hole: HoleValue | None
    """None where a condition decides anyway, or the damage was seen already."""
    place: Rectangle | None = None
    """Where the strongest sign of damage lies on the surface; None when none has a place."""

    @property
    def break_even_share(self) -> float | None:
        """The bad share of the unseen part at which both cost the same; None outside 0 to 1."""
        return break_even(self.keep.line, self.gut.line)

    def cost_of(self, course: Course) -> CourseCost:
        return self.gut if course is Course.GUT else self.keep

    @property
    def chosen_cost(self) -> CourseCost:
        return self.cost_of(self.chosen)

    @property
    def is_close(self) -> bool:
        """True when the courses differ by less than a tenth of the cheaper one."""
        low, high = sorted((self.keep.expected, self.gut.expected))
        return not self.decisive and high - low < 0.1 * low


@dataclass(frozen=True, slots=True)
class Decision:
    surfaces: tuple[SurfaceDecision, ...]
    keep_all: float
    """Expected cost of keeping every lined surface, in dollars."""
    gut_all: float
    chosen: float
    """Expected cost of the chosen courses; set-up and minimum charges shared."""
    is_exact: bool
    """True when every combination of courses was compared, not blocks of them."""
