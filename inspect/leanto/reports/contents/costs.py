"""Budget, committed, paid and to go in one view, with the payments. The owner's."""

from __future__ import annotations

from collections.abc import Sequence
from datetime import date

from leanto.building.model import Building
from leanto.contract.baseline import open_lines
from leanto.contract.spending import Spending, SpendingRow
from leanto.money import format_usd
from leanto.record.agreed_entry import BidAwarded, Paid
from leanto.reports.blocks import (
    Block,
    Bullets,
    Column,
    Facts,
    Heading,
    Paragraph,
    Picture,
    Report,
    Row,
    Table,
)
from leanto.reports.contents.condition import INVENTED
from leanto.reports.contents.owners import owners_report
from leanto.reports.contents.words import date_in_words

_ROWS = (
    Column("Line", 0.07, "right"),
    Column("Work", 0.41),
    Column("Planned", 0.13, "right"),
    Column("Committed", 0.13, "right"),
    Column("Paid", 0.13, "right"),
    Column("To go", 0.13, "right"),
)
_PAYMENTS = (
    Column("No.", 0.07, "right"),
    Column("Day", 0.2),
    Column("Line", 0.1, "right"),
    Column("Amount", 0.15, "right"),
    Column("Note", 0.48),
)


def costs_report(
    award: BidAwarded,
    view: Spending,
    payments: Sequence[Paid],
    building: Building,
    as_of: date,
) -> Report:
    """The sums first, then every line, then what was paid with its receipts."""
    blocks: list[Block] = [
        Paragraph(headline(view), "lead"),
        Facts(tuple(sums(award, view))),
        *_warnings(award, view),
        Heading(1, "Line by line"),
        Table(_ROWS, tuple(_row(row) for row in view.rows), (_foot(view),), small=True),
        Paragraph(
            "Planned is our likely allowance on the day of the choice. Committed is what was "
            "agreed, with changes. A payment on the contract as a whole stands in its own line.",
            "note",
        ),
    ]
    if payments:
        blocks += [Heading(1, "Paid"), Table(_PAYMENTS, tuple(map(_payment, payments)))]
        receipts = [_receipt(paid) for paid in payments if paid.receipt is not None]
        blocks += [Heading(1, "Receipts"), *receipts] if receipts else []
    if building.invented:
        blocks.append(Paragraph(INVENTED, "note"))
    return owners_report("What it costs", blocks, building, as_of, award.bidder, tuple(payments))


def headline(view: Spending) -> str:
    """``Committed $24,100, paid $6,000, to go $18,100.``"""
    said = (
        f"Committed {format_usd(view.committed)}, paid {format_usd(view.paid)}, to go "
        f"{format_usd(view.to_go)}."
    )
    if view.budget_left is None:
        return said
    left = view.budget_left
    over = (
        f"That is {format_usd(-left)} over the budget"
        if left < 0
        else (f"That leaves {format_usd(left)} of the budget")
    )
    return f"{said} {over} of {format_usd(view.budget or 0)}."


def sums(award: BidAwarded, view: Spending) -> list[tuple[str, str]]:
    """Label and amount of everything that adds up to the view."""
    rows = [
        ("Chosen", f"{award.bidder}, {date_in_words(award.awarded_on)}"),
        ("Budget", "none given" if view.budget is None else format_usd(view.budget)),
        ("Contract", format_usd(view.contract, cents=True)),
        ("Changes agreed", format_usd(view.agreed_changes, cents=True)),
        ("Committed", format_usd(view.committed, cents=True)),
        ("Paid", format_usd(view.paid, cents=True)),
        ("To go", format_usd(view.to_go, cents=True)),
        ("Contingency", contingency_in_words(view)),
    ]
    if view.own_to_go:
        rows.insert(6, ("By the owner, to go", format_usd(view.own_to_go, cents=True)))
    if award.reason:
        rows.insert(1, ("Why", award.reason))
    return rows


def contingency_in_words(view: Spending) -> str:
    """``$3,400: used $800, left $2,600; asked for $300 more``."""
    said = (
        f"{format_usd(view.contingency)}: used {format_usd(view.agreed_changes)}, left "
        f"{format_usd(view.contingency_left)}"
    )
    if view.asked_changes:
        said += f"; asked for and not agreed yet {format_usd(view.asked_changes)}"
    return said


def _warnings(award: BidAwarded, view: Spending) -> tuple[Block, ...]:
    told = []
    if missing := open_lines(award.lines):
        numbers = ", ".join(line.number for line in missing)
        told.append(
            f"The bid has no price for {numbers}: they are in no sum here. Settle who does them."
        )
    over = [row.number for row in view.rows if row.to_go < 0 and row.number != "all"]
    if over:
        told.append(f"More was paid than agreed on: {', '.join(over)}.")
    if view.contingency_free < 0:
        told.append("The contingency does not suffice for the changes.")
    return (Bullets(tuple(told)),) if told else ()


def _row(row: SpendingRow) -> Row:
    small = "\n".join(text for text in (row.place, row.said) if text)
    return (
        row.number,
        f"{row.title}\n{small}" if small else row.title,
        "" if row.planned is None else format_usd(row.planned),
        "" if row.is_own else format_usd(row.committed),
        format_usd(row.paid) if row.paid else "",
        format_usd(row.to_go),
    )


def _foot(view: Spending) -> Row:
    planned = sum(row.planned or 0 for row in view.rows)
    return (
        "",
        "All",
        format_usd(planned),
        format_usd(view.committed),
        format_usd(view.paid),
        format_usd(view.to_go),
    )


def _payment(paid: Paid) -> Row:
    amount = format_usd(paid.usd, cents=True)
    return str(paid.number), date_in_words(paid.paid_on), paid.line, amount, paid.note


def _receipt(paid: Paid) -> Picture:
    assert paid.receipt is not None
    amount = format_usd(paid.usd, cents=True)
    return Picture(paid.receipt.photo, f"Payment {paid.number}, line {paid.line}: {amount}")
