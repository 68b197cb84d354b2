"""Bids put on one base: arithmetic first, then what is missing, then what stands apart."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace
from decimal import Decimal

from leanto.bids.arithmetic import summed, total_faults
from leanto.bids.comparing import comparing_notices
from leanto.bids.figure import Figure, How, figure_of
from leanto.bids.in_funds import WithinFunds, taken_in_order
from leanto.bids.levelled import (
    AlternateLine,
    Base,
    Cell,
    HiddenCell,
    Levelled,
    LevelLine,
    Standing,
)
from leanto.bids.model import Alternate, Amount, Bid, BidForm, BidLine, State
from leanto.bids.outlier import FEWEST, Outlier, outliers
from leanto.bids.plug import plugged, stand_in
from leanto.bids.questions import questions
from leanto.bids.unbalanced import unbalanced
from leanto.money import Spread, format_usd

LINE_FAR = 2.0
"""A price of the double or the half of the median is far off; common practice, no source."""
TOTAL_FAR = 1.3
"""The same for totals."""
NOT_ASKED = "not on the form that was priced"


def level(base: Base, bids: Sequence[Bid]) -> Levelled:
    """The bids on the lines and quantities of the base, in the order given."""
    figures = [[_figure(base, bid, line) for bid in bids] for line in base.form.lines]
    lines = tuple(
        _line(base, bids, line, row) for line, row in zip(base.form.lines, figures, strict=True)
    )
    alternates = tuple(_alternate(base, bids, one) for one in base.form.alternates)
    standings = [_standing(base, bids, at, lines, alternates) for at in range(len(bids))]
    apart = outliers([float(one.base) for one in standings], TOTAL_FAR)
    standings = [
        replace(one, apart=f"{odd.measure}, median {format_usd(odd.middle)}" if odd else "")
        for one, odd in zip(standings, apart, strict=True)
    ]
    made = Levelled(
        base=base,
        lines=lines,
        alternates=alternates,
        bids=tuple(standings),
        ours=_ours(base),
    )
    made = replace(
        made,
        bids=tuple(
            replace(one, unbalanced=unbalanced(made, at)) for at, one in enumerate(standings)
        ),
        notices=comparing_notices(made),
        within_funds=_within_funds(made),
    )
    return replace(
        made,
        bids=tuple(replace(one, questions=questions(made, at)) for at, one in enumerate(made.bids)),
    )


def priced_form(base: Base, bid: Bid) -> BidForm:
    """The form that the bidder filled in: an earlier one, or the base's."""
    return base.earlier.get(bid.form_id, base.form)


def _figure(base: Base, bid: Bid, line: BidLine) -> Figure:
    return figure_of(line, bid.entries_of(line.item_id), priced_form(base, bid).line(line.item_id))


def _line(base: Base, bids: Sequence[Bid], line: BidLine, figures: Sequence[Figure]) -> LevelLine:
    ours = base.ours.get(line.item_id)
    cells = []
    for at, (bid, figure) in enumerate(zip(bids, figures, strict=True)):
        if figure.counted is not None:
            cells.append(Cell(figure.counted, figure.how, figure, _told(figure, line)))
            continue
        others = [x.counted for i, x in enumerate(figures) if i != at and x.counted is not None]
        was_asked = priced_form(base, bid).line(line.item_id) is not None
        cells.append(plugged(figure, others, ours, "" if was_asked else NOT_ASKED))
    return LevelLine(line, ours, _marked(cells, ours))


def _told(figure: Figure, line: BidLine) -> str:
    if figure.how is How.RESCALED and figure.own_quantity is not None:
        return f"priced for {figure.own_quantity:,g}, here for {line.quantity:,g}"
    return "" if figure.how is How.PRICED else str(figure.how)


def _marked(cells: Sequence[Cell], ours: Spread | None) -> tuple[Cell, ...]:
    """The cells with those marked that stand apart from the other bids; with fewer than three
    prices, from our range."""
    given = [at for at, cell in enumerate(cells) if cell.how.is_bid]
    found = outliers([float(cells[at].usd) for at in given], LINE_FAR)
    odd = dict(zip(given, found, strict=True))
    return tuple(
        replace(cell, apart=_apart(cell, odd.get(at), ours if len(given) < FEWEST else None))
        for at, cell in enumerate(cells)
    )


def _apart(cell: Cell, odd: Outlier | None, ours: Spread | None) -> str:
    if odd is not None:
        return odd.measure
    if ours is None or not cell.how.is_bid or ours.low <= cell.usd <= ours.high:
        return ""
    return "over our range" if cell.usd > ours.high else "under our range"


