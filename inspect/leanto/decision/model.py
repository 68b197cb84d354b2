"""Gut or keep: what is computed for each lined surface."""

from __future__ import annotations

from dataclasses import dataclass
from enum import StrEnum

from leanto.cost.range import triangular_mean
from leanto.money import Spread
from leanto.scope.call import Call


class Course(StrEnum):
    GUT = "gut"
    KEEP = "keep"


@dataclass(frozen=True, slots=True)
class Part:
    """One part of a course's cost."""

    text: str
    cost: Spread


@dataclass(frozen=True, slots=True)
class CourseCost:
    course: Course
    parts: tuple[Part, ...]
    total: Spread

    calls: tuple[Call, ...]
    """What the course adds to the scope."""
    hidden: Spread
    """The part that stands for damage not seen yet; it is in ``parts`` and ``total`` too."""

    @property
    def expected(self) -> float:
        """Mean of the total, each part triangular, in dollars."""
        return sum(triangular_mean(part.cost) for part in self.parts)


@dataclass(frozen=True, slots=True)
class Evidence:
    """What speaks for damage that cannot be seen."""

    kind: str
    text: str
    share: Spread
    """Damaged share of the unseen surface, 0 to 1."""
    findings: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class SurfaceDecision:
    surface_id: str
    surface_name: str
    area_sqft: float
    damaged_sqft: float
    """Union of the seen damaged zones behind the lining, widened to the framing."""
    hidden_share: Spread
    """Of the unseen rest."""
    evidence: tuple[Evidence, ...]
    keep: CourseCost
    gut: CourseCost
    break_even_share: float | None
    """The damaged share of the unseen part at which both cost the same; None outside 0 to 1."""
    decisive: tuple[str, ...]
    """Conditions that decide whatever the cost, each with its reason."""
    test_first: tuple[str, ...]
    """What must be tested before the lining is disturbed."""
    computed: Course
    chosen: Course
    """The owner's, if overruled."""
    overruled: str
    """The owner's reason; empty when not overruled."""
    unknown: str
    """Why the answer stands on nothing: ``not walked``; empty otherwise."""

    @property
    def chosen_cost(self) -> CourseCost:
        return self.gut if self.chosen is Course.GUT else self.keep

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
    """Expected cost of the chosen courses."""
