"""The baseline: every figure that was agreed, with ours beside it, as on the day of the choice."""

from __future__ import annotations

from collections.abc import Collection, Iterator
from decimal import Decimal

from leanto.bids.levelled import AlternateLine, Levelled
from leanto.bids.model import State
from leanto.bids.short_id import alternate_number
from leanto.money import dollars
from leanto.record.agreed_entry import AgreedLine, AgreedRate

_WHY_NONE = {
    State.MISSING: "left blank",
    State.INCLUDED: "in another line",
    State.EXCLUDED: "left out by the bidder",
    State.UNREAD: "could not be read",
}
OPEN_STATES = ("left blank", "left out by the bidder", "could not be read")
"""What stands where a line is in nobody's contract yet."""


def agreed_lines(
    made: Levelled, at: int, alternates: Collection[str] = (), agreed_usd: Decimal | None = None
) -> tuple[AgreedLine, ...]:
    """The lines of one bid as they are agreed: its own figures, and 0 where it has none.

    Nothing plugged is in them. ``alternates`` are the numbers of those that are taken.
    ``agreed_usd`` is the sum that both shook hands on, where it is another one: the step between
    them stands as a line of its own. Raises ValueError for an alternate that is not priced.
    """
    lines = [*_base(made, at), *_taken(made, at, alternates), *_sums(made, at)]
    if agreed_usd is not None:
        step = dollars(agreed_usd) - total_of(lines)
        if step:
            lines.append(
                AgreedLine(
                    number="D1",
                    kind="difference",
                    id="difference",
                    title="Agreed sum, less the lines",
                    usd=step,
                )
            )
    return tuple(lines)


def agreed_rates(made: Levelled, at: int) -> tuple[AgreedRate, ...]:
    """The bidder's own unit prices for what may be found."""
    prices = made.bids[at].bid.unit_prices
    return tuple(
        AgreedRate(id=ask.id, title=ask.title, unit=ask.unit, usd=dollars(usd))
        for ask in made.base.form.unit_prices
        if ask.id in prices and (usd := prices[ask.id].usd) is not None
    )


def total_of(lines: Collection[AgreedLine]) -> Decimal:
    """What is agreed altogether; lines by the owner hold no amount."""
    return sum((line.usd for line in lines), Decimal(0))


def open_lines(lines: Collection[AgreedLine]) -> tuple[AgreedLine, ...]:
    """Lines that the bid has no price for and does not hold in another line either."""
    return tuple(line for line in lines if line.said in OPEN_STATES)


def _base(made: Levelled, at: int) -> Iterator[AgreedLine]:
    for row in made.lines:
        line, cell = row.line, row.cells[at]
        has_price = cell.how.is_bid
        yield AgreedLine(
            number=str(line.line),
            kind="line",
            id=line.item_id,
            title=line.title,
            place=line.place,
            trade=line.trade,
            quantity=line.quantity,
            unit=line.unit,
            usd=dollars(cell.usd) if has_price else Decimal(0),
            ours_usd=None if row.ours is None else dollars(row.ours.likely),
            said="" if has_price else _WHY_NONE[cell.figure.state],
        )


def _taken(made: Levelled, at: int, numbers: Collection[str]) -> Iterator[AgreedLine]:
    known = {alternate_number(index): line for index, line in enumerate(made.alternates)}
    for number in dict.fromkeys(numbers):
        line = known[number]
        cell = line.cells[at]
        if not cell.how.is_bid:
            raise ValueError(f"alternate {number} is not priced")
        yield AgreedLine(
            number=number,
            kind="alternate",
            id=line.alternate.id,
            title=line.alternate.title,
            usd=dollars(cell.usd),
            ours_usd=_ours(line),
        )


def _ours(line: AlternateLine) -> Decimal | None:
    if line.ours is None:
        return None
    return dollars(line.ours.likely) * (-1 if line.alternate.kind == "deduct" else 1)


def _sums(made: Levelled, at: int) -> Iterator[AgreedLine]:
    for number, one in enumerate(made.base.form.allowances, start=1):
        yield AgreedLine(
            number=f"S{number}",
            kind="allowance",
            id=one.id,
            title=f"Allowance: {one.title}",
            usd=dollars(one.amount),
            ours_usd=dollars(one.amount),
        )
    for number, added in enumerate(made.bids[at].added, start=1):
        usd = added.amount.usd
        yield AgreedLine(
            number=f"X{number}",
            kind="added",
            id=f"added{number}",
            title=f"Added by the bidder: {added.text}"[:600],
            usd=Decimal(0) if usd is None else dollars(usd),
            said="" if usd is not None else _WHY_NONE[added.amount.state],
        )
