"""Amounts as a job shows them, in feet and inches or metric."""

from __future__ import annotations

from decimal import Decimal

import pytest
from hypothesis import given
from hypothesis import strategies as st

from leanto.quantities import (
    FEET,
    METRIC,
    System,
    Unit,
    format_ft_in,
    format_quantity,
    parse_area_sqft,
    parse_length_ft,
    parse_temperature_f,
    show_as,
    showing,
    shown,
)
from leanto.quantities.prose import metric_words


@pytest.mark.parametrize(
    ("ft", "said"),
    [
        (0.0, "0 mm"),
        (1.5 / 12, "38 mm"),
        (3.28, "1 m"),
        (999.4 / 304.8, "999 mm"),
        (999.6 / 304.8, "1 m"),
        (7 + 3.5 / 12, "2.223 m"),
        (12.0, "3.658 m"),
        (-2 / 12, "-51 mm"),
    ],
)
def test_a_length_is_said_in_millimeters_below_a_meter(ft: float, said: str) -> None:
    assert METRIC.length(ft) == said


@pytest.mark.parametrize(
    ("value", "unit", "said"),
    [
        (120, Unit.SQFT, "11.15 m²"),
        (100, Unit.LF, "30.48 m"),
        (1, Unit.SQUARE, "9.29 m²"),
        (2, Unit.CY, "1.53 m³"),
        (100, Unit.BOARD_FOOT, "0.236 m³"),
        (2000, Unit.POUND, "907.2 kg"),
        (1, Unit.TON, "0.91 t"),
        (5, Unit.GALLON, "18.9 L"),
        (3, Unit.EACH, "3 each"),
        (2.5, Unit.HOUR, "2.5 hours"),
        (0.01, Unit.SQFT, "under 0.01 m²"),
    ],
)
def test_a_quantity_of_work_in_metric(value: float, unit: Unit, said: str) -> None:
    with showing(System.METRIC):
        assert format_quantity(value, unit) == said


@given(st.decimals("0.01", "9999", places=2), st.floats(0.01, 9999), st.sampled_from(Unit))
def test_price_times_quantity_is_the_same_in_both(
    usd: Decimal, quantity: float, unit: Unit
) -> None:
    metric = METRIC.rate(usd, unit) * Decimal(repr(METRIC.number(quantity, unit)))
    assert float(metric) == pytest.approx(float(usd) * quantity, rel=1e-12)


@given(st.floats(0, 900))
def test_what_is_said_in_metric_is_read_back_within_its_rounding(ft: float) -> None:
    assert parse_length_ft(METRIC.length(ft)) == pytest.approx(ft, abs=0.51 / 304.8)


@pytest.mark.parametrize(
    ("typed", "sqft"),
    [
        ("1.1 m2", 1.1 / 0.09290304),
        ("9.290304 m²", 100.0),
        ("2 sq m", 2 / 0.09290304),
        ("3 square meters", 3 / 0.09290304),
        ("1 m x 2 m", 2 / 0.09290304),
        ("12 sq ft", 12.0),
    ],
)
def test_an_area_is_typed_in_either(typed: str, sqft: float) -> None:
    assert parse_area_sqft(typed) == pytest.approx(sqft)


def test_a_bare_number_means_what_is_asked_for() -> None:
    assert parse_length_ft("3.048", default_unit="m") == 10.0
    assert parse_length_ft("254", default_unit="mm") == pytest.approx(10 / 12)
    assert parse_temperature_f("20", bare="c") == 68.0
    assert parse_temperature_f("68 F", bare="c") == 68.0


# Each row: the sentence, and what codes print beside it or what the exact factor gives.
@pytest.mark.parametrize(
    ("sentence", "said"),
    [
        ("Wood 6 in. above soil.", "Wood 152 mm above soil."),
        ("Falls 6 in. in 10 ft.", "Falls 152 mm in 3.05 m."),
        ("Keep 6 to 8 in. Then stop.", "Keep 152 to 203 mm. Then stop."),
        ("A 22 x 30 in. hatch", "A 559 x 762 mm hatch"),
        ("3-1/2 in. thick", "89 mm thick"),
        ("Clear span 24 ft 6 in.", "Clear span 7.47 m"),
        ("over 10 sq ft", "over 0.929 m²"),
        ("40 psf", "1.92 kPa"),
        ("50 to 95 F", "10 to 35 °C"),
        ("a point for each 20 F", "a point for each 11 °C"),
        ("250 to 400 lb per square", "113 to 181 kg per square"),
        ("2x6 at 16 in. on center", "2x6 at 16 in. (406 mm) on center"),
        ("Hang 1/2 in. gypsum board", "Hang 1/2 in. gypsum board"),
        ("R-13 in R806.2", "R-13 (RSI 2.29) in R806.2"),
        ("a slope of 3 in 12", "a slope of 3 in 12"),
        ("feed-beyond-100-ft", "feed-beyond-100-ft"),
        ("Two rods, an inch apart", "Two rods, 25 mm apart"),
        ("the 1930's", "the 1930's"),
    ],
)
def test_a_sentence_of_ours_in_metric(sentence: str, said: str) -> None:
    assert metric_words(sentence) == said
    assert metric_words(said) == said
    assert FEET.words(sentence) == sentence


def test_what_is_shown_can_change_while_somebody_looks() -> None:
    system = [System.FEET]
    with showing(System.FEET):
        show_as(lambda: system[0])
        assert format_ft_in(10.0) == "10' 0\""
        system[0] = System.METRIC
        assert format_ft_in(10.0) == "3.048 m"
        assert shown().is_metric
