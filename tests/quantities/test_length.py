from __future__ import annotations

from fractions import Fraction

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from leanto.errors import LeantoError
from leanto.quantities import LengthError, format_ft_in, parse_length_ft

# The international foot is 0.3048 m exactly and the inch 25.4 mm exactly (from memory:
# NIST Special Publication 811, 2008, appendix B.6).
FT_PER_M = Fraction(10000, 3048)
SEVEN_THREE_AND_A_HALF = Fraction(7 * 24 + 7, 24)

SAID = [
    ("7' 3 1/2\"", SEVEN_THREE_AND_A_HALF),
    ("7'3-1/2\"", SEVEN_THREE_AND_A_HALF),
    ("7'-3 1/2\"", SEVEN_THREE_AND_A_HALF),
    ("7' - 3 1/2\"", SEVEN_THREE_AND_A_HALF),
    ("7' 3.5\"", SEVEN_THREE_AND_A_HALF),
    ("7' 3\u00bd\"", SEVEN_THREE_AND_A_HALF),
    ("7\u2019 3 1\u20442\u201d", SEVEN_THREE_AND_A_HALF),
    ("7\u2032 3\u00bd\u2033", SEVEN_THREE_AND_A_HALF),
    ("7-3 1/2", SEVEN_THREE_AND_A_HALF),
    ("7-3-1/2", SEVEN_THREE_AND_A_HALF),
    ("7 ft 3 1/2 in", SEVEN_THREE_AND_A_HALF),
    ("7-3", Fraction(29, 4)),
    ("7\u20133", Fraction(29, 4)),
    ("7' 3", Fraction(29, 4)),
    ("7' 3''", Fraction(29, 4)),
    ("7 ft 3 in", Fraction(29, 4)),
    ("7 FT. 3 IN.", Fraction(29, 4)),
    ("7 feet and 3 inches", Fraction(29, 4)),
    ("7 ft, 3 in", Fraction(29, 4)),
    ("  7'\u00a03\"  ", Fraction(29, 4)),
    ("0' 11 15/16\"", Fraction(191, 192)),
    ("7 feet", Fraction(7)),
    ("1 foot", Fraction(1)),
    ("7.5'", Fraction(15, 2)),
    ("7 1/2'", Fraction(15, 2)),
    ("7\u00be ft", Fraction(31, 4)),
    ('88"', Fraction(22, 3)),
    ("88 in", Fraction(22, 3)),
    ("1 inch", Fraction(1, 12)),
    ('3 1/2"', Fraction(7, 24)),
    ('3-1/2"', Fraction(7, 24)),
    ('1/2"', Fraction(1, 24)),
    ('\u00bc"', Fraction(1, 48)),
    ('5/4"', Fraction(5, 48)),
    ('0"', Fraction(0)),
    ("2.24 m", Fraction(224, 100) * FT_PER_M),
    ("2,24 m", Fraction(224, 100) * FT_PER_M),
    ("0,125 m", Fraction(1, 8) * FT_PER_M),
    ("2240mm", Fraction(224, 100) * FT_PER_M),
    ("224 cm", Fraction(224, 100) * FT_PER_M),
    ("2 metres", 2 * FT_PER_M),
    ("25.4 millimeters", Fraction(1, 12)),
    ("304,8 mm", Fraction(1)),
    ("1000 ft", Fraction(1000)),
]


@pytest.mark.parametrize(("text", "feet"), SAID)
def test_a_length_as_people_say_it_is_read_exactly(text: str, feet: Fraction) -> None:
    assert parse_length_ft(text) == float(feet)


REFUSED = [
    ("-3", "below zero"),
    ("-3 ft", "below zero"),
    ("\u22123 ft", "below zero"),
    ("7'13\"", "must be under 12"),
    ("7' 12\"", "must be under 12"),
    ("24-36", "must be under 12"),
    ("7.5' 3\"", "parts of a foot"),
    ("7 1/2' 3\"", "parts of a foot"),
    ("", "is needed"),
    ("   ", "is needed"),
    ("nan", "not understood"),
    ("inf ft", "not understood"),
    ("1e9", "not understood"),
    ("1e9 ft", "not understood"),
    ("7' 3 1/0\"", "zero below the line"),
    ("3 3/2 in", "not less than one"),
    ("1000.01 ft", "longer than 1000 ft"),
    ("12001 in", "longer than 1000 ft"),
    ("305 m", "longer than 1000 ft"),
    ("1" * 38 + " ft", "at most 40"),
    ("2,240 mm", "two ways"),
    ("12", "no unit"),
    ("3 1/2", "no unit"),
    ("7-3/4", "no unit"),
    ("7' 3' ", "not understood"),
    ("3\" 7'", "not understood"),
    ("7 yards", "not understood"),
    ("7\u00b2 ft", "not understood"),
    ("\u0667 ft", "not understood"),
    ("seven feet", "not understood"),
    ("7'\x00", "not understood"),
]


