"""Heat that a kept lining lets through, by hand."""

from __future__ import annotations

from datetime import date

import pytest
from hypothesis import given
from hypothesis import strategies as st
from small_money import NORTH, a_plan, a_shed, estimate_of, some_hidden
from small_shed import three

from leanto.building.surfaces import surfaces_of
from leanto.cost.triangle import Triangle
from leanto.decision.heat import extra_u, heat_losses, heat_lost
from leanto.decision.hidden import HeatTerms
from leanto.reckon.envelope import Part
from leanto.record.walk import Walk

TERMS = HeatTerms.model_validate(
    {
        "reached_closed": 0.75,
        "degree_hours": three(20_000, 34_120, 60_000),
        "usd_per_kwh": three(0.1, 0.2, 0.4),
        "years": 10,
        "source": "made up",
    }
)


def _part(as_it_is: float, kept: float, gutted: float) -> Part:
    return Part("wall", "walls", 100, as_it_is, kept, gutted, 13, 11)


def test_the_money_for_heat_by_hand() -> None:
    # extra U = .75 / 10 + .25 / 4 - 1 / 12.5 = .075 + .0625 - .08 = .0575
    # 100 sq ft x .0575 x 34,120 / 3,412 = 57.5 kWh a year, 575 in ten years, x .20 = 115
    lost = heat_lost(_part(4, 10, 12.5), 100, TERMS)
    assert float(lost.likely) == pytest.approx(115)
    assert float(lost.low) == pytest.approx(575 / 34_120 * 20_000 * 0.1)


@given(st.floats(1, 30), st.floats(1, 30), st.floats(1, 30), st.floats(0, 1))
def test_the_extra_is_never_below_zero_and_shrinks_with_reach(
    now: float, more: float, gutted: float, reached: float
) -> None:
    part = _part(now, now + more, gutted)
    assert extra_u(part, reached) >= extra_u(part, 1.0) >= 0


def test_only_surfaces_of_a_building_that_is_to_be_heated_lose_money() -> None:
    for heated, is_there in ((True, True), (False, False)):
        shed = a_shed(to_be_heated=heated)
        surfaces = {surface.id: surface for surface in surfaces_of(shed)}
        found = heat_losses(shed, surfaces, Walk(), date(2026, 6, 1), TERMS)
        assert (NORTH in found) is is_there
    assert heat_losses(a_shed(), {}, Walk(), date(2026, 6, 1), None) == {}


def test_keeping_bears_the_heat_and_gutting_does_not() -> None:
    terms = TERMS.model_dump()
    plain, heated = a_plan(), a_plan(hidden=some_hidden(heat=terms))
    for before, after in zip(plain.decision.surfaces, heated.decision.surfaces, strict=True):
        extra = Triangle.of(after.keep.heat_lost).mean
        assert extra > 0
        assert after.keep.expected == pytest.approx(before.keep.expected + extra)
        assert after.gut.expected == pytest.approx(before.gut.expected)
        assert "heat lost over 10 years, where fill does not reach" in {
            part.text for part in after.keep.parts
        }


def test_heat_is_in_no_scope_and_in_no_budget() -> None:
    terms = TERMS.model_dump()
    plain, heated = estimate_of(a_plan()), estimate_of(a_plan(hidden=some_hidden(heat=terms)))
    assert plain.total == heated.total
