"""A bid is chosen, paid for, and walls are opened: recorded whole, undone, exported, kept."""

from __future__ import annotations

import hashlib
from collections.abc import Callable
from datetime import date, datetime
from decimal import Decimal
from pathlib import Path

import pytest
from filled_bids import as_csv, fields
from PIL import Image
from pypdf import PdfReader

from leanto.contract.pricing import amount_of
from leanto.errors import JobError, LeantoError, PhotoError, ReadOnlyJob
from leanto.job import Job
from leanto.job.bidding import lay_out_bidding
from leanto.job.bidding_text import bidding_file
from leanto.job.package import send_package
from leanto.job.recovering import rescue
from leanto.record.agreed_entry import Opened
from leanto.record.entry import ScopeAdded, ScopeMarked
from leanto.reports.text import to_text

PATCH, PROTECT = "patch-board@main.north.inside+1", "protect-room@building+2"
NORTH = "main.north.inside"


@pytest.fixture
def bid_on(job: Job, tmp_path: Path) -> Job:
    """A job with two added lines and one bid of $12 a unit, with unit prices of $20."""
    job.record(ScopeAdded(work="patch-board", surface_id=NORTH, quantity=40, place=""))
    job.record(ScopeAdded(work="protect-room", quantity=1))
    job.bids.mark_sent(job.bids.form_now())
    add_bid(job, tmp_path, "Alder Works")
    return job


def add_bid(job: Job, tmp_path: Path, bidder: str, **units: str) -> None:
    form = job.bids.form
    more = {f"askunit|{ask.id}": "20" for ask in form.unit_prices}
    path = tmp_path / f"{bidder}.csv"
    path.write_bytes(as_csv(form, fields(form, bidder, units, **more)))
    job.bids.add(path)


def picture(tmp_path: Path, name: str = "receipt.jpg") -> Path:
    path = tmp_path / name
    exif = Image.Exif()
    exif[0x010F] = "A camera"
    Image.new("RGB", (80, 60), "gray").save(path, exif=exif)
    return path


def test_the_baseline_stays_as_it_was_when_the_scope_and_the_bid_change(
    bid_on: Job, tmp_path: Path
) -> None:
    award = bid_on.contract.choose("alder", contingency_usd=Decimal(900), reason="Answered all.")
    before = bid_on.contract.view()

    bid_on.record(ScopeMarked(item_id=PATCH, mark="struck"))
    bid_on.bids.answer("Alder Works", f"unit|{PATCH}", "99")

    assert bid_on.contract.award == award
    assert bid_on.contract.view() == before
    assert {line.id: line.usd for line in award.lines}[PATCH] == 400
    assert award.awarded_on == date(2026, 11, 25)


def test_the_contingency_is_ours_unless_the_owner_gives_one(bid_on: Job) -> None:
    from leanto.assessment import with_money

    money = with_money(bid_on.assess()).money
    assert money is not None
    assert bid_on.contract.choose("Alder").contingency_usd == round(money.contingency_usd)


def test_lines_by_the_owner_stand_in_the_view_with_what_was_planned(bid_on: Job) -> None:
    own_id = f"insulate-open@{NORTH}+3"
    bid_on.record(ScopeAdded(work="insulate-open", surface_id=NORTH, quantity=90, place=""))
    bid_on.record(ScopeMarked(item_id=own_id, mark="by owner"))
    bid_on.contract.choose("Alder", contingency_usd=Decimal(0))

    own = [row for row in bid_on.contract.view().rows if row.is_own]

    assert len(own) == 1
    assert own[0].number.startswith("O")
    assert own[0].committed == 0 < own[0].to_go


@pytest.mark.parametrize(
    ("bidder", "alternate", "said"),
    [
        ("Nobody", [], "There is no bid of Nobody"),
        ("", [], "There is no bid of"),
        ("Alder", ["A9"], "There is no alternate A9"),
        ("Works", [], "more than one bid"),
    ],
)
def test_what_cannot_be_chosen_is_refused(
    bidder: str, alternate: list[str], said: str, bid_on: Job, tmp_path: Path
) -> None:
    add_bid(bid_on, tmp_path, "Birch Works")
    before = len(bid_on.entries)

    with pytest.raises(LeantoError, match=said):
        bid_on.contract.choose(bidder, alternates=alternate)

    assert len(bid_on.entries) == before


