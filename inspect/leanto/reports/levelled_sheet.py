"""The bids side by side as a workbook: every total is a formula over what stands there."""

from __future__ import annotations

from collections.abc import Sequence
from datetime import date
from decimal import Decimal

from openpyxl import Workbook
from openpyxl.styles import Alignment
from openpyxl.utils import get_column_letter
from openpyxl.worksheet.worksheet import Worksheet

from leanto.bids.levelled import Cell, Levelled, LevelLine, Standing
from leanto.bids.short_id import alternate_number
from leanto.money import Spread, dollars
from leanto.reports.contents.bid_marks import MARKS, amount_in_words, marked
from leanto.reports.contents.bids import NO_CHOICE, found_in
from leanto.reports.contents.words import capitalized
from leanto.reports.saved_workbook import saved_workbook
from leanto.reports.sheet_rows import Look, Rows, Value

TOTALS, LINES, ALTERNATES, HIDDEN, WORDS = (
    "Totals",
    "Lines",
    "Alternates",
    "Hidden work",
    "To ask",
)
OWNERS = "For the owner. Not to be passed on to a bidder."
_OURS = ("Ours, low", "Ours, likely", "Ours, high")
_FIRST = 9
"""The first column of the bids on the sheets of lines and hidden work."""
_HEAD = Look.HEAD


def levelled_workbook(made: Levelled, title: str, day: date, *, invented: bool = False) -> bytes:
    """The workbook's bytes, the same for the same table; ``title`` is the building's name.

    Subtotals, totals and amounts of hidden work are formulas. Whatever a bidder or the owner
    wrote stands as text and is never a formula.
    """
    book = Workbook()
    first = book.active
    assert isinstance(first, Worksheet)
    first.title = TOTALS
    total_row = _line_sheet(book.create_sheet(LINES), made)
    alternate_row = _alternate_sheet(book.create_sheet(ALTERNATES), made)
    hidden_row = _hidden_sheet(book.create_sheet(HIDDEN), made)
    _word_sheet(book.create_sheet(WORDS), made)
    _total_sheet(first, made, title, invented, (total_row, alternate_row, hidden_row))
    return saved_workbook(book, f"Bids side by side: {title}", day)


def amount_column(at: int) -> str:
    """The letter of the column that holds the amounts of the bid at this place."""
    return get_column_letter(_FIRST + 2 * at)


def _total_sheet(
    sheet: Worksheet, made: Levelled, title: str, invented: bool, rows_of: tuple[int, int, int]
) -> None:
    lines, alternates, hidden = rows_of
    rows = Rows(sheet, (38, 14, 14, 14, *[20] * len(made.bids)))
    rows.say(f"Bids side by side: {title}", size=14, bold=True)
    rows.say(f"Invented example. {OWNERS}" if invented else OWNERS)
    rows.skip()
    names = [one.bid.bidder for one in made.bids]
    rows.put(["Total", *_OURS, *names], [_HEAD] * (4 + len(names)))
    rows.wrap()
    rows.freeze()
    _values(rows, "As read", None, [_as_read(one) for one in made.bids])
    _values(rows, "Added up again", None, [dollars(one.summed) for one in made.bids])
    base = _formulas(
        rows, "On one base", made.ours, [_cell_of(LINES, at, lines) for at in _at(made)]
    )
    _formulas(rows, "of that plugged", None, [_plugged(at, lines) for at in _at(made)])
    more = _formulas(
        rows, "Expected hidden work", None, [_cell_of(HIDDEN, at, hidden) for at in _at(made)]
    )
    own = _formulas(
        rows, "All alternates", None, [_cell_of(ALTERNATES, at, alternates) for at in _at(made)]
    )
    for name, parts in (
        ("Base and expected hidden work", (base, more)),
        ("Base and all alternates", (base, own)),
        ("Base, alternates and hidden work", (base, own, more)),
    ):
        letters = [get_column_letter(5 + at) for at in _at(made)]
        _formulas(rows, name, None, ["+".join(f"{x}{row}" for row in parts) for x in letters])
    rows.skip()
    for text in (f"Marks: {'; '.join(MARKS)}.", NO_CHOICE, *made.notices):
        rows.tell(text, 4 + len(names))
    rows.finish(protect=False)


