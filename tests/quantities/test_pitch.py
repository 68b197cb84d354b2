from __future__ import annotations

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from leanto.quantities import QuantityError, format_pitch, parse_pitch


@pytest.mark.parametrize(
    ("text", "rise"),
    [
        ("6:12", 6),
        ("6 : 12", 6),
        ("6/12", 6),
        ("6 in 12", 6),
        ("6 on 12", 6),
        ("6", 6),
        ("6.5", 6.5),
        ("6 1/2:12", 6.5),
        ("6\u00bd in 12", 6.5),
        ("0.25", 0.25),
        ("\u00bc:12", 0.25),
        ("1/4 in 12", 0.25),
        ("20:12", 20),
        ("45 deg", 12),
        ("45\u00b0", 12),
        # arctan(5/12) = 22.6199 degrees, the 5-12-13 triangle
        ("22.6199 degrees", 5),
    ],
)
def test_a_pitch_is_the_rise_in_twelve(text: str, rise: float) -> None:
    assert parse_pitch(text) == pytest.approx(rise, abs=1e-4)


@pytest.mark.parametrize(
    ("text", "reason"),
    [
        ("0", "Choose the flat roof form"),
        ("0:12", "Choose the flat roof form"),
        ("0.24", "flatter than 1/4:12"),
        ("20.1:12", "pitch 20.1:12 is steeper than 20:12"),
        ("24:12", "pitch 24:12 is steeper than 20:12"),
        ("89 deg", "steeper than 20:12"),
        ("90 deg", "no roof slope"),
        ("-6", "not understood"),
        ("1/2", "not understood"),
        ("1/4/12", "not understood"),
        ("6:10", "not understood"),
        ("6 1/0:12", "not understood"),
        ("nan", "not understood"),
        ("", "is needed"),
    ],
)
def test_an_unbelievable_pitch_is_refused(text: str, reason: str) -> None:
    with pytest.raises(QuantityError) as refused:
        parse_pitch(text)
    assert reason in str(refused.value)


@pytest.mark.parametrize(("rise", "text"), [(6.0, "6:12"), (6.25, "6.25:12"), (6.114, "6.11:12")])
def test_a_pitch_is_printed_over_twelve(rise: float, text: str) -> None:
    assert format_pitch(rise) == text


@settings(deadline=None)
@given(st.text(max_size=50) | st.text("0123456789:/. deginon\u00b0", max_size=15))
def test_any_text_is_a_believable_pitch_or_refused(text: str) -> None:
    try:
        assert 0.25 <= parse_pitch(text) <= 20
    except QuantityError as refused:
        assert str(refused).isprintable()
