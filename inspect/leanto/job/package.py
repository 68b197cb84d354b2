"""The package for bidders: one folder and one zip file with scope, bid form and photos."""

from __future__ import annotations

import contextlib
import re
import shutil
import tempfile
from dataclasses import dataclass
from datetime import date
from pathlib import Path
from typing import TYPE_CHECKING

from leanto.bids.model import BidForm
from leanto.errors import ReportError
from leanto.job.bidding import read_bidding
from leanto.job.job import Job
from leanto.quantities import showing
from leanto.record import refusal
from leanto.record.observation import Photo

if TYPE_CHECKING:
    from leanto.bids.bidding import Bidding
    from leanto.reports.contents.package_photos import PackagePhoto

PDF, WORKBOOK, PHOTOS, PACKAGE = "repair-scope.pdf", "bid-form.xlsx", "photos", "bid-package"
_OURS = re.compile(rf"{re.escape(PDF)}|{re.escape(WORKBOOK)}|{PHOTOS}(?:/photo-[0-9]+\.jpg)?")


@dataclass(frozen=True, slots=True)
class Package:
    """What was written."""

    form: BidForm
    paths: tuple[Path, ...]
    """The PDF, the workbook, the photos and, last, the zip file with all of them."""
    pages: int
    notices: tuple[str, ...]
    """What the owner should know before it goes out, a sentence each."""


def write_package(job: Job, folder: Path) -> tuple[Path, ...]:
    """The files of the package that goes out now; see ``send_package``."""
    return send_package(job, folder).paths


def send_package(job: Job, folder: Path | None = None, *, day: date | None = None) -> Package:
    """Writes the package for the scope as it is now and records that it went out.

    It is the first one, the same once more, or the next addendum where the scope has changed since.
    ``folder`` is by default in the job's reports; ``day`` is today. Raises ReportError, and
    ReadOnlyJob when there is something to record and the job is open elsewhere.
    """
    bidding = read_bidding(job.places)
    bids = job.bids
    sent = bids.sent
    form = bids.form_now(bidding.stated, day or date.today())
    if job.read_only and (not sent or sent[-1].form_id != form.form_id):
        raise refusal.read_only(job.read_only_reason)
    earlier = [one for one in sent if one.addendum < form.addendum]
    target = folder or job.places.reports / package_name(form.addendum)
    package = make_package(job, target, form, bidding, earlier[-1] if earlier else None)
    bids.mark_sent(form)
    return package


def package_name(addendum: int) -> str:
    return f"{PACKAGE}-addendum-{addendum}" if addendum else PACKAGE


def make_package(
    job: Job,
    folder: Path,
    form: BidForm,
    bidding: Bidding,
    before: BidForm | None = None,
) -> Package:
    """Writes the package for a form into ``folder``, and ``<folder>.zip`` beside it.

    A package that lies there is replaced, photos that are no longer part of it included. Raises
    ReportError when the folder holds anything else, or when the system refuses; what was there is
    then left as it was.
    """
    # Loaded only now: walking needs neither ink nor fonts.
    from leanto.reports.contents.package import bid_package
    from leanto.reports.contents.package_photos import package_photos
    from leanto.reports.fixed_zip import fixed_zip
    from leanto.reports.pdf import write_pdf
    from leanto.reports.spreadsheet import bid_workbook

    assessment = job.assess()
    building = assessment.building
    day = form.made_on or assessment.as_of
    _check_free(folder)
    with showing(job.units), _staged(folder) as stage:
        photos = package_photos(assessment)
        places, missing = _photos(job, photos, stage / PHOTOS)
        report = bid_package(assessment, form, bidding, photos, before)
        written = write_pdf(report, stage / PDF, lambda photo: places[photo.digest])
        book = bid_workbook(form, building.name, day, invented=building.invented)
        (stage / WORKBOOK).write_bytes(book)
        names = [PDF, WORKBOOK, *sorted(f"{PHOTOS}/{path.name}" for path in _files(stage / PHOTOS))]
        root = package_name(form.addendum)  # a name that the owner gave stays with the owner
        packed = fixed_zip([(f"{root}/{name}", (stage / name).read_bytes()) for name in names], day)
        archive = _put(stage, folder, packed)
    return Package(
        form=form,
        paths=(*(folder / name for name in names), archive),
        pages=written.pages,
        notices=(
            *_blanks(bidding),
            *_unknown_works(job, bidding),
            *missing,
            *_not_drawn(written.not_drawn),
        ),
    )


