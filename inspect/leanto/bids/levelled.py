"""Bids on one base, side by side. No score, no rank: the owner chooses."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field
from decimal import Decimal

from leanto.bids.figure import Figure, How, SumFault
from leanto.bids.hidden_work import HiddenWork
from leanto.bids.in_funds import WithinFunds
from leanto.bids.model import AddedLine, Alternate, Bid, BidForm, BidLine
from leanto.money import Spread
from leanto.scope.work import Phase


@dataclass(frozen=True, slots=True)
class Base:
    """What all bids are compared on."""

    form: BidForm
    """The lines and quantities that count."""
    ours: Mapping[str, Spread] = field(default_factory=dict)
    """Our allowances, by the id of a line or an alternate; they leave this program with nobody."""
    phases: Mapping[str, Phase] = field(default_factory=dict)
    """By the id of a line: when its money is due."""
    hidden: tuple[HiddenWork, ...] = ()
    earlier: Mapping[str, BidForm] = field(default_factory=dict)
    """Forms sent before, by their id."""
    funds: Decimal | None = None
    """The owner's budget, where one was given."""


@dataclass(frozen=True, slots=True)
class Cell:
    """One line of one bid on the common base."""

    usd: Decimal
    """What counts in the levelled total."""
    how: How
    figure: Figure
    why: str = ""
    """Where a plug comes from, or what a mark stands for."""
    apart: str = ""
    """Why it stands apart from the others; empty where it does not."""


@dataclass(frozen=True, slots=True)
class LevelLine:
    line: BidLine
    ours: Spread | None
    cells: tuple[Cell, ...]
    """One a bid, in the order of the bids."""


@dataclass(frozen=True, slots=True)
class AlternateLine:
    alternate: Alternate
    ours: Spread | None
    cells: tuple[Cell, ...]
    """Positive for what is added, negative for what is deducted."""


@dataclass(frozen=True, slots=True)
class HiddenCell:
    """Expected hidden work at one bidder's unit price."""

    work: HiddenWork
    unit_usd: Decimal
    is_own: bool
    """False where the bidder gave none and ``why`` says what stands in."""
    why: str = ""

    @property
    def usd(self) -> Decimal:
        return self.unit_usd * Decimal(str(self.work.quantity))


@dataclass(frozen=True, slots=True)
class Standing:
    """One bid on the common base."""

    bid: Bid
    summed: Decimal
    """The bidder's own base bid, added up again from corrected lines, added ones and allowances."""
    base: Decimal
    """Levelled: every line counted, what is missing plugged."""
    plugged: Decimal
    """Of the levelled total, what is not the bidder's own figure."""
    alternates: Decimal
    hidden: Decimal
    hidden_cells: tuple[HiddenCell, ...]
    added: tuple[AddedLine, ...]
    faults: tuple[SumFault, ...]
    missing_trades: tuple[str, ...]
    """Trades of which no line has a price."""
    notices: tuple[str, ...] = ()
    apart: str = ""
    """Why its levelled total stands apart from the others."""
    unbalanced: tuple[str, ...] = ()
    questions: tuple[str, ...] = ()

    @property
    def with_alternates(self) -> Decimal:
        return self.base + self.alternates

    @property
    def with_hidden(self) -> Decimal:
        return self.base + self.hidden

    @property
    def with_both(self) -> Decimal:
        return self.base + self.alternates + self.hidden


@dataclass(frozen=True, slots=True)
class Levelled:
    base: Base
    lines: tuple[LevelLine, ...]
    alternates: tuple[AlternateLine, ...]
    bids: tuple[Standing, ...]
    """In the order they were added."""
    ours: Spread | None
    """Our allowance for the lines of the base and the stated allowances; None where a line has
    none."""
    notices: tuple[str, ...] = ()
    """What holds for the bids together."""
    within_funds: WithinFunds | None = None
