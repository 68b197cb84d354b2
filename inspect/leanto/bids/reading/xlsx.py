"""A filled workbook -> its fields as they were typed, also after another program saved it."""

from __future__ import annotations

import io
import re
import warnings
import zipfile
import zlib
from collections.abc import Iterator
from datetime import date, datetime
from decimal import Decimal
from typing import TYPE_CHECKING

from leanto.bids.layout import (
    ALTERNATE_SHEET,
    BID_SHEET,
    TERM_SHEET,
    UNIT_PRICE_SHEET,
)
from leanto.bids.reading.refusal import BidFileError
from leanto.bids.reading.sheet import MOST_COLUMNS, MOST_ROWS, identity_in, read_sheet

if TYPE_CHECKING:
    from openpyxl.workbook.workbook import Workbook

_SHEETS = {
    BID_SHEET.lower(): "",
    UNIT_PRICE_SHEET.lower(): "askunit",
    ALTERNATE_SHEET.lower(): "alt",
    TERM_SHEET.lower(): "",
}
_BROKEN = (
    ValueError,
    TypeError,
    LookupError,
    AttributeError,
    AssertionError,
    OSError,
    EOFError,
    SyntaxError,
    OverflowError,
    NotImplementedError,
    RecursionError,
    MemoryError,
    zipfile.BadZipFile,
    zlib.error,
)
"""What a reader of workbooks raises over a file that is broken in one of many ways."""


def read_xlsx(name: str, content: bytes) -> dict[str, str]:
    """Field and text of every cell that a bidder writes in; BidFileError otherwise."""
    try:
        with warnings.catch_warnings():
            warnings.simplefilter("ignore")  # the library's own words on parts that it leaves out
            sheets = dict(_sheets(content))
    except _BROKEN:
        raise BidFileError(
            f"{name} is broken or cut short.", "Ask for it again, saved as XLSX."
        ) from None
    return _fields(name, sheets)


def _fields(name: str, sheets: dict[str, list[list[str]]]) -> dict[str, str]:
    fields: dict[str, str] = {}
    found = False
    for title, rows in sheets.items():
        of = _SHEETS.get(title.strip().lower(), "")
        added = sum(key.startswith("added") and key.endswith("|text") for key in fields)
        read = read_sheet(rows, of, added_from=added + 1)
        if read is not None:
            found = True
            fields |= {key: text for key, text in read.items() if text or key not in fields}
        fields |= dict(identity_in(rows))
    if not found:
        raise BidFileError(
            f"{name} has no column “Id” on any sheet.", "Ask for the form that was sent, filled in."
        )
    return fields


def _sheets(content: bytes) -> Iterator[tuple[str, list[list[str]]]]:
    """Title and rows of every sheet, cells as text."""
    values, formulas = _opened(content, data_only=True), _opened(content, data_only=False)
    try:
        for title in values.sheetnames:
            yield title, _rows(values, formulas, title)
    finally:
        values.close()
        formulas.close()


def _opened(content: bytes, *, data_only: bool) -> Workbook:
    # Loaded only now: most commands never see a bid.
    from openpyxl import load_workbook

    return load_workbook(io.BytesIO(content), read_only=True, data_only=data_only, keep_links=False)


def _rows(values: Workbook, formulas: Workbook, title: str) -> list[list[str]]:
    if title not in (sheet.title for sheet in values.worksheets):
        return []  # a sheet that is a chart
    return [
        [_text(value, formula) for value, formula in zip(row, under, strict=False)]
        for row, under in zip(_cells(values, title), _cells(formulas, title), strict=False)
    ]


def _cells(book: Workbook, title: str) -> Iterator[tuple[object, ...]]:
    return book[title].iter_rows(max_row=MOST_ROWS, max_col=MOST_COLUMNS, values_only=True)


def _text(value: object, formula: object) -> str:
    """A cell as it is read: a formula by the value that was kept with it, our sums left out."""
    text = str(getattr(formula, "text", formula) or "")
    if text.startswith("=") and not isinstance(formula, int | float):
        if re.match(r"=\s*-?\s*(?:IF\(.*)?(?:SUM|SUBTOTAL|SUMIFS?)\(", text, re.IGNORECASE):
            return _number(value) if isinstance(value, int | float) else ""
        if value == 0 or isinstance(value, str) or value is None:
            # Words and blanks come from the unit price, which is read itself.
            return ""
    if isinstance(value, bool):
        return "yes" if value else "no"
    if isinstance(value, int | float | Decimal):
        return _number(value)
    if isinstance(value, datetime):
        value = value.date()
    if isinstance(value, date):
        return value.isoformat()
    return "" if value is None else str(value).strip()


def _number(value: object) -> str:
    """A number so that nothing can be taken for a mark between thousands."""
    exact = Decimal(repr(value)) if isinstance(value, float) else Decimal(str(value))
    text = f"{exact:f}"
    whole, point, decimals = text.partition(".")
    if point and not decimals.strip("0"):
        return whole
    return text + "0" if len(decimals) == 3 else text
