"""Text in the cells of a spreadsheet."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from leanto.reports.cell_text import cell_text


@pytest.mark.parametrize(
    ("text", "kept"),
    [
        ("Replace the sill", "Replace the sill"),
        ("6 in - 8 in", "6 in - 8 in"),
        ("", ""),
        ("   ", "   "),
        ("=1+1", "'=1+1"),
        ('=HYPERLINK("http://x","y")', '\'=HYPERLINK("http://x","y")'),
        ("+1", "'+1"),
        ("-1", "'-1"),
        ("@SUM(A1)", "'@SUM(A1)"),
        ("  =1", "'=1"),
        ("\t=1", "'=1"),
        ("\r\n=1", "'=1"),
        ("\u200b=1", "'=1"),
        ("\uff1d1", "'\uff1d1"),
        ("a\x00b\x1b[2J", "a[U+0000]b[U+001B][2J"),
        ("\x00=1", "[U+0000]=1"),
    ],
)
def test_no_text_becomes_a_formula(text: str, kept: str) -> None:
    assert cell_text(text) == kept


@given(st.text())
def test_no_cell_starts_like_a_formula_or_holds_control_characters(text: str) -> None:
    made = cell_text(text)

    assert not made.lstrip().startswith(("=", "+", "-", "@", "\t", "\r"))
    assert not any(ord(char) < 32 and char != "\n" for char in made)


def test_a_text_longer_than_a_cell_is_cut() -> None:
    assert len(cell_text("x" * 40_000)) == 32_000
