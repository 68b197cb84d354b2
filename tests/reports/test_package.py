"""The package for bidders: what is in it, and what must not be."""

from __future__ import annotations

import contextlib
import io
import json
import re
import shutil
import subprocess
import zipfile
from collections.abc import Iterator
from dataclasses import dataclass
from datetime import UTC, date, datetime, timedelta
from pathlib import Path

import pytest
from invented import invented
from openpyxl import load_workbook
from PIL import Image
from pypdf import PdfReader

from leanto.bids.layout import from_pdf_name
from leanto.demo.walk import Picture, steps_of
from leanto.errors import InputProblems, LeantoError, ReportError
from leanto.job import Job
from leanto.job.bidding import bidding_file, lay_out_bidding
from leanto.job.package import Package, send_package, write_package
from leanto.money import format_usd
from leanto.record.entry import (
    Answered,
    Noted,
    NoteToBidders,
    Overruled,
    ScopeAdded,
    ScopeMarked,
    ScopeQuantity,
)
from leanto.record.observation import ObservationKey
from leanto.reports.blocks import Band, Table
from leanto.reports.contents import repair_scope
from leanto.reports.contents.numbering import numbering

QPDF = shutil.which("qpdf")
DAY = date(2026, 6, 2)
BUDGET = 45_000
OWN_WORDS = {
    "owner": "Zebulon Quillfeather",
    "user": "zquill-login",
    "note": "my brother in law pays for the paint",
    "no access": "the key is with my cousin",
    "quantity": "measured again after the party",
    "overruled": "I never liked that ceiling",
    "photo": "IMG-kitchen-party",
    "camera": "Zebulon's Phone",
    "folder": "private-plans",
}
"""What the owner typed for himself, by where it stands."""
FOR_BIDDERS = "Mind the bees in the south wall."
INVITATION = {
    "access": "Gate code from the contact",
    "contact": "Pat Example, 555-0100",
    "bids_due": "June 19, 5 pm",
}
STATED = "600.00"


@dataclass(frozen=True)
class Sent:
    """A job on the garage with a package that went out."""

    folder: Path
    package: Package


def a_clock() -> Iterator[datetime]:
    at = datetime(2026, 5, 9, 12, tzinfo=UTC)
    while True:
        at += timedelta(seconds=5)
        yield at


def a_photo(folder: Path) -> Path:
    """As a telephone writes it, with place, owner and remark."""
    exif = Image.Exif()
    exif[0x0110] = exif[0x013B] = OWN_WORDS["camera"]
    exif.get_ifd(0x8825)[1], exif.get_ifd(0x8825)[2] = "N", (48.0, 12.0, 3.0)
    path = folder / f"{OWN_WORDS['photo']}.jpg"
    picture = Image.linear_gradient("L").resize((800, 600)).convert("RGB")
    picture.save(path, "JPEG", exif=exif, comment=OWN_WORDS["note"].encode())
    return path


def walked(folder: Path) -> Job:
    """The garage of the test data, with words of the owner in every place that takes any."""
    made = invented("slab-garage")
    facts = {"owner": OWN_WORDS["owner"], "budget_usd": BUDGET, "invented": False}
    building = made.building.model_copy(update=facts)
    ticks = a_clock()
    job = Job.create(folder, building, clock=lambda: next(ticks), who=OWN_WORDS["user"])
    for step in steps_of(made.written):
        if not isinstance(step, Picture):
            job.record(step)
    key = ObservationKey("garage.south.outside", "door-wood")
    about = {"station": key.station, "item": key.item}
    taken = a_photo(folder.parent)
    photo = job.add_photo(key, taken)
    # As if somebody had put the camera's own file into the job's folder.
    shutil.copyfile(taken, job.photo_path(photo))
    job.record(Noted(**about, text=OWN_WORDS["note"]))
    lined = next(s for s in job.assess().surfaces.values() if s.is_lined)
    job.record(Overruled(surface_id=lined.id, course="gut", reason=OWN_WORDS["overruled"]))
    for station, items in ((one.station.id, one.open_items) for one in job.assess().coverage):
        if items:
            reason = OWN_WORDS["no access"]
            job.record(
                Answered(station=station, item=items[0], condition="no access", reason=reason)
            )
            break
    return job


