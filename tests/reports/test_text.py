"""Reports as plain text."""

from __future__ import annotations

from datetime import date

import pytest
from hypothesis import given
from hypothesis import strategies as st

from leanto.building.sketch import Sketch
from leanto.record.observation import Photo
from leanto.reports.blocks import (
    Band,
    Block,
    Bullets,
    Caution,
    Column,
    Entry,
    Facts,
    Figure,
    Heading,
    NewPage,
    Paragraph,
    Picture,
    RangeBar,
    Report,
    Table,
)
from leanto.reports.characters import columns
from leanto.reports.text import to_text
from leanto.reports.text_wrap import wrapped

PHOTO = Photo("1" * 64, "1.jpg")
SKETCH = Sketch("s", "Wall", 12.0, 8.0, ((0, 0), (12, 0), (12, 8), (0, 8)), (), (), (), ())
MONEY = (Column("Work", 0.6), Column("By hand", 0.2, blank=True), Column("Likely", 0.2, "right"))


def a_report(*blocks: Block) -> Report:
    return Report("Test report", "A shed", "Nowhere", date(2026, 6, 1), blocks)


EVERY_BLOCK = a_report(
    Heading(1, "Summary"),
    Paragraph("A short answer that is long enough to need a second line.", "lead"),
    Bullets(("first", "second that also runs over the end of the line")),
    Facts((("Owner", "A. Owner"), ("Built", "1938\nby hand"))),
    Table(MONEY, (Band("Strip", "$40"), ("Lining\nnorth", "", "$40")), (("Total", "", "$40"),)),
    NewPage(),
    Heading(2, "Findings"),
    Entry("12", "Rot.", ("danger",), ("now",), ("Cut it out.",), (Picture(PHOTO, "x"),), 1),
    Figure(SKETCH, "Wall\n12  Rot."),
    Picture(PHOTO, "The wall"),
    RangeBar(1000, 2004, 2496, 4000, 2500),
    Caution("Lead paint", "Test it.", "Assessor"),
)
PRINTED = """\
TEST REPORT
A shed
Nowhere

Summary
=======

A short answer that is long enough to
need a second line.

- first
- second that also runs over the end of
  the line

Owner  A. Owner
Built  1938
       by hand

Work    Likely
--------------
Strip      $40
Lining     $40
north
--------------
Total      $40

Findings
--------

   12  DANGER. Rot.
       now
       Cut it out.
       [1 picture]

[Sketch, 12' 0" × 8' 0"]
  Wall
  12 Rot.

[Picture] The wall

[Range: $1,000 to $4,000; half under
$2,000, four in five under $2,500;
budget $2,500]

! Lead paint: Test it.
  Who must act: Assessor
"""


def test_every_block_is_printed() -> None:
    assert to_text(EVERY_BLOCK, width=40) == PRINTED


def test_terminal_escapes_in_a_note_are_shown_and_not_obeyed() -> None:
    text = to_text(a_report(Paragraph("\x1b]0;owned\x07 \x1b[2J")))

    assert "\x1b" not in text
    assert "[U+001B]]0;owned[U+0007] [U+001B][2J" in text


@given(
    text=st.text(max_size=200),
    width=st.integers(min_value=12, max_value=60),
    indent=st.integers(min_value=0, max_value=8),
)
def test_wrapped_lines_fit_and_lose_no_word(text: str, width: int, indent: int) -> None:
    lines = wrapped(text, width, first="- ", rest=" " * indent)

    assert all(columns(line) <= max(width, indent + 2) for line in lines)
    kept = "".join(lines[0][2:].split()) + "".join("".join(x.split()) for x in lines[1:])
    plain = "".join("".join(wrapped(text, 10_000)).split())
    assert kept == plain


@pytest.mark.parametrize("width", [40, 60, 80])
def test_a_table_that_is_too_wide_is_printed_as_a_list(width: int) -> None:
    columns_of_text = tuple(Column(f"Column {n}", 1) for n in range(8))
    table = Table(columns_of_text, (tuple(f"value number {n}" for n in range(8)),))

    text = to_text(a_report(table), width)

    assert "- Column 0: value number 0" in text
    assert max(map(len, text.splitlines())) <= width


def test_a_row_without_a_cell_for_every_column_is_a_mistake() -> None:
    with pytest.raises(ValueError, match="a cell for every column"):
        Table(MONEY, (("only one",),))
