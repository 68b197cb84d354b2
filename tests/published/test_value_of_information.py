"""Chance, expected cost and the value of looking first, against published cases and scipy.

- Value of imperfect information, chapter 20, inputs seen: ship a lot that is 25 % defective for
  +40 or -20, or rework it for +10: expected 25.00, with perfect knowledge 32.50, so its value is
  7.50. The test with sensitivity .80 and specificity .90 is worked by hand on those inputs.
- A choice of three courses at chances .2, .4, .4 with costs 50/60/70, 45/55/65, 40/60/85: seen as a
  published exercise; its two cheapest courses, worked by hand, are used here.
- scipy.stats.beta, SciPy reference guide.
"""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st
from scipy import integrate, stats

from leanto.decision.opening import (
    Opening,
    anywhere,
    at_the_signs,
    clean_ratio,
    value_of_answer,
)
from leanto.decision.unseen import (
    Line,
    Unseen,
    break_even,
    least_expected,
    posterior,
    value_of_perfect_information,
)

# A share that is practically always one half, so that a published two-state case can be put in.
NEAR_HALF = {"a": 4e4, "b": 4e4}


def value_of_opening(unseen: Unseen, keep: Line, gut: Line, q: float) -> float:
    return value_of_answer(unseen, at_the_signs(unseen, q), keep, gut)


_costs = st.floats(0, 5000)
_lines = st.builds(Line, _costs, _costs)
_unseen = st.builds(Unseen, st.floats(0.0, 1.0), st.floats(1.0, 8.0), st.floats(1.0, 20.0))


@pytest.mark.published("Value of imperfect information, chapter 20", "seen")
def test_ship_or_rework() -> None:
    # Gains as negative costs: sound -40, defective -20 ... -(-20) = +20; rework always -10.
    lot = Unseen(0.25, **NEAR_HALF)
    ship, rework = Line(-40.0, 120.0), Line(-10.0, 0.0)  # at one half: -40 + 60 = +20
    assert least_expected(lot, ship, rework) == pytest.approx(-25.00, abs=0.01)
    assert value_of_perfect_information(lot, ship, rework) == pytest.approx(7.50, abs=0.01)


@pytest.mark.published("Sums by hand", "by hand")
def test_hidden_rot_worked_by_hand() -> None:
    # Keep 2,000 sound or 9,000 rotten, gut 5,000, chance .35: keep 4,450; perfect knowledge 1,400.
    # An opening with q = .90 and no false alarm: bad .315 -> gut 5,000; clean .685 with chance
    # .035 / .685 = .05109 -> keep 2,357.66; 1,575 + 1,615 = 3,190, so it is worth 1,260.
    wall = Unseen(0.35, **NEAR_HALF)
    keep, gut = Line(2000.0, 14_000.0), Line(5000.0, 0.0)
    assert least_expected(wall, keep, gut) == pytest.approx(4450, abs=0.5)
    assert value_of_perfect_information(wall, keep, gut) == pytest.approx(1400, abs=0.5)
    assert value_of_opening(wall, keep, gut, 0.9) == pytest.approx(1260, abs=0.5)
    assert break_even(keep, gut) == pytest.approx(3000 / 14_000)


@pytest.mark.published("Sums by hand", "by hand")
@pytest.mark.parametrize(
    ("prior", "ratios", "expected"),
    [
        (0.5, (), 0.5),
        (0.2, (4.0,), 0.5),  # odds 1/4 x 4 = 1
        (0.1, (3.0, 3.0), 0.5),  # odds 1/9 x 9 = 1
        (0.5, (0.25,), 0.2),
        (0.0, (100.0,), 0.0),
        (0.3, (float("inf"),), 1.0),
    ],
)
def test_bayes_rule_in_odds(prior: float, ratios: tuple[float, ...], expected: float) -> None:
    assert posterior(prior, ratios) == pytest.approx(expected)


@pytest.mark.published("scipy and numpy", "library")
@given(_unseen)
def test_mean_and_variance_against_scipy(unseen: Unseen) -> None:
    beta = stats.beta(unseen.a, unseen.b)
    assert unseen.mean == pytest.approx(unseen.p * beta.mean())
    square = unseen.p * (beta.var() + beta.mean() ** 2)
    assert unseen.variance == pytest.approx(square - (unseen.p * beta.mean()) ** 2, abs=1e-12)


