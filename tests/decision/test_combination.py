"""The best combination of courses, against comparing every one of them."""

from __future__ import annotations

from itertools import product

import pytest
from hypothesis import given
from hypothesis import strategies as st

from leanto.decision.combination import (
    Choice,
    Shared,
    best_combination,
    combined_cost,
)
from leanto.decision.model import Course, CourseCost
from leanto.decision.unseen import Line
from leanto.money import Spread

WORKS = ("patch", "strip", "fish")


def _cost(course: Course, expected: float, by_work: dict[str, float]) -> CourseCost:
    return CourseCost(
        course,
        (),
        Spread.zero(),
        (),
        (),
        0.0,
        Spread.zero(),
        Line(expected, 0.0),
        expected,
        by_work,
    )


_usd = st.integers(0, 2000).map(float)
_by_work = st.dictionaries(st.sampled_from(WORKS), _usd, max_size=3)


@st.composite
def _choices(draw: st.DrawFn) -> Choice:
    return Choice(
        _cost(Course.KEEP, draw(_usd), draw(_by_work)),
        _cost(Course.GUT, draw(_usd), draw(_by_work)),
        0.0,
        draw(st.sampled_from([None, None, None, Course.KEEP, Course.GUT])),
    )


_shared = st.builds(Shared, _usd, st.dictionaries(st.sampled_from(WORKS), _usd, max_size=3))


@given(st.lists(_choices(), min_size=1, max_size=6), _shared)
def test_no_combination_is_cheaper_than_the_best(choices: list[Choice], shared: Shared) -> None:
    allowed = [
        courses
        for courses in product(Course, repeat=len(choices))
        if all(
            choice.fixed in (None, course) for choice, course in zip(choices, courses, strict=True)
        )
    ]
    least = min(combined_cost(choices, courses, shared) for courses in allowed)
    best = best_combination(choices, shared)
    assert best.is_exact
    assert best.courses in allowed
    assert best.expected_usd == pytest.approx(least)


def test_beyond_the_limit_single_changes_are_tried_and_said() -> None:
    choice = Choice(_cost(Course.KEEP, 100.0, {}), _cost(Course.GUT, 90.0, {}), 0.0)
    best = best_combination([choice] * 20, Shared(150.0, {}))
    assert not best.is_exact
    assert best.courses == (Course.GUT,) * 20
