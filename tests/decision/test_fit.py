"""Whether the budget holds, and the steps into it."""

from __future__ import annotations

import itertools
from dataclasses import replace

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from small_money import (
    AS_OF,
    BRACE,
    CAUTIONS,
    GRAVEL,
    NORTH,
    NOTHING,
    ROOF,
    a_finding,
    a_plan,
    estimate_of,
)

from leanto.cost.simulation import Draws
from leanto.decision.fit import LEAST_USD, Fit, StepKind, fit
from leanto.decision.plan import Change, Plan, redrawn
from leanto.record.observation import Overruling
from leanto.record.scope_edit import ScopeEdit
from leanto.rules.model import Decides, Urgency
from leanto.scope.mark import Mark

FINDINGS = (
    a_finding("main.roof.north", *ROOF, id="roof"),
    a_finding("main.north.outside", GRAVEL, id="gravel"),
    a_finding("main.south.outside", BRACE, id="brace", urgency=Urgency.NOW, danger=True),
)


def _draws(plan: Plan, draws: int = 1000) -> Draws:
    lines, hidden = plan.parts(NOTHING)
    return Draws.none(plan.book.shared, draws=draws).plus(lines.values(), hidden.values())


def _fit(budget: float | None, plan: Plan | None = None) -> Fit:
    plan = plan or a_plan(*FINDINGS)
    return fit(plan, _draws(plan), estimate_of(plan).lines, CAUTIONS, budget, AS_OF)


def test_alternates_are_what_can_be_left_out_the_most_saved_first() -> None:
    found = _fit(None)
    saves = [step.saves_usd for step in found.alternates]
    assert saves == sorted(saves, reverse=True)
    assert {step.kind for step in found.alternates} <= {StepKind.WAIT, StepKind.TURN}
    offered = len(found.offered(StepKind.WAIT)) + len(found.offered(StepKind.TURN))
    assert len(saves) == offered > 0


def test_without_a_budget_there_are_offers_and_no_steps() -> None:
    found = _fit(None)
    assert found.offers
    assert (found.taken, found.chance, found.chance_after) == ((), None, None)
    assert not found.holds
    assert not found.can_hold


def test_a_budget_that_holds_asks_for_no_step() -> None:
    found = _fit(1_000_000)
    assert (found.holds, found.can_hold, found.taken, found.chance) == (True, True, (), 1.0)


def test_steps_go_until_four_in_five_draws_are_inside_and_no_further() -> None:
    short = _fit(None).p80 - 500
    found = _fit(short)
    assert not found.holds
    assert found.can_hold
    assert found.taken[-1].p80 <= short
    assert all(taken.p80 > short for taken in found.taken[:-1])
    assert found.chance is not None
    assert found.chance_after is not None
    assert found.chance < 0.8 <= found.chance_after


@pytest.mark.parametrize("missing_usd", [150, 900, 3000, 4650])
def test_no_step_of_the_way_in_is_needless(missing_usd: int) -> None:
    plan = a_plan(*FINDINGS)
    short = _fit(None, plan).p80 - missing_usd
    found = _fit(short, plan)
    base, parts = _draws(plan), plan.parts(NOTHING)
    for left_out in found.taken:
        change = Change()
        for taken in found.taken:
            if taken is not left_out:
                change = change.also(taken.step.change)
        total = redrawn(base, parts, plan.parts(change)).total()
        assert total.at(0.8) > short


def test_a_budget_out_of_reach_says_so_after_every_step() -> None:
    found = _fit(1)
    assert not found.can_hold
    assert len(found.taken) > 1
    assert found.chance_after == 0


def test_the_least_regret_comes_first() -> None:
    found = _fit(1)
    shares = [step.regret_share for step in found.offers]
    assert shares == sorted(shares)
    assert all(step.saves_usd >= LEAST_USD for step in found.offers)
    p80 = [found.p80, *(taken.p80 for taken in found.taken)]
    assert all(before > after for before, after in itertools.pairwise(p80))


def test_a_danger_is_neither_put_off_nor_offered_to_the_owner() -> None:
    offered = {item.work.id for step in _fit(1).offers for item in step.items}
    assert "brace" not in offered
    assert {"reroof", "strip-roof", "gravel"} <= offered


