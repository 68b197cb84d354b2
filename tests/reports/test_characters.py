"""Text made fit to print."""

from __future__ import annotations

import unicodedata

import pytest
from hypothesis import given
from hypothesis import strategies as st

from leanto.reports.characters import columns, in_drawing_order, printable


@pytest.mark.parametrize(
    ("text", "expected"),
    [
        ("Nguyễn", "Nguyễn"),
        (unicodedata.normalize("NFD", "Nguyễn Ångström"), "Nguyễn Ångström"),
        ("two\r\nlines\rand\u2028more", "two\nlines\nand\nmore"),
        ("\x1b[31mred\x07", "[U+001B][31mred[U+0007]"),
        ("tab\there", "tab here"),
        ("zero\u200bwidth\u00adhyphen\ufeff", "zerowidthhyphen"),
        ("turned \u202eback", "turned [U+202E]back"),
        ("a\u00a0b\u2003c", "a b c"),
        ("private \ue000", "private [U+E000]"),
        ("half \ud800 pair", "half [U+D800] pair"),
        ("<b> & 台北 ½", "<b> & 台北 ½"),
    ],
)
def test_what_steers_or_hides_becomes_visible_or_goes(text: str, expected: str) -> None:
    assert printable(text) == expected


@given(st.text())
def test_printable_text_holds_no_control_or_format_character(text: str) -> None:
    shown = printable(text)

    assert not {unicodedata.category(c) for c in shown if c != "\n"} & {"Cc", "Cf", "Cs", "Co"}
    assert printable(shown) == shown


def test_wide_and_combining_characters_take_their_columns() -> None:
    assert columns("ab") == 2
    assert columns("台北") == 4
    assert columns("e\u0323\u0302") == 1


@pytest.mark.parametrize(
    ("text", "expected"),
    [
        ("plain", "plain"),
        ("שלום", "םולש"),
        ("owner שלום עולם, 3 bays", "owner םלוע םולש, 3 bays"),
        ("12 בית 34", "12 תיב 34"),
    ],
)
def test_right_to_left_words_are_turned_for_drawing(text: str, expected: str) -> None:
    assert in_drawing_order(text) == expected


def test_a_mark_stays_behind_its_letter_when_turned() -> None:
    with_mark = "ש\u05b8ל"

    assert in_drawing_order(with_mark) == "לש\u05b8"
