"""The bid form that goes out, and a bid as it came back. Plain values."""

from __future__ import annotations

from dataclasses import dataclass, field
from datetime import date
from decimal import Decimal
from enum import StrEnum
from typing import Literal

from leanto.scope.work import Trade


@dataclass(frozen=True, slots=True)
class BidLine:
    """One line of the base bid."""

    item_id: str
    """The repair item's id: what a bidder's price is matched by."""
    line: int
    """The number that is printed."""
    title: str
    place: str
    trade: Trade
    element: str
    """UNIFORMAT II group."""
    quantity: float
    unit: str
    """As printed, such as ``sq ft``."""


@dataclass(frozen=True, slots=True)
class UnitPriceAsk:
    """A unit price for work that may be found behind what is closed now."""

    id: str
    """The work's id, or ``hour-<trade>``."""
    title: str
    unit: str


@dataclass(frozen=True, slots=True)
class Alternate:
    """Work that is priced apart and may be taken or left."""

    id: str
    title: str
    text: str
    kind: Literal["add", "deduct"] = "add"


@dataclass(frozen=True, slots=True)
class Allowance:
    """A sum that every bidder carries alike."""

    id: str
    title: str
    amount: Decimal


@dataclass(frozen=True, slots=True)
class BidForm:
    """What every bidder prices; it holds no figure of ours but stated allowances."""

    job_id: str
    form_id: str
    """Short hash of what is priced: another scope or another job gives another one."""
    addendum: int
    """0 for the form that went out first."""
    lines: tuple[BidLine, ...]
    unit_prices: tuple[UnitPriceAsk, ...] = ()
    alternates: tuple[Alternate, ...] = ()
    allowances: tuple[Allowance, ...] = ()
    made_on: date | None = None

    def line(self, item_id: str) -> BidLine | None:
        return next((line for line in self.lines if line.item_id == item_id), None)

    @property
    def allowed(self) -> Decimal:
        """The sum of the stated allowances; part of every total."""
        return sum((one.amount for one in self.allowances), Decimal(0))


class State(StrEnum):
    """What a bidder did with a line."""

    PRICED = "priced"
    MISSING = "missing"
    """Left blank: it is not zero."""
    INCLUDED = "included"
    """In another line; costs nothing on its own."""
    EXCLUDED = "excluded"
    """Not in the bid: by others, not in contract, none."""
    UNREAD = "unread"
    """Something stands there that could not be read; it is asked about."""


@dataclass(frozen=True, slots=True)
class Amount:
    """An amount as a bidder gave it, or why there is none."""

    state: State
    usd: Decimal | None = None
    """Given for ``priced`` alone."""
    text: str = ""
    """As it was written."""

    def __post_init__(self) -> None:
        if (self.usd is None) == (self.state is State.PRICED):
            raise ValueError("an amount has a figure where it is priced, and only there")

    @classmethod
    def of(cls, usd: Decimal | int | str, text: str = "") -> Amount:
        return cls(State.PRICED, Decimal(usd), text)


MISSING = Amount(State.MISSING)


@dataclass(frozen=True, slots=True)
class BidEntry:
    """What stands in one line of a bid."""

    item_id: str
    amount: Amount = MISSING
    unit_price: Amount = MISSING
    quantity: float | None = None
    """The bidder's own; None where ours was left."""
    note: str = ""


@dataclass(frozen=True, slots=True)
class AddedLine:
    """A line that is not on the form."""

    text: str
    amount: Amount


@dataclass(frozen=True, slots=True)
class Unread:
    """Something in a returned file that is kept as it stands and asked about."""

    field: str
    """The field it stands in, such as ``amount|<item id>``."""
    text: str
    """As it was written."""
    why: str
    """One sentence."""
    shown: str = ""
    """The field as people read and type it, such as ``amount|12``."""


@dataclass(frozen=True, slots=True)
class Bid:
    """One contractor's priced return."""

    bidder: str
    form_id: str
    addendum: int
    entries: tuple[BidEntry, ...]
    """In the order of the file; a line that the bidder split stands here more than once."""
    unit_prices: dict[str, Amount] = field(default_factory=dict)
    """By the id of the unit price asked for."""
    alternates: dict[str, Amount] = field(default_factory=dict)
    """By the id of the alternate; positive amounts, whether it adds or deducts."""
    allowances: dict[str, Amount] = field(default_factory=dict)
    """Carried by the bidder, by the id of the allowance; empty where the stated ones were left."""
    added: tuple[AddedLine, ...] = ()
    exclusions: tuple[str, ...] = ()
    qualifications: tuple[str, ...] = ()
    stated_total: Amount = MISSING
    """The base bid as the bidder added it up."""
    validity_days: int | None = None
    start: str = ""
    duration: str = ""
    dated: date | None = None
    """The day it was added to the job."""
    file_name: str = ""
    unread: tuple[Unread, ...] = ()

    def entries_of(self, item_id: str) -> tuple[BidEntry, ...]:
        return tuple(entry for entry in self.entries if entry.item_id == item_id)
