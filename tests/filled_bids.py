"""Invented bids on a form: as fields, as CSV, as a filled workbook and as a filled PDF form."""

from __future__ import annotations

import csv
import io
import re
from collections.abc import Mapping
from datetime import date
from decimal import Decimal
from pathlib import Path

from leanto.bids.form import form_id
from leanto.bids.layout import (
    ALTERNATE_SHEET,
    BID_COLUMNS,
    BID_SHEET,
    IDENTITY,
    TERM_SHEET,
    TERMS,
    UNIT_PRICE_SHEET,
    pdf_name,
)
from leanto.bids.model import Allowance, Alternate, BidForm, BidLine, UnitPriceAsk
from leanto.scope.work import Trade

_ONCE = {name for name, _ in (*TERMS, *IDENTITY)}


def line(
    number: int,
    item_id: str,
    trade: Trade = Trade.CARPENTER,
    quantity: float = 1.0,
    unit: str = "each",
) -> BidLine:
    title = item_id.partition("@")[0].replace("-", " ").capitalize()
    place = "Main room, north wall"
    return BidLine(item_id, number, title, place, trade, "B2010", float(quantity), unit)


def form(
    *lines: BidLine,
    job_id: str = "0123456789abcdef",
    addendum: int = 0,
    unit_prices: tuple[UnitPriceAsk, ...] = (),
    alternates: tuple[Alternate, ...] = (),
    allowances: tuple[Allowance, ...] = (),
) -> BidForm:
    id_ = form_id(lines, unit_prices, alternates, allowances)
    return BidForm(job_id, id_, addendum, lines, unit_prices, alternates, allowances)


SMALL = form(
    line(1, "protect-room@building", Trade.LABORER, 1, "lump sum"),
    line(2, "strip-board@main.north.inside", Trade.LABORER, 120, "sq ft"),
    line(3, "replace-sill@main.north", Trade.CARPENTER, 14, "lin ft"),
    line(4, "replace-siding@main.north.outside", Trade.CARPENTER, 40, "sq ft"),
    line(5, "add-circuit@building+1", Trade.ELECTRICIAN, 2, "each"),
    unit_prices=(
        UnitPriceAsk("repair-behind-lining", "Repair behind the lining", "sq ft"),
        UnitPriceAsk("sister-stud", "Sister a stud", "each"),
    ),
    alternates=(
        Alternate("keep@main.north.inside", "Keep the lining", "Patch it.", "deduct"),
        Alternate("new-door@main.south+2", "New door", "One door.", "add"),
    ),
)


def fields(
    of: BidForm, bidder: str = "Alder Works", units: Mapping[str, str] | None = None, **more: str
) -> dict[str, str]:
    """A bid with a unit price in every line, 10 dollars but where ``units`` says otherwise."""
    given = {line.item_id: "10" for line in of.lines} | dict(units or {})
    identity = {"form_id": of.form_id, "job_id": of.job_id, "addendum": str(of.addendum)}
    prices = {f"unit|{id_}": price for id_, price in given.items() if price}
    return {**identity, "bidder": bidder, **prices, **more}


def as_csv(of: BidForm, filled: Mapping[str, str], delimiter: str = ",") -> bytes:
    """The columns of the main sheet, then a row for every other field."""
    out = io.StringIO()
    writer = csv.writer(out, delimiter=delimiter, lineterminator="\r\n")
    writer.writerow(BID_COLUMNS)
    for one in of.lines:
        told = [filled.get(f"{part}|{one.item_id}", "") for part in ("unit", "amount", "note")]
        quantity = filled.get(f"quantity|{one.item_id}", f"{one.quantity:g}")
        writer.writerow([one.line, one.item_id, one.title, one.place, quantity, one.unit, *told])
    for name, text in filled.items():
        if name in _ONCE or name.partition("|")[0] in ("askunit", "alt", "allowance"):
            writer.writerow(["", name, "", "", "", "", "", "", text])
    return out.getvalue().encode()


def as_xlsx(of: BidForm, filled: Mapping[str, str]) -> bytes:
    """Our own workbook, filled cell by cell; its formulas are not reckoned."""
    from openpyxl import load_workbook

    from leanto.bids.short_id import short_ids
    from leanto.reports.spreadsheet import bid_workbook

    book = load_workbook(io.BytesIO(bid_workbook(of, "Test shed", date(2026, 6, 1))))
    ids = {short: id_ for short, (_, id_) in short_ids(of).items()}
    bid = book[BID_SHEET]
    columns = {title: at for at, title in enumerate(BID_COLUMNS, start=1)}
    for row in range(1, bid.max_row + 1):
        shown = bid.cell(row, columns["Id"]).value
        id_ = ids.get(str(shown), shown)
        for part, title in (("unit", "Unit price"), ("amount", "Amount"), ("note", "Note")):
            text = filled.get(f"{part}|{id_}", "")
            if text:
                bid.cell(row, columns[title]).value = _typed(text)
    others = (("askunit", UNIT_PRICE_SHEET, 4), ("alt", ALTERNATE_SHEET, 4), ("", TERM_SHEET, 3))
    for name, sheet, column in others:
        for row in range(2, book[sheet].max_row + 1):
            shown = book[sheet].cell(row, 1).value
            id_ = ids.get(str(shown), shown)
            text = filled.get(f"{name}|{id_}" if name else str(id_), "")
            if text:
                book[sheet].cell(row, column).value = _typed(text)
    out = io.BytesIO()
    book.save(out)
    return out.getvalue()


def as_pdf(of: BidForm, filled: Mapping[str, str], folder: Path) -> bytes:
    """Our own PDF form, filled with a library that did not write it."""
    from pypdf import PdfReader, PdfWriter

    from leanto.reports.blocks import Report
    from leanto.reports.contents.package_form import form_blocks
    from leanto.reports.pdf import write_pdf

    report = Report("Bid form", "Test shed", "", date(2026, 6, 1), form_blocks(of))
    written = write_pdf(report, folder / "form.pdf", lambda photo: folder / photo.digest)
    writer = PdfWriter(clone_from=PdfReader(written.path))
    values = {pdf_name(name): text for name, text in filled.items()}
    for page in writer.pages:
        writer.update_page_form_field_values(page, values, auto_regenerate=False)
    out = io.BytesIO()
    writer.write(out)
    return out.getvalue()


def _typed(text: str) -> object:
    """A plain figure as a number, anything else as text."""
    if re.fullmatch(r"[0-9]+[.][0-9]{3}", text):
        return text
    try:
        return float(Decimal(text))
    except ArithmeticError:
        return text