def with_edits(job: Job) -> None:
    """The owner's own hand in the scope."""
    items = job.assess().scope.for_bidders
    item = next(one for one in items if one.work.unit == "sf")
    job.record(ScopeQuantity(item_id=item.id, quantity=77, reason=OWN_WORDS["quantity"]))
    job.record(NoteToBidders(item_id=item.id, text=FOR_BIDDERS))
    works = [one.id for one in items if not one.work.trade.is_licensed and one.id != item.id]
    job.record(ScopeMarked(item_id=works[0], mark="struck"))
    job.record(ScopeMarked(item_id=works[1], mark="alternate"))
    for id_ in works[2:]:
        with contextlib.suppress(LeantoError):  # not every line may be done by an owner
            job.record(ScopeMarked(item_id=id_, mark="by owner"))
            break


@pytest.fixture(scope="module")
def sent(tmp_path_factory: pytest.TempPathFactory) -> Sent:
    folder = tmp_path_factory.mktemp(OWN_WORDS["folder"]) / "garage"
    with walked(folder) as job:
        with_edits(job)
        lay_out_bidding(job.places)
        path = bidding_file(job.places)
        text = path.read_text("utf-8")
        for name, said in INVITATION.items():
            text = re.sub(rf'(?m)^  {name}: ""', f'  {name}: "{said}"', text)
        text = text.replace(
            "allowances: []",
            "allowances:\n  - {id: lights, title: Light fittings, amount_usd: 600}",
        )
        path.write_text(text, "utf-8")
        package = send_package(job, day=DAY)
        return Sent(folder, package)


def pdf_text(path: Path) -> str:
    return " ".join(" ".join(page.extract_text() for page in PdfReader(path).pages).split())


def unpacked(content: bytes, name: str = "") -> Iterator[tuple[str, bytes]]:
    """Every file in a zip file, and every file in a zip file in it, names included."""
    yield f"{name} itself", name.encode()
    yield name, content
    if content[:4] == b"PK\x03\x04":
        with zipfile.ZipFile(io.BytesIO(content)) as packed:
            yield f"{name} remark", packed.comment
            for inner in packed.infolist():
                yield f"{name}!{inner.filename} extra", inner.extra + inner.comment
                yield from unpacked(packed.read(inner), f"{name}!{inner.filename}")


@pytest.fixture(scope="module")
def told(sent: Sent) -> dict[str, str]:
    """All that can be read in any file of the package, by where it stands."""
    found: dict[str, str] = {}
    for path in sent.package.paths:
        for name, content in unpacked(path.read_bytes(), path.name):
            found[name] = content.decode("utf-8", "ignore") + content.decode("utf-16-be", "ignore")
            if name.endswith(".pdf"):
                reader = PdfReader(io.BytesIO(content))
                fields = (reader.get_fields() or {}).items()
                held = {n: {str(k): str(v) for k, v in one.items()} for n, one in fields}
                found[f"{name} fields"] = json.dumps(held)
                found[f"{name} facts"] = f"{reader.metadata} {reader.xmp_metadata} {reader.outline}"
                found[f"{name} files"] = str(dict(reader.attachments))
                for at, page in enumerate(reader.pages):
                    found[f"{name} page {at + 1}"] = page.extract_text()
                    for image in page.images:
                        found[f"{name} page {at + 1} {image.name}"] = image.data.decode("latin-1")
                if QPDF and path.name == name:
                    plain = subprocess.run(
                        [QPDF, "--qdf", "--object-streams=disable", str(path), "-"],
                        check=True,
                        capture_output=True,
                    ).stdout
                    found[f"{name} unpacked"] = plain.decode("latin-1")
    return found


