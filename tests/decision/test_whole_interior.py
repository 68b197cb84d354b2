"""The chosen combination against pricing the whole scope of every other one, and its reasons."""

from __future__ import annotations

from itertools import combinations

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from small_money import NORTH, a_finding, a_plan, a_shed

from leanto.cost.triangle import Triangle
from leanto.decision.chances import chances_of
from leanto.decision.model import CourseCost
from leanto.decision.plan import Change, Plan
from leanto.record.observation import Overruling
from leanto.record.scope_edit import ScopeEdit
from leanto.rules.finding import Finding
from leanto.rules.model import OPEN_LINING, Decides, Take, WorkCall

WALLS = [NORTH, "main.east.inside", "main.south.inside", "main.west.inside", "main.ceiling"]
OPEN = WorkCall(work=OPEN_LINING, take=Take.AREA)


def _sign(surface_id: str, kind: str) -> Finding:
    calls = (OPEN,) if kind == "open" else ()
    hidden = None if kind == "open" else kind
    return a_finding(surface_id, *calls, hidden=hidden, id=f"{kind}@{surface_id}")


def _whole(plan: Plan, turned: frozenset[str]) -> float:
    """The whole scope, its hidden damage and its heat, priced from the start."""
    change = Change(turned=turned)
    heat = sum(Triangle.of(one.chosen_cost.heat_lost).mean for one in plan.decided(change).surfaces)
    return plan.mean(change) + heat


_signs = st.lists(
    st.tuples(st.sampled_from(WALLS), st.sampled_from(["wet-stain", "old-stain", "open"])),
    max_size=5,
    unique=True,
)


@settings(max_examples=12, deadline=None)
@given(_signs, st.booleans())
def test_the_exact_combination_is_never_dearer_than_any_other(
    signs: list[tuple[str, str]], heated: bool
) -> None:
    plan = a_plan(*(_sign(*one) for one in signs), building=a_shed(to_be_heated=heated))
    assert plan.decision.is_exact
    chosen = _whole(plan, frozenset())
    for size in range(1, len(WALLS) + 1):
        for turned in combinations(WALLS, size):
            assert chosen <= _whole(plan, frozenset(turned)) + 1e-6


@settings(max_examples=20, deadline=None)
@given(_signs)
def test_the_parts_of_a_course_add_up_to_it(signs: list[tuple[str, str]]) -> None:
    def adds_up(cost: CourseCost) -> None:
        assert sum(part.expected for part in cost.parts) == pytest.approx(cost.expected)

    for one in a_plan(*(_sign(*sign) for sign in signs)).decision.surfaces:
        adds_up(one.keep)
        adds_up(one.gut)


@settings(max_examples=20, deadline=None)
@given(_signs, st.sampled_from(WALLS))
def test_more_evidence_never_turns_gut_into_keep(signs: list[tuple[str, str]], where: str) -> None:
    before = a_plan(*(_sign(*one) for one in signs)).decision
    after = a_plan(*(_sign(*one) for one in signs), _sign(where, "wet-stain")).decision
    for one, other in zip(before.surfaces, after.surfaces, strict=True):
        if one.surface_id == where:
            assert not (one.computed == "gut" and other.computed == "keep")


def test_a_reason_carries_the_source_of_its_rule_and_is_given_once() -> None:
    foul = Decides(course="gut", reason="Foul water has been in the wall.")
    lead = Decides(course="test first", reason="The paint may hold lead.")
    plan = a_plan(
        a_finding(NORTH, decides=foul, id="one", rule_id="foul", source="A standard, 2021"),
        a_finding(NORTH, decides=foul, id="two", rule_id="other", source="Another"),
        a_finding(None, decides=lead, id="three", rule_id="lead", source="40 CFR 745"),
    )
    north = next(one for one in plan.decision.surfaces if one.surface_id == NORTH)
    (reason,) = north.decisive
    assert (reason.text, reason.source, reason.rule_id) == (
        "Foul water has been in the wall.",
        "A standard, 2021",
        "foul",
    )
    assert all(one.test_first[0].source == "40 CFR 745" for one in plan.decision.surfaces)


def test_an_overruled_neighbor_shares_its_set_up_with_the_others() -> None:
    # With the set-up paid for anyway, what a hole could change is counted without it.
    alone = a_plan().decision
    beside = a_plan(overruled=[Overruling("main.ceiling", "gut", "it sags")]).decision
    one, other = (
        next(s for s in decision.surfaces if s.surface_id == NORTH) for decision in (alone, beside)
    )
    assert one.hole is not None
    assert other.hole is not None
    assert other.hole.perfect_usd > one.hole.perfect_usd


def test_work_that_the_owner_marked_costs_materials_and_own_hours_in_both_courses() -> None:
    # strip: 1 a sq ft, half materials, half labor at 20 an hour; 192 sq ft: 96 of materials and
    # 4.8 h; the owner takes 1.5 times as long, and an hour is worth 15: 108.
    marked = ScopeEdit(f"strip@{NORTH}", mark="by owner")
    plan, plain = a_plan(edits=[marked]), a_plan()
    one, before = (
        next(s for s in each.decision.surfaces if s.surface_id == NORTH) for each in (plan, plain)
    )
    parts = {part.text: part.cost.likely for part in one.gut.parts}
    assert parts["strip and haul the lining"] == 96
    assert parts["your own labor, an hour worth $15"] == 108
    assert one.keep == before.keep
    # Saved: labor, and overhead and profit (x 1.21) on both halves of what it would have cost.
    means = [(0.8 + 1 + 1.4) / 3 * amount for amount in (96, 96, 108)]
    shared = plan.book.shared
    paid = shared.wages.mean * shared.crew.mean * means[0] * 1.21
    bought = shared.prices.mean * means[1]
    saved = paid + bought * 0.21 - means[2]
    assert before.gut.expected - one.gut.expected == pytest.approx(saved)
    drawn = chances_of(plan.decision, shared, draws=4000).of(NORTH)
    assert drawn.gut.mean == pytest.approx(one.gut.expected, rel=0.01)


@pytest.mark.parametrize("work", ["wire-open", "brace"])
def test_licensed_work_and_work_that_can_hurt_is_never_the_owners(work: str) -> None:
    marked = ScopeEdit(f"{work}@{NORTH}", mark="by owner")
    assert a_plan(edits=[marked]).book.by_owner == frozenset()