def _alternate(base: Base, bids: Sequence[Bid], one: Alternate) -> AlternateLine:
    ours = base.ours.get(one.id)
    sign = -1 if one.kind == "deduct" else 1
    amounts = [bid.alternates.get(one.id, Amount(State.MISSING)) for bid in bids]
    cells = []
    for at, amount in enumerate(amounts):
        if amount.usd is not None:
            figure = Figure(State.PRICED, How.PRICED, amount.usd, amount.usd, amount.usd)
            cells.append(Cell(sign * amount.usd, How.PRICED, figure))
            continue
        notes = (amount.text,) if amount.text else ()
        figure = Figure(amount.state, How.OPEN, notes=notes)
        others = [x.usd for i, x in enumerate(amounts) if i != at and x.usd is not None]
        cell = plugged(figure, others, ours)
        cells.append(replace(cell, usd=sign * cell.usd))
    return AlternateLine(one, ours, tuple(cells))


def _standing(
    base: Base,
    bids: Sequence[Bid],
    at: int,
    lines: Sequence[LevelLine],
    alternates: Sequence[AlternateLine],
) -> Standing:
    bid, form = bids[at], priced_form(base, bids[at])
    cells = [line.cells[at] for line in lines]
    # The bidder's own sums are checked on the form that was filled in.
    own = [figure_of(line, bid.entries_of(line.item_id)) for line in form.lines]
    added = sum((one.amount.usd or Decimal(0) for one in bid.added), Decimal(0))
    hidden = tuple(_hidden(base, bids, at))
    return Standing(
        bid=bid,
        summed=summed(own, bid, form),
        base=sum((cell.usd for cell in cells), Decimal(0)) + added + base.form.allowed,
        plugged=sum((cell.usd for cell in cells if cell.how is How.PLUGGED), Decimal(0)),
        alternates=sum((one.cells[at].usd for one in alternates), Decimal(0)),
        hidden=sum((cell.usd for cell in hidden), Decimal(0)),
        hidden_cells=hidden,
        added=bid.added,
        faults=(
            *(fault for figure in own for fault in figure.faults),
            *total_faults(own, bid, form),
        ),
        missing_trades=_missing_trades(lines, at),
        notices=tuple(_notices(base, bid)),
    )


def _hidden(base: Base, bids: Sequence[Bid], at: int) -> list[HiddenCell]:
    cells = []
    for work in base.hidden:
        prices = [bid.unit_prices.get(work.ask_id, Amount(State.MISSING)).usd for bid in bids]
        own = prices[at]
        if own is not None:
            cells.append(HiddenCell(work, own, is_own=True))
            continue
        others = [price for i, price in enumerate(prices) if i != at and price is not None]
        found = stand_in(others, work.ours)
        if found is not None:
            cells.append(HiddenCell(work, found[0], is_own=False, why=found[1]))
    return cells


def _missing_trades(lines: Sequence[LevelLine], at: int) -> tuple[str, ...]:
    """Trades of which every line was left blank or left out."""
    by_trade: dict[str, list[Cell]] = {}
    for line in lines:
        by_trade.setdefault(line.line.trade, []).append(line.cells[at])
    return tuple(
        trade
        for trade, cells in by_trade.items()
        if all(cell.figure.state in (State.MISSING, State.EXCLUDED) for cell in cells)
    )


def _notices(base: Base, bid: Bid) -> list[str]:
    form, priced = base.form, priced_form(base, bid)
    if not bid.form_id:
        return ["The file does not say which form it was filled in from."]
    if bid.form_id == form.form_id:
        return []
    if priced is form:
        return ["It was filled in on a form that this job does not know; read line by line."]
    fewer = {line.item_id for line in form.lines} - {line.item_id for line in priced.lines}
    gone = {line.item_id for line in priced.lines} - {line.item_id for line in form.lines}
    named = f"addendum {priced.addendum}" if priced.addendum else "the first form"
    told = f"It was priced on {named}, not on the latest form"
    return [f"{told}. Lines that are new since: {len(fewer)}; that are gone: {len(gone)}."]


def _ours(base: Base) -> Spread | None:
    found = [base.ours.get(line.item_id) for line in base.form.lines]
    spreads = [spread for spread in found if spread is not None]
    if not spreads or len(spreads) < len(found):
        return None
    allowed = base.form.allowed
    return Spread.total(spreads) + Spread(allowed, allowed, allowed)


def _within_funds(made: Levelled) -> WithinFunds | None:
    if made.base.funds is None or not made.bids or not made.alternates:
        return None
    return taken_in_order(
        {one.bid.bidder: one.base for one in made.bids},
        {
            one.bid.bidder: [line.cells[at].usd for line in made.alternates]
            for at, one in enumerate(made.bids)
        },
        made.base.funds,
    )
