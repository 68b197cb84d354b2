"""The money as a whole: range, contingency, the flat rule beside it."""

from __future__ import annotations

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from small_money import (
    BRACE,
    GRAVEL,
    NORTH,
    NOTHING,
    ROOF,
    a_basis,
    a_finding,
    a_plan,
    estimate_of,
)

from leanto.decision.budget import drawn_range, money
from leanto.record.observation import ObservationKey
from leanto.rules.finding import Finding
from leanto.rules.model import Urgency

FINDINGS = (
    a_finding("main.roof.north", *ROOF, id="roof"),
    a_finding("main.north.outside", GRAVEL, id="gravel"),
    a_finding(NORTH, hidden="wet-stain", id="stain"),
)


def _at_the_feed(**changes: object) -> Finding:
    return a_finding(None, BRACE, observation=ObservationKey("feed", "cable"), **changes)


def test_labor_and_materials_make_the_total() -> None:
    found = money(a_basis(a_plan(*FINDINGS)), draws=2000)
    drawn = found.drawn
    assert drawn.labor.mean + drawn.materials.mean == pytest.approx(drawn.total.mean)
    assert drawn.total.mean == pytest.approx(found.expected_usd, rel=0.01)


def test_the_contingency_is_that_of_its_places() -> None:
    found = money(a_basis(a_plan(*FINDINGS)), draws=2000)
    assert sum(one.usd for one in found.places) == pytest.approx(found.contingency_usd)
    assert sum(one.share for one in found.places) == pytest.approx(1)
    assert [one.usd for one in found.places] == sorted(
        (one.usd for one in found.places), reverse=True
    )


def test_gutting_what_is_hidden_takes_its_contingency_away() -> None:
    plan = a_plan(*FINDINGS)
    wall = next(one for one in plan.decision.surfaces if one.surface_id == NORTH)
    found = money(a_basis(plan), draws=2000)
    place = next(one for one in found.places if one.place == wall.surface_name)
    assert place.share > 0.1


def test_the_drawn_range_stands_in_for_the_quick_one() -> None:
    plan = a_plan(*FINDINGS)
    estimate = estimate_of(plan)
    total = money(a_basis(plan), draws=4000).total
    drawn = drawn_range(estimate, total)
    assert (drawn.low, drawn.likely, drawn.high) == (
        estimate.range.low,
        estimate.range.likely,
        estimate.range.high,
    )
    assert drawn.mean == pytest.approx(estimate.range.mean, rel=0.01)
    assert drawn.p80 == pytest.approx(estimate.range.p80, rel=0.05)


@pytest.mark.parametrize(
    ("findings", "year_built", "low_pct"),
    [
        ((), 1938, 10),
        ((), 2020, 0),
        ((a_finding("main.floor", GRAVEL, rule_id="termites-live"),), 2020, 10),
        ((_at_the_feed(urgency=Urgency.NOW),), 2020, 15),
        ((_at_the_feed(danger=True),), 1938, 15),
        ((_at_the_feed(urgency=Urgency.WITH_THE_WORK),), 1938, 10),
        ((a_finding("main.floor", BRACE, urgency=Urgency.NOW),), 1938, 10),
    ],
)
def test_the_flat_rule_follows_age_termites_and_power(
    findings: tuple[Finding, ...], year_built: int, low_pct: float
) -> None:
    basis = a_basis(a_plan(*findings), year_built=year_built)
    assert money(basis, draws=200).rule.low_pct == low_pct


def test_the_same_walk_gives_the_same_money() -> None:
    one, other = (money(a_basis(a_plan(*FINDINGS)), draws=500) for _ in range(2))
    assert one == other


@settings(max_examples=12)
@given(st.permutations(FINDINGS), st.booleans())
def test_the_order_of_observations_changes_nothing_and_contingency_is_never_negative(
    order: list[Finding], heated: bool
) -> None:
    found = money(a_basis(a_plan(*order), to_be_heated=heated), draws=300)
    expected = money(a_basis(a_plan(*FINDINGS), to_be_heated=heated), draws=300)
    assert found.total == expected.total
    assert found.places == expected.places
    assert found.contingency_usd >= 0
    assert a_plan(*order).mean(NOTHING) == pytest.approx(a_plan(*FINDINGS).mean(NOTHING))
