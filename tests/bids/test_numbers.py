"""Amounts as people write them."""

from __future__ import annotations

from decimal import Decimal

import pytest
from hypothesis import given
from hypothesis import strategies as st

from leanto.bids.model import State
from leanto.bids.reading.numbers import has_decimal_comma, read_amount


@pytest.mark.parametrize(
    ("text", "usd"),
    [
        ("1200", "1200"),
        ("1,200.50", "1200.50"),
        ("$1,200", "1200"),
        ("$1 200", "1200"),
        ("1\u00a0200", "1200"),
        ("12\u202f500.00", "12500.00"),
        ("1.200,50", "1200.50"),
        ("1 200,50", "1200.50"),
        ("1'200.50", "1200.50"),
        ("12,50", "12.50"),
        ("1.200.000", "1200000"),
        ("1,200,000", "1200000"),
        ("0.125", "0.125"),
        ("1234.567", "1234.567"),
        (".5", "0.5"),
        ("US$ 3,400", "3400"),
        ("3400 USD", "3400"),
        ("3,400 lump sum", "3400"),
        ("1200.-", "1200"),
        ("4.50/sf", "4.50"),
        ("4.50 per sq ft", "4.50"),
        ("$95 a sheet", "95"),
        ("95 each", "95"),
        ("1.2k", "1200"),
        ("0", "0"),
        ("$0.00", "0"),
        ("no charge", "0"),
    ],
)
def test_a_clear_figure_is_read(text: str, usd: str) -> None:
    reading = read_amount(text)

    assert reading.why == ""
    assert reading.amount.usd == Decimal(usd)


@pytest.mark.parametrize(
    ("text", "state"),
    [
        ("", State.MISSING),
        ("   ", State.MISSING),
        ("incl.", State.INCLUDED),
        ("Included", State.INCLUDED),
        ("incl. in line 12", State.INCLUDED),
        ("in line 3 and 4", State.INCLUDED),
        ("w/ 12", State.INCLUDED),
        ("in roof", State.INCLUDED),
        ("by others", State.EXCLUDED),
        ("By owner", State.EXCLUDED),
        ("NIC", State.EXCLUDED),
        ("N.I.C.", State.EXCLUDED),
        ("not included", State.EXCLUDED),
        ("excluded - by owner", State.EXCLUDED),
        ("none", State.EXCLUDED),
        ("no bid", State.EXCLUDED),
    ],
)
def test_words_that_stand_for_an_amount_are_understood(text: str, state: State) -> None:
    reading = read_amount(text)

    assert reading.why == ""
    assert reading.amount.state is state
    assert reading.amount.usd is None


@pytest.mark.parametrize(
    ("text", "why"),
    [
        ("1.200", "It may be 1,200 or 1.2."),
        ("12.345", "It may be 12,345 or 12.345."),
        ("-500", "below zero"),
        ("(500)", "below zero"),
        ("1,200-1,500", "a range"),
        ("1200 to 1500", "a range"),
        ("-", "a mark only"),
        ("abc", "letters where a price belongs"),
        ("TBD", "letters where a price belongs"),
        ("1200 + tax", "words beside the figure"),
        ("incl. permit 250", "words beside the figure"),
        ("in addition 500", "words beside the figure"),
        ("=1+1", "words beside the figure"),
        ("1,20,000", "two things"),
        ("12 34", "two things"),
        ("99999999999", "over $10,000,000"),
        ("9" * 300, "too long"),
    ],
)
def test_what_is_not_clear_is_asked_about_and_kept_as_written(text: str, why: str) -> None:
    reading = read_amount(text)

    assert reading.amount.state is State.UNREAD
    assert reading.amount.text == text
    assert why in reading.why


def test_one_thousand_two_hundred_is_doubtful_in_a_file_with_decimal_commas() -> None:
    assert has_decimal_comma(["8", "12,50"])
    assert not has_decimal_comma(["8", "1,200", "1,200.50"])
    assert read_amount("1,200").amount.usd == 1200
    assert read_amount("1,200", comma_decimals=True).why == "It may be 1,200 or 1.2. Which?"
    assert read_amount("1,200,000", comma_decimals=True).amount.usd == 1_200_000


def test_a_deduction_may_be_below_zero() -> None:
    assert read_amount("-500", below_zero=True).amount.usd == -500
    assert read_amount("($1,500)", below_zero=True).amount.usd == -1500


@given(st.decimals(min_value=0, max_value=9_999_999, places=2))
def test_an_amount_printed_the_american_way_is_read_back(usd: Decimal) -> None:
    assert read_amount(f"${usd:,.2f}").amount.usd == usd


@given(st.text(max_size=60))
def test_any_text_is_read_or_asked_about_but_never_refused(text: str) -> None:
    reading = read_amount(text)

    assert (reading.amount.state is State.UNREAD) == bool(reading.why)
