from __future__ import annotations

import itertools
from decimal import Decimal

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from leanto.money import Spread, dollars, exact, format_usd, round_to

AMOUNTS = st.decimals(-1_000_000, 1_000_000, places=4, allow_nan=False)
SPREADS = st.lists(AMOUNTS, min_size=3, max_size=3).map(lambda three: Spread(*sorted(three)))


@pytest.mark.parametrize(
    ("amount", "rounded"),
    [
        ("1.004", "1.00"),
        ("1.005", "1.01"),
        ("-1.005", "-1.01"),
        (2.675, "2.68"),
        (0.1, "0.10"),
        (3, "3.00"),
    ],
)
def test_half_a_cent_goes_away_from_zero(amount: float | str, rounded: str) -> None:
    assert str(dollars(amount)) == rounded


@pytest.mark.parametrize(
    ("amount", "step", "rounded"),
    [
        ("1249.99", 500, "1000"),
        ("1250", 500, "1500"),
        ("1250.01", 500, "1500"),
        ("12.4", 5, "10"),
        ("12.5", 5, "15"),
        ("0.12", "0.25", "0.00"),
        ("0.125", "0.25", "0.25"),
        ("-12.5", 5, "-15"),
    ],
)
def test_an_amount_is_rounded_to_the_nearest_step(
    amount: str, step: int | str, rounded: str
) -> None:
    assert round_to(amount, step) == Decimal(rounded)


@pytest.mark.parametrize("step", [0, -5])
def test_rounding_to_no_step_is_a_mistake(step: int) -> None:
    with pytest.raises(ValueError, match="no step"):
        round_to(1, step)


@pytest.mark.parametrize("amount", ["abc", "", float("nan"), float("inf"), Decimal("NaN")])
def test_what_is_no_number_is_a_mistake(amount: float | str | Decimal) -> None:
    with pytest.raises(ValueError, match="not a"):
        exact(amount)


@pytest.mark.parametrize(
    ("amount", "cents", "text"),
    [
        (1250, False, "$1,250"),
        ("1249.50", False, "$1,250"),
        ("1249.49", False, "$1,249"),
        ("1249.495", True, "$1,249.50"),
        (1_000_000, True, "$1,000,000.00"),
        (-1250, False, "-$1,250"),
        ("-0.4", False, "$0"),
        (0, True, "$0.00"),
    ],
)
def test_dollars_are_printed_with_sign_and_commas(
    amount: float | str, cents: bool, text: str
) -> None:
    assert format_usd(amount, cents) == text


@pytest.mark.parametrize("order", [(2, 1, 3), (1, 3, 2), (3, 2, 1)])
def test_a_spread_out_of_order_is_a_mistake(order: tuple[int, int, int]) -> None:
    with pytest.raises(ValueError, match="low over likely to high"):
        Spread.of(*order)


def test_a_spread_of_equal_amounts_is_fine() -> None:
    assert Spread.of(2, 2, 2).rounded() == Spread.of(2, 2, 2)


def test_a_spread_without_end_is_a_mistake() -> None:
    with pytest.raises(ValueError, match="finite"):
        Spread(Decimal(1), Decimal(2), Decimal("Infinity"))


def test_spreads_are_added_and_scaled_without_rounding() -> None:
    assert Spread.of("0.1", "0.2", "0.3") + Spread.of(0.2, 0.4, 0.6) == Spread.of(
        "0.3", "0.6", "0.9"
    )
    assert Spread.of(1, 2, 4).scaled(0.333) == Spread.of("0.333", "0.666", "1.332")
    assert Spread.of("1.004", "1.005", 2).rounded() == Spread.of("1.00", "1.01", 2)
    assert Spread.of(1249, 1250, 1800).rounded(500) == Spread.of(1000, 1500, 2000)


def test_a_factor_below_zero_is_a_mistake() -> None:
    with pytest.raises(ValueError, match="below zero"):
        Spread.of(1, 2, 3).scaled(-1)


@settings(deadline=None)
@given(st.lists(SPREADS, max_size=5))
def test_a_total_does_not_depend_on_the_order(spreads: list[Spread]) -> None:
    totals = {Spread.total(order) for order in itertools.permutations(spreads)}
    assert len(totals) == 1
    (total,) = totals
    assert total.low == sum((spread.low for spread in spreads), Decimal(0))


def test_the_total_of_nothing_is_zero() -> None:
    assert Spread.total([]) == Spread.zero() == Spread.of(0, 0, 0)


@settings(deadline=None)
@given(SPREADS, st.floats(0, 1000))
def test_scaling_and_rounding_keep_the_order(spread: Spread, factor: float) -> None:
    scaled = spread.scaled(factor)
    rounded = scaled.rounded(5)
    assert rounded.low <= rounded.likely <= rounded.high
    assert scaled.low <= scaled.likely <= scaled.high
