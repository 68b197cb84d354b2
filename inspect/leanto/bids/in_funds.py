"""Alternates taken in the order they are listed, as far as the money goes."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from decimal import Decimal


@dataclass(frozen=True, slots=True)
class WithinFunds:
    taken: tuple[int, ...]
    """Places of the alternates that fit, from 0."""
    totals: Mapping[str, Decimal]
    """Base and taken alternates, by bidder."""


def taken_in_order(
    bases: Mapping[str, Decimal],
    alternates: Mapping[str, Sequence[Decimal]],
    funds: Decimal,
) -> WithinFunds | None:
    """All bids on the same alternates: each is taken, in order, if a bid stays within the funds.

    One that does not fit is passed over, and the next is tried. None where not even a base bid
    is within the funds. After 48 CFR 252.236-7007 (additive or deductive items).
    """
    totals = dict(bases)
    if not totals or min(totals.values()) > funds:
        return None
    taken = []
    for at in range(min(len(amounts) for amounts in alternates.values())):
        longer = {bidder: total + alternates[bidder][at] for bidder, total in totals.items()}
        if min(longer.values()) <= funds:
            taken.append(at)
            totals = longer
    return WithinFunds(tuple(taken), totals)
