"""Everything done while walls are opened: what they showed, and what that changes."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from datetime import date
from decimal import Decimal
from pathlib import Path
from typing import TYPE_CHECKING

from pydantic import ValidationError

from leanto.building.surface import Surface
from leanto.contract.compared import Compared, compared
from leanto.contract.pricing import asked_line
from leanto.decision.model import Course, SurfaceDecision
from leanto.errors import LeantoError
from leanto.job.our_rates import check_found_quantity, our_rate
from leanto.record.agreed_entry import (
    AskedLine,
    ChangeAsked,
    ChangeSettled,
    FoundKind,
    FoundWork,
    KeptPicture,
    Opened,
    OpeningStruck,
)
from leanto.record.journal import Journal
from leanto.record.kept_change import KeptChange
from leanto.record.photos import import_photo

if TYPE_CHECKING:
    from leanto.job.job import Job
    from leanto.reports.blocks import Report
    from leanto.reports.written import WrittenReport

MOST_PICTURES = 20
_MOST_USD = Decimal(10_000_000)


@dataclass(frozen=True, slots=True)
class Openable:
    """A surface as it stands before it is opened."""

    number: int
    """As the list has it; a surface may be named by it."""
    surface: Surface
    decision: SurfaceDecision | None
    openings: tuple[Opened, ...]


class JobOpening:
    """The openings of one open job."""

    def __init__(self, job: Job, journal: Journal) -> None:
        self._job = job
        self._journal = journal

    @property
    def surfaces(self) -> tuple[Openable, ...]:
        """Lined surfaces first, in the order of the decision, then the others."""
        assessment = self._job.assess()
        decided = {one.surface_id: one for one in assessment.decision.surfaces}
        ids = [*decided, *(id_ for id_ in assessment.surfaces if id_ not in decided)]
        opened = self._job.walk.openings.values()
        return tuple(
            Openable(
                number,
                assessment.surfaces[id_],
                decided.get(id_),
                tuple(one for one in opened if one.surface_id == id_),
            )
            for number, id_ in enumerate(ids, start=1)
        )

    def named(self, text: str) -> Openable:
        """The surface of a number, an id, or a part of its name; LeantoError unless it is one."""
        wanted = text.casefold().strip()
        everything = self.surfaces
        for one in everything:
            if wanted in (str(one.number), one.surface.id.casefold(), one.surface.name.casefold()):
                return one
        found = [one for one in everything if wanted and wanted in one.surface.name.casefold()]
        if len(found) == 1:
            return found[0]
        listed = "; ".join(f"{one.number} {one.surface.name}" for one in found or everything)
        said = "More than one surface is called" if found else "There is no surface"
        raise LeantoError(f"{said} {text.strip()}.", f"Give its number: {listed}.")

    def record(
        self,
        surface_id: str,
        *,
        bad_sqft: float,
        opened_sqft: float | None = None,
        found: Sequence[FoundKind] = (),
        works: Sequence[FoundWork] = (),
        note: str = "",
        pictures: Sequence[Path] = (),
        opened_on: date | None = None,
    ) -> Opened:
        """What an opening showed, recorded whole with copies of its pictures, or not at all.

        ``bad_sqft`` is what is bad beyond the zones that the scope has; ``opened_sqft`` is by
        default what is still closed of the surface. ``works`` are work to be done beyond the
        scope; without them it is the repair of what is bad. Raises LeantoError for what cannot
        be, and ReadOnlyJob.
        """
        self._journal.refuse_if_read_only()
        assessment = self._job.assess()
        surface = assessment.surfaces.get(surface_id)
        if surface is None:
            raise LeantoError(f"There is no surface {surface_id} in this job.")
        opened = self._opened_sqft(surface, opened_sqft)
        _check_areas(surface, opened, bad_sqft, self._before(surface_id))
        for one in works:
            check_found_quantity(assessment.library.works.get(one.work), one.quantity)
            our_rate(assessment, one.work, surface_id, poor_access=False)
        if len(pictures) > MOST_PICTURES:
            raise LeantoError(f"An opening takes {MOST_PICTURES} pictures, not more.")
        kept = [import_photo(path, self._job.places.photos) for path in pictures]
        try:
            body = Opened(
                number=self._next(Opened),
                surface_id=surface_id,
                opened_sqft=opened,
                bad_sqft=bad_sqft,
                found=tuple(dict.fromkeys(found)),
                works=tuple(works),
                note=note.strip(),
                pictures=tuple(
                    KeptPicture(
                        digest=one.digest,
                        original_name=one.original_name,
                        taken_at=one.taken_at,
                    )
                    for one in kept
                ),
                opened_on=opened_on or self._today(),
            )
        except ValidationError as error:
            fault = error.errors()[0]
            what = ".".join(map(str, fault["loc"])).replace("_", " ")
            raise LeantoError(f"{what}: {fault['msg']}.") from None
        self._journal.append(body)
        return body

    def strike(self, number: int) -> Opened:
        """Takes an opening out that was entered by mistake; its entry stays in the record."""
        self._journal.refuse_if_read_only()
        held = self._job.walk.openings.get(number)
        if held is None:
            raise LeantoError(f"There is no opening {number}.", "leanto open-up JOB lists them.")
        for change in self._job.walk.changes.values():
            if number in change.openings:
                raise LeantoError(
                    f"Opening {number} stands in change {change.number}.",
                    "Settle that change at 0 where nothing is to be done.",
                )
        self._journal.append(OpeningStruck(number=number))
        return held

    def lines_of(self, opening: Opened) -> tuple[AskedLine, ...]:
        """What an opening asks for beyond the scope, priced; nothing where all is sound."""
        assessment = self._job.assess()
        surface = assessment.surfaces.get(opening.surface_id)
        if surface is None:
            return ()
        decided = {one.surface_id: one for one in assessment.decision.surfaces}
        keeps = _keeps(decided.get(surface.id))
        works = opening.works or self._repair(opening, surface, keeps)
        award = self._job.walk.award
        return tuple(
            asked_line(
                award,
                our_rate(assessment, one.work, surface.id, poor_access=keeps),
                one.quantity,
                opening.number,
                surface.name,
            )
            for one in works
        )

    @property
    def open_openings(self) -> tuple[Opened, ...]:
        """Those that ask for work and stand in no change yet."""
        changes = self._job.walk.changes.values()
        asked = {number for change in changes for number in change.openings}
        waiting = (one for one in self._job.walk.openings.values() if one.number not in asked)
        return tuple(one for one in waiting if self.lines_of(one))

    def ask(self) -> KeptChange:
        """A change-order request for everything found since the last one, recorded.

        Raises LeantoError where nothing is to be asked for, JobError before a bid was chosen,
        and ReadOnlyJob.
        """
        self._journal.refuse_if_read_only()
        self._job.contract.chosen()
        lines = tuple(line for one in self.open_openings for line in self.lines_of(one))
        if not lines:
            raise LeantoError(
                "Nothing that was found asks for work beyond the scope.",
                "Record an opening with what is bad first.",
            )
        number = self._next(ChangeAsked)
        self._journal.append(ChangeAsked(number=number, lines=lines, asked_on=self._today()))
        return self._job.walk.changes[number]

    def settle(self, number: int, usd: Decimal | None) -> KeptChange:
        """What both agreed on for a change; 0 where nothing is to be done, None opens it again."""
        self._journal.refuse_if_read_only()
        self._change(number)
        if usd is not None and abs(usd) > _MOST_USD:
            raise LeantoError(f"{usd:,f} is no such amount.")
        self._journal.append(ChangeSettled(number=number, usd=usd, settled_on=self._today()))
        return self._job.walk.changes[number]

    def request_report(self, number: int) -> Report:
        """A change-order request as it goes to the contractor: no figure of ours is in it."""
        from leanto.reports.contents.change_order import change_order

        change = self._change(number)
        openings = [self._job.walk.openings[one] for one in change.openings]
        return change_order(change, openings, self._job.contract.chosen(), self._job.assess())

    def write_request(self, number: int, path: Path | None = None) -> WrittenReport:
        """The request as PDF, with its pictures, at ``path`` or in the job's reports."""
        from leanto.reports.pdf import write_pdf

        target = path or self._job.places.reports / f"change-order-{number}.pdf"
        return write_pdf(self.request_report(number), target, self._job.photo_path)

    def compared(self) -> tuple[Compared, ...]:
        """Each opened surface against what was seen before and assumed of the rest."""
        assessment = self._job.assess()
        return compared(
            self._job.walk.openings.values(),
            {one.surface_id: one for one in assessment.decision.surfaces},
            {id_: surface.name for id_, surface in assessment.surfaces.items()},
            {kind.id: kind.group for kind in assessment.library.hidden.kinds},
        )

    def list_report(self) -> Report:
        """The list that one opens walls by."""
        from leanto.reports.contents.openings import openings_report

        walk = self._job.walk
        return openings_report(
            [(one.number, one.surface.name, one.decision, one.openings) for one in self.surfaces],
            [line for one in self.open_openings for line in self.lines_of(one)],
            tuple(walk.changes.values()),
            walk.award,
            self._job.contract.view() if walk.award else None,
            self._job.assess().building,
            self._today(),
        )

    def report(self) -> Report:
        """What the assessment missed, by kind of evidence; the owner's."""
        from leanto.reports.contents.missed import missed_report

        award = self._job.walk.award
        view = self._job.contract.view() if award else None
        building = self._job.assess().building
        return missed_report(self.compared(), view, building, self._today())

    def write(self, path: Path | None = None) -> WrittenReport:
        """The same as PDF, at ``path`` or in the job's reports."""
        from leanto.reports.pdf import write_pdf

        target = path or self._job.places.reports / "opened-walls.pdf"
        return write_pdf(self.report(), target, self._job.photo_path)

    def test_first(self, surface_id: str) -> tuple[str, ...]:
        """What must be tested before the surface is disturbed."""
        decided = self._job.assess().decision.surfaces
        found = (one.test_first for one in decided if one.surface_id == surface_id)
        return tuple(reason.text for reason in next(found, ()))

    def _repair(self, opening: Opened, surface: Surface, keeps: bool) -> tuple[FoundWork, ...]:
        """Repair of what is bad, and a patch where the lining stays."""
        if opening.bad_sqft <= 0:
            return ()
        hidden = self._job.library.hidden
        works = [FoundWork(work=hidden.repair_open, quantity=opening.bad_sqft)]
        patch = next((x.patch for x in hidden.linings if x.lining is surface.lining), None)
        if keeps and patch is not None:
            works.append(FoundWork(work=patch, quantity=opening.bad_sqft))
        return tuple(works)

    def _opened_sqft(self, surface: Surface, given: float | None) -> float:
        if given is not None:
            return given
        left = surface.net_area_sqft - self._before(surface.id)
        if left < 0.1:
            raise LeantoError(
                f"{surface.name} was opened whole already.", "Give the area that was opened."
            )
        return round(left, 1)

    def _before(self, surface_id: str) -> float:
        held = self._job.walk.openings.values()
        return sum(one.opened_sqft for one in held if one.surface_id == surface_id)

    def _change(self, number: int) -> KeptChange:
        held = self._job.walk.changes.get(number)
        if held is None:
            raise LeantoError(f"There is no change {number}.", "leanto open-up JOB lists them.")
        return held

    def _next(self, kind: type[Opened] | type[ChangeAsked]) -> int:
        numbers = (e.body.number for e in self._job.entries if isinstance(e.body, kind))
        return max(numbers, default=0) + 1

    def _today(self) -> date:
        return self._journal.now().astimezone().date()


def _keeps(decision: SurfaceDecision | None) -> bool:
    return decision is not None and decision.chosen is Course.KEEP


def _check_areas(surface: Surface, opened: float, bad: float, before: float) -> None:
    whole = surface.net_area_sqft
    if not 0 < opened <= whole + 1:
        raise LeantoError(
            f"{surface.name} has {whole:,.0f} sq ft; {opened:,g} cannot be opened of it."
        )
    if opened + before > whole + 1:
        raise LeantoError(
            f"{before:,.0f} of {whole:,.0f} sq ft of {surface.name} were opened before.",
            "Give what was opened since.",
        )
    if not 0 <= bad <= opened:
        raise LeantoError(
            f"{bad:,g} sq ft bad does not fit into {opened:,g} sq ft opened.", "Measure again."
        )
