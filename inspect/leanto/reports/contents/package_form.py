"""The bid form as it stands in the PDF: one box for every figure and word that is asked for."""

from __future__ import annotations

from collections.abc import Iterator

from leanto.bids.in_feet import quantity_in_words, read_unit
from leanto.bids.layout import ADDED_LINES, IDENTITY, TERMS, added_field, field, pdf_name
from leanto.bids.model import BidForm, BidLine
from leanto.bids.short_id import alternate_number
from leanto.money import format_usd
from leanto.reports.blocks import (
    Band,
    Block,
    Column,
    Field,
    FormRow,
    FormTable,
    Heading,
    NewPage,
    Paragraph,
)
from leanto.reports.contents.words import capitalized

_LINES = (
    Column("Line", 0.06, "right"),
    Column("Work and place", 0.36),
    Column("Quantity", 0.13, "right"),
    Column("Unit price $", 0.13),
    Column("Amount $", 0.13),
    Column("Note", 0.19),
)
_ADDED = (Column("Work", 0.68), Column("Amount $", 0.13), Column("", 0.19))
_ASKED = (Column("Found behind what is closed", 0.55), Column("Unit", 0.15), Column("Price $", 0.3))
_ALTERNATES = (Column("Alternate", 0.55), Column("To the base", 0.15), Column("Amount $", 0.3))
_ALLOWED = (Column("Carried in the base bid", 0.7), Column("Amount $", 0.3))
_TERMS = (Column("", 0.3), Column("", 0.7))
_LONG = {"exclusions": 4, "qualifications": 4}
"""Fields with room for so many lines."""


def form_blocks(form: BidForm) -> tuple[Block, ...]:
    """The form with its fields; what tells it from another form stands first."""
    return (
        NewPage(),
        Heading(1, "Bid form"),
        Paragraph(
            "Type into the boxes and send this file back, not a scan of it. An amount is the "
            "quantity times the unit price. Where there is no price write “incl. in line” with "
            "its number, “by others” or “none”; a blank is taken as forgotten."
        ),
        FormTable(_TERMS, tuple(_identity(form))),
        FormTable(_TERMS, (_term("bidder", "Bidder: firm, person, license number"),)),
        Heading(2, "Base bid"),
        FormTable(_LINES, tuple(_lines(form))),
        Heading(2, "Work not on the form"),
        FormTable(_ADDED, tuple(_added())),
        *_allowances(form),
        FormTable(_TERMS, (_term("total", "Base bid, total $"),)),
        *_asked(form),
        *_alternates(form),
        Heading(2, "Terms of the bid"),
        FormTable(
            _TERMS, tuple(_term(n, label) for n, label in TERMS if n not in ("bidder", "total"))
        ),
        Paragraph(
            "Form made by leanto. No signature is asked for here: the contract is a paper of its "
            "own.",
            "note",
        ),
    )


def _identity(form: BidForm) -> Iterator[FormRow]:
    values = {"form_id": form.form_id, "job_id": form.job_id, "addendum": str(form.addendum)}
    for name, label in IDENTITY:
        yield label, Field(name, label, values[name], fixed=True)


def _term(name: str, label: str) -> FormRow:
    return label, Field(name, label, lines=_LONG.get(name, 1))


def _lines(form: BidForm) -> Iterator[FormRow | Band]:
    by_trade: dict[str, list[BidLine]] = {}
    for line in form.lines:
        by_trade.setdefault(line.trade, []).append(line)
    for trade, lines in by_trade.items():
        yield Band(capitalized(trade))
        for line in lines:
            told = f"Line {line.line}, {line.title}, {line.place}"
            unit = f"{told}: price per {read_unit(line.unit)}"
            yield (
                str(line.line),
                f"{line.title}\n{line.place}",
                quantity_in_words(line.quantity, line.unit),
                Field(pdf_name(field("unit", line.item_id)), unit),
                Field(pdf_name(field("amount", line.item_id)), f"{told}: amount"),
                Field(pdf_name(field("note", line.item_id)), f"{told}: note"),
            )


def _added() -> Iterator[FormRow]:
    for number in range(1, ADDED_LINES + 1):
        yield (
            Field(added_field(number, "text"), f"Work not on the form, {number}"),
            Field(added_field(number, "amount"), f"Work not on the form, {number}: amount"),
            "",
        )


def _allowances(form: BidForm) -> tuple[Block, ...]:
    if not form.allowances:
        return ()
    rows = tuple(
        (
            one.title,
            Field(
                pdf_name(field("allowance", one.id)),
                f"Allowance: {one.title}",
                format_usd(one.amount, cents=True),
                fixed=True,
            ),
        )
        for one in form.allowances
    )
    return Heading(2, "Allowances, alike for all"), FormTable(_ALLOWED, rows)


def _asked(form: BidForm) -> tuple[Block, ...]:
    if not form.unit_prices:
        return ()
    rows = tuple(
        (
            one.title,
            read_unit(one.unit),
            Field(
                pdf_name(field("askunit", one.id)), f"{one.title}: price per {read_unit(one.unit)}"
            ),
        )
        for one in form.unit_prices
    )
    return Heading(2, "Unit prices, in no total"), FormTable(_ASKED, rows)


def _alternates(form: BidForm) -> tuple[Block, ...]:
    if not form.alternates:
        return ()
    rows = tuple(
        (
            f"{alternate_number(at)}. {one.title}",
            capitalized(one.kind),
            Field(pdf_name(field("alt", one.id)), f"Alternate, {one.kind}: {one.title}"),
        )
        for at, one in enumerate(form.alternates)
    )
    return Heading(2, "Alternates, in no total"), FormTable(_ALTERNATES, rows)