def test_a_package_is_a_folder_and_a_zip_file_of_the_same(sent: Sent) -> None:
    package = sent.package
    folder = sent.folder / "reports" / "bid-package"

    assert [path.relative_to(folder.parent).as_posix() for path in package.paths] == [
        "bid-package/repair-scope.pdf",
        "bid-package/bid-form.xlsx",
        "bid-package/photos/photo-01.jpg",
        "bid-package.zip",
    ]
    with zipfile.ZipFile(package.paths[-1]) as packed:
        assert packed.testzip() is None
        held = {name: packed.read(name) for name in packed.namelist()}
    assert held == {
        path.relative_to(folder.parent).as_posix(): path.read_bytes() for path in package.paths[:-1]
    }
    there = {path for path in folder.rglob("*") if path.is_file()}
    assert there == set(package.paths[:-1])


@pytest.mark.parametrize("where", sorted(OWN_WORDS))
def test_nothing_that_the_owner_typed_for_himself_goes_out(
    told: dict[str, str], where: str
) -> None:
    for name, text in told.items():
        flat = " ".join(text.split())
        assert OWN_WORDS[where].casefold() not in flat.casefold(), name


def test_the_job_holds_all_of_these_words(sent: Sent) -> None:
    """Without this, the test before would pass by looking for nothing."""
    with Job.open(sent.folder) as job:
        held = job.export_text() + job.walkers
        photo = job.photo_path(job.photos[0]).read_bytes()

    for where in ("owner", "note", "no access", "quantity", "overruled", "photo", "user"):
        assert OWN_WORDS[where] in " ".join(held.split()), where
    assert OWN_WORDS["camera"].encode() in photo
    assert OWN_WORDS["folder"] in str(sent.folder)


def test_no_path_of_this_machine_goes_out(sent: Sent, told: dict[str, str]) -> None:
    parts = [str(sent.folder), str(sent.folder.parent), str(Path.home()), "/tmp/", "file://"]
    for name, text in told.items():
        for part in parts:
            assert len(part) < 2 or part not in text, f"{part} in {name}"


def test_no_amount_goes_out_but_the_stated_one(sent: Sent, told: dict[str, str]) -> None:
    """Our allowances, the range and the budget are told nowhere, in dollars or as bare figures."""
    said = " ".join(text for name, text in told.items() if re.search(r"page \d+$", name))
    assert set(re.findall(r"\$\s?\d[\d,.]*", said)) == {f"${STATED}"}
    with Job.open(sent.folder) as job:
        estimate = job.assess().estimate
    ours = {BUDGET, estimate.range.p50, estimate.range.p80, estimate.range.contingency}
    ours |= {x for line in estimate.lines for x in (line.total.low, line.total.likely)}
    ours |= {line.total.high for line in estimate.lines}
    figures = {format_usd(x)[1:] for x in ours if float(x) >= 1000}
    assert len(figures) > 10
    assert not [
        figure for figure in sorted(figures) if re.search(rf"(?<![\d,.]){figure}(?![\d,])", said)
    ]


def test_the_sheet_holds_no_number_but_lines_quantities_and_the_stated_sum(sent: Sent) -> None:
    form = sent.package.form
    book = load_workbook(sent.package.paths[1])
    found = {
        float(cell.value)
        for sheet in book.worksheets
        for row in sheet.iter_rows()
        for cell in row
        if isinstance(cell.value, int | float)
    }

    assert found <= {
        *(float(line.line) for line in form.lines),
        *(line.quantity for line in form.lines),
        600.0,
    }
    assert [sheet.sheet_state for sheet in book.worksheets] == ["visible"] * 4


def test_pictures_carry_no_place_and_no_camera(sent: Sent) -> None:
    photo = next(path for path in sent.package.paths if path.suffix == ".jpg")
    pdf = PdfReader(sent.package.paths[0])
    pictures = [image.data for page in pdf.pages for image in page.images]

    assert pictures
    for content in (photo.read_bytes(), *pictures):
        with Image.open(io.BytesIO(content)) as picture:
            assert not picture.getexif()
            assert "comment" not in picture.info
            assert "exif" not in picture.info


