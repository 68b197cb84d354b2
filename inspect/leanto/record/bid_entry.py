"""What can be recorded about bids: forms that went out, bids that came back, and what was made
of fields that could not be read."""

from __future__ import annotations

from datetime import date
from decimal import Decimal
from typing import Annotated, Literal

from pydantic import Field, FiniteFloat

from leanto.strict import Strict

Digest = Annotated[str, Field(pattern=r"^[0-9a-f]{64}$")]
FileName = Annotated[str, Field(max_length=255)]
ShortId = Annotated[str, Field(pattern=r"^[0-9a-z]{6,32}$")]
FieldName = Annotated[str, Field(min_length=1, max_length=300)]
FieldText = Annotated[str, Field(max_length=5_000)]
Bidder = Annotated[str, Field(min_length=1, max_length=120)]
Words = Annotated[str, Field(max_length=600)]


class FormLine(Strict):
    item_id: FieldName
    line: int
    title: Words
    place: Words
    trade: Words
    element: Words
    quantity: FiniteFloat
    unit: Words


class FormUnitPrice(Strict):
    id: FieldName
    title: Words
    unit: Words


class FormAlternate(Strict):
    id: FieldName
    title: Words
    text: FieldText
    kind: Literal["add", "deduct"] = "add"


class FormAllowance(Strict):
    id: FieldName
    title: Words
    amount: Decimal


class SentForm(Strict):
    """A bid form as it went out, whole: bids are read by it when the scope has moved on."""

    job_id: ShortId
    form_id: ShortId
    addendum: Annotated[int, Field(ge=0, le=999)]
    lines: tuple[FormLine, ...]
    unit_prices: tuple[FormUnitPrice, ...] = ()
    alternates: tuple[FormAlternate, ...] = ()
    allowances: tuple[FormAllowance, ...] = ()
    made_on: date | None = None


class BidsSent(Strict):
    """The package for bidders was made with this form."""

    kind: Literal["bids sent"] = "bids sent"
    form: SentForm


class BidAdded(Strict):
    """A bidder's returned form, as it was typed; the file lies under its digest."""

    kind: Literal["bid added"] = "bid added"
    digest: Digest
    file_name: FileName
    bidder: Bidder
    fields: dict[FieldName, FieldText]
    """By field; see ``leanto.bids.layout``."""
    replaces: Digest | None = None
    """The earlier bid of the same bidder, where this one takes its place."""
    added_on: date | None = None


class AboutBid(Strict):
    digest: Digest


class BidAnswered(AboutBid):
    """What a field that could not be read is to mean; empty text takes the answer back."""

    kind: Literal["bid answered"] = "bid answered"
    field: FieldName
    text: FieldText


class BidWithdrawn(AboutBid):
    """The bid no longer counts; its file and its figures are kept."""

    kind: Literal["bid withdrawn"] = "bid withdrawn"
    reason: Words = ""
