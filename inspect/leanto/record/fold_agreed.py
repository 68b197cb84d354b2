"""Entries made after the bids were in -> what was agreed, paid and opened, as it stands now."""

from __future__ import annotations

from dataclasses import dataclass, field, replace
from typing import TypeVar

from leanto.record.agreed_entry import (
    AfterBids,
    BidAwarded,
    ChangeAsked,
    ChangeSettled,
    Opened,
    OpeningStruck,
    Paid,
    PaymentStruck,
)
from leanto.record.kept_change import KeptChange

_Kept = TypeVar("_Kept")


@dataclass(frozen=True, slots=True)
class Agreed:
    award: BidAwarded | None = None
    payments: dict[int, Paid] = field(default_factory=dict)
    openings: dict[int, Opened] = field(default_factory=dict)
    changes: dict[int, KeptChange] = field(default_factory=dict)

    def after(self, body: AfterBids) -> Agreed:
        """With one more entry; one about something that is gone changes nothing."""
        match body:
            case BidAwarded():
                return replace(self, award=body)
            case Paid(number=number):
                return replace(self, payments={**self.payments, number: body})
            case PaymentStruck(number=number):
                return replace(self, payments=_without(self.payments, number))
            case Opened(number=number):
                return replace(self, openings={**self.openings, number: body})
            case OpeningStruck(number=number):
                return replace(self, openings=_without(self.openings, number))
            case ChangeAsked(number=number):
                asked = KeptChange(number, body.lines, body.asked_on)
                return replace(self, changes={**self.changes, number: asked})
            case ChangeSettled(number=number) if number in self.changes:
                held = self.changes[number]
                on = None if body.usd is None else body.settled_on
                settled = replace(held, settled_usd=body.usd, settled_on=on)
                return replace(self, changes={**self.changes, number: settled})
        return self


def _without(held: dict[int, _Kept], number: int) -> dict[int, _Kept]:
    return {key: one for key, one in held.items() if key != number}
