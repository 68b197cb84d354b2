"""The rows of the bids: line by line, and what each bid says."""

from __future__ import annotations

from leanto.bids.levelled import Cell, Levelled, LevelLine, Standing
from leanto.money import format_usd
from leanto.reports.contents.bid_marks import marked
from leanto.reports.contents.bids import found_in
from leanto.reports.contents.words import capitalized
from leanto.tui.widgets.rows_table import Column, Row

LINE_SORTINGS = ("trade", "our allowance", "how far apart")
SAID_SORTINGS = ("bidder",)
SAID_COLUMNS = (Column("Bidder", 16), Column("What it says, and what to ask", 0))
_WIDTH = 11
_ROOM_FROM = 60


def line_columns(made: Levelled) -> tuple[Column, ...]:
    """Number, work and our allowance, then one column a bid; later bids where there is room."""
    return (
        Column("Line", 4, "right"),
        Column("Work", 0),
        Column("Ours", 8, "right", from_width=_ROOM_FROM),
        *(
            Column(one.bid.bidder[:_WIDTH], _WIDTH, "right", from_width=_WIDTH * (at + 4))
            for at, one in enumerate(made.bids)
        ),
    )


def line_rows(made: Levelled) -> tuple[Row, ...]:
    """Totals first, then the lines by trade."""
    rows = [_total("as-read", "As read", [_as_read(one) for one in made.bids], "")]
    ours = format_usd(made.ours.likely) if made.ours else ""
    rows.append(_total("base", "On one base", [format_usd(x.base) for x in made.bids], ours))
    rows.append(_total("plugged", "of that plugged", [format_usd(x.plugged) for x in made.bids]))
    if made.base.hidden:
        with_hidden = [format_usd(x.with_hidden) for x in made.bids]
        rows.append(_total("hidden", "With expected hidden work", with_hidden))
    if made.alternates:
        with_alternates = [format_usd(x.with_alternates) for x in made.bids]
        rows.append(_total("alternates", "With all alternates", with_alternates))
    trade = ""
    for line in sorted(made.lines, key=lambda one: _first(made, one)):
        if line.line.trade != trade:
            trade = line.line.trade
            blank = ("", capitalized(trade), *[""] * (len(made.bids) + 1))
            rows.append(Row(f"trade {trade}", blank, is_heading=True, style="bold"))
        rows.append(_line(line))
    return tuple(rows)


def said_rows(made: Levelled) -> tuple[Row, ...]:
    """What each bid was found to say, then the questions to its bidder."""
    rows = []
    for at, one in enumerate(made.bids):
        for index, unread in enumerate(one.bid.unread):
            text = f"Not read: “{unread.text}”. {unread.why}"
            rows.append(_said(at, f"unread {index}", one, text, "bold"))
        for index, text in enumerate(found_in(one)):
            if not text.startswith("Not read, "):
                rows.append(_said(at, f"found {index}", one, text))
        for index, text in enumerate(one.questions):
            rows.append(_said(at, f"ask {index}", one, f"Ask: {text}"))
    return tuple(rows)


def cell_in_words(cell: Cell) -> str:
    """The amount of a line with its marks and the reasons for them."""
    mark, reason = marked(cell)
    said = f"{format_usd(cell.usd)} {mark}".rstrip()
    notes = "; ".join(dict.fromkeys(cell.figure.notes))
    return " - ".join(part for part in (said, reason, f"“{notes}”" if notes else "") if part)


def _line(line: LevelLine) -> Row:
    amounts = [cell.usd for cell in line.cells]
    widest = float(max(amounts) - min(amounts))
    likely = float(line.ours.likely) if line.ours else 0.0
    return Row(
        key=f"line {line.line.item_id}",
        cells=(
            str(line.line.line),
            f"{line.line.title}, {line.line.place}",
            format_usd(line.ours.likely) if line.ours else "",
            *(f"{format_usd(cell.usd)} {marked(cell)[0]:<2}" for cell in line.cells),
        ),
        orders=((-likely, line.line.line), (-widest, line.line.line)),
        search=str(line.line.trade),
    )


def _total(key: str, name: str, cells: list[str], ours: str = "") -> Row:
    first = (float("-inf"), key)
    spaced = [f"{cell}   " for cell in cells]
    return Row(f"total {key}", ("", name, ours, *spaced), orders=(first, first), style="bold")


def _as_read(one: Standing) -> str:
    stated = one.bid.stated_total.usd
    return "not stated" if stated is None else format_usd(stated)


def _said(at: int, key: str, one: Standing, text: str, style: str = "") -> Row:
    return Row(f"{at} {key}", (one.bid.bidder, text), search=text, style=style)


def _first(made: Levelled, line: LevelLine) -> int:
    """Where the trade of the line comes in first."""
    return next(at for at, x in enumerate(made.lines) if x.line.trade == line.line.trade)
