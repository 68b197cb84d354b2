from __future__ import annotations

from collections.abc import Callable

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from leanto.quantities import (
    QuantityError,
    parse_count,
    parse_number,
    parse_percent,
    parse_temperature_f,
)


@pytest.mark.parametrize(
    ("text", "number"),
    [
        ("12", 12),
        ("12.5", 12.5),
        (".5", 0.5),
        ("-3", -3),
        ("\u22123", -3),
        ("1,200", 1200),
        ("1,200,000.5", 1_200_000.5),
        ("18 %", 18),
        ("18%", 18),
        ("18 percent", 18),
        ("41 F", 41),
        ("41\u00b0F", 41),
        ("5 C", 41),
        ("5 deg C", 41),
        ("-40 C", -40),
    ],
)
def test_a_number_is_read_with_or_without_its_unit(text: str, number: float) -> None:
    assert parse_number(text) == number


@pytest.mark.parametrize("text", ["", "abc", "1e9", "nan", "inf", "12,5", "1,20", "5 K", "1 2"])
def test_what_is_no_number_is_refused(text: str) -> None:
    with pytest.raises(QuantityError):
        parse_number(text)


@pytest.mark.parametrize(("text", "percent"), [("0", 0), ("18.5 %", 18.5), ("100 %", 100)])
def test_a_percentage_is_between_0_and_100(text: str, percent: float) -> None:
    assert parse_percent(text) == percent


@pytest.mark.parametrize("text", ["-1 %", "100.1 %", "18 F"])
def test_what_is_no_percentage_is_refused(text: str) -> None:
    with pytest.raises(QuantityError):
        parse_percent(text)


def test_the_highest_percentage_can_be_set() -> None:
    assert parse_percent("120 %", at_most=150) == 120
    with pytest.raises(QuantityError, match="between 0 and 30 %"):
        parse_percent("31", at_most=30)


@pytest.mark.parametrize(
    ("text", "count"), [("0", 0), ("3", 3), ("3.0", 3), ("1,200", 1200), ("100000", 100_000)]
)
def test_a_count_is_a_whole_number(text: str, count: int) -> None:
    assert parse_count(text) == count


@pytest.mark.parametrize("text", ["2.5", "-1", "100001", "3 %", "three"])
def test_what_is_no_count_is_refused(text: str) -> None:
    with pytest.raises(QuantityError):
        parse_count(text)


# 0 C is 32 F and 100 C is 212 F by definition of the scales.
@pytest.mark.parametrize(
    ("text", "degrees_f"), [("41", 41), ("41 F", 41), ("0 C", 32), ("5 C", 41), ("-80", -80)]
)
def test_a_temperature_is_read_in_fahrenheit(text: str, degrees_f: float) -> None:
    assert parse_temperature_f(text) == degrees_f


@pytest.mark.parametrize("text", ["-81", "181 F", "100 C", "50 %", "warm"])
def test_what_is_no_temperature_is_refused(text: str) -> None:
    with pytest.raises(QuantityError):
        parse_temperature_f(text)


@settings(deadline=None)
@given(
    st.text(max_size=50) | st.text("0123456789-+.,%FC \u00b0e", max_size=20),
    st.sampled_from([parse_number, parse_percent, parse_count, parse_temperature_f]),
)
def test_any_text_is_a_number_or_refused(text: str, parse: Callable[[str], float]) -> None:
    try:
        assert -1e41 < parse(text) < 1e41
    except QuantityError as refused:
        assert str(refused).isprintable()
