"""Everything that a front end does with the bids of a job."""

from __future__ import annotations

import contextlib
import hashlib
from collections.abc import Callable, Mapping
from dataclasses import replace
from datetime import date
from pathlib import Path
from typing import TYPE_CHECKING

from pydantic import ValidationError

from leanto.bids.in_feet import bid_in_feet, form_in_feet, system_of
from leanto.bids.levelled import Levelled
from leanto.bids.levelling import level
from leanto.bids.model import Allowance, Bid, BidForm, State
from leanto.bids.reading.bid import bid_of
from leanto.bids.reading.file import ReturnedFile, read_file
from leanto.bids.reading.refusal import BidFileError
from leanto.bids.reading.returned import read_fields
from leanto.bids.short_id import with_full_ids
from leanto.errors import JobError, LeantoError, ReportError
from leanto.job.bid_base import bid_base, form_sent, sent_form
from leanto.job.bidding import read_bidding
from leanto.job.fetching import bid_file_name
from leanto.quantities import System, showing
from leanto.record.bid_entry import BidAdded, BidAnswered, BidsSent, BidWithdrawn
from leanto.record.entry import Entry
from leanto.record.journal import Journal
from leanto.record.kept_bid import KeptBid
from leanto.record.kept_file import keep_file

if TYPE_CHECKING:
    from leanto.job.job import Job
    from leanto.reports.blocks import Report
    from leanto.reports.written import WrittenReport

_ID_CHARS = 16
_MOST_FIELDS = 4_000


