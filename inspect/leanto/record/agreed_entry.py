"""What can be recorded once a bid is chosen: what was agreed, what was paid, what was opened."""

from __future__ import annotations

from datetime import date, datetime
from decimal import Decimal
from typing import Annotated, Literal

from pydantic import Field, FiniteFloat, model_validator

from leanto.record.bid_entry import Bidder, Digest, FieldName, FieldText, FileName, Words
from leanto.record.observation import Photo
from leanto.strict import Strict

Dollars = Annotated[Decimal, Field(max_digits=12)]
Count = Annotated[int, Field(ge=1, le=9_999)]
"""Numbers of openings, changes and payments: 1, 2, 3 ... in the order they were made."""
MoreThanZero = Annotated[FiniteFloat, Field(gt=0, le=1_000_000)]
Remark = Annotated[str, Field(max_length=500)]
LineKind = Literal["line", "alternate", "allowance", "added", "difference", "by owner"]
FoundKind = Literal["rot", "wet", "mold", "pests", "wiring", "cut or missing framing", "other"]


class AgreedLine(Strict):
    """One line of the baseline, frozen when the bid was chosen."""

    number: Annotated[str, Field(max_length=12)]
    """As payments name it: ``7``; ``A1`` an alternate, ``S1`` a stated sum, ``X1`` an added one."""
    kind: LineKind
    id: FieldName
    title: Words
    place: Words = ""
    trade: Words = ""
    quantity: FiniteFloat = 1.0
    unit: Words = ""
    usd: Dollars
    """What was agreed; 0 where the bid has no price of its own."""
    ours_usd: Dollars | None = None
    """Our likely allowance on that day."""
    said: Words = ""
    """Why there is no price, such as ``left blank``."""


class AgreedRate(Strict):
    """A unit price that was agreed for what may be found."""

    id: FieldName
    title: Words
    unit: Words
    usd: Dollars


class KeptPicture(Strict):
    digest: Digest
    """SHA-256 of ``photos/<digest>.jpg``."""
    original_name: FileName = ""
    taken_at: datetime | None = None

    @property
    def photo(self) -> Photo:
        return Photo(self.digest, self.original_name, self.taken_at)


class AfterBids(Strict):
    """What is entered after the bids are in; nothing of it changes what the walk says."""


class BidAwarded(AfterBids):
    """This bid was chosen; its figures and ours are frozen as the baseline."""

    kind: Literal["bid awarded"] = "bid awarded"
    digest: Digest
    bidder: Bidder
    form_id: Annotated[str, Field(max_length=32)]
    lines: tuple[AgreedLine, ...]
    rates: tuple[AgreedRate, ...] = ()
    contingency_usd: Dollars
    budget_usd: Dollars | None = None
    reason: Remark = ""
    awarded_on: date


class Paid(AfterBids):
    """Money that went out, or came back where it is below zero."""

    kind: Literal["paid"] = "paid"
    number: Count
    line: Annotated[str, Field(max_length=12)]
    """The number of an agreed line, ``C1`` a change, or ``all`` for the contract as a whole."""
    usd: Dollars
    paid_on: date
    note: Remark = ""
    receipt: KeptPicture | None = None


class PaymentStruck(AfterBids):
    """A payment that was entered by mistake; it counts no more."""

    kind: Literal["payment struck"] = "payment struck"
    number: Count


class FoundWork(Strict):
    """Work that an opening calls for; below zero where it is less than the scope has."""

    work: FieldName
    quantity: FiniteFloat

    @model_validator(mode="after")
    def _some(self) -> FoundWork:
        if not 0 < abs(self.quantity) <= 1_000_000:
            raise ValueError("a quantity is needed that is not zero")
        return self


class Opened(AfterBids):
    """What an opened wall, ceiling or floor showed."""

    kind: Literal["opened"] = "opened"
    number: Count
    surface_id: str
    opened_sqft: MoreThanZero
    bad_sqft: Annotated[FiniteFloat, Field(ge=0)]
    """What is bad beyond the zones that the scope has already."""
    found: tuple[FoundKind, ...] = ()
    works: tuple[FoundWork, ...] = ()
    """Empty where the repair of ``bad_sqft`` is all."""
    note: FieldText = ""
    """Goes to the contractor with the change."""
    pictures: tuple[KeptPicture, ...] = ()
    opened_on: date


class OpeningStruck(AfterBids):
    """An opening that was entered by mistake; it counts no more."""

    kind: Literal["opening struck"] = "opening struck"
    number: Count


def pictures_of(body: object) -> tuple[KeptPicture, ...]:
    """The pictures that an entry of this file brought into the job."""
    match body:
        case Opened(pictures=pictures):
            return pictures
        case Paid(receipt=KeptPicture() as receipt):
            return (receipt,)
    return ()


class AskedLine(Strict):
    """One line of a change-order request, frozen when it was written."""

    opening: Count
    work: FieldName
    title: Words
    place: Words
    quantity: FiniteFloat
    unit: Words
    rate_usd: Dollars
    basis: Literal["agreed unit price", "price of the bid", "ours"]
    said: Words = ""
    """Where the price comes from, in words."""


class ChangeAsked(AfterBids):
    """A change-order request was written for these openings."""

    kind: Literal["change asked"] = "change asked"
    number: Count
    lines: Annotated[tuple[AskedLine, ...], Field(min_length=1)]
    asked_on: date


class ChangeSettled(AfterBids):
    """What both agreed on for a change; 0 where nothing is to be done, None takes it back."""

    kind: Literal["change settled"] = "change settled"
    number: Count
    usd: Dollars | None
    settled_on: date
