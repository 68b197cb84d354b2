"""Everything that a front end does once a bid is chosen: the baseline, payments, the one view."""

from __future__ import annotations

from collections.abc import Sequence
from datetime import date
from decimal import Decimal
from pathlib import Path
from typing import TYPE_CHECKING

from leanto.assessment import Assessment, with_money
from leanto.bids.quantity import bid_quantity
from leanto.bids.short_id import alternate_number
from leanto.contract.baseline import agreed_lines, agreed_rates
from leanto.contract.spending import WHOLE, Spending, spending
from leanto.errors import JobError, LeantoError
from leanto.money import dollars, exact
from leanto.record.agreed_entry import AgreedLine, BidAwarded, KeptPicture, Paid, PaymentStruck
from leanto.record.journal import Journal
from leanto.record.photos import import_photo

if TYPE_CHECKING:
    from leanto.bids.levelled import Levelled
    from leanto.job.job import Job
    from leanto.reports.blocks import Report
    from leanto.reports.written import WrittenReport

MOST_USD = Decimal(10_000_000)


class JobContract:
    """The chosen bid of one open job, and what was paid."""

    def __init__(self, job: Job, journal: Journal) -> None:
        self._job = job
        self._journal = journal

    @property
    def award(self) -> BidAwarded | None:
        """The bid that was chosen last; None before."""
        return self._job.walk.award

    def choose(
        self,
        bidder: str,
        *,
        alternates: Sequence[str] = (),
        agreed_usd: Decimal | None = None,
        contingency_usd: Decimal | None = None,
        reason: str = "",
    ) -> BidAwarded:
        """The baseline, recorded: this bid's own figures, and ours as they are today.

        ``alternates`` are numbers such as ``A1``; ``agreed_usd`` is the sum both shook hands on,
        where it is another one than comes out; ``contingency_usd`` is ours by default. Raises
        LeantoError for what the bid does not hold, and ReadOnlyJob.
        """
        self._journal.refuse_if_read_only()
        made = self._job.bids.table()
        at = _place_of(made, bidder)
        taken = [_alternate(made, at, number) for number in alternates]
        assessment = self._job.assess()
        if contingency_usd is None:
            money = with_money(assessment).money
            contingency_usd = Decimal(round(money.contingency_usd)) if money else Decimal(0)
        for amount in (agreed_usd, contingency_usd):
            _check_amount(amount)
        budget = assessment.building.budget_usd
        chosen = made.bids[at].bid
        body = BidAwarded(
            digest=list(self._job.walk.bids)[at],
            bidder=chosen.bidder,
            form_id=made.base.form.form_id,
            lines=(*agreed_lines(made, at, taken, agreed_usd), *_own_lines(assessment)),
            rates=agreed_rates(made, at),
            contingency_usd=contingency_usd,
            budget_usd=None if budget is None else dollars(exact(budget)),
            reason=reason.strip(),
            awarded_on=self._today(),
        )
        self._journal.append(body)
        return body

    def pay(
        self,
        line: str,
        usd: Decimal,
        *,
        paid_on: date | None = None,
        note: str = "",
        receipt: Path | None = None,
    ) -> Paid:
        """The payment, recorded with a copy of its receipt's picture.

        ``line`` is a number of the view, such as ``7``, ``A1``, ``C1`` or ``all``; an amount
        below zero is money that came back. Raises LeantoError for a line that is not there or a
        picture that is none, and ReadOnlyJob.
        """
        self._journal.refuse_if_read_only()
        view = self.view()
        number = self._payable(line, view)
        _check_amount(usd, below_zero=True)
        if not usd:
            raise LeantoError("A payment of nothing is none.", "Give the amount.")
        kept = None
        if receipt is not None:
            photo = import_photo(receipt, self._job.places.photos)
            kept = KeptPicture(
                digest=photo.digest, original_name=photo.original_name, taken_at=photo.taken_at
            )
        body = Paid(
            number=self._next_payment(),
            line=number,
            usd=dollars(usd),
            paid_on=paid_on or self._today(),
            note=note.strip(),
            receipt=kept,
        )
        self._journal.append(body)
        return body

    def strike_payment(self, number: int) -> Paid:
        """Takes a payment out that was entered by mistake; its entry stays in the record."""
        self._journal.refuse_if_read_only()
        held = self._job.walk.payments.get(number)
        if held is None:
            raise LeantoError(f"There is no payment {number}.", "leanto bids costs JOB lists them.")
        self._journal.append(PaymentStruck(number=number))
        return held

    def view(self) -> Spending:
        """Budget, committed, paid and to go. Raises JobError before a bid was chosen."""
        award = self.chosen()
        walk = self._job.walk
        return spending(award, walk.payments.values(), walk.changes)

    def chosen(self) -> BidAwarded:
        """The baseline; JobError before a bid was chosen."""
        award = self.award
        if award is None:
            raise JobError("No bid was chosen yet.", "leanto bids award JOB BIDDER")
        return award

    def report(self) -> Report:
        """The view with the payments, as a report."""
        from leanto.reports.contents.costs import costs_report

        walk = self._job.walk
        building = self._job.assess().building
        payments = tuple(walk.payments.values())
        return costs_report(self.chosen(), self.view(), payments, building, self._today())

    def write(self, path: Path | None = None) -> WrittenReport:
        """The view as PDF, receipts included, at ``path`` or in the job's reports."""
        from leanto.reports.pdf import write_pdf

        target = path or self._job.places.reports / "costs.pdf"
        return write_pdf(self.report(), target, self._job.photo_path)

    def _payable(self, line: str, view: Spending) -> str:
        wanted = line.strip().upper().removeprefix("LINE ").strip()
        if wanted.lower() == WHOLE:
            return WHOLE
        known = [row.number for row in view.rows if row.number != WHOLE]
        if wanted not in known:
            raise LeantoError(
                f"There is no line {line.strip()} to pay.",
                f"Lines: {', '.join(known)}; or all for the contract as a whole.",
            )
        return wanted

    def _next_payment(self) -> int:
        numbers = (e.body.number for e in self._job.entries if isinstance(e.body, Paid))
        return max(numbers, default=0) + 1

    def _today(self) -> date:
        return self._journal.now().astimezone().date()


