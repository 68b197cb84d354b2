"""Job: one outbuilding's folder, opened. Whatever a front end does with a job it does here."""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence
from datetime import UTC, date, datetime
from pathlib import Path
from typing import TYPE_CHECKING, Literal, Self

from leanto.assessment import Assessment, assess
from leanto.building.model import Building
from leanto.building.station import Station
from leanto.checklist.model import Item
from leanto.errors import JobError, NotKept
from leanto.job.acceptance import check_about, check_body, check_building, check_together
from leanto.job.bidding_text import bidding_text, keep_bidding_text
from leanto.job.copying import copied
from leanto.job.fetching import fetch_bids, fetch_photos
from leanto.job.fitting import Fitted, fitted
from leanto.job.folder import find_job, make_folder
from leanto.job.grounds import Grounds
from leanto.job.impossible import refuse_impossible
from leanto.job.last_range import keep_last_range
from leanto.job.photo_key import PhotoKey, key_by_time
from leanto.job.scope_acceptance import check_scope_edit
from leanto.job.who import user_name
from leanto.library import Library, read_library
from leanto.library.in_units import library_in
from leanto.places import JobPlaces
from leanto.quantities import System, display_of, restore_shown, show_as, showing
from leanto.record.agreed_entry import AfterBids
from leanto.record.bid_entry import AboutBid, BidAdded, BidsSent
from leanto.record.document import read_export
from leanto.record.entry import (
    AboutItem,
    AboutObservation,
    Body,
    BuildingSet,
    Entry,
    Imported,
    MovedTo,
    ObservationBody,
    PhotoAdded,
    Redone,
    ScopeAdded,
    Undone,
    UnitsSet,
)
from leanto.record.exchange import bodies_of, export_text
from leanto.record.journal import Clock, Journal
from leanto.record.kept_file import sweep
from leanto.record.observation import ObservationKey, Photo
from leanto.record.photos import import_photo, photo_file, small_picture, when_taken
from leanto.record.store import Store
from leanto.record.walk import Walk
from leanto.rules.pointless import still_asked

if TYPE_CHECKING:
    from PIL.Image import Image

    from leanto.job.bids import JobBids
    from leanto.job.contract import JobContract
    from leanto.job.opening_up import JobOpening
    from leanto.reports.blocks import Report
    from leanto.reports.written import WrittenReport

Progress = Callable[[int, int], None]