def test_work_from_a_ladder_is_not_offered_to_the_owner() -> None:
    alone = {item.work.id for step in _fit(1).offered(StepKind.ALONE) for item in step.items}
    assert "gravel" in alone
    assert alone.isdisjoint({"reroof", "strip-roof", "brace", "wire-open"})


def test_doing_it_alone_saves_labor_and_markup_and_costs_own_hours() -> None:
    plan = a_plan(*FINDINGS)
    step = next(
        one for one in _fit(None, plan).offered(StepKind.ALONE) if one.items[0].work.id == "gravel"
    )
    # 24 ft x 6: half labor (72 at 20 an hour = 3.6 h), half materials, x 1.21
    assert step.hours == pytest.approx(3.6 * 1.5)
    assert step.regret_usd == pytest.approx(3.6 * 1.5 * 15)
    edit = ScopeEdit("gravel@main.north.outside", mark="by owner")
    owned = a_plan(*FINDINGS, edits=(edit,))
    assert step.saves_usd == pytest.approx(plan.mean(NOTHING) - owned.mean(NOTHING))


def test_waiting_costs_the_growth_of_such_work() -> None:
    step = next(
        one for one in _fit(None).offered(StepKind.WAIT) if one.items[0].work.id == "strip-roof"
    )
    assert step.regret_share == pytest.approx(0.25)
    assert step.look_again is not None


def test_a_line_that_waits_is_not_also_done_alone() -> None:
    taken = _fit(1).taken
    names = [item.id for one in taken for item in one.step.items]
    both = {name for name in names if names.count(name) > 1}
    assert both == set()


def test_an_overruled_surface_is_offered_back() -> None:
    overruled = Overruling(NORTH, "gut", "I like it open")
    found = _fit(1, a_plan(*FINDINGS, overruled=[overruled]))
    turn = next(one for one in found.turns if one.surface_id == NORTH)
    assert (turn.course, turn.now_usd < 0) == ("keep", True)
    assert "I like it open" in turn.because
    assert turn.whole_usd < 0
    assert found.offered(StepKind.TURN)


def test_a_surface_that_a_condition_decides_is_never_turned() -> None:
    decides = Decides(course="gut", reason="Sewage reached the wall.")
    plan = a_plan(a_finding(NORTH, decides=decides))
    assert NORTH not in {turn.surface_id for turn in _fit(1, plan).turns}


def test_a_plan_changed_and_drawn_again_is_the_plan_drawn_afresh() -> None:
    plan = a_plan(*FINDINGS)
    change = Change(
        left_out=frozenset({"reroof@main.roof.north"}),
        by_owner=frozenset({"gravel@main.north.outside"}),
        turned=frozenset({NORTH}),
    )
    parts = plan.parts(change)
    fresh = Draws.none(plan.book.shared, draws=300).plus(parts[0].values(), parts[1].values())
    changed = redrawn(_draws(plan, 300), plan.parts(NOTHING), parts)
    assert changed.totals() == pytest.approx(fresh.totals())
    marks = {item.id: item.mark for item in plan.items(change)}
    assert marks["gravel@main.north.outside"] is Mark.BY_OWNER
    assert "reroof@main.roof.north" not in marks


@settings(max_examples=15)
@given(st.integers(500, 12_000), st.integers(0, 3000))
def test_a_larger_budget_never_asks_for_more(budget: int, more: int) -> None:
    small, large = _fit(budget), _fit(budget + more)
    assert sum(one.saves_usd for one in large.taken) <= sum(
        one.saves_usd for one in small.taken
    ) + LEAST_USD * len(small.taken)
    assert small.chance is not None
    assert large.chance is not None
    assert small.chance <= large.chance


@settings(max_examples=10)
@given(st.permutations(FINDINGS))
def test_the_order_of_findings_changes_nothing(order: list[object]) -> None:
    assert replace(_fit(3000, a_plan(*order)), turns=()).p80 == pytest.approx(  # type: ignore[arg-type]
        _fit(3000).p80
    )
