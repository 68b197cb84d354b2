"""How one line of one bid is printed: its amount with a mark, and why in small print."""

from __future__ import annotations

from leanto.bids.figure import How
from leanto.bids.levelled import Cell
from leanto.bids.model import Amount, State
from leanto.money import Spread, format_usd

MARKS = (
    "p plugged, not the bidder's own figure",
    "i in another line of the bid",
    "c corrected: unit price times quantity",
    "s split by the bidder",
    "q priced for another quantity",
    "o nobody gives a figure",
    "! far from the median of the bids (in %, or as z), or outside our range where fewer than "
    "three have a price",
)
_MARK = {
    How.PLUGGED: "p",
    How.INCLUDED: "i",
    How.CORRECTED: "c",
    How.SPLIT: "s",
    How.RESCALED: "q",
    How.OPEN: "o",
}


def marked(cell: Cell) -> tuple[str, str]:
    """The marks of a cell, and the reasons for them."""
    mark = _MARK.get(cell.how, "") + ("!" if cell.apart else "")
    reasons = [cell.why, cell.apart]
    if cell.how is How.CORRECTED and cell.figure.written is not None:
        reasons[0] = f"given as {format_usd(cell.figure.written)}"
    elif cell.how is How.FROM_UNIT:
        reasons[0] = ""
    return mark, "; ".join(reason for reason in reasons if reason)


def span_in_words(spread: Spread | None) -> str:
    """``$1,200\\n$900 to $1,600``; empty for none."""
    if spread is None:
        return ""
    low, likely, high = (format_usd(x) for x in (spread.low, spread.likely, spread.high))
    return likely if low == high else f"{likely}\n{low} to {high}"


def amount_in_words(amount: Amount) -> str:
    """The figure, or what stands in its place."""
    if amount.usd is not None:
        return format_usd(amount.usd)
    word = {State.MISSING: "no amount", State.INCLUDED: "included", State.EXCLUDED: "left out"}
    return word.get(amount.state, f"not read: {amount.text}")