class Job:
    """An open job; use it as a context manager, or close it."""

    def __init__(self, places: JobPlaces, journal: Journal, clock: Clock) -> None:
        self.places = places
        self._journal = journal
        self._clock = clock
        self._library: Library | None = None
        self._worded: Library | None = None
        self._shown_before: Callable[[], System] | None = None
        self._grounds: tuple[Building, Grounds] | None = None
        self._asked: tuple[Grounds, Walk, Mapping[str, tuple[Item, ...]]] | None = None
        self._assessed: tuple[int, Assessment] | None = None
        self._backup_fault = ""

    @classmethod
    def create(
        cls,
        folder: Path,
        building: Building | None = None,
        *,
        clock: Clock | None = None,
        who: str | None = None,
    ) -> Job:
        """A new job in a folder that is new or empty; JobError when it is neither.

        ``clock`` gives the present time with its time zone; ``who`` is written into each entry.
        """
        if building is not None:
            check_building(building)
        bodies = () if building is None else (BuildingSet(building=building),)
        return cls._made(make_folder(folder), bodies, clock or _now, who or user_name())

    @classmethod
    def from_export(
        cls,
        folder: Path,
        file: Path,
        *,
        clock: Clock | None = None,
        who: str | None = None,
    ) -> Job:
        """A new job from a file that ``export_text`` made; InputProblems with its faults.

        Photos and returned bids are taken from ``photos`` and ``bids`` beside the file, or from
        the exported job's folder when that lies beside the file; ``notices`` says which photos
        are missing.
        """
        document = read_export(file)
        bodies = bodies_of(document, file.name)
        library = read_library()
        refuse_impossible(document, file, library.checklist)
        job = cls._made(make_folder(folder), bodies, clock or _now, who or user_name())
        job._library = library  # a new folder has no data of its own yet
        fetch_photos(job.photos, file, document.job, job.places.photos)
        fetch_bids(job.walk.bids.values(), file, document.job, job.places)
        keep_bidding_text(job.places, document.bidding_file)
        return job

    @classmethod
    def open(cls, folder: Path, *, clock: Clock | None = None, who: str | None = None) -> Job:
        """The job in the folder, for reading only where it can't be written; else JobError."""
        places = find_job(folder)
        store, clock = Store.open(places.record), clock or _now
        job = cls._with(places, store, clock, who or user_name())
        if not job.read_only:
            job._backup_fault = store.back_up(places.backups, clock())
            for folder in (places.photos, places.backups):
                sweep(folder)
        return job

    @classmethod
    def _made(cls, places: JobPlaces, bodies: Sequence[Body], clock: Clock, who: str) -> Job:
        at = clock()
        entries = [
            Entry(id=number, at=at, who=who, body=body) for number, body in enumerate(bodies, 1)
        ]
        return cls._with(places, Store.create(places.record, entries), clock, who)

    @classmethod
    def _with(cls, places: JobPlaces, store: Store, clock: Clock, who: str) -> Job:
        try:
            return cls(places, Journal(store, clock, who), clock)
        except BaseException:
            store.close()
            raise

    @property
    def read_only(self) -> bool:
        return bool(self.read_only_reason)

    @property
    def read_only_reason(self) -> str:
        """One sentence; empty when the job can be added to."""
        return self._journal.read_only_reason

    @property
    def entries(self) -> tuple[Entry, ...]:
        return self._journal.entries

    @property
    def walk(self) -> Walk:
        """The walk as entered, folded from all entries."""
        return self._journal.walk

    @property
    def library(self) -> Library:
        """Checklists, rules and prices, the job's own laid over; read once.

        Raises InputProblems with every fault of every file.
        """
        if self._library is None:
            own = self.places.checklists
            self._library = read_library((own,) if own.is_dir() else ())
        if self._worded is None:
            self._worded = library_in(display_of(self.units), self._library)
        return self._worded

    @property
    def units(self) -> System:
        """What this job's amounts are shown in."""
        return self.walk.units

    def show_in(self, system: System) -> Entry | None:
        """The entry that amounts are shown in the system from now on; None where they are.

        Nothing else changes: every amount is kept as it was entered. Raises what ``record`` raises.
        """
        if system is self.units:
            return None
        self._journal.refuse_if_read_only()
        entry = self._journal.append(UnitsSet(system=system))
        self._worded = self._grounds = None
        return entry

    @property
    def grounds(self) -> Grounds:
        """Stations, surfaces and what is asked; JobError while there is no building."""
        building, held = self._building(), self._grounds
        if held is None or held[0] is not building:
            held = self._grounds = (building, Grounds.of(building, self.library.checklist))
        return held[1]

    @property
    def stations(self) -> tuple[Station, ...]:
        """In walking order; JobError while there is no building."""
        return tuple(self.grounds.stations.values())

    def items_at(self, station_id: str) -> tuple[Item, ...]:
        """What is asked at the station; none at one that the building does not have.

        An earlier answer can leave nothing to ask: ``leanto.rules.pointless``.
        """
        grounds, walk, held = self.grounds, self.walk, self._asked
        if held is None or held[0] is not grounds or held[1] is not walk:
            held = self._asked = (grounds, walk, still_asked(grounds.occurring, walk))
        return held[2].get(station_id, ())

    @property
    def photos(self) -> tuple[Photo, ...]:
        """Every photo once: of the walk, of what was opened, and of receipts."""
        walk = self.walk
        seen = [photo for one in walk.observations.values() for photo in one.photos]
        kept = [picture for one in walk.openings.values() for picture in one.pictures]
        kept += [paid.receipt for paid in walk.payments.values() if paid.receipt is not None]
        seen += [one.photo for one in kept]
        return tuple({photo.digest: photo for photo in seen}.values())

    @property
    def notices(self) -> tuple[str, ...]:
        """What the owner should know: photos without a file, answers that no longer fit, and
        that the backup of this start failed."""
        missing = [photo for photo in self.photos if not self.photo_path(photo).is_file()]
        lines = [] if self.walk.building is None else [*self._fitted().notices]
        if missing:
            names = ", ".join(photo.original_name or photo.digest[:8] for photo in missing)
            lines.append(f"Missing from {self.places.photos}: {names}.")
        if self._backup_fault:
            lines.append(self._backup_fault)
        return tuple(lines)

    def record(self, body: Body) -> Entry:
        """The entry, on the disk when this returns.

        Raises LeantoError for what does not fit the building or the checklist, ReadOnlyJob, and
        JobError when it could not be written, which may be tried again.
        """
        if isinstance(
            body, Undone | Redone | Imported | BidsSent | BidAdded | AboutBid | AfterBids
        ):
            raise ValueError(f"{type(body).__name__} is not recorded from outside")
        self._journal.refuse_if_read_only()
        if isinstance(body, BuildingSet):
            check_building(body.building)
        elif isinstance(body, AboutItem | ScopeAdded):
            check_scope_edit(body, self.assess())
        else:
            check_body(body, self.grounds, self.walk)
        return self._journal.append(body)

    def record_together(self, bodies: Sequence[ObservationBody]) -> tuple[Entry, ...]:
        """Facts that one key enters: kept all or none, taken back by one undo.

        Raises what ``record`` raises.
        """
        self._journal.refuse_if_read_only()
        check_together(bodies, self.grounds, self.walk)
        return self._journal.append_together(bodies)

    @property
    def bids(self) -> JobBids:
        """The bids of this job: added, answered and compared there."""
        # Loaded only now: walking has no bids.
        from leanto.job.bids import JobBids

        return JobBids(self, self._journal)

    @property
    def contract(self) -> JobContract:
        """The chosen bid, and what was paid."""
        from leanto.job.contract import JobContract

        return JobContract(self, self._journal)

    @property
    def opening(self) -> JobOpening:
        """What opened walls showed, and what it changes."""
        from leanto.job.opening_up import JobOpening

        return JobOpening(self, self._journal)

    def hold_what_is_refused(self) -> None:
        """From now on entries that the disk refuses are held in memory, see ``held``."""
        self._journal.holds = True

    @property
    def held(self) -> tuple[Entry, ...]:
        """The last entries, where the disk refused them: they are in memory only."""
        return self._journal.held

    @property
    def held_because(self) -> NotKept | None:
        """Why there are entries in memory only."""
        return self._journal.held_because

    def keep_held(self) -> None:
        """Brings what is held to the disk; NotKept where that is refused once more."""
        self._journal.keep_held()

    def go_on_in(self, folder: Path) -> None:
        """Saves everything, what is held too, as a job in a new folder, and goes on there.

        The folder left behind stays as it is. Raises JobError.
        """
        places = copied(self.places, self.entries, folder)
        self._journal.go_on_in(Store.open(places.record))
        self.places = places

    @property
    def can_undo(self) -> bool:
        return self._journal.can_undo

    @property
    def can_redo(self) -> bool:
        return self._journal.can_redo

    def undo(self) -> Entry | None:
        """The entry that was taken back; None when there is none to take back."""
        return self._journal.undo()

    def redo(self) -> Entry | None:
        """The entry that counts again; None when there is none."""
        return self._journal.redo()

    def add_photo(self, key: ObservationKey, path: Path) -> Photo:
        """The photo, copied into the job and recorded; may be called from another thread.

        Raises PhotoError for what is no picture, and all that ``record`` raises.
        """
        self._journal.refuse_if_read_only()
        about = AboutObservation(station=key.station, item=key.item, number=key.number)
        check_about(about, self.grounds)
        photo = import_photo(path, self.places.photos)
        seen = self.walk.observations.get(key)
        if seen is None or all(held.digest != photo.digest for held in seen.photos):
            self.record(
                PhotoAdded(
                    **about.model_dump(),
                    digest=photo.digest,
                    original_name=photo.original_name,
                    taken_at=photo.taken_at,
                )
            )
        return photo

    def key_by_time(self, path: Path) -> PhotoKey:
        """Where a picture belongs by the time it was taken; ``leanto.job.photo_key``."""
        return key_by_time(self.entries, self.grounds, when_taken(path))

    def small_photo(self, photo: Photo, wide_px: int, high_px: int) -> Image:
        """The photo, as large as fits into so many pixels; PhotoError when it is not whole."""
        return small_picture(self.photo_path(photo), wide_px, high_px)

    def photo_path(self, photo: Photo) -> Path:
        """Where the photo's file lies."""
        return photo_file(self.places.photos, photo.digest)

    def assess(self) -> Assessment:
        """All that follows from the walk, kept until the next entry that is more than a move.

        Ages are counted up to the day of the last observation. Raises JobError while there is no
        building.
        """
        last, held = self._last_change(), self._assessed
        if held is None or held[0] != last:
            building, walk = self._building(), self._fitted().walk
            made = assess(building, walk, self.library, self.walked_on or self._today())
            held = self._assessed = (last, made)
        return held[1]

    @property
    def walked_on(self) -> date | None:
        """The local day of the last observation; None before the first."""
        return self._journal.walked_on

    @property
    def walkers(self) -> str:
        """Who entered observations, in the order in which they came."""
        who = (e.who for e in self.entries if isinstance(e.body, AboutObservation))
        return ", ".join(dict.fromkeys(who))

    def write_reports(
        self, folder: Path | None = None, progress: Progress | None = None
    ) -> tuple[WrittenReport, ...]:
        """The condition report and the repair scope, as PDF in ``folder`` or in the job's reports.

        Raises ReportError.
        """
        # Loaded only now: walking needs neither ink nor fonts.
        from leanto.reports.pdf import write_pdf

        target = folder or self.places.reports
        with showing(self.units):
            return tuple(
                write_pdf(report, target / f"{name}.pdf", self.photo_path, progress)
                for name, report in self._reports()
            )

    def write_readable(
        self, form: Literal["html", "text"], folder: Path | None = None
    ) -> tuple[Path, ...]:
        """Both reports with the content of the PDFs, for screen readers and large print.

        Raises ReportError.
        """
        from leanto.reports.html import write_html
        from leanto.reports.text import write_text

        target = folder or self.places.reports
        with showing(self.units):
            return tuple(
                write_html(report, target / f"{name}.html", self.photo_path)
                if form == "html"
                else write_text(report, target / f"{name}.txt")
                for name, report in self._reports()
            )

    def export_text(self) -> str:
        """Everything entered, as readable YAML that ``from_export`` reads back."""
        name = self.places.folder.resolve().name.encode("utf-8", "replace").decode("utf-8")
        text = bidding_text(self.places)
        return export_text(self.walk, job=name, walked_on=self.walked_on, bidding_file=text)

    def close(self) -> None:
        assessed, library = self._assessed, self._library
        if assessed and library and not self.read_only and assessed[0] == self._last_change():
            p50 = assessed[1].estimate.range.p50
            keep_last_range(self.places.folder, p50, assessed[0], library.versions)
        self._journal.close()

    def __enter__(self) -> Self:
        """Inside, amounts are shown the way this job shows them."""
        self._shown_before = show_as(lambda: self.units)
        return self

    def __exit__(self, *_: object) -> None:
        if self._shown_before is not None:
            restore_shown(self._shown_before)
        self.close()

    def _reports(self) -> tuple[tuple[str, Report], ...]:
        """What is written for the owner and for bidders, by the name of its file."""
        from leanto.reports.contents import condition_report, repair_scope

        assessment = self.assess()
        return (
            ("condition-report", condition_report(assessment, who=self.walkers)),
            ("repair-scope", repair_scope(assessment)),
        )

    def _building(self) -> Building:
        building = self.walk.building
        if building is None:
            raise JobError(
                "There is no building yet.", "Press F7 in the walk, or use leanto new --building."
            )
        return building

    def _fitted(self) -> Fitted:
        return fitted(self.walk, self.grounds)

    def _last_change(self) -> int:
        """Id of the last entry of those that an assessment follows from: no moves, no bids."""
        passed = (MovedTo, BidsSent, BidAdded, AboutBid, AfterBids)
        ids = (e.id for e in reversed(self.entries) if not isinstance(e.body, passed))
        return next(ids, 0)

    def _today(self) -> date:
        return self._clock().astimezone().date()


def _now() -> datetime:
    return datetime.now(UTC)
