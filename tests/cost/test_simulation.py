"""Draws that share one world: order, taking back, and what a change alone does."""

from __future__ import annotations

from itertools import pairwise, permutations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from leanto.cost.bad_share import sliced
from leanto.cost.risk import OwnRisk, SharedRisk
from leanto.cost.simulation import Distribution, Draws, HiddenDraw, simulate
from leanto.cost.triangle import Triangle

SHARED = SharedRisk(Triangle(0.8, 1, 1.3), Triangle(0.85, 1, 1.35), Triangle(0.9, 1, 1.2))
LINES = [
    OwnRisk(Triangle(100 * i, 150 * i, 300 * i), Triangle(40 * i, 60 * i, 140 * i), f"work-{i}")
    for i in range(1, 5)
]
DAMAGE = [HiddenDraw(0.3, 1.4, 4.2, 900 * i, f"surface-{i}") for i in range(1, 4)]


def test_the_order_of_lines_and_surfaces_changes_nothing() -> None:
    expected = simulate(LINES, DAMAGE, SHARED, draws=400)
    for lines in permutations(LINES):
        assert simulate(lines, reversed(DAMAGE), SHARED, draws=400) == expected


def test_a_line_is_drawn_alike_whatever_stands_beside_it() -> None:
    alone = Draws.none(SHARED, draws=300).plus(LINES[:1])
    among = Draws.none(SHARED, draws=300).plus(LINES, DAMAGE).minus(LINES[1:], DAMAGE)
    assert list(among.totals()) == pytest.approx(list(alone.totals()), abs=1e-6)


def test_one_more_line_makes_every_single_draw_dearer() -> None:
    before = Draws.none(SHARED, draws=300).plus(LINES[:2]).totals()
    after = Draws.none(SHARED, draws=300).plus(LINES[:3]).totals()
    assert all(a < b for a, b in zip(before, after, strict=True))


def test_lines_without_a_key_are_drawn_apart() -> None:
    line = OwnRisk(Triangle(0, 100, 200), Triangle(0, 0, 0))
    two = simulate([line, line], [], SHARED, draws=2000).total
    double = OwnRisk(Triangle(0, 200, 400), Triangle(0, 0, 0))
    one = simulate([double], [], SHARED, draws=2000).total
    assert two.at(0.9) - two.at(0.1) < 0.85 * (one.at(0.9) - one.at(0.1))


@pytest.mark.parametrize("p", [0.0, 0.25, 1.0])
def test_damage_comes_up_in_its_share_of_the_draws(p: float) -> None:
    drawn = Draws.none(SHARED, draws=400).plus([], [HiddenDraw(p, 1.4, 4.2, 1000)])
    assert sum(value > 0 for value in drawn.damage) == round(400 * p)


def test_share_under_counts_the_draws_at_or_under_an_amount() -> None:
    drawn = Distribution((1.0, 2.0, 2.0, 5.0))
    assert [drawn.share_under(x) for x in (0, 1, 2, 4.9, 5)] == [0, 0.25, 0.75, 0.75, 1]


@given(st.floats(1, 50), st.floats(1, 50))
def test_slices_of_a_bad_share_rise_from_zero_to_one(a: float, b: float) -> None:
    shares = sliced(a, b)
    assert len(shares) == 256
    assert all(x <= y for x, y in pairwise(shares))
    assert shares[0] >= 0
    assert shares[-1] <= 1


@pytest.mark.parametrize(("a", "b"), [(0.9, 2), (2, 0.5)])
def test_a_share_whose_density_has_a_pole_is_refused(a: float, b: float) -> None:
    with pytest.raises(ValueError, match="at least 1"):
        sliced(a, b)
