"""Both courses drawn against one world."""

from __future__ import annotations

from dataclasses import replace

import pytest
from hypothesis import given
from hypothesis import strategies as st
from small_money import NORTH, a_finding, a_plan, some_hidden
from small_shed import three

from leanto.cost.simulation import Draws
from leanto.decision.chances import chances, chances_of
from leanto.decision.model import Course, SurfaceDecision
from leanto.decision.plan import Plan
from leanto.rules.model import OPEN_LINING, Take, WorkCall

OPEN = WorkCall(work=OPEN_LINING, take=Take.AREA)


def _north(plan: Plan) -> SurfaceDecision:
    return next(one for one in plan.decision.surfaces if one.surface_id == NORTH)


HEAT = {
    "reached_closed": 0.5,
    "degree_hours": three(10_000, 40_000, 70_000),
    "usd_per_kwh": three(0.1, 0.2, 0.3),
    "years": 15,
    "source": "made up",
}


def test_the_mean_of_the_draws_is_the_expected_cost() -> None:
    plan = a_plan(a_finding(NORTH, hidden="wet-stain"), hidden=some_hidden(heat=HEAT))
    found = chances_of(plan.decision, plan.book.shared, draws=8000).surfaces
    for one, drawn in zip(plan.decision.surfaces, found, strict=True):
        assert drawn.keep.mean == pytest.approx(one.keep.expected, rel=0.01)
        assert drawn.gut.mean == pytest.approx(one.gut.expected, rel=0.01)
        assert drawn.of(Course.GUT) is drawn.gut


def test_the_interior_is_drawn_with_its_set_up_paid_once_and_its_minimum_charges() -> None:
    plan = a_plan(a_finding(NORTH, hidden="wet-stain"), hidden=some_hidden(heat=HEAT))
    decision = plan.decision
    found = chances_of(decision, plan.book.shared, draws=8000)
    assert found.interior is not None
    assert found.chosen is not None
    assert found.interior.keep.mean == pytest.approx(decision.keep_all, rel=0.01)
    assert found.interior.gut.mean == pytest.approx(decision.gut_all, rel=0.01)
    assert found.chosen.mean == pytest.approx(decision.chosen, rel=0.01)
    # Surfaces share wages, crew and prices, so that their four-in-five figures nearly add up;
    # but damage comes up at one and not at the other, so that they do not add up quite.
    parts = sum(one.gut.at(0.8) for one in found.surfaces)
    assert found.interior.gut.at(0.8) < parts


def test_without_a_lined_surface_nothing_is_drawn() -> None:
    plan = a_plan()
    bare = replace(plan.decision, surfaces=())
    assert chances_of(bare, plan.book.shared).interior is None


def test_a_course_that_is_always_cheaper_wins_every_draw() -> None:
    one = _north(a_plan(a_finding(NORTH, OPEN)))  # all of it is bad: keep patches all, and more
    plan = a_plan(a_finding(NORTH, OPEN))
    world = Draws.none(plan.book.shared, draws=500)
    assert chances(one, plan.book.shared, world).keep_is_cheaper < 0.02


def test_courses_that_are_one_and_the_same_tie() -> None:
    plan = a_plan()
    one = _north(plan)
    same = replace(one, gut=one.keep)
    world = Draws.none(plan.book.shared, draws=500)
    assert chances(same, plan.book.shared, world).keep_is_cheaper == 0.5


def test_common_factors_cancel_where_both_courses_do_the_same_work() -> None:
    # Twice the same work costs more in every single draw, however wages and prices fall.
    plan = a_plan(a_finding(NORTH, OPEN))
    one = _north(plan)
    more = replace(one.gut, lines=(*one.gut.lines, *one.keep.lines))
    world = Draws.none(plan.book.shared, draws=500)
    found = chances(replace(one, keep=one.gut, gut=more), plan.book.shared, world)
    assert found.keep_is_cheaper == 1.0


_SIGNS = ("old-stain", "wet-stain")


@given(st.lists(st.sampled_from(_SIGNS), max_size=2), st.sampled_from(_SIGNS))
def test_more_evidence_of_damage_never_makes_keeping_likelier_to_be_cheaper(
    kinds: list[str], more: str
) -> None:
    before = a_plan(*(a_finding(NORTH, hidden=kind, id=kind) for kind in kinds))
    after = a_plan(*(a_finding(NORTH, hidden=kind, id=kind) for kind in (*kinds, more)))
    world = Draws.none(before.book.shared, draws=400)
    # A sign more makes more draws hit; which ones is drawn anew, hence the margin.
    assert (
        chances(_north(after), after.book.shared, world).keep_is_cheaper
        <= chances(_north(before), before.book.shared, world).keep_is_cheaper + 0.05
    )
