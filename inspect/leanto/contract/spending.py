"""Budget, committed, paid and to go, line by line and together. No bookkeeping."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from decimal import Decimal

from leanto.contract.baseline import total_of
from leanto.contract.pricing import amount_of
from leanto.record.agreed_entry import AgreedLine, BidAwarded, Paid
from leanto.record.kept_change import KeptChange

WHOLE = "all"
"""What a payment is for that belongs to no line: a deposit, a step of the contract."""


@dataclass(frozen=True, slots=True)
class SpendingRow:
    number: str
    title: str
    place: str
    planned: Decimal | None
    """Our likely allowance on the day of the choice; None where we had none."""
    committed: Decimal
    paid: Decimal
    said: str = ""
    is_own: bool = False
    """The owner's own work: nothing is committed, what is planned is to go."""

    @property
    def to_go(self) -> Decimal:
        """What is still owed; below zero where more was paid than agreed."""
        due = (self.planned or Decimal(0)) if self.is_own else self.committed
        left = due - self.paid
        return max(left, Decimal(0)) if self.is_own else left


@dataclass(frozen=True, slots=True)
class Spending:
    """One view of the money after the choice."""

    rows: tuple[SpendingRow, ...]
    """Lines in the order of the form, then changes, then payments on the contract as a whole."""
    budget: Decimal | None
    contract: Decimal
    """The agreed sum."""
    agreed_changes: Decimal
    asked_changes: Decimal
    """Written and not settled yet."""
    paid: Decimal
    own_to_go: Decimal
    contingency: Decimal

    @property
    def committed(self) -> Decimal:
        return self.contract + self.agreed_changes

    @property
    def to_go(self) -> Decimal:
        """Still to be paid: contract and agreed changes, and the owner's own lines."""
        return sum((row.to_go for row in self.rows), Decimal(0))

    @property
    def contingency_left(self) -> Decimal:
        """After what was agreed; below zero where it did not suffice."""
        return self.contingency - self.agreed_changes

    @property
    def contingency_free(self) -> Decimal:
        """After what was asked for too."""
        return self.contingency_left - self.asked_changes

    @property
    def budget_left(self) -> Decimal | None:
        """Once everything agreed and the owner's own lines are paid; None without a budget."""
        return None if self.budget is None else self.budget - self.paid - self.to_go


def spending(
    award: BidAwarded, payments: Iterable[Paid], changes: Mapping[int, KeptChange]
) -> Spending:
    """The view. A payment on a line that a later choice does not have stands under ``all``."""
    settled = [one for one in changes.values() if one.settled_usd is not None]
    known = {line.number for line in award.lines} | {f"C{one.number}" for one in changes.values()}
    by_line: dict[str, Decimal] = {}
    for payment in payments:
        number = payment.line if payment.line in known else WHOLE
        by_line[number] = by_line.get(number, Decimal(0)) + payment.usd
    rows = [
        *(_line(line, by_line) for line in award.lines),
        *(_change(one, by_line) for one in changes.values()),
    ]
    if WHOLE in by_line:
        rows.append(
            SpendingRow(
                WHOLE, "Contract as a whole", "", None, Decimal(0), by_line[WHOLE], "in no line"
            )
        )
    return Spending(
        rows=tuple(rows),
        budget=award.budget_usd,
        contract=total_of(award.lines),
        agreed_changes=sum((one.settled_usd or Decimal(0) for one in settled), Decimal(0)),
        asked_changes=sum(
            (asked_total(one) for one in changes.values() if one.settled_usd is None), Decimal(0)
        ),
        paid=sum(by_line.values(), Decimal(0)),
        own_to_go=sum((row.to_go for row in rows if row.is_own), Decimal(0)),
        contingency=award.contingency_usd,
    )


def asked_total(change: KeptChange) -> Decimal:
    """What a change was written for."""
    return sum((amount_of(line) for line in change.lines), Decimal(0))


def _line(line: AgreedLine, paid: Mapping[str, Decimal]) -> SpendingRow:
    is_own = line.kind == "by owner"
    return SpendingRow(
        number=line.number,
        title=line.title,
        place=line.place,
        planned=line.ours_usd,
        committed=Decimal(0) if is_own else line.usd,
        paid=paid.get(line.number, Decimal(0)),
        said="by the owner" if is_own else line.said,
        is_own=is_own,
    )


def _change(one: KeptChange, paid: Mapping[str, Decimal]) -> SpendingRow:
    number = f"C{one.number}"
    if one.settled_usd is None:
        said = "asked for, not agreed yet"
    else:
        said = "agreed" if one.settled_usd else "nothing to be done"
    return SpendingRow(
        number=number,
        title=f"Change {one.number}",
        place=", ".join(dict.fromkeys(line.place for line in one.lines)),
        planned=None,
        committed=one.settled_usd or Decimal(0),
        paid=paid.get(number, Decimal(0)),
        said=said,
    )
