"""What moves the total: exact swings, in order, that follow their driver alone."""

from __future__ import annotations

from decimal import Decimal

import pytest
from hypothesis import given
from hypothesis import strategies as st
from small_money import a_finding, a_plan, estimate_of, some_factors
from small_shed import three

from leanto.cost.risk import own_risk, shared_risk
from leanto.cost.sensitivity import DriverKind, sensitivity, share_at
from leanto.cost.simulation import HiddenDraw, simulate
from leanto.decision.decide import hidden_draws
from leanto.rules.model import Take, WorkCall
from leanto.scope.work import Trade

FLAT = {
    "crew": three(1, 1, 1),
    "prices": three(1, 1, 1),
    "wages": [
        {"trade": t, "hourly_usd": three(20, 20, 20), "source": "made up", "dated": "2026-01-01"}
        for t in Trade
    ],
}
ROOF = a_finding("main.roof.north", WorkCall(work="reroof", take=Take.SURFACE))


def test_every_kind_of_driver_is_there_and_the_largest_stands_first() -> None:
    plan = a_plan(ROOF, a_finding("main.north.inside", hidden="wet-stain"))
    lines = estimate_of(plan).lines
    hidden = hidden_draws(plan.decision, plan.book.shared)
    drivers = sensitivity(lines, hidden, plan.book.factors)
    swings = [one.swing_usd for one in drivers]
    assert {one.kind for one in drivers} == set(DriverKind)
    assert swings == sorted(swings, reverse=True)
    assert all(swing > 0 for swing in swings)


def test_a_single_line_swings_as_far_as_its_draws() -> None:
    # Nothing else moves, so P90 - P10 of the total is the swing itself.
    factors = some_factors(**FLAT)
    plan = a_plan(ROOF, factors=factors)
    lines = [line for line in estimate_of(plan).lines if line.item.work.id == "reroof"]
    (driver,) = sensitivity(lines, (), factors)
    total = simulate([own_risk(lines[0])], [], shared_risk(factors)).total
    assert driver.swing_usd == pytest.approx(total.at(0.9) - total.at(0.1), rel=0.01)
    assert driver.key == "reroof@main.roof.north"


def test_shared_factors_swing_by_hand() -> None:
    # One line: labor 100..100 at likely wages, materials 50..50; crew .5, 1, 1.5 and nothing else.
    factors = some_factors(**(FLAT | {"crew": three(0.5, 1, 1.5)}))
    plan = a_plan(ROOF, factors=factors)
    line = next(x for x in estimate_of(plan).lines if x.item.work.id == "reroof")
    crew = next(x for x in sensitivity([line], (), factors) if x.key == "crew")
    # Triangle .5, 1, 1.5: P10 = .5 + sqrt(.1 x 1 x .5), P90 = 1.5 - sqrt(.1 x 1 x .5)
    width = 1.0 - 2 * (0.1 * 1 * 0.5) ** 0.5
    assert crew.swing_usd == pytest.approx(width * own_risk(line).labor.mean)


@pytest.mark.parametrize(
    ("p", "u", "expected"), [(0.0, 0.9, 0.0), (0.05, 0.9, 0.0), (1.0, 0.5, 0.5), (0.5, 0.75, 0.5)]
)
def test_the_share_at_a_probability_is_zero_up_to_one_less_the_chance(
    p: float, u: float, expected: float
) -> None:
    assert share_at(HiddenDraw(p, 1, 1, 100), u) == pytest.approx(expected, abs=0.005)


@given(st.decimals(Decimal("0.1"), 5, places=2))
def test_dearer_labor_and_materials_scale_every_swing(burden: Decimal) -> None:
    once, more = some_factors(), some_factors(burden=burden)
    plan, other = a_plan(ROOF, factors=once), a_plan(ROOF, factors=more)
    lines, scaled = estimate_of(plan).lines, estimate_of(other).lines
    before = {one.key: one.swing_usd for one in sensitivity(lines, (), once)}
    after = {one.key: one.swing_usd for one in sensitivity(scaled, (), more)}
    assert after["crew"] == pytest.approx(float(burden) * before["crew"])
    assert after["prices"] == pytest.approx(before["prices"])