def test_the_chosen_bid_is_not_withdrawn_unseen(bid_on: Job) -> None:
    bid_on.contract.choose("Alder", contingency_usd=Decimal(0))

    with pytest.raises(LeantoError, match="is the one that was chosen"):
        bid_on.bids.withdraw("Alder Works")


def test_a_payment_keeps_a_bare_copy_of_its_receipt(bid_on: Job, tmp_path: Path) -> None:
    bid_on.contract.choose("Alder", contingency_usd=Decimal(0))
    number = bid_on.contract.view().rows[0].number

    paid = bid_on.contract.pay(
        f"line {number}", Decimal("99.995"), note=" First ", receipt=picture(tmp_path)
    )

    assert (paid.number, paid.line, paid.usd, paid.note) == (1, number, Decimal("100.00"), "First")
    (photo,) = bid_on.photos
    with Image.open(bid_on.photo_path(photo)) as kept:
        assert not kept.getexif()
    assert bid_on.contract.view().paid == 100


@pytest.mark.parametrize(
    ("line", "usd", "said"),
    [
        ("77", "10", "There is no line 77 to pay"),
        ("C1", "10", "There is no line C1 to pay"),
        ("all", "0", "A payment of nothing"),
        ("all", "10000001", "no such amount"),
    ],
)
def test_a_payment_that_cannot_be_is_refused(line: str, usd: str, said: str, bid_on: Job) -> None:
    bid_on.contract.choose("Alder", contingency_usd=Decimal(0))
    before = len(bid_on.entries)

    with pytest.raises(LeantoError, match=said):
        bid_on.contract.pay(line, Decimal(usd))
    assert len(bid_on.entries) == before


def test_a_receipt_that_is_no_picture_records_nothing(bid_on: Job, tmp_path: Path) -> None:
    bid_on.contract.choose("Alder", contingency_usd=Decimal(0))
    path = tmp_path / "receipt.txt"
    path.write_text("$100")

    with pytest.raises(PhotoError):
        bid_on.contract.pay("all", Decimal(100), receipt=path)
    assert bid_on.walk.payments == {}


def test_before_a_choice_there_is_nothing_to_pay_or_to_ask_for(bid_on: Job) -> None:
    bid_on.opening.record(NORTH, opened_sqft=20, bad_sqft=2, found=["rot"])

    for act in (
        bid_on.contract.view,
        bid_on.opening.ask,
        lambda: bid_on.contract.pay("all", Decimal(1)),
    ):
        with pytest.raises(JobError, match="No bid was chosen yet"):
            act()


def test_payments_and_openings_are_taken_out_and_undone(bid_on: Job) -> None:
    bid_on.contract.choose("Alder", contingency_usd=Decimal(0))
    bid_on.contract.pay("all", Decimal(10))
    bid_on.contract.pay("all", Decimal(20))
    bid_on.contract.strike_payment(1)
    bid_on.opening.record(NORTH, opened_sqft=20, bad_sqft=0)
    bid_on.opening.strike(1)

    assert (list(bid_on.walk.payments), bid_on.walk.openings) == ([2], {})
    bid_on.undo()
    assert list(bid_on.walk.openings) == [1]
    assert bid_on.contract.pay("all", Decimal(5)).number == 3
    with pytest.raises(LeantoError, match="no payment 1"):
        bid_on.contract.strike_payment(1)


def test_what_is_found_is_priced_by_the_chosen_bidder_first(bid_on: Job) -> None:
    bid_on.contract.choose("Alder", contingency_usd=Decimal(300))

    opening = bid_on.opening.record(NORTH, opened_sqft=50, bad_sqft=6, found=["rot", "rot"])

    lines = bid_on.opening.lines_of(opening)
    assert {line.work for line in lines} <= {"repair-behind-lining", "patch-board"}
    assert [(line.rate_usd, line.basis) for line in lines] == [(20, "agreed unit price")] * len(
        lines
    )
    assert sum(amount_of(line) for line in lines) == 120 * len(lines)
    assert opening.found == ("rot",)


