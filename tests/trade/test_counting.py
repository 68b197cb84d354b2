"""Counting in whole units."""

from __future__ import annotations

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from leanto.trade.counting import whole_units, with_waste


@pytest.mark.parametrize(
    ("amount", "units"),
    [
        (0, 0),
        (0.001, 1),
        (39, 39),
        (39.0000001, 39),
        (39.00001, 40),
        (39.01, 40),
        (0.1 * 3 * 10, 3),  # 3.0000000000000004
        (38.9999999, 39),
    ],
)
def test_noise_adds_no_unit(amount: float, units: int) -> None:
    assert whole_units(amount) == units


@pytest.mark.parametrize("amount", [-0.1, math.nan, math.inf])
def test_an_amount_that_cannot_be_counted_is_refused(amount: float) -> None:
    with pytest.raises(ValueError, match="amount to count"):
        whole_units(amount)


@given(st.floats(0, 1e6))
def test_units_cover_the_amount_and_none_is_spare(amount: float) -> None:
    units = whole_units(amount)
    assert units >= amount - 1e-6
    assert units - 1 < amount or units == 0


@given(st.floats(0, 1e6), st.floats(0, 1))
def test_waste_never_lowers_an_amount(amount: float, waste: float) -> None:
    assert with_waste(amount, waste) >= amount


def test_negative_waste_is_refused() -> None:
    with pytest.raises(ValueError, match="waste"):
        with_waste(10, -0.1)