def test_the_metadata_name_the_building_and_the_program_alone(sent: Sent) -> None:
    facts = PdfReader(sent.package.paths[0]).metadata

    assert facts is not None
    assert facts.author == "leanto"
    assert "Alder Lane garage" in str(facts.title)
    assert str(facts["/CreationDate"]).startswith("D:20260602000000")


def test_it_says_what_a_bidder_must_know(sent: Sent) -> None:
    text = pdf_text(sent.package.paths[0])

    for said in INVITATION.values():
        assert said in text
    for heading in (
        "Invitation to bid",
        "How to bid",
        "General conditions",
        "No contract, no legal advice",
        "Permits and inspections",
        "Insurance",
        "License",
        "Lien waivers",
        "Payment",
        "Changes",
        "Warranty",
        "Protection and cleaning",
        "Hazards and tests",
        "Lines of work",
        "Alternates",
        "Allowances",
        "Unit prices for what is hidden",
        "Not included, not seen",
        "Addenda",
        "Sketches",
        "Pictures",
        "Bid form",
    ):
        assert heading in text
    assert FOR_BIDDERS in text
    assert f"Light fittings ${STATED}" in text
    assert "not named yet" in text
    assert "Photo 1, " in text


def test_every_line_for_bidders_is_there_once_with_its_quantity(sent: Sent) -> None:
    with Job.open(sent.folder) as job:
        scope = job.assess().scope
    text = pdf_text(sent.package.paths[0])
    form = sent.package.form

    assert {line.item_id for line in form.lines} == {item.id for item in scope.for_bidders}
    assert scope.by_owner
    assert scope.struck
    flat = text.replace(" ", "")
    boxes = {from_pdf_name(name) for name in PdfReader(sent.package.paths[0]).get_fields() or {}}
    for item in scope.for_bidders:
        assert {f"unit|{item.id}", f"amount|{item.id}"} <= boxes
    not_priced = [*scope.by_owner, *(struck.item for struck in scope.struck)]
    for item in not_priced:
        assert not any(box.partition("|")[2] == item.id for box in boxes)
    for item in (*scope.for_bidders, *not_priced):
        assert item.id not in flat, "people read line numbers, not ids"
    for item in (*scope.for_bidders, *scope.by_owner):
        assert item.work.title.replace(" ", "") in flat
    assert any(line.quantity == 77 for line in form.lines)
    assert {one.id for one in scope.alternates} <= {one.id for one in form.alternates}
    kinds = {one.id.partition("@")[0] for one in form.alternates}
    assert kinds & {"gut", "keep"}, "the other course is not among the alternates"


def test_a_line_by_the_owner_has_no_room_for_a_price_in_the_repair_scope(sent: Sent) -> None:
    with Job.open(sent.folder) as job:
        assessment = job.assess()
    own = {item.id: item for item in assessment.scope.by_owner}
    report = repair_scope(assessment)

    priced = [
        row
        for table in report.blocks
        if isinstance(table, Table) and any(column.blank for column in table.columns)
        for row in table.rows
        if not isinstance(row, Band)
    ]

    assert own
    assert priced
    numbers = numbering(assessment).items
    assert not {str(numbers[id_]) for id_ in own} & {row[0] for row in priced}


def test_what_is_open_in_the_invitation_is_said(sent: Sent) -> None:
    (notice,) = sent.package.notices

    assert "place" in notice
    assert "contact" not in notice


def test_it_is_recorded_that_it_went_out(sent: Sent) -> None:
    with Job.open(sent.folder) as job:
        assert [form.form_id for form in job.bids.sent] == [sent.package.form.form_id]
        assert job.bids.form == sent.package.form


def test_the_same_scope_sent_again_gives_the_same_bytes(sent: Sent, tmp_path: Path) -> None:
    with Job.open(sent.folder) as job:
        again = send_package(job, tmp_path / "elsewhere", day=DAY)
        assert len(job.bids.sent) == 1

    assert again.form == sent.package.form
    for old, new in zip(sent.package.paths, again.paths, strict=True):
        assert old.read_bytes() == new.read_bytes()
    assert again.paths[-1].name == "elsewhere.zip"


