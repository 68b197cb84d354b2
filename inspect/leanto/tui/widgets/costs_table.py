"""The rows of the costs: line by line, or payment by payment."""

from __future__ import annotations

from leanto.contract.spending import Spending
from leanto.money import format_usd
from leanto.record.agreed_entry import Paid
from leanto.reports.contents.words import date_in_words
from leanto.tui.shown import on_one_line
from leanto.tui.widgets.rows_table import Column, Row

LINE_COLUMNS = (
    Column("Line", 4, "right"),
    Column("Work", 0),
    Column("Planned", 9, "right", from_width=64),
    Column("Committed", 9, "right"),
    Column("Paid", 9, "right"),
    Column("To go", 9, "right"),
)
LINE_SORTINGS = ("number", "to go", "over what was planned")
PAID_COLUMNS = (
    Column("No.", 4, "right"),
    Column("Day", 18),
    Column("Line", 5, "right"),
    Column("Amount", 11, "right"),
    Column("Note", 0),
)
PAID_SORTINGS = ("number", "amount")


def line_rows(view: Spending) -> tuple[Row, ...]:
    """The sums first, then every line."""
    sums = ("", "All", "", *map(format_usd, (view.committed, view.paid, view.to_go)))
    first = (float("-inf"), 0)
    rows = [Row("all lines", sums, orders=(first, first), style="bold")]
    for at, row in enumerate(view.rows):
        told = ", ".join(part for part in (row.title, row.place, row.said) if part)
        more = float(row.committed - (row.planned or row.committed))
        rows.append(
            Row(
                key=f"line {row.number}",
                cells=(
                    row.number,
                    on_one_line(told),
                    "" if row.planned is None else format_usd(row.planned),
                    "" if row.is_own else format_usd(row.committed),
                    format_usd(row.paid) if row.paid else "",
                    format_usd(row.to_go),
                ),
                orders=((-float(row.to_go), at), (-more, at)),
                style="bold" if row.to_go < 0 and row.number != "all" else "",
            )
        )
    return tuple(rows)


def paid_rows(payments: tuple[Paid, ...]) -> tuple[Row, ...]:
    return tuple(
        Row(
            key=f"paid {one.number}",
            cells=(
                str(one.number),
                date_in_words(one.paid_on),
                one.line,
                format_usd(one.usd, cents=True),
                on_one_line(one.note) + (" (receipt)" if one.receipt else ""),
            ),
            orders=((-float(one.usd), one.number),),
        )
        for one in payments
    )