def test_without_a_bid_ours_stands_with_the_premium_of_a_change(job: Job) -> None:
    opening = job.opening.record(NORTH, opened_sqft=50, bad_sqft=10)

    (line, *_) = job.opening.lines_of(opening)

    premium = 1 + job.library.factors.change_order_pct.likely / 100
    assert line.basis == "ours"
    assert line.rate_usd > job.library.prices[line.work].materials_usd.likely * premium


@pytest.mark.parametrize(
    ("opened", "bad", "work", "said"),
    [
        (20, 21, "", "does not fit into"),
        (5_000, 1, "", "cannot be opened of it"),
        (0, 0, "", "cannot be opened of it"),
        (20, 1, "no-such-work", "There is no work"),
        (20, 1, "hour-wizard", "There is no wage"),
    ],
)
def test_what_cannot_be_found_is_refused(
    opened: float, bad: float, work: str, said: str, job: Job
) -> None:
    from leanto.record.agreed_entry import FoundWork

    works = [FoundWork(work=work, quantity=1)] if work else []
    before = len(job.entries)

    with pytest.raises(LeantoError, match=said):
        job.opening.record(NORTH, opened_sqft=opened, bad_sqft=bad, works=works)
    assert len(job.entries) == before


def test_a_surface_is_named_by_number_id_or_part_of_its_name(job: Job) -> None:
    first = job.opening.surfaces[0]

    assert first.surface.is_lined
    for text in ("1", first.surface.id, first.surface.name.upper()):
        assert job.opening.named(text).surface == first.surface
    for text, said in (("wall", "More than one"), ("cellar", "There is no surface")):
        with pytest.raises(LeantoError, match=said):
            job.opening.named(text)


def test_the_rest_of_a_surface_is_opened_by_default_and_never_more_than_it_has(job: Job) -> None:
    whole = job.grounds.surfaces[NORTH].net_area_sqft
    job.opening.record(NORTH, opened_sqft=20, bad_sqft=0)

    assert job.opening.record(NORTH, bad_sqft=0).opened_sqft == pytest.approx(whole - 20, abs=0.1)
    with pytest.raises(LeantoError, match=r"were opened before|was opened whole"):
        job.opening.record(NORTH, opened_sqft=20, bad_sqft=0)


def test_a_change_holds_each_opening_once_and_is_settled(bid_on: Job) -> None:
    bid_on.contract.choose("Alder", contingency_usd=Decimal(300))
    bid_on.opening.record(NORTH, opened_sqft=20, bad_sqft=3, found=["wet"])
    first = bid_on.opening.ask()

    assert first.openings == (1,)
    assert bid_on.opening.open_openings == ()
    with pytest.raises(LeantoError, match="Nothing that was found"):
        bid_on.opening.ask()
    with pytest.raises(LeantoError, match="stands in change 1"):
        bid_on.opening.strike(1)
    bid_on.opening.settle(1, Decimal(55))
    assert bid_on.contract.view().contingency_left == 245
    bid_on.contract.pay("c1", Decimal(55))
    bid_on.undo()
    bid_on.undo()
    assert bid_on.walk.changes[1].settled_usd is None


def test_the_request_holds_no_figure_of_ours(bid_on: Job, tmp_path: Path) -> None:
    from leanto.record.agreed_entry import FoundWork

    bid_on.contract.choose("Alder", contingency_usd=Decimal(7_531))
    works = [
        FoundWork(work="repair-behind-lining", quantity=2),
        FoundWork(work="strip-plaster", quantity=9),
    ]
    bid_on.opening.record(
        NORTH,
        opened_sqft=20,
        bad_sqft=3,
        found=["rot"],
        works=works,
        note="Behind the <b>boards</b>",
        pictures=[picture(tmp_path, "wall.jpg")],
    )
    change = bid_on.opening.ask()

    text = to_text(bid_on.opening.request_report(change.number), 100)
    written = bid_on.opening.write_request(change.number)

    ours = next(line for line in change.lines if line.basis == "ours")
    assert f"{ours.rate_usd:,.2f}" not in text
    assert "______" in text
    assert "$40.00" in text
    assert "7,531" not in text
    assert "Behind the <b>boards</b>" in text
    assert "Nothing of this is done before both have agreed in writing" in text
    assert written.path.read_bytes().startswith(b"%PDF-")


