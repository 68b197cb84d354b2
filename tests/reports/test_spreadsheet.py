"""The bid form as a workbook: opened, filled in, and reckoned by another program."""

from __future__ import annotations

import re
import zipfile
from decimal import ROUND_HALF_UP, Decimal
from io import BytesIO
from pathlib import Path
from typing import Any

import pytest
from bid_forms import ALLOWANCES, DAY, LINES, a_form
from office import needs_office, saved_by_office
from openpyxl import Workbook, load_workbook

from leanto.bids.layout import BID_COLUMNS, BID_SHEET, ID, TERM_SHEET
from leanto.bids.model import Amount, BidForm, State
from leanto.bids.reading.bid import bid_of
from leanto.bids.reading.xlsx import read_xlsx
from leanto.bids.short_id import short_ids
from leanto.reports.spreadsheet import bid_workbook

PRICES: dict[str, float | str] = {
    "strip@main.north.inside": 1.85,
    "sill@main": 61.335,
    "stud@main": "incl. in line 2",
}
TITLE = "=Old shed"
IDS = {
    f"allowance|{id_}" if kind == "allowance" else id_: short
    for short, (kind, id_) in short_ids(a_form()).items()
}
"""The short id in the sheet, by what the program calls a line."""


def the_book(form: BidForm | None = None) -> Workbook:
    return load_workbook(BytesIO(bid_workbook(form or a_form(), TITLE, DAY)))


def row_of(book: Workbook, id_: str, sheet: str = BID_SHEET) -> dict[str, Any]:
    """The cells of the row with this id, by the titles of their columns."""
    id_ = IDS.get(id_, id_)
    rows = list(book[sheet].iter_rows())
    titles = next(row for row in rows if any(cell.value == ID for cell in row))
    at = next(cell.column for cell in titles if cell.value == ID) - 1
    row = next(row for row in rows if row[at].value == id_)
    return {str(title.value): cell for title, cell in zip(titles, row, strict=True)}


def beside(book: Workbook, label: str) -> Any:
    """The cell to the right of a label of the first sheet."""
    cells = [cell for row in book[BID_SHEET].iter_rows() for cell in row]
    at = next(at for at, cell in enumerate(cells) if cell.value == label)
    return cells[at + 1]


def filled() -> Workbook:
    """As a bidder fills it: two prices, one line in another, one left blank, one line added."""
    book = the_book()
    for id_, price in PRICES.items():
        row_of(book, id_)["Unit price"].value = price
    sheet = book[BID_SHEET]
    head = next(
        cell for row in sheet.iter_rows() for cell in row if cell.value == "Work not on the form"
    )
    sheet.cell(head.row + 1, BID_COLUMNS.index("Work") + 1, "Second container")
    sheet.cell(head.row + 1, BID_COLUMNS.index("Amount") + 1, 450)
    row_of(book, "replace-stud", "Unit prices")["Unit price"].value = 95
    row_of(book, "leave@main", "Alternates")["Amount"].value = 320
    for name, text in (("bidder", "Ash & Alder"), ("exclusions", "Painting"), ("validity", 30)):
        row_of(book, name, TERM_SHEET)["Value"].value = text
    return book


def bytes_of(book: Workbook) -> bytes:
    out = BytesIO()
    book.save(out)
    return out.getvalue()


def expected_total() -> Decimal:
    """By hand: quantity times price, each rounded to the cent; added line; stated allowances."""
    cent = Decimal("0.01")
    lines = sum(
        (Decimal(str(line.quantity)) * Decimal(str(PRICES[line.item_id]))).quantize(
            cent, ROUND_HALF_UP
        )
        for line in LINES
        if isinstance(PRICES.get(line.item_id), float)
    )
    return lines + 450 + sum((one.amount for one in ALLOWANCES), Decimal(0))


def test_only_the_cells_to_write_in_are_open() -> None:
    book = the_book()

    for sheet in book.worksheets:
        assert sheet.protection.sheet
        assert sheet.protection.password is None
        assert sheet.sheet_state == "visible"
    row = row_of(book, "sill@main")
    assert {title for title, cell in row.items() if not cell.protection.locked} == {
        "Unit price",
        "Note",
    }
    assert row["Quantity"].value == 9.3
    assert row["Unit"].value == "lin ft"
    allowance = row_of(book, "allowance|lights")
    assert allowance["Amount"].value == 600
    assert all(cell.protection.locked for cell in allowance.values())
    assert row_of(book, "total", TERM_SHEET)["Value"].protection.locked
    assert not row_of(book, "exclusions", TERM_SHEET)["Value"].protection.locked