@pytest.mark.published("scipy and numpy", "library")
@pytest.mark.parametrize(("a", "b"), [(1.0, 1.0), (1.5, 4.5), (2.0, 8.0), (5.0, 2.0)])
def test_perfect_information_against_an_integral(a: float, b: float) -> None:
    keep, gut = Line(500.0, 3000.0), Line(1200.0, 600.0)
    beta = stats.beta(a, b)
    informed, _ = integrate.quad(
        lambda x: min(keep.at(x), gut.at(x)) * beta.pdf(x), 0, 1, points=[700 / 2400]
    )
    unseen = Unseen(0.4, a, b)
    expected = least_expected(unseen, keep, gut) - (0.6 * 500.0 + 0.4 * informed)
    assert value_of_perfect_information(unseen, keep, gut) == pytest.approx(expected, abs=0.5)


@pytest.mark.published("Own rule", "own")
@given(_unseen, _lines, _lines, st.floats(0, 1))
def test_an_opening_is_never_worth_less_than_nothing_nor_more_than_knowing(
    unseen: Unseen, keep: Line, gut: Line, q: float
) -> None:
    opening = value_of_opening(unseen, keep, gut, q)
    perfect = value_of_perfect_information(unseen, keep, gut)
    assert 0.0 <= opening <= perfect + 0.002 * (1 + keep.rise_usd + gut.rise_usd)


@pytest.mark.published("Own rule", "own")
@given(_unseen, _lines, _lines)
def test_a_sample_is_never_worth_less_than_nothing_nor_more_than_knowing(
    unseen: Unseen, keep: Line, gut: Line
) -> None:
    worth = value_of_answer(unseen, anywhere(unseen), keep, gut)
    perfect = value_of_perfect_information(unseen, keep, gut)
    assert 0.0 <= worth <= perfect + 0.002 * (1 + keep.rise_usd + gut.rise_usd)


@pytest.mark.published("Own rule", "own")
@given(_unseen, st.one_of(st.none(), st.floats(0, 1)))
def test_what_is_thought_after_both_answers_averages_to_what_was_thought_before(
    unseen: Unseen, q: float | None
) -> None:
    """Looking changes nothing on average; else planning to look would be worth something."""
    opening: Opening = anywhere(unseen) if q is None else at_the_signs(unseen, q)
    bad, clean = opening.chance_bad, 1 - opening.chance_bad
    assert bad * opening.bad.p + clean * opening.clean.p == pytest.approx(unseen.p)
    assert bad * opening.bad.mean + clean * opening.clean.mean == pytest.approx(unseen.mean)


@pytest.mark.published("scipy and numpy", "library")
@pytest.mark.parametrize(("a", "b"), [(1.0, 1.0), (1.4, 4.2), (3.0, 9.0)])
@pytest.mark.parametrize("sound", [1, 2, 5])
def test_samples_of_one_point_are_scipys_beta_binomial(a: float, b: float, sound: int) -> None:
    """scipy.stats.betabinom, SciPy reference guide: no bad point in so many."""
    assert clean_ratio(a, b, sound) == pytest.approx(stats.betabinom(sound, a, b).pmf(0))
    one = Unseen(0.4, a, b)
    assert anywhere(one).chance_bad == pytest.approx(0.4 * stats.betabinom(1, a, b).pmf(1))
    assert anywhere(one).bad.extent == pytest.approx(stats.beta(a + 1, b).mean())
    assert anywhere(one).clean.extent == pytest.approx(stats.beta(a, b + 1).mean())


@pytest.mark.published("Own rule", "own")
@given(_unseen, _lines, _lines, st.floats(0, 1), st.floats(0, 1))
def test_a_surer_opening_is_never_worth_less(
    unseen: Unseen, keep: Line, gut: Line, one: float, other: float
) -> None:
    low, high = sorted((one, other))
    assert (
        value_of_opening(unseen, keep, gut, low) <= value_of_opening(unseen, keep, gut, high) + 1e-6
    )


@pytest.mark.published("Own rule", "own")
@given(st.floats(0, 1), st.lists(st.floats(1.0, 20.0), max_size=4), st.floats(1.0, 20.0))
def test_more_evidence_of_damage_never_lowers_the_chance(
    prior: float, ratios: list[float], more: float
) -> None:
    before = posterior(prior, tuple(ratios))
    assert posterior(prior, (*ratios, more)) >= before - 1e-12