def _place_of(made: Levelled, bidder: str) -> int:
    wanted = " ".join(bidder.casefold().split())
    names = [one.bid.bidder for one in made.bids]
    same = [" ".join(name.casefold().split()) for name in names]
    found = [at for at, name in enumerate(same) if name == wanted]
    found = found or [at for at, name in enumerate(same) if wanted and wanted in name]
    if len(found) != 1:
        said = "There is no bid" if not found else "There is more than one bid"
        raise LeantoError(f"{said} of {bidder}.", f"Bids: {'; '.join(names)}.")
    return found[0]


def _alternate(made: Levelled, at: int, number: str) -> str:
    wanted = number.strip().upper()
    known = {alternate_number(index): line for index, line in enumerate(made.alternates)}
    if wanted not in known:
        listed = "; ".join(f"{key} {line.alternate.title}" for key, line in known.items())
        raise LeantoError(f"There is no alternate {number}.", f"Alternates: {listed or 'none'}.")
    if not known[wanted].cells[at].how.is_bid:
        raise LeantoError(
            f"Alternate {wanted} has no price in this bid.",
            "Ask for it, add the answer, and choose again.",
        )
    return wanted


def _own_lines(assessment: Assessment) -> tuple[AgreedLine, ...]:
    from leanto.reports.contents.numbering import numbering

    numbers = numbering(assessment).items
    ours = {line.item.id: line.total.likely for line in assessment.estimate.lines}
    return tuple(
        AgreedLine(
            number=f"O{numbers[item.id]}",
            kind="by owner",
            id=item.id,
            title=item.work.title,
            place=item.place,
            trade=item.work.trade,
            quantity=bid_quantity(item),
            unit=item.work.unit.label,
            usd=Decimal(0),
            ours_usd=dollars(ours[item.id]) if item.id in ours else None,
        )
        for item in assessment.scope.by_owner
    )


def _check_amount(usd: Decimal | None, below_zero: bool = False) -> None:
    if usd is None:
        return
    if (usd < 0 and not below_zero) or abs(usd) > MOST_USD:
        raise LeantoError(f"{usd:,f} is no such amount.", f"From 0 to {MOST_USD:,} is possible.")
