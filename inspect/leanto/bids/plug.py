"""What stands in where a bid has no figure: the median of the others, else our likely one."""

from __future__ import annotations

from collections.abc import Iterable
from decimal import Decimal
from statistics import median

from leanto.bids.figure import Figure, How
from leanto.bids.levelled import Cell
from leanto.bids.model import State
from leanto.money import Spread, dollars

_WHY_NONE = {
    State.MISSING: "left blank",
    State.EXCLUDED: "left out by the bidder",
    State.UNREAD: "could not be read",
}


def middle_of(amounts: Iterable[Decimal]) -> Decimal | None:
    """The median, or None of nothing."""
    given = list(amounts)
    return median(given) if given else None


def stand_in(others: Iterable[Decimal], ours: Spread | None) -> tuple[Decimal, str] | None:
    """The figure that stands in and where it comes from; None where there is none at all."""
    given = list(others)
    if given:
        source = "the one other bid" if len(given) == 1 else f"median of {len(given)} other bids"
        return dollars(median(given)), source
    return None if ours is None else (dollars(ours.likely), "our likely figure")


def plugged(figure: Figure, others: Iterable[Decimal], ours: Spread | None, why: str = "") -> Cell:
    """The cell of a line that the bid has no price for; what is in another line costs nothing."""
    if figure.state is State.INCLUDED:
        return Cell(Decimal(0), How.INCLUDED, figure, "in another line")
    reason = why or _WHY_NONE[figure.state]
    found = stand_in(others, ours)
    if found is None:
        return Cell(Decimal(0), How.OPEN, figure, f"{reason}; nobody gives a figure")
    return Cell(found[0], How.PLUGGED, figure, f"{reason}; {found[1]}")
