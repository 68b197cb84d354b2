"""The bid form as a workbook: totals by formulas, locked but where a bidder writes."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from datetime import date

from openpyxl import Workbook
from openpyxl.worksheet.worksheet import Worksheet

from leanto.bids.in_feet import read_unit
from leanto.bids.layout import (
    ADDED_LINES,
    ALTERNATE_COLUMNS,
    ALTERNATE_SHEET,
    AMOUNT,
    BID_COLUMNS,
    BID_SHEET,
    ID,
    IDENTITY,
    NOTE,
    PLACE,
    QUANTITY,
    TERM_COLUMNS,
    TERM_SHEET,
    TERMS,
    UNIT_PRICE,
    UNIT_PRICE_COLUMNS,
    UNIT_PRICE_SHEET,
    WORK,
)
from leanto.bids.model import BidForm, BidLine
from leanto.bids.short_id import Kind, short_id, short_ids
from leanto.reports.saved_workbook import saved_workbook
from leanto.reports.sheet_rows import Look, Rows, Value

_WIDTHS = (6, 10, 44, 31, 9, 10, 12, 13, 27, 12)
_COLUMNS = {title: at for at, title in enumerate(BID_COLUMNS, start=1)}
_LETTERS = {title: "ABCDEFGHI"[at - 1] for title, at in _COLUMNS.items()}
_BY_TRADE = len(BID_COLUMNS) + 1
"""A column that no line has, so that a subtotal is never taken for a line."""
_LABEL, _VALUE = _COLUMNS[WORK], _COLUMNS[PLACE]
"""The columns of what stands above the lines."""
_TALL_PT = {"exclusions": 90.0, "qualifications": 75.0}
_WRITTEN_IN = {ID: Look.ID, UNIT_PRICE: Look.PRICE, AMOUNT: Look.SUM, NOTE: Look.WORDS}
_FIXED_IN = {ID: Look.ID, AMOUNT: Look.SUM}
_LINE_LOOKS = [_WRITTEN_IN.get(title, Look.PLAIN) for title in BID_COLUMNS]
_ADDED_IN = {WORK: Look.WORDS, PLACE: Look.WORDS, AMOUNT: Look.PRICE, NOTE: Look.WORDS}
_ADDED_LOOKS = [_ADDED_IN.get(title, Look.PLAIN) for title in BID_COLUMNS]
_HOW = (
    "Write in the tinted cells; amounts and totals follow. Where there is no price write “incl. in "
    "line” with its number, “by others” or “none”. A blank is taken as forgotten."
)

Range = tuple[int, int]
"""First and last row."""
Ids = Mapping[tuple[Kind, str], str]
"""Short ids by kind and full id."""


def bid_workbook(form: BidForm, title: str, day: date, *, invented: bool = False) -> bytes:
    """The workbook's bytes, the same for the same form; ``title`` is the building's name.

    Amounts, subtotals and the total are formulas, reckoned when the file is opened. The sheets
    are protected without a password; the cells to write in are tinted.
    """
    book = Workbook()
    first = book.active
    assert isinstance(first, Worksheet)
    first.title = BID_SHEET
    total_row = _bid_sheet(first, form, title, invented)
    _unit_price_sheet(book.create_sheet(UNIT_PRICE_SHEET), form)
    _alternate_sheet(book.create_sheet(ALTERNATE_SHEET), form)
    _term_sheet(book.create_sheet(TERM_SHEET), total_row)
    return saved_workbook(book, f"Bid form: {title}", day)


def _bid_sheet(sheet: Worksheet, form: BidForm, title: str, invented: bool) -> int:
    """Fills the sheet of the base bid; returns the row of its total."""
    rows = Rows(sheet, _WIDTHS)
    rows.say(f"Bid form: {title}", size=14, bold=True)
    rows.say(f"Invented example. {_HOW}" if invented else _HOW)
    values = {"form_id": form.form_id, "job_id": form.job_id, "addendum": str(form.addendum)}
    for name, label in IDENTITY:
        _above(rows, label, values[name])
    total = _above(rows, "Base bid, total")
    blank = _above(rows, "Lines without a price")
    words = _above(rows, "Lines with words in place of a price")
    rows.skip()
    rows.put([*BID_COLUMNS, "By trade"], [Look.HEAD] * _BY_TRADE)
    rows.freeze()
    ids = {full: short for short, full in short_ids(form).items()}
    by_trade = [_trade(rows, trade, lines, ids) for trade, lines in _grouped(form.lines).items()]
    sums = [*by_trade, _added(rows)]
    if form.allowances:
        sums.append(_allowances(rows, form))
    rows.formula(_VALUE, _sum(sums), total)
    prices = [
        f"{_LETTERS[UNIT_PRICE]}{begin}:{_LETTERS[UNIT_PRICE]}{end}" for begin, end in by_trade
    ]
    empty = [f"COUNTBLANK({cells})" for cells in prices]
    said = [f"COUNTA({cells})-COUNT({cells})" for cells in prices]
    rows.formula(_VALUE, f"={'+'.join(empty) or 0}", blank, "0")
    rows.formula(_VALUE, f"={'+'.join(said) or 0}", words, "0")
    rows.finish()
    return total


def _above(rows: Rows, label: str, value: str | None = None) -> int:
    """A label and its value above the lines; returns the row."""
    at = [Look.EMPTY] * (_LABEL - 1)
    return rows.put([*[None] * (_LABEL - 1), label, value], [*at, Look.HEAD, Look.PLAIN])


def _trade(rows: Rows, trade: str, lines: Sequence[BidLine], ids: Ids) -> Range:
    band = _band(rows, trade[:1].upper() + trade[1:])
    for line in lines:
        _line(rows, line, ids["line", line.item_id])
    found = (band + 1, rows.last)
    rows.formula(_BY_TRADE, _sum([found]), band)
    return found


def _line(rows: Rows, line: BidLine, id_: str) -> None:
    values: list[Value] = [line.line, id_, line.title, line.place, line.quantity]
    rows.put([*values, read_unit(line.unit), None, None, None], _LINE_LOOKS)
    whole = line.quantity.is_integer()
    rows.cell(_COLUMNS[QUANTITY]).number_format = "#,##0" if whole else "#,##0.0"
    quantity, price = (f"{_LETTERS[title]}{rows.last}" for title in (QUANTITY, UNIT_PRICE))
    rows.formula(
        _COLUMNS[AMOUNT],
        f'=IF(ISNUMBER({price}),ROUND({quantity}*{price},2),IF(ISBLANK({price}),"",{price}))',
    )


def _added(rows: Rows) -> Range:
    """Rows for work that is not on the form; they have no id."""
    band = _band(rows, "Work not on the form")
    for _ in range(ADDED_LINES):
        rows.put([None] * len(BID_COLUMNS), _ADDED_LOOKS)
    return band + 1, rows.last


def _allowances(rows: Rows, form: BidForm) -> Range:
    band = _band(rows, "Allowances, alike for all")
    for one in form.allowances:
        told: dict[str, Value] = {
            ID: short_id(form, "allowance", one.id),
            WORK: one.title,
            AMOUNT: one.amount,
        }
        looks = [_FIXED_IN.get(title, Look.PLAIN) for title in BID_COLUMNS]
        rows.put([told.get(title) for title in BID_COLUMNS], looks)
    return band + 1, rows.last


def _unit_price_sheet(sheet: Worksheet, form: BidForm) -> None:
    rows = Rows(sheet, (10, 60, 10, 14, 40))
    rows.put(UNIT_PRICE_COLUMNS, [Look.HEAD] * len(UNIT_PRICE_COLUMNS))
    rows.freeze()
    for ask in form.unit_prices:
        looks = [Look.ID, Look.PLAIN, Look.PLAIN, Look.PRICE, Look.WORDS]
        id_, unit = short_id(form, "askunit", ask.id), read_unit(ask.unit)
        rows.put([id_, ask.title, unit, None, None], looks)
    rows.finish()


def _alternate_sheet(sheet: Worksheet, form: BidForm) -> None:
    rows = Rows(sheet, (10, 72, 14, 14, 40))
    rows.put(ALTERNATE_COLUMNS, [Look.HEAD] * len(ALTERNATE_COLUMNS))
    rows.freeze()
    for one in form.alternates:
        looks = [Look.ID, Look.PLAIN, Look.PLAIN, Look.PRICE, Look.WORDS]
        told = f"{one.title}. {one.text}" if one.text else one.title
        rows.put([short_id(form, "alt", one.id), told, one.kind, None, None], looks)
    rows.finish()


def _term_sheet(sheet: Worksheet, total_row: int) -> None:
    rows = Rows(sheet, (16, 30, 80))
    rows.put(TERM_COLUMNS, [Look.HEAD] * len(TERM_COLUMNS))
    rows.freeze()
    for name, label in TERMS:
        is_total = name == "total"
        rows.put(
            [name, label, None], [Look.PLAIN, Look.PLAIN, Look.SUM if is_total else Look.WORDS]
        )
        rows.height(_TALL_PT.get(name, 20.0))
        if is_total:
            rows.formula(len(TERM_COLUMNS), f"=SUM('{BID_SHEET}'!${_LETTERS[PLACE]}${total_row})")
    rows.finish()


def _band(rows: Rows, text: str) -> int:
    """A row that heads the rows below it; returns its number."""
    cells = [text if title == WORK else None for title in BID_COLUMNS]
    return rows.put([*cells, None], [Look.HEAD] * _BY_TRADE)


def _sum(ranges: Sequence[Range]) -> str:
    letter = _LETTERS[AMOUNT]
    return f"=SUM({','.join(f'{letter}{begin}:{letter}{end}' for begin, end in ranges)})"


def _grouped(lines: Sequence[BidLine]) -> dict[str, list[BidLine]]:
    """The lines by trade, as they come."""
    found: dict[str, list[BidLine]] = {}
    for line in lines:
        found.setdefault(line.trade, []).append(line)
    return found