def test_a_package_sent_after_a_choice_holds_nothing_of_it(bid_on: Job, tmp_path: Path) -> None:
    everything(bid_on, tmp_path)
    bid_on.record(ScopeAdded(work="protect-room", quantity=2))

    package = send_package(bid_on)

    assert package.form.addendum == 1
    text = " ".join(page.extract_text() for page in PdfReader(package.paths[0]).pages)
    digests = [photo.digest for photo in bid_on.photos]
    assert digests
    for path in package.paths:
        content = path.read_bytes()
        assert hashlib.sha256(content).hexdigest() not in digests
    for word in ("Alder", "300.50", "66.60", "12.25", "Two lines", "Fair."):
        assert word not in text
    assert not [path for path in package.paths if path.suffix == ".jpg"]


def test_a_read_only_job_takes_nothing(bid_on: Job, folder: Path) -> None:
    with Job.open(folder) as second:
        for act in (
            lambda: second.contract.choose("Alder"),
            lambda: second.opening.record(NORTH, opened_sqft=5, bad_sqft=0),
            lambda: second.opening.settle(1, Decimal(0)),
        ):
            with pytest.raises(ReadOnlyJob):
                act()


def test_nothing_of_it_goes_around_its_own_door(job: Job) -> None:
    body = Opened(
        number=1, surface_id=NORTH, opened_sqft=1, bad_sqft=0, opened_on=date(2026, 11, 25)
    )

    with pytest.raises(ValueError, match="from outside"):
        job.record(body)


def everything(bid_on: Job, tmp_path: Path) -> None:
    """One entry of each kind, an own bidding file, and pictures."""
    lay_out_bidding(bid_on.places)
    own = bidding_file(bid_on.places)
    own.write_text(own.read_text("utf-8") + "# my own remark\n", "utf-8")
    bid_on.contract.choose("Alder", contingency_usd=Decimal("300.50"), reason="Fair.")
    bid_on.contract.pay("all", Decimal(10), note="Gone")
    bid_on.contract.pay("all", Decimal("12.25"), receipt=picture(tmp_path))
    bid_on.contract.strike_payment(1)
    bid_on.opening.record(
        NORTH,
        opened_sqft=20,
        bad_sqft=3,
        found=["rot"],
        pictures=[picture(tmp_path, "wall.png")],
        note="Two lines\nof it",
    )
    bid_on.opening.ask()
    bid_on.opening.settle(1, Decimal("66.60"))


def test_an_export_carries_all_of_it(
    bid_on: Job, tmp_path: Path, clock: Callable[[], datetime]
) -> None:
    everything(bid_on, tmp_path)
    export = bid_on.places.folder.parent / "export.yaml"
    export.write_text(bid_on.export_text(), encoding="utf-8")

    with Job.from_export(tmp_path / "again", export, clock=clock) as again:
        assert again.walk == bid_on.walk
        assert again.contract.view() == bid_on.contract.view()
        assert again.notices == ()
        assert bidding_file(again.places).read_text("utf-8").endswith("# my own remark\n")
        (kept,) = again.walk.bids.values()
        assert again.bids.file_of(kept).read_bytes() == bid_on.bids.file_of(kept).read_bytes()


def test_recovery_saves_all_of_it(bid_on: Job, tmp_path: Path) -> None:
    everything(bid_on, tmp_path)
    walk, folder = bid_on.walk, bid_on.places.folder
    bid_on.close()

    saved = rescue(folder, tmp_path / "saved")

    assert saved.is_whole
    assert not any("Belonging to no entry" in line for line in saved.lines)
    with Job.open(tmp_path / "saved") as again:
        assert again.walk == walk
        assert "# my own remark" in bidding_file(again.places).read_text("utf-8")
        assert len(list(again.places.bids.iterdir())) == 1


def test_recovery_names_a_picture_that_is_gone(bid_on: Job, tmp_path: Path) -> None:
    everything(bid_on, tmp_path)
    folder, (photo, *_) = bid_on.places.folder, bid_on.photos
    bid_on.photo_path(photo).unlink()
    bid_on.close()

    saved = rescue(folder, tmp_path / "saved")

    assert not saved.is_whole
    assert any("Missing: the picture" in line for line in saved.lines)
