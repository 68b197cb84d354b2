"""A bid form filled in, as PDF, workbook or CSV."""

from __future__ import annotations

import csv
from collections.abc import Mapping
from pathlib import Path

from openpyxl import load_workbook
from pypdf import PdfWriter

from leanto.bids.layout import (
    ALTERNATE_SHEET,
    AMOUNT,
    BID_COLUMNS,
    BID_SHEET,
    ID,
    IDENTITY,
    LINE,
    NOTE,
    PLACE,
    QUANTITY,
    TERM_SHEET,
    UNIT,
    UNIT_PRICE,
    UNIT_PRICE_SHEET,
    VALUE,
    WORK,
    Part,
    field,
    pdf_name,
)
from leanto.bids.model import BidForm
from leanto.bids.short_id import short_id, short_ids

_CSV_PARTS: tuple[tuple[Part, str], ...] = (
    ("unit", UNIT_PRICE),
    ("amount", AMOUNT),
    ("note", NOTE),
)
_IN_CELLS = {
    BID_SHEET: (("unit", UNIT_PRICE), ("note", NOTE)),
    UNIT_PRICE_SHEET: (("askunit", UNIT_PRICE),),
    ALTERNATE_SHEET: (("alt", AMOUNT),),
}


def fill(blank: Path, path: Path, form: BidForm, fields: Mapping[str, str]) -> None:
    """Writes ``path`` in the format of its name: the blank form with these fields filled in.

    A CSV file needs no blank form: it is written from ``form``.
    """
    match path.suffix:
        case ".pdf":
            _fill_pdf(blank, path, fields)
        case ".xlsx":
            _fill_workbook(blank, path, form, fields)
        case _:
            _write_csv(path, form, fields)


def _fill_pdf(blank: Path, path: Path, fields: Mapping[str, str]) -> None:
    writer = PdfWriter(clone_from=blank)
    named = {pdf_name(name): text for name, text in fields.items()}
    for page in writer.pages:
        if "/Annots" in page:
            writer.update_page_form_field_values(page, dict(named), auto_regenerate=False)
    writer.write(path)


def _fill_workbook(blank: Path, path: Path, form: BidForm, fields: Mapping[str, str]) -> None:
    """Amounts are left to the workbook's own formulas."""
    book, ids = load_workbook(blank), short_ids(form)
    for sheet in book.worksheets:
        titles: dict[object, int] = {}
        for row in sheet.iter_rows():
            if not titles:
                found: dict[object, int] = {cell.value: at for at, cell in enumerate(row)}
                titles = found if ID in found else {}
                continue
            shown = str(row[titles[ID]].value or "")
            id_ = ids[shown][1] if shown in ids else shown
            if sheet.title == TERM_SHEET and id_ in fields:
                row[titles[VALUE]].value = fields[id_]
            for part, title in _IN_CELLS.get(sheet.title, ()):
                text = fields.get(f"{part}|{id_}")
                if text is not None:
                    row[titles[title]].value = _typed(text)
    book.save(path)


def _typed(text: str) -> float | str:
    """A price as a spreadsheet program takes it: a number where it is one."""
    try:
        return float(text)
    except ValueError:
        return text


def _write_csv(path: Path, form: BidForm, fields: Mapping[str, str]) -> None:
    """The columns of the form's main sheet, then a row for every other field."""
    identity = {"form_id": form.form_id, "job_id": form.job_id, "addendum": str(form.addendum)}
    rows: list[dict[str, str]] = []
    told: set[str] = set()
    for line in form.lines:
        parts = {title: field(part, line.item_id) for part, title in _CSV_PARTS}
        told |= set(parts.values())
        rows.append(
            {
                LINE: str(line.line),
                ID: short_id(form, "line", line.item_id),
                WORK: line.title,
                PLACE: line.place,
                QUANTITY: f"{line.quantity:g}",
                UNIT: line.unit,
                **{title: fields.get(name, "") for title, name in parts.items()},
            }
        )
    rows += [{ID: name, WORK: label, AMOUNT: identity[name]} for name, label in IDENTITY]
    rows += [{ID: name, AMOUNT: text} for name, text in fields.items() if name not in told]
    with path.open("w", encoding="utf-8", newline="") as file:
        writer = csv.DictWriter(file, BID_COLUMNS, restval="")
        writer.writeheader()
        writer.writerows(rows)