@pytest.mark.parametrize(("text", "reason"), REFUSED)
def test_what_is_no_length_is_refused_in_one_line_that_says_why(text: str, reason: str) -> None:
    with pytest.raises(LengthError) as refused:
        parse_length_ft(text)
    assert reason in refused.value.what
    assert refused.value.remedy
    assert "\n" not in str(refused.value)
    assert str(refused.value).isprintable()


def test_a_refusal_is_an_error_the_user_can_put_right() -> None:
    assert issubclass(LengthError, LeantoError)


def test_a_bare_number_takes_the_unit_that_the_field_asks_for() -> None:
    assert parse_length_ft("12", default_unit="ft") == 12
    assert parse_length_ft("12", default_unit="in") == 1
    assert parse_length_ft("7 1/2", default_unit="ft") == 7.5
    assert parse_length_ft("5-1/2", default_unit="in") == 5.5 / 12
    assert parse_length_ft("5 in", default_unit="ft") == float(Fraction(5, 12))


def test_a_hyphen_before_a_fraction_of_an_unknown_unit_is_refused() -> None:
    with pytest.raises(LengthError, match="feet or as feet and inches"):
        parse_length_ft("7-3/4", default_unit="ft")


PRINTED = [
    (float(SEVEN_THREE_AND_A_HALF), 8, "7' 3 1/2\""),
    (7.0, 8, "7' 0\""),
    (0.0, 8, '0"'),
    (0.25, 8, '3"'),
    (float(Fraction(7, 24)), 8, '3 1/2"'),
    (float(Fraction(1, 96)), 8, '1/8"'),
    (float(Fraction(7 * 96 + 1, 96)), 8, "7' 1/8\""),
    (float(Fraction(7 * 96 - 1, 96)), 8, "6' 11 7/8\""),
    (6.9999, 8, "7' 0\""),
    (float(Fraction(1, 12 * 16)), 16, '1/16"'),
    (1 / 64, 8, '1/4"'),
    (float(Fraction(5, 12)) + 0.001, 1, '5"'),
    (-0.5, 8, '-6"'),
    (-0.0001, 8, '0"'),
]


@pytest.mark.parametrize(("feet", "denominator", "text"), PRINTED)
def test_a_length_is_printed_in_feet_and_inches(feet: float, denominator: int, text: str) -> None:
    assert format_ft_in(feet, denominator) == text


@pytest.mark.parametrize(
    ("feet", "denominator"), [(float("nan"), 8), (float("inf"), 8), (1.0, 0), (1.0, -8)]
)
def test_printing_what_is_no_length_is_a_mistake(feet: float, denominator: int) -> None:
    with pytest.raises(ValueError, match="no length to print"):
        format_ft_in(feet, denominator)


@settings(deadline=None)
@given(st.sampled_from([1, 2, 4, 8, 16, 32, 64]), st.data())
def test_every_printed_length_is_read_back_exactly(denominator: int, data: st.DataObject) -> None:
    parts = data.draw(st.integers(0, 1000 * 12 * denominator))
    feet = float(Fraction(parts, 12 * denominator))
    assert parse_length_ft(format_ft_in(feet, denominator)) == feet


@settings(deadline=None)
@given(st.floats(0, 999), st.sampled_from([1, 8, 16]))
def test_printing_moves_a_length_by_half_a_part_at_most(feet: float, denominator: int) -> None:
    printed = parse_length_ft(format_ft_in(feet, denominator))
    assert abs(printed - feet) <= 0.5 / denominator / 12 + 1e-12


@settings(deadline=None)
@given(st.text(max_size=50) | st.text("0123456789'\"-/ .,ftinmcx\u00bd\u2032e", max_size=20))
def test_any_text_is_a_believable_length_or_refused(text: str) -> None:
    try:
        feet = parse_length_ft(text)
    except LengthError as refused:
        assert str(refused).isprintable()
    else:
        assert 0 <= feet <= 1000