def test_every_line_has_its_row_with_the_columns_agreed_on() -> None:
    book = the_book()

    for line in LINES:
        row = row_of(book, line.item_id)
        assert tuple(row)[: len(BID_COLUMNS)] == BID_COLUMNS
        assert row["Line"].value == line.line
        assert row["Unit price"].value is None
    assert beside(book, "Form id").value == a_form().form_id
    assert beside(book, "Job id").value == "0123456789abcdef"
    assert beside(book, "Addendum").value == "0"


def test_no_text_of_ours_or_the_owner_is_a_formula() -> None:
    book = the_book()
    formulas = {
        str(cell.value)
        for sheet in book.worksheets
        for row in sheet.iter_rows()
        for cell in row
        if cell.data_type == "f"
    }

    assert row_of(book, "sill@main")["Work"].value == "'=1+1"
    assert row_of(book, "sill@main")["Place"].value == "'@Main room"
    assert row_of(book, "sill@main+1")["Work"].value == "'-sill"
    assert row_of(book, "allowance|door")["Work"].value == "'=Door"
    assert formulas
    assert all(re.match(r"=(SUM|IF|COUNT)", text) for text in formulas)
    assert not any("Old shed" in text or "Door" in text for text in formulas)


def test_nothing_is_hidden_in_the_file() -> None:
    content = bid_workbook(a_form(), TITLE, DAY)
    with zipfile.ZipFile(BytesIO(content)) as packed:
        names = packed.namelist()
        core = packed.read("docProps/core.xml").decode()
    book = load_workbook(BytesIO(content))

    assert not any(word in name for name in names for word in ("comment", "vba", "media", "link"))
    assert not book.defined_names
    assert "<dc:creator>leanto</dc:creator>" in core
    assert set(re.findall(r"\d{4}-\d\d-\d\dT[^<]*", core)) == {"2026-06-02T00:00:00Z"}
    for sheet in book.worksheets:
        assert not any(one.hidden for one in sheet.column_dimensions.values())
        assert not any(one.hidden for one in sheet.row_dimensions.values())
        assert not any(cell.comment for row in sheet.iter_rows() for cell in row)


def test_the_same_form_gives_the_same_bytes() -> None:
    assert bid_workbook(a_form(), TITLE, DAY) == bid_workbook(a_form(), TITLE, DAY)


def test_a_form_without_lines_or_questions_is_a_workbook_too() -> None:
    form = a_form(lines=(), unit_prices=(), alternates=(), allowances=())

    assert beside(the_book(form), "Lines without a price").value == "=0"


@needs_office
def test_another_program_reckons_the_same_total_and_we_read_it_back(tmp_path: Path) -> None:
    saved = saved_by_office(bytes_of(filled()), tmp_path)
    book = load_workbook(BytesIO(saved), data_only=True)

    assert row_of(book, "strip@main.north.inside")["Amount"].value == pytest.approx(323.75)
    # 9.3 x 61.335 = 570.4155
    assert row_of(book, "sill@main")["Amount"].value == pytest.approx(570.42)
    assert row_of(book, "stud@main")["Amount"].value == "incl. in line 2"
    assert beside(book, "Lines without a price").value == 1
    assert beside(book, "Lines with words in place of a price").value == 1
    assert Decimal(str(beside(book, "Base bid, total").value)) == expected_total()
    assert expected_total() == Decimal("3178.67")

    form = a_form()
    bid = bid_of(read_xlsx("filled.xlsx", saved), form)
    assert (bid.bidder, bid.form_id, bid.addendum) == ("Ash & Alder", form.form_id, 0)
    assert bid.stated_total.usd == expected_total()
    assert [one.text for one in bid.added] == ["Second container"]
    assert bid.exclusions == ("Painting",)
    assert bid.validity_days == 30
    assert bid.unit_prices["replace-stud"] == Amount.of(95, "95")
    assert bid.alternates["leave@main"] == Amount.of(320, "320")
    (sill,), (stud,) = bid.entries_of("sill@main"), bid.entries_of("stud@main")
    assert sill.amount.usd == Decimal("570.42")
    assert stud.amount.state is State.INCLUDED
    assert not bid.entries_of("sill@main+1")
    assert not bid.unread


def test_a_form_filled_and_never_reckoned_is_read_by_its_unit_prices() -> None:
    bid = bid_of(read_xlsx("filled.xlsx", bytes_of(filled())), a_form())

    (sill,) = bid.entries_of("sill@main")
    assert sill.unit_price.usd == Decimal("61.335")
    assert bid.bidder == "Ash & Alder"
    assert bid.stated_total.state is State.MISSING
