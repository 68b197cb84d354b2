"""Where the contingency comes from: parts that add up, and follow what is uncertain."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from leanto.cost.contingency import shares_of_spread
from leanto.cost.risk import HiddenRisk, OwnRisk, SharedRisk
from leanto.cost.triangle import Triangle

ONE = Triangle(1, 1, 1)
ALONE = SharedRisk(ONE, ONE, ONE)
SHARED = SharedRisk(Triangle(0.8, 1, 1.3), Triangle(0.85, 1, 1.35), Triangle(0.9, 1, 1.2))
_points = st.tuples(*[st.integers(0, 10_000)] * 3).map(sorted)
_lines = st.lists(
    st.tuples(st.sampled_from(["roof", "wall", "floor"]), _points, _points), min_size=1, max_size=8
)


@given(_lines, st.floats(0, 5000))
def test_the_parts_add_up_to_one_and_none_is_negative(
    lines: list[tuple[str, list[int], list[int]]], hidden: float
) -> None:
    risks = [(name, OwnRisk(Triangle(*one), Triangle(*two))) for name, one, two in lines]
    shares = shares_of_spread(risks, [("wall", HiddenRisk(hidden, hidden**2))], SHARED)
    if shares:
        assert sum(shares.values()) == pytest.approx(1)
        assert min(shares.values()) >= 0


def test_without_shared_factors_the_parts_are_the_variances() -> None:
    wide, narrow = Triangle(0, 100, 200), Triangle(50, 100, 150)
    none = Triangle(0, 0, 0)
    shares = shares_of_spread(
        [("roof", OwnRisk(wide, none)), ("wall", OwnRisk(narrow, none))], [], ALONE
    )
    assert shares == pytest.approx({"roof": 0.8, "wall": 0.2})


def test_what_is_hidden_asks_for_its_part() -> None:
    fixed = OwnRisk(Triangle(500, 500, 500), Triangle(0, 0, 0))
    shares = shares_of_spread([("roof", fixed)], [("wall", HiddenRisk(100, 400))], ALONE)
    assert shares == pytest.approx({"roof": 0.0, "wall": 1.0})


def test_nothing_uncertain_has_no_parts() -> None:
    fixed = OwnRisk(Triangle(500, 500, 500), Triangle(0, 0, 0))
    assert shares_of_spread([("roof", fixed)], [], ALONE) == {}
