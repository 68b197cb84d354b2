"""The bids side by side as a workbook: reckoned by another program, and harmless to open."""

from __future__ import annotations

import zipfile
from datetime import date
from decimal import Decimal
from io import BytesIO
from pathlib import Path
from typing import Any

import pytest
from filled_bids import SMALL, fields
from office import needs_office, saved_by_office
from openpyxl import Workbook, load_workbook

from leanto.bids.hidden_work import HiddenWork
from leanto.bids.levelled import Base, Levelled
from leanto.bids.levelling import level
from leanto.bids.model import Bid
from leanto.bids.reading.bid import bid_of
from leanto.money import Spread
from leanto.reports.levelled_sheet import HIDDEN, LINES, TOTALS, WORDS, levelled_workbook

DAY = date(2026, 6, 2)
PROTECT, STRIP, SILL, SIDING, CIRCUIT = (one.item_id for one in SMALL.lines)
KEEP, DOOR = (one.id for one in SMALL.alternates)
HOSTILE = '=HYPERLINK("http://x.invalid","see")'
FORMULAS = ("=1+1", "+1", "-1+1", "@SUM(A1)", "\t=1", "\r=1", " =1", "\uff1d1", "\x00=1")


def bid(bidder: str, units: dict[str, str] | None = None, **more: str) -> Bid:
    hidden = {"askunit|repair-behind-lining": "20"}
    return bid_of(fields(SMALL, bidder, units, **(hidden | more)), SMALL)


@pytest.fixture(scope="module")
def made() -> Levelled:
    ours = {one.item_id: Spread.of(100, 150, 260) for one in SMALL.lines}
    hidden = HiddenWork(
        "repair-behind-lining", "Repair behind", "sq ft", 12.5, Spread.of(8, 10, 16)
    )
    base = Base(SMALL, ours, hidden=(hidden,))
    return level(
        base,
        [
            bid("Alder", {CIRCUIT: ""}, **{f"alt|{KEEP}": "300", f"alt|{DOOR}": "450"}),
            bid("=Birch", {SILL: "33.335"}, exclusions=HOSTILE),
            bid(
                "Cedar",
                {SIDING: "incl. in line 3"},
                **{
                    "added1|text": "@Container",
                    "added1|amount": "120.50",
                    "askunit|repair-behind-lining": "33.10",
                    f"amount|{STRIP}": "1300",
                },
            ),
        ],
    )


@pytest.fixture(scope="module")
def content(made: Levelled) -> bytes:
    return levelled_workbook(made, "=Old shed", DAY, invented=True)


def row_of(book: Workbook, sheet: str, name: str) -> list[Any]:
    """The values of the row that has this text in one of its first two cells."""
    rows = book[sheet].iter_rows(values_only=True)
    return list(next(row for row in rows if name in row[:2]))


def test_no_text_from_outside_is_a_formula(content: bytes) -> None:
    book = load_workbook(BytesIO(content))

    formulas = [
        str(cell.value)
        for sheet in book.worksheets
        for row in sheet.iter_rows()
        for cell in row
        if cell.data_type == "f"
    ]
    assert formulas
    allowed = ("=SUM(", "=ROUND(", "=SUMIF(", "='Lines'!", "='Hidden work'!", "='Alternates'!")
    assert all(text.startswith(allowed) or "+" in text for text in formulas)
    assert not any("x.invalid" in text or "Birch" in text for text in formulas)
    said = {str(c.value) for s in book.worksheets for r in s.iter_rows() for c in r if c.value}
    assert "'=Birch" in said
    assert any(HOSTILE in text for text in said)


@pytest.mark.parametrize("text", FORMULAS)
def test_whatever_a_cell_begins_with_stays_text(text: str, made: Levelled) -> None:
    hostile = level(made.base, [bid(f"{text}A"), bid(f"{text}B", qualifications=text)])

    book = load_workbook(BytesIO(levelled_workbook(hostile, text, DAY)))

    for sheet in book.worksheets:
        for row in sheet.iter_rows():
            for cell in row:
                if isinstance(cell.value, str) and cell.data_type != "f":
                    assert cell.value.lstrip()[:1] not in tuple("=+-@\uff1d\t\r\x00")


def test_the_same_table_gives_the_same_bytes_and_nothing_hidden(
    made: Levelled, content: bytes
) -> None:
    assert levelled_workbook(made, "=Old shed", DAY, invented=True) == content
    with zipfile.ZipFile(BytesIO(content)) as packed:
        names = packed.namelist()
    assert not any(word in name for name in names for word in ("comment", "vba", "media", "link"))


def test_questions_and_marks_are_there(content: bytes) -> None:
    book = load_workbook(BytesIO(content))

    assert ("Alder", "to ask") in {row[:2] for row in book[WORDS].iter_rows(values_only=True)}
    row = row_of(book, LINES, "Add circuit")
    assert "p left blank; median of 2 other bids" in row
    assert "Ours, likely" in row_of(book, LINES, "Line")


@needs_office
def test_another_program_reckons_the_totals_that_we_reckon(
    made: Levelled, content: bytes, tmp_path: Path
) -> None:
    book = load_workbook(BytesIO(saved_by_office(content, tmp_path)), data_only=True)

    def reckoned(name: str) -> list[Decimal]:
        cents = Decimal("0.01")
        return [Decimal(str(x)).quantize(cents) for x in row_of(book, TOTALS, name)[4:7]]

    for name, ours in (
        ("On one base", [one.base for one in made.bids]),
        ("of that plugged", [one.plugged for one in made.bids]),
        ("Expected hidden work", [one.hidden for one in made.bids]),
        ("All alternates", [one.alternates for one in made.bids]),
        ("Base and expected hidden work", [one.with_hidden for one in made.bids]),
        ("Base and all alternates", [one.with_alternates for one in made.bids]),
        ("Base, alternates and hidden work", [one.with_both for one in made.bids]),
    ):
        assert reckoned(name) == [Decimal(x).quantize(Decimal("0.01")) for x in ours], name
    # 12.5 sq ft at $20.00 and at $33.10, by hand
    assert reckoned("Expected hidden work") == [250, 250, Decimal("413.75")]
    assert row_of(book, HIDDEN, "Repair behind")[8] == 250
