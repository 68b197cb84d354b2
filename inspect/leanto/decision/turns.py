"""What the other course of a surface would change, where the two are close."""

from __future__ import annotations

from dataclasses import dataclass

from leanto.cost.triangle import Triangle
from leanto.decision.model import Course, SurfaceDecision
from leanto.decision.plan import Change, Plan
from leanto.decision.whole import other_course

CLOSE = 0.25
"""Share of the cheaper course by which both may differ to be worth a look."""


@dataclass(frozen=True, slots=True)
class CourseTurn:
    """The other course of one surface, against the chosen one; below zero saves."""

    surface_id: str
    surface_name: str
    course: Course
    """The other one."""
    now_usd: float
    """Expected change of the lines, with set-up and minimum charges shared by all surfaces."""
    later_usd: float
    """Expected change of the damage that may come up."""
    heat_usd: float
    """Change of the heat lost over the owner's years."""
    because: str

    @property
    def whole_usd(self) -> float:
        return self.now_usd + self.later_usd + self.heat_usd


def turns(plan: Plan) -> tuple[CourseTurn, ...]:
    """Surfaces where the courses are close or the owner overruled; the most saved now first.

    A surface whose course a condition decides is never among them.
    """
    found = [_turn(plan, one) for one in plan.decision.surfaces if _is_open(one)]
    return tuple(sorted(found, key=lambda turn: (turn.now_usd, turn.surface_id)))


def _is_open(one: SurfaceDecision) -> bool:
    if one.decisive:
        return False
    low, high = sorted((one.keep.expected, one.gut.expected))
    return bool(one.overruled) or high - low < CLOSE * low


def _turn(plan: Plan, one: SurfaceDecision) -> CourseTurn:
    lines, hidden = plan.parts(Change())
    new_lines, new_hidden = plan.parts(Change(turned=frozenset({one.surface_id})))
    other = other_course(one.chosen)
    heat = (
        Triangle.of(one.cost_of(other).heat_lost).mean - Triangle.of(one.chosen_cost.heat_lost).mean
    )
    return CourseTurn(
        surface_id=one.surface_id,
        surface_name=one.surface_name,
        course=other,
        now_usd=plan.lines_mean(new_lines.values()) - plan.lines_mean(lines.values()),
        later_usd=plan.hidden_mean(new_hidden.values()) - plan.hidden_mean(hidden.values()),
        heat_usd=heat,
        because=_because(one, other),
    )


def _because(one: SurfaceDecision, other: Course) -> str:
    if one.overruled:
        return f"You chose to {one.chosen} it: {one.overruled}."
    if other is Course.GUT:
        named = "; ".join(test.text.rstrip(".") for test in one.test_first)
        tests = f" Test first: {named}." if named else ""
        return f"Shows everything behind it; dust, hauling, and the old finish is gone.{tests}"
    return "What is behind it stays unseen, and comes up later at change-order prices."
