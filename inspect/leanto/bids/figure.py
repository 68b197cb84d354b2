"""What one bid says about one line, with its arithmetic checked."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from decimal import Decimal
from enum import StrEnum

from leanto.bids.model import BidEntry, BidLine, State
from leanto.money import exact

_ROUNDING = Decimal("0.51")
"""Amounts may be rounded to whole dollars."""
_HALF_CENT = Decimal("0.005")


class How(StrEnum):
    """How a figure in the levelled table came about."""

    PRICED = "priced"
    FROM_UNIT = "unit price times quantity; no amount was given"
    CORRECTED = "unit price times quantity; the amount given differs"
    SPLIT = "several parts added up"
    RESCALED = "priced for another quantity"
    INCLUDED = "in another line"
    PLUGGED = "plugged"
    OPEN = "no figure to plug"

    @property
    def is_bid(self) -> bool:
        """True for a price by the bidder on this line."""
        return self not in (How.INCLUDED, How.PLUGGED, How.OPEN)


@dataclass(frozen=True, slots=True)
class SumFault:
    """Two figures that should be the same."""

    where: str
    """``Line 4`` or ``Total``."""
    stated: Decimal
    computed: Decimal
    text: str
    """How the second one comes about."""


@dataclass(frozen=True, slots=True)
class Figure:
    """One line of one bid before anything is plugged."""

    state: State
    how: How
    written: Decimal | None = None
    """As the bidder wrote it; unit price times quantity where no amount was given."""
    own: Decimal | None = None
    """The same with extensions corrected, at the bidder's quantity."""
    counted: Decimal | None = None
    """At the quantity of the base that all are compared on."""
    faults: tuple[SumFault, ...] = ()
    notes: tuple[str, ...] = ()
    """Notes, and words that stood in place of an amount."""
    own_quantity: float | None = None


def figure_of(base: BidLine, entries: Sequence[BidEntry], priced: BidLine | None = None) -> Figure:
    """The figure for a line of the base, from what the bid says about it.

    ``priced`` is the line as it stood on the form that the bidder filled in, where that is another
    one. A unit price goes before its extension.
    """
    line = priced or base
    parts = [_part(line, entry, base) for entry in entries]
    given = [part for part in parts if part.counted is not None]
    notes = tuple(note for part in parts for note in part.notes)
    if not given:
        states = [part.state for part in parts]
        order = (State.UNREAD, State.INCLUDED, State.EXCLUDED)
        state = next((one for one in order if one in states), State.MISSING)
        how = How.INCLUDED if state is State.INCLUDED else How.OPEN
        return Figure(state, how, notes=notes)
    if len(parts) == 1:
        return given[0]
    return Figure(
        state=State.PRICED,
        how=How.SPLIT,
        written=sum((part.written or Decimal(0) for part in given), Decimal(0)),
        own=sum((part.own or Decimal(0) for part in given), Decimal(0)),
        counted=sum((part.own or Decimal(0) for part in given), Decimal(0))
        * _scale(base.quantity, line.quantity),
        faults=tuple(fault for part in given for fault in part.faults),
        notes=notes,
    )


def _part(line: BidLine, entry: BidEntry, base: BidLine) -> Figure:
    quantity = line.quantity if entry.quantity is None else entry.quantity
    unit, amount = entry.unit_price.usd, entry.amount.usd
    said = entry.amount.text if amount is None else ""
    notes = tuple(note for note in (entry.note, said) if note)
    if unit is None and amount is None:
        return Figure(entry.amount.state, How.OPEN, notes=notes)
    extended = None if unit is None else unit * exact(quantity)
    faults: tuple[SumFault, ...] = ()
    how = How.PRICED if amount is not None else How.FROM_UNIT
    written = amount if amount is not None else extended
    own = written
    if extended is not None and amount is not None and not _same(extended, amount, quantity):
        text = f"{unit:,f} times {quantity:,g}"
        faults = (SumFault(f"Line {base.line}", amount, extended, text),)
        how, own = How.CORRECTED, extended
    assert own is not None
    counted = own * _scale(base.quantity, quantity)
    if quantity != base.quantity:
        how = How.RESCALED
    return Figure(
        state=State.PRICED,
        how=how,
        written=written,
        own=own,
        counted=counted,
        faults=faults,
        notes=notes,
        own_quantity=quantity if quantity != base.quantity else None,
    )


def _same(extended: Decimal, amount: Decimal, quantity: float) -> bool:
    """Alike but for rounding of the unit price to cents or of the amount to dollars."""
    return abs(extended - amount) <= max(_ROUNDING, _HALF_CENT * exact(quantity) + _HALF_CENT)


def _scale(wanted: float, given: float) -> Decimal:
    return exact(wanted) / exact(given) if given > 0 else Decimal(1)
