from __future__ import annotations

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from leanto.quantities import QuantityError, parse_area_sqft


@pytest.mark.parametrize(
    ("text", "sqft"),
    [
        ("12 sq ft", 12),
        ("12.5 sf", 12.5),
        ("12 square feet", 12),
        ("12 ft\u00b2", 12),
        ("1,200 sq. ft.", 1200),
        ("3' x 4'", 12),
        ("3' \u00d7 4' 6\"", 13.5),
        ("3 ft by 18 in", 4.5),
        ("100000 sf", 100_000),
    ],
)
def test_an_area_is_read_in_square_feet(text: str, sqft: float) -> None:
    assert parse_area_sqft(text) == pytest.approx(sqft, rel=1e-12)


@pytest.mark.parametrize(
    ("text", "reason"),
    [
        ("12", "not understood"),
        ("", "is needed"),
        ("3 x 4", "no unit"),
        ("3' x 4' x 5'", "not understood"),
        ("-12 sq ft", "not understood"),
        ("100001 sf", "more than 100,000"),
        ("nan sq ft", "not understood"),
    ],
)
def test_what_is_no_area_is_refused(text: str, reason: str) -> None:
    with pytest.raises(QuantityError, match=reason):
        parse_area_sqft(text)


@settings(deadline=None)
@given(st.text(max_size=50) | st.text("0123456789'\"-/ .,ftinsqxby", max_size=20))
def test_any_text_is_a_believable_area_or_refused(text: str) -> None:
    try:
        assert 0 <= parse_area_sqft(text) <= 100_000
    except QuantityError as refused:
        assert str(refused).isprintable()