@pytest.mark.skipif(QPDF is None, reason="qpdf is not here")
def test_the_pdf_passes_the_check_of_another_program(sent: Sent) -> None:
    subprocess.run([str(QPDF), "--check", str(sent.package.paths[0])], check=True)


@pytest.fixture
def copied(sent: Sent, tmp_path: Path) -> Path:
    """A job of its own, as it was when the first package went out."""
    shutil.copytree(sent.folder, tmp_path / "garage")
    return tmp_path / "garage"


def test_a_changed_scope_goes_out_as_the_next_addendum(copied: Path) -> None:
    with Job.open(copied) as job:
        form = job.bids.form
        gone, other = form.lines[0], next(x for x in form.lines[1:] if x.unit == "sq ft")
        job.record(ScopeMarked(item_id=gone.item_id, mark="struck"))
        job.record(ScopeQuantity(item_id=other.item_id, quantity=123, reason="again"))
        job.record(ScopeAdded(work="dry-framing", quantity=1, note="New here."))
        first = send_package(job, day=DAY)
        second = send_package(job, day=DAY)

    assert (first.form.addendum, second.form.addendum) == (1, 1)
    assert first.paths[0].parent.name == "bid-package-addendum-1"
    text = pdf_text(first.paths[0])
    assert "Repair scope for bidders, addendum 1" in text
    assert "Addendum 1: what changed" in text
    assert f"Left out: {gone.title}, {gone.place}" in text
    assert "123 sq ft, was " in text
    assert "New: line " in text
    with zipfile.ZipFile(first.paths[-1]) as packed:
        assert all(name.startswith("bid-package-addendum-1/") for name in packed.namelist())
    assert first.paths[0].read_bytes() == second.paths[0].read_bytes()


def test_an_older_package_is_replaced_whole(copied: Path) -> None:
    stale = copied / "reports" / "bid-package" / "photos" / "photo-09.jpg"
    stale.write_bytes(b"of another day")
    with Job.open(copied) as job:
        package = send_package(job, day=DAY)

    assert not stale.exists()
    assert package.paths[0].is_file()
    assert not list((copied / "reports").glob(".*"))


def test_a_folder_with_anything_else_in_it_is_left_alone(copied: Path, tmp_path: Path) -> None:
    target = tmp_path / "mine"
    target.mkdir()
    (target / "diary.txt").write_text("dear diary")
    with Job.open(copied) as job, pytest.raises(ReportError, match=r"diary\.txt"):
        write_package(job, target)

    assert [path.name for path in target.iterdir()] == ["diary.txt"]
    assert not target.with_suffix(".zip").exists()


def test_a_package_that_could_not_be_written_leaves_the_older_one(
    copied: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    def refuse(*_arguments: object, **_options: object) -> bytes:
        raise OSError(28, "No space left on device")

    pdf = copied / "reports" / "bid-package" / "repair-scope.pdf"
    before = pdf.read_bytes()
    monkeypatch.setattr("leanto.reports.spreadsheet.bid_workbook", refuse)
    with Job.open(copied) as job, pytest.raises(ReportError, match="No space left"):
        send_package(job, day=DAY)

    assert pdf.read_bytes() == before
    assert not list((copied / "reports").glob(".*"))


def test_a_photo_that_is_gone_is_said_and_left_out(copied: Path) -> None:
    for path in (copied / "photos").iterdir():
        path.write_bytes(b"no picture")
    with Job.open(copied) as job:
        package = send_package(job, day=DAY)

    assert not [path for path in package.paths if path.suffix == ".jpg"]
    assert any("Photo 1" in notice for notice in package.notices)


def test_a_fault_in_the_owners_file_is_named_with_its_line(copied: Path) -> None:
    path = copied / "bidding.yaml"
    path.write_text(path.read_text("utf-8").replace("amount_usd: 600", "amount_usd: lots"), "utf-8")
    with Job.open(copied) as job, pytest.raises(InputProblems, match=r"bidding\.yaml:\d+"):
        send_package(job, day=DAY)
