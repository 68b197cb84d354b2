"""A bid added up again."""

from __future__ import annotations

from collections.abc import Sequence
from decimal import Decimal

from leanto.bids.figure import Figure, SumFault
from leanto.bids.model import Bid, BidForm

_LEAST = Decimal(1)


def summed(figures: Sequence[Figure], bid: Bid, form: BidForm) -> Decimal:
    """The base bid from corrected lines, added lines and the allowances that the bidder carries."""
    own = sum((figure.own or Decimal(0) for figure in figures), Decimal(0))
    return own + _added(bid) + _allowed(bid, form)


def total_faults(figures: Sequence[Figure], bid: Bid, form: BidForm) -> tuple[SumFault, ...]:
    """A fault where the stated total is not the sum of the amounts as written.

    A total that leaves out the stated allowances or the added lines is told as that.
    """
    stated = bid.stated_total.usd
    if stated is None:
        return ()
    lines = sum((figure.written or Decimal(0) for figure in figures), Decimal(0))
    added, allowed = _added(bid), _allowed(bid, form)
    total = lines + added + allowed
    if abs(stated - total) <= _LEAST:
        return ()
    short = (
        (allowed, "the stated total leaves out the allowances"),
        (added, "the stated total leaves out the added lines"),
        (added + allowed, "the stated total leaves out added lines and allowances"),
    )
    out = (text for left, text in short if left and abs(stated - (total - left)) <= _LEAST)
    said = next(out, "")
    text = "its amounts added up" + (f"; {said}" if said else "")
    return (SumFault("Total", stated, total, text),)


def _added(bid: Bid) -> Decimal:
    return sum((one.amount.usd or Decimal(0) for one in bid.added), Decimal(0))


def _allowed(bid: Bid, form: BidForm) -> Decimal:
    """The stated allowances, or the bidder's own where other sums were carried."""
    carried = (bid.allowances.get(one.id) for one in form.allowances)
    return sum(
        (
            own.usd if own is not None and own.usd is not None else one.amount
            for own, one in zip(carried, form.allowances, strict=True)
        ),
        Decimal(0),
    )