def _line_sheet(sheet: Worksheet, made: Levelled) -> int:
    """Fills the sheet of the lines; returns the row of the totals."""
    rows = _sheet_with_bids(sheet, made, ("Line", "Work", "Place", "Quantity", "Unit", *_OURS))
    parts: list[int] = []
    by_trade: dict[str, list[LevelLine]] = {}
    for line in made.lines:
        by_trade.setdefault(line.line.trade, []).append(line)
    for trade, lines in by_trade.items():
        band = rows.put([None, capitalized(trade)], [_HEAD] * 2)
        for line in lines:
            _line_row(rows, line)
        parts.append(
            _sum_row(rows, made, f"All lines: {trade}", f"{{0}}{band + 1}:{{0}}{rows.last}")
        )
    for one in made.base.form.allowances:
        given = [Spread(one.amount, one.amount, one.amount)]
        _bid_row(
            rows,
            [None, f"Allowance: {one.title}", None, None, None],
            given[0],
            [(dollars(one.amount), "") for _ in made.bids],
        )
        parts.append(rows.last)
    if any(one.added for one in made.bids):
        sums = [
            sum((x.amount.usd or Decimal(0) for x in one.added), Decimal(0)) for one in made.bids
        ]
        told = [None, "Added by the bidder", None, None, None]
        _bid_row(rows, told, None, [(dollars(usd), "") for usd in sums])
        parts.append(rows.last)
    total = _sum_row(rows, made, "On one base", ",".join(f"{{0}}{row}" for row in parts) or "0")
    rows.finish(protect=False)
    return total


def _alternate_sheet(sheet: Worksheet, made: Levelled) -> int:
    rows = _sheet_with_bids(sheet, made, ("No.", "Alternate", "To the base", "", "", *_OURS))
    begin = rows.last + 1
    for at, line in enumerate(made.alternates):
        told: list[Value] = [
            alternate_number(at),
            line.alternate.title,
            line.alternate.kind,
            None,
            None,
        ]
        sign = -1 if line.alternate.kind == "deduct" else 1
        ours = None if line.ours is None else [sign * x for x in _three(line.ours)]
        _bid_row(rows, told, ours, [_amount(cell) for cell in line.cells])
    total = _sum_row(rows, made, "All alternates", _column(begin, rows.last))
    rows.finish(protect=False)
    return total


def _hidden_sheet(sheet: Worksheet, made: Levelled) -> int:
    rows = _sheet_with_bids(sheet, made, ("", "Work", "", "Quantity", "Unit", *_OURS), "Unit price")
    begin = rows.last + 1
    for at, work in enumerate(made.base.hidden):
        ours = work.ours.scaled(work.quantity)
        told: list[Value] = [None, work.title, None, work.quantity, work.unit]
        _bid_row(rows, told, ours, [(None, "") for _ in made.bids])
        for bid, one in enumerate(made.bids):
            cell, column = one.hidden_cells[at], _FIRST + 2 * bid
            rows.cell(column + 1).value = dollars(cell.unit_usd)
            rows.cell(column + 1).number_format = "#,##0.00"
            price = f"{get_column_letter(column + 1)}{rows.last}"
            rows.formula(column, f"=ROUND(D{rows.last}*{price},2)")
    total = _sum_row(rows, made, "All", _column(begin, rows.last))
    rows.say(
        "Quantities are what is expected on average of what nobody has seen; no bidder was told."
    )
    rows.finish(protect=False)
    return total


def _word_sheet(sheet: Worksheet, made: Levelled) -> None:
    rows = Rows(sheet, (30, 14, 110))
    rows.put(["Bidder", "", "What it says, and what to ask"], [_HEAD] * 3)
    rows.freeze()
    for one in made.bids:
        for kind, texts in (("found", tuple(found_in(one))), ("to ask", one.questions)):
            for text in texts:
                rows.put([one.bid.bidder, kind, text], [Look.PLAIN] * 3)
    rows.finish(protect=False)


