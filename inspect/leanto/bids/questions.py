"""What to ask each bidder, written out so that it can be sent."""

from __future__ import annotations

import re
from collections.abc import Iterator
from decimal import Decimal

from leanto.bids.figure import How
from leanto.bids.in_feet import shown_quantity
from leanto.bids.levelled import Cell, Levelled, LevelLine, Standing
from leanto.bids.model import MISSING, State
from leanto.bids.unbalanced import far_lines, far_unit_prices
from leanto.money import format_usd

FEWEST_DAYS = 30
"""A bid that holds for less may run out before it is compared; common practice, no source."""


def questions(made: Levelled, at: int) -> tuple[str, ...]:
    """The questions to one bidder: no price of another bidder and no figure of ours is in them."""
    return tuple(dict.fromkeys(_asked(made, at)))


def _asked(made: Levelled, at: int) -> Iterator[str]:
    one = made.bids[at]
    yield from _form(one)
    yield from _trades(made, one)
    for line in made.lines:
        if line.line.trade not in one.missing_trades:
            yield from _line(made, line, at)
    yield from _sums(one)
    yield from _unread(made, one)
    yield from _far(made, at)
    for added in one.added:
        yield (
            f"You added “{added.text}”{_at(added.amount.usd)}. Is it needed for the work in the "
            "scope, and is it in your total?"
        )
    for excluded in one.bid.exclusions:
        yield f"You leave out: {excluded}. Who is to do it, and at what price would you?"
    for condition in one.bid.qualifications:
        yield f"Your condition: {condition}. What does your price become without it?"
    yield from _unit_prices(made, one)
    yield from _alternates(made, one)
    yield from _terms(one)


def _form(one: Standing) -> Iterator[str]:
    if one.notices:
        yield "Please confirm that you have priced the latest form and every addendum."


def _trades(made: Levelled, one: Standing) -> Iterator[str]:
    for trade in one.missing_trades:
        numbers = ", ".join(str(x.line.line) for x in made.lines if x.line.trade == trade)
        yield (
            f"You have no price for any line of the {trade} ({numbers}). Is that work left out, or "
            "part of other lines? If it is left out, at what price would you take it on?"
        )


def _line(made: Levelled, line: LevelLine, at: int) -> Iterator[str]:
    cell = line.cells[at]
    figure = cell.figure
    match figure.state:
        case State.MISSING:
            yield f"{_named(line)}: the line is blank. Is it left out, free, or in another line?"
        case State.EXCLUDED:
            yield f"{_named(line)}: you leave it out. At what price would you take it on?"
        case State.INCLUDED if not any(char.isdigit() for char in " ".join(figure.notes)):
            yield f"{_named(line)}: in which line is its price?"
        case State.INCLUDED:
            yield from _elsewhere(made, line, cell, at)
    if cell.how is How.RESCALED and figure.own_quantity is not None:
        yield (
            f"{_named(line)}: you priced {shown_quantity(figure.own_quantity, line.line.unit)}; "
            f"the form has {shown_quantity(line.line.quantity, line.line.unit)}. "
            "Which quantity do you find on site, and why?"
        )
    if cell.how is How.SPLIT:
        yield f"{_named(line)}: you split it. Do the parts cover the whole line?"


def _elsewhere(made: Levelled, line: LevelLine, cell: Cell, at: int) -> Iterator[str]:
    """Where the line that is to hold the price has none itself."""
    cited = {int(number) for number in re.findall(r"[0-9]+", " ".join(cell.figure.notes))}
    held = {one.line.line for one in made.lines if one.cells[at].how.is_bid}
    if not cited & held:
        named = ", ".join(map(str, sorted(cited)))
        yield f"{_named(line)}: you say it is in {named}, which has no price. Where is it?"


def _far(made: Levelled, at: int) -> Iterator[str]:
    """Lines to look at again, with the bidder's own figures."""
    found = far_lines(made, at)
    for is_over, what in ((True, "more than the form asks for"), (False, "all that it asks for")):
        far = [f"{x.line.line.line} ({format_usd(x.usd)})" for x in found if x.is_over == is_over]
        if far:
            yield f"Please look again at {_lines(far)}: is {what} in your price?"
    asks = [
        f"{ask.title} ({format_usd(usd, cents=True)})" for ask, usd, _ in far_unit_prices(made, at)
    ]
    if asks:
        yield f"Please look again at your unit prices: {'; '.join(asks)}. What do they hold?"


def _lines(numbers: list[str]) -> str:
    return f"{'line' if len(numbers) == 1 else 'lines'} {', '.join(numbers)}"


def _sums(one: Standing) -> Iterator[str]:
    for fault in one.faults:
        stated, computed = (format_usd(x, cents=True) for x in (fault.stated, fault.computed))
        out = f"{computed} comes out ({fault.text})"
        yield f"{fault.where}: you state {stated}, and {out}. Which holds?"


def _unread(made: Levelled, one: Standing) -> Iterator[str]:
    numbers = {line.line.item_id: line for line in made.lines}
    for unread in one.bid.unread:
        id_ = unread.field.partition("|")[2].partition("#")[0]
        where = (
            _named(numbers[id_]) if id_ in numbers else f"Field “{unread.shown or unread.field}”"
        )
        yield f"{where}: you wrote “{unread.text}”. {unread.why}"


def _unit_prices(made: Levelled, one: Standing) -> Iterator[str]:
    blank = [
        ask.title
        for ask in made.base.form.unit_prices
        if one.bid.unit_prices.get(ask.id, MISSING).state is State.MISSING
    ]
    if blank:
        yield f"Unit prices for what may be found are blank: {'; '.join(blank)}. What are they?"


def _alternates(made: Levelled, one: Standing) -> Iterator[str]:
    for alternate in made.base.form.alternates:
        if one.bid.alternates.get(alternate.id, MISSING).state is State.MISSING:
            yield f"Alternate “{alternate.title}” is blank. What do you {alternate.kind} for it?"


def _terms(one: Standing) -> Iterator[str]:
    bid = one.bid
    if bid.stated_total.state is State.MISSING:
        yield f"You give no total. Is {format_usd(one.summed, cents=True)} your base bid?"
    if bid.validity_days is None:
        yield "How many days does your bid hold?"
    elif bid.validity_days < FEWEST_DAYS:
        yield f"Your bid holds {bid.validity_days} days. Can you hold it for {FEWEST_DAYS}?"
    if not bid.start:
        yield "When can you start?"
    if not bid.duration:
        yield "How many working days do you need?"


def _named(line: LevelLine) -> str:
    return f"Line {line.line.line}, {line.line.title}, {line.line.place}"


def _at(usd: Decimal | None) -> str:
    return "" if usd is None else f" at {format_usd(usd)}"