def _photos(
    job: Job, photos: tuple[PackagePhoto, ...], folder: Path
) -> tuple[dict[str, Path], tuple[str, ...]]:
    """Bare copies of the photos; where each lies by digest, and a sentence for each one missing."""
    from leanto.reports.bare_jpeg import bare_jpeg

    folder.mkdir()
    places: dict[str, Path] = {}
    missing = []
    for one in photos:
        copy = places[one.photo.digest] = folder / one.file_name
        try:
            copy.write_bytes(bare_jpeg(_read(job, one.photo)))
        except ValueError:
            missing.append(f"Photo {one.number} ({one.place}) is missing or broken; left out.")
    return places, tuple(missing)


def _read(job: Job, photo: Photo) -> bytes:
    """The photo's bytes; none when its file cannot be read."""
    with contextlib.suppress(OSError):
        return job.photo_path(photo).read_bytes()
    return b""


def _check_free(folder: Path) -> None:
    """Nothing for a folder that is new or holds an earlier package; ReportError otherwise."""
    if not folder.exists():
        return
    found = sorted(folder.rglob("*")) if folder.is_dir() else [folder]
    for path in found:
        name = path.relative_to(folder).as_posix()
        if path.is_symlink() or not _OURS.fullmatch(name):
            raise ReportError(
                f"{folder} holds {path.name}, which is no part of a package.",
                "Name a new folder with --to.",
            )


class _staged:
    """A folder beside the target to make the package in; gone at the end."""

    def __init__(self, folder: Path) -> None:
        self._folder = folder

    def __enter__(self) -> Path:
        try:
            self._folder.parent.mkdir(parents=True, exist_ok=True)
            made = tempfile.mkdtemp(prefix=f".{PACKAGE}-", dir=self._folder.parent)
        except OSError as error:
            raise _refused(self._folder, error) from error
        self._stage = Path(made)
        return self._stage

    def __exit__(self, _kind: object, error: BaseException | None, _trace: object) -> None:
        with contextlib.suppress(OSError):
            shutil.rmtree(self._stage)
        if isinstance(error, OSError):
            raise _refused(self._folder, error) from error


def _put(stage: Path, folder: Path, packed: bytes) -> Path:
    """Puts folder and zip file in the place of those that were there; returns the zip file."""
    archive = folder.with_name(f"{folder.name}.zip")
    beside = archive.with_name(f".{archive.name}.part")
    beside.write_bytes(packed)
    stage.chmod(0o755)
    if folder.exists():
        shutil.rmtree(folder)
    stage.rename(folder)
    beside.replace(archive)
    return archive


def _files(folder: Path) -> list[Path]:
    return [path for path in folder.iterdir() if path.is_file()]


def _blanks(bidding: Bidding) -> tuple[str, ...]:
    blanks = [name.replace("_", " ") for name in bidding.blanks]
    if not blanks:
        return ()
    return (f"The invitation leaves open: {', '.join(blanks)}. Fill it in and send again.",)


def _unknown_works(job: Job, bidding: Bidding) -> tuple[str, ...]:
    unknown = [id_ for id_ in bidding.often_found if id_ not in job.library.works]
    if not unknown:
        return ()
    named = ", ".join(unknown)
    return (f"often_found in bidding.yaml names what is no work: {named}. Not asked for.",)


def _not_drawn(characters: str) -> tuple[str, ...]:
    return (f"Characters the font cannot draw: {characters}",) if characters else ()


def _refused(folder: Path, error: OSError) -> ReportError:
    return ReportError(
        f"The package could not be written to {folder}: {error.strerror or error}.",
        "Free some space, check the permissions, or name another folder with --to.",
    )