def _sheet_with_bids(
    sheet: Worksheet, made: Levelled, titles: Sequence[str], beside: str = "Marks"
) -> Rows:
    """A sheet whose columns end with an amount and what stands beside it for every bid."""
    wide = 12 if beside == "Unit price" else 22
    rows = Rows(sheet, (6, 38, 31, 9, 9, 11, 11, 11, *[13, wide] * len(made.bids)))
    bids = [text for one in made.bids for text in (one.bid.bidder, beside)]
    rows.put([*titles, *bids], [_HEAD] * (len(titles) + len(bids)))
    rows.wrap()
    rows.freeze()
    return rows


def _line_row(rows: Rows, line: LevelLine) -> None:
    asked = line.line
    told: list[Value] = [asked.line, asked.title, asked.place, asked.quantity, asked.unit]
    _bid_row(rows, told, line.ours, [_amount(cell) for cell in line.cells])


def _bid_row(
    rows: Rows,
    told: Sequence[Value],
    ours: Spread | Sequence[Decimal] | None,
    amounts: Sequence[tuple[Decimal | None, str]],
) -> None:
    three: list[Value] = [None] * 3
    if ours is not None:
        three = [*(_three(ours) if isinstance(ours, Spread) else ours)]
    values: list[Value] = [*told, *three, *(value for pair in amounts for value in pair)]
    looks = [Look.PLAIN] * 5 + [Look.SUM] * 3 + [Look.SUM, Look.PLAIN] * len(amounts)
    rows.put(values, looks)
    for at in range(len(amounts)):
        beside = rows.cell(_FIRST + 2 * at + 1)
        beside.alignment = Alignment("left", "top", wrap_text=True, indent=1)


def _sum_row(rows: Rows, made: Levelled, name: str, what: str) -> int:
    """A row that adds up ``what``, in which ``{0}`` is the column's letter; returns its number."""
    width = _FIRST - 1 + 2 * len(made.bids)
    rows.put([None, name, *[None] * (width - 2)], [Look.PLAIN, _HEAD, *[Look.SUM] * (width - 2)])
    columns = [*range(_FIRST - 3, _FIRST), *(_FIRST + 2 * at for at in _at(made))]
    for column in columns:
        rows.formula(column, f"=SUM({what.format(get_column_letter(column))})")
    return rows.last


def _values(
    rows: Rows, name: str, ours: Spread | None, values: Sequence[Decimal | str | None]
) -> int:
    three: list[Value] = [*_three(ours)] if ours is not None else [None] * 3
    return rows.put([name, *three, *values], [Look.PLAIN] + [Look.SUM] * (3 + len(values)))


def _formulas(rows: Rows, name: str, ours: Spread | None, formulas: Sequence[str]) -> int:
    _values(rows, name, ours, [None] * len(formulas))
    for at, formula in enumerate(formulas):
        rows.formula(5 + at, f"={formula}")
    return rows.last


def _cell_of(sheet: str, at: int, row: int) -> str:
    return f"'{sheet}'!{amount_column(at)}{row}"


def _plugged(at: int, last: int) -> str:
    """What is marked as plugged among the lines."""
    marks, amounts = get_column_letter(_FIRST + 2 * at + 1), amount_column(at)
    return f"SUMIF('{LINES}'!{marks}2:{marks}{last},\"p *\",'{LINES}'!{amounts}2:{amounts}{last})"


def _column(begin: int, end: int) -> str:
    return f"{{0}}{begin}:{{0}}{end}" if end >= begin else "0"


def _amount(cell: Cell) -> tuple[Decimal, str]:
    mark, why = marked(cell)
    return dollars(cell.usd), f"{mark} {why}".strip() if mark != "p" or why else "p plugged"


def _as_read(one: Standing) -> Decimal | str:
    stated = one.bid.stated_total
    return amount_in_words(stated) if stated.usd is None else dollars(stated.usd)


def _three(spread: Spread) -> list[Decimal]:
    return [dollars(spread.low), dollars(spread.likely), dollars(spread.high)]


def _at(made: Levelled) -> range:
    return range(len(made.bids))