class JobBids:
    """The bids of one open job."""

    def __init__(self, job: Job, journal: Journal) -> None:
        self._job = job
        self._journal = journal

    @property
    def job_id(self) -> str:
        """What tells this job's forms from another's; the same after an export and an import."""
        sent = self._job.walk.forms_sent
        if sent:
            return sent[0].job_id
        first = self._job.entries[0] if self._job.entries else None
        told = f"{first.at.isoformat()} {first.body.kind}" if first else ""
        return hashlib.sha256(told.encode()).hexdigest()[:_ID_CHARS]

    @property
    def sent(self) -> tuple[BidForm, ...]:
        """Every form that went out, as it was printed, the latest last."""
        return tuple(form_sent(one) for one in self._job.walk.forms_sent)

    @property
    def form(self) -> BidForm:
        """What bids are compared on: the form sent last, else that of the scope as it is.

        In square feet and the like, whatever it was printed in.
        """
        sent = self._job.walk.forms_sent
        return form_in_feet(form_sent(sent[-1])) if sent else self.form_now(units=System.FEET)

    def form_now(
        self,
        allowances: tuple[Allowance, ...] | None = None,
        made_on: date | None = None,
        *,
        units: System | None = None,
    ) -> BidForm:
        """The form of the scope as it is now; the next addendum where it is not the one sent last.

        It is printed in ``units``, or in those of the job. Without ``allowances`` those in the
        owner's bidding file are stated.
        """
        from leanto.reports.contents.bid_form import form_of

        sent = self.sent
        last = sent[-1] if sent else None
        bidding = read_bidding(self._job.places)
        with showing(units or self._job.units):
            made = form_of(
                self._job.assess(),
                job_id=self.job_id,
                allowances=bidding.stated if allowances is None else allowances,
                made_on=made_on,
                often_found=bidding.often_found,
                hours=bidding.hours,
            )
        if last is None:
            return made
        is_same = made.form_id == last.form_id
        return replace(made, addendum=last.addendum if is_same else last.addendum + 1)

    def mark_sent(self, form: BidForm) -> Entry | None:
        """The entry that this form went out; None where it is the one that went out last."""
        sent = self._job.walk.forms_sent
        if sent and sent[-1].form_id == form.form_id:
            return None
        self._journal.refuse_if_read_only()
        return self._journal.append(BidsSent(form=sent_form(form)))

    @property
    def all(self) -> tuple[Bid, ...]:
        """The bids in the order they were added."""
        return tuple(self._read(kept) for kept in self._job.walk.bids.values())

    def add(self, path: Path, *, bidder: str = "", in_place: bool = False) -> Bid:
        """The bid in a returned file, on the disk and recorded when this returns.

        ``bidder`` is used where the form does not say who bids; ``in_place`` lets it take the
        place of the same bidder's earlier one. Raises BidFileError for a file that is no bid of
        this job, and all that ``record`` raises: earlier bids are not touched by either.
        """
        self._journal.refuse_if_read_only()
        file = read_file(path)
        if file.digest in self._job.walk.bids:
            held = self._job.walk.bids[file.digest]
            raise BidFileError(f"{file.name} was added already: the bid of {held.bidder}.")
        cleaned = _clean(read_fields(file))
        fields = with_full_ids(cleaned, self._priced_form(cleaned))
        self._check(file, fields)
        kept = KeptBid(file.digest, file.name, bidder.strip(), fields, added_on=self._today())
        bid = self._read(kept)
        _check_content(file, bid)
        earlier = self._of(bid.bidder)
        if earlier is not None and not in_place:
            raise BidFileError(
                f"There is a bid of {earlier.bidder} already, from {earlier.file_name}.",
                "Add it with --replace to put it in the place of that one.",
            )
        self._keep(file, kept, bid.bidder, earlier)
        return bid

    def answer(self, bidder: str, field: str, text: str) -> Bid:
        """The bid after the owner has said what a field means; empty text takes that back."""
        self._journal.refuse_if_read_only()
        kept = self._named(bidder)
        (field,) = with_full_ids({field: ""}, self._priced_form(kept.fields))
        if field not in kept.fields and field not in kept.answers:
            known = ", ".join(sorted({one.shown for one in self._read(kept).unread})) or "none"
            raise LeantoError(
                f"The bid of {kept.bidder} has no field {field}.", f"To be answered: {known}."
            )
        answers = {**kept.answers, field: text} if text else dict(kept.answers)
        bid = self._read(replace(kept, answers=answers))
        if text and any(one.field == field for one in bid.unread):
            why = next(one.why for one in bid.unread if one.field == field)
            raise LeantoError(f"“{text}” is not understood: {why}", "Write it like 1200.50.")
        self._journal.append(BidAnswered(digest=kept.digest, field=field, text=text))
        return bid

    def withdraw(self, bidder: str, reason: str = "") -> None:
        """Leave a bid out; its file and its figures stay in the job."""
        self._journal.refuse_if_read_only()
        kept = self._named(bidder)
        award = self._job.walk.award
        if award is not None and award.digest == kept.digest:
            raise LeantoError(
                f"The bid of {kept.bidder} is the one that was chosen.",
                "Choose another one first: leanto bids award JOB BIDDER",
            )
        self._journal.append(BidWithdrawn(digest=kept.digest, reason=reason))

    def table(self) -> Levelled:
        """All bids on one base. Raises JobError while there is no bid."""
        bids = self.all
        if not bids:
            raise JobError("No bid has come back yet.", "Add one: leanto bids add JOB FILE")
        form = self.form
        made = level(bid_base(self._job.assess(), self._job.walk, form), bids)
        return replace(made, notices=(*self._changed_since(form), *made.notices))

    def report(self) -> Report:
        """The table as a report, for the screen or for paper."""
        from leanto.reports.contents.bids import bids_report

        return bids_report(self.table(), self._job.assess().building, self._today())

    def write_table(
        self, path: Path | None = None, progress: Callable[[int, int], None] | None = None
    ) -> WrittenReport:
        """The table as PDF, at ``path`` or in the job's reports. Raises ReportError.

        ``progress`` is called as by ``write_pdf``, and stops the writing in the same way.
        """
        from leanto.reports.pdf import write_pdf

        target = path or self._job.places.reports / "bid-table.pdf"
        return write_pdf(self.report(), target, self._job.photo_path, progress)

    def write_workbook(self, path: Path | None = None) -> Path:
        """The table as XLSX, at ``path`` or in the job's reports. Raises ReportError."""
        from leanto.reports.levelled_sheet import levelled_workbook

        target = path or self._job.places.reports / "bid-table.xlsx"
        building = self._job.assess().building
        content = levelled_workbook(
            self.table(), building.name, self._today(), invented=building.invented
        )
        try:
            target.parent.mkdir(parents=True, exist_ok=True)
            keep_file(target, content)
        except OSError as error:
            reason = error.strerror or str(error)
            raise ReportError(
                f"{target} was not written: {reason}.", "Name another file."
            ) from error
        return target

    def file_of(self, kept: KeptBid) -> Path:
        """Where the returned file lies."""
        return self._job.places.bids / bid_file_name(kept)

    def _read(self, kept: KeptBid) -> Bid:
        form = self._priced_form(kept.fields)
        bid = bid_of(
            kept.fields,
            form,
            bidder=kept.bidder,
            answers=kept.answers,
            dated=kept.added_on,
            file_name=kept.file_name,
        )
        return bid_in_feet(bid, form)

    def _priced_form(self, fields: Mapping[str, str]) -> BidForm:
        """The form as it was printed; the last one where the file does not say."""
        id_, sent = fields.get("form_id", "").strip(), self.sent
        last = sent[-1] if sent else self.form
        return next((form for form in sent if form.form_id == id_), last)

    def _check(self, file: ReturnedFile, fields: Mapping[str, str]) -> None:
        """Refuses what is no form of this job."""
        job_id = fields.get("job_id", "").strip()
        if job_id and job_id != self.job_id:
            raise BidFileError(f"{file.name} is a form of another job.", "Add it to that one.")
        lines = {line.item_id for line in self._priced_form(fields).lines}
        named = {name.partition("|")[2].partition("#")[0] for name in fields}
        if not lines & named:
            raise BidFileError(
                f"{file.name} holds no line of this job's form, or nothing was filled in.",
                "Ask the bidder for the form that was sent.",
            )
        if len(fields) > _MOST_FIELDS:
            raise BidFileError(f"{file.name} has over {_MOST_FIELDS:,} fields.")

    def _keep(
        self, file: ReturnedFile, kept: KeptBid, bidder: str, earlier: KeptBid | None
    ) -> None:
        """The file under its digest, then the entry; neither without the other."""
        try:
            body = BidAdded(
                digest=file.digest,
                file_name=file.name[-255:],
                bidder=bidder,
                fields=dict(kept.fields),
                replaces=earlier.digest if earlier else None,
                added_on=kept.added_on,
            )
        except ValidationError as error:
            at = ".".join(str(step) for step in error.errors()[0]["loc"])
            raise BidFileError(
                f"{file.name} holds a text that is too long ({at[:80]}).", "Ask for a shorter one."
            ) from None
        target = self.file_of(kept)
        try:
            target.parent.mkdir(exist_ok=True)
            keep_file(target, file.content)
        except OSError as error:
            reason = error.strerror or str(error)
            raise JobError(f"The bid was not kept: {reason}.", "Put that right first.") from error
        try:
            self._journal.append(body)
        except BaseException:
            with contextlib.suppress(OSError):
                target.unlink(missing_ok=True)
            raise

    def _of(self, bidder: str) -> KeptBid | None:
        wanted = _same(bidder)
        return next((k for k in self._job.walk.bids.values() if _same(k.bidder) == wanted), None)

    def _named(self, bidder: str) -> KeptBid:
        kept = self._of(bidder)
        if kept is None:
            known = ", ".join(one.bidder for one in self._job.walk.bids.values()) or "none yet"
            raise LeantoError(f"There is no bid of {bidder}.", f"Bids: {known}.")
        return kept

    def _changed_since(self, form: BidForm) -> tuple[str, ...]:
        if not self._job.walk.forms_sent:
            return ()
        printed = self.sent[-1]
        made = self.form_now(units=system_of(printed))
        now = {line.item_id: line.quantity for line in made.lines}
        then = {line.item_id: line.quantity for line in printed.lines}
        count = sum(now.get(id_) != then.get(id_) for id_ in now.keys() | then.keys())
        if not count:
            return ()
        return (
            f"The scope has changed since the form went out, in lines: {count}. Send an addendum: "
            "leanto bids send JOB",
        )

    def _today(self) -> date:
        return self._journal.now().astimezone().date()


def _check_content(file: ReturnedFile, bid: Bid) -> None:
    if not bid.bidder:
        raise BidFileError(f"{file.name} does not say who bids.", "Add it with --bidder NAME.")
    if all(entry.amount.state is State.MISSING for entry in bid.entries) and all(
        entry.unit_price.state is State.MISSING for entry in bid.entries
    ):
        raise BidFileError(
            f"{file.name} has no price in any line: nothing was filled in.",
            "Ask the bidder for the filled form.",
        )


def _clean(fields: Mapping[str, str]) -> dict[str, str]:
    """What holds something, without characters that cannot be shown or stored."""
    cleaned = {_printable(name): _printable(text) for name, text in fields.items()}
    return {name: text for name, text in cleaned.items() if name and text.strip()}


def _printable(text: str) -> str:
    return "".join(
        char if char.isprintable() or char in "\n\u00a0\u202f" else " " for char in text
    ).strip()


def _same(bidder: str) -> str:
    return " ".join(bidder.casefold().split())
