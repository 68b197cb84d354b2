"""The bids of a job: taken in whole or not at all, answered, withdrawn, compared."""

from __future__ import annotations

from collections.abc import Callable
from datetime import datetime
from pathlib import Path

import pytest
from filled_bids import as_csv, as_pdf, as_xlsx, fields

from leanto.bids.figure import How
from leanto.bids.model import BidForm
from leanto.bids.reading.refusal import BidFileError
from leanto.errors import JobError, LeantoError, ReadOnlyJob
from leanto.job import Job
from leanto.record.bid_entry import BidAdded, BidWithdrawn
from leanto.record.entry import ScopeAdded, ScopeMarked, ScopeQuantity

PATCH, PROTECT = "patch-board@main.north.inside+1", "protect-room@building+2"


@pytest.fixture
def scoped(job: Job) -> Job:
    """The job with two lines that the owner added."""
    job.record(
        ScopeAdded(work="patch-board", surface_id="main.north.inside", quantity=40, place="")
    )
    job.record(ScopeAdded(work="protect-room", quantity=1))
    return job


def returned(job: Job, tmp_path: Path, name: str = "bid.csv", **more: str) -> Path:
    """A filled form of the job as it is now."""
    bidder = more.pop("bidder", "Alder Works")
    path = tmp_path / name
    path.write_bytes(as_csv(job.bids.form, fields(job.bids.form, bidder, **more)))
    return path


def untouched(job: Job) -> tuple[object, ...]:
    files = sorted(job.places.bids.iterdir()) if job.places.bids.exists() else []
    return len(job.entries), dict(job.walk.bids), files


def test_the_form_holds_what_bidders_price(scoped: Job) -> None:
    form = scoped.bids.form

    lines = {line.item_id: line for line in form.lines}
    assert (lines[PATCH].quantity, lines[PATCH].unit) == (40.0, "sq ft")
    assert "repair-behind-lining" in {ask.id for ask in form.unit_prices}
    assert form.job_id == scoped.bids.job_id


def test_lines_by_the_owner_are_not_on_the_form_and_alternates_stand_apart(scoped: Job) -> None:
    own = "insulate-open@main.north.inside+3"
    scoped.record(
        ScopeAdded(work="insulate-open", surface_id="main.north.inside", quantity=90, place="")
    )
    scoped.record(ScopeMarked(item_id=own, mark="by owner"))
    scoped.record(ScopeMarked(item_id=PATCH, mark="alternate"))

    form = scoped.bids.form_now()

    assert not {PATCH, own} & {line.item_id for line in form.lines}
    assert form.alternates[0].id == PATCH
    assert form.alternates[0].text == "40 sq ft, added to the base"


@pytest.mark.parametrize("kind", ["csv", "xlsx", "pdf"])
def test_a_returned_file_is_kept_as_it_came_and_recorded(
    kind: str, scoped: Job, tmp_path: Path
) -> None:
    form = scoped.bids.form
    filled = fields(form)
    content = {
        "csv": lambda: as_csv(form, filled),
        "xlsx": lambda: as_xlsx(form, filled),
        "pdf": lambda: as_pdf(form, filled, tmp_path),
    }[kind]()
    path = tmp_path / f"returned.{kind}"
    path.write_bytes(content)

    bid = scoped.bids.add(path)

    assert bid.bidder == "Alder Works"
    (kept,) = scoped.walk.bids.values()
    assert scoped.bids.file_of(kept).read_bytes() == content
    assert scoped.bids.file_of(kept).name == f"{kept.digest}.{kind}"
    assert scoped.bids.table().bids[0].summed == sum(10 * line.quantity for line in form.lines)


def test_a_bid_is_there_after_the_job_is_opened_again(
    scoped: Job, tmp_path: Path, folder: Path
) -> None:
    before = scoped.bids.add(returned(scoped, tmp_path))
    scoped.close()

    with Job.open(folder) as again:
        assert again.bids.all == (before,)


def bad(job: Job, form: BidForm, name: str) -> bytes:
    match name:
        case "other-job":
            return as_csv(form, {**fields(form, "Birch"), "job_id": "ffffffffffffffff"})
        case "empty-form":
            nothing = dict.fromkeys((line.item_id for line in form.lines), "")
            return as_csv(form, fields(form, "Birch", nothing))
        case "no-bidder":
            return as_csv(form, {**fields(form), "bidder": ""})
        case "other-lines":
            return b"Id,Amount\nnew-roof@house,500\nbidder,Birch\n"
        case "same-bidder":
            return as_csv(form, fields(form, "  alder   WORKS", total="1"))
        case "long-text":
            return as_csv(form, fields(form, "Birch", exclusions="x" * 6_000))
    return b"%PDF-1.7 cut"


@pytest.mark.parametrize(
    ("name", "said"),
    [
        ("other-job", "is a form of another job"),
        ("empty-form", "holds no line of this job's form|nothing was filled in"),
        ("no-bidder", "does not say who bids"),
        ("other-lines", "holds no line of this job's form"),
        ("same-bidder", "There is a bid of Alder Works already"),
        ("long-text", "a text that is too long"),
        ("cut", "is broken or cut short"),
    ],
)
def test_what_is_refused_leaves_everything_as_it_was(
    name: str, said: str, scoped: Job, tmp_path: Path
) -> None:
    scoped.bids.add(returned(scoped, tmp_path))
    path = tmp_path / "next.csv"
    path.write_bytes(bad(scoped, scoped.bids.form, name))
    before = untouched(scoped)

    with pytest.raises(BidFileError, match=said):
        scoped.bids.add(path)

    assert untouched(scoped) == before


def test_the_same_file_twice_is_refused(scoped: Job, tmp_path: Path) -> None:
    path = returned(scoped, tmp_path)
    scoped.bids.add(path)

    with pytest.raises(BidFileError, match="was added already: the bid of Alder Works"):
        scoped.bids.add(path)


def test_a_newer_bid_takes_the_place_of_the_older_one_only_when_asked(
    scoped: Job, tmp_path: Path
) -> None:
    scoped.bids.add(returned(scoped, tmp_path))
    newer = returned(scoped, tmp_path, "newer.csv", total="77")

    bid = scoped.bids.add(newer, in_place=True)

    assert scoped.bids.all == (bid,)
    assert bid.stated_total.usd == 77
    assert len(list(scoped.places.bids.iterdir())) == 2
    scoped.undo()
    assert scoped.bids.all[0].stated_total.usd is None


def test_a_name_may_be_given_where_the_form_has_none(scoped: Job, tmp_path: Path) -> None:
    path = returned(scoped, tmp_path, bidder="")

    assert scoped.bids.add(path, bidder="Birch").bidder == "Birch"


def test_a_file_that_cannot_be_recorded_is_not_kept(
    scoped: Job, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    path = returned(scoped, tmp_path)

    def refuse(*_: object, **__: object) -> None:
        raise JobError("The disk is full.")

    monkeypatch.setattr(scoped._journal, "append", refuse)
    with pytest.raises(JobError):
        scoped.bids.add(path)

    assert list(scoped.places.bids.iterdir()) == []


def test_a_read_only_job_takes_no_bid(scoped: Job, tmp_path: Path, folder: Path) -> None:
    path = returned(scoped, tmp_path)

    with Job.open(folder) as second, pytest.raises(ReadOnlyJob):
        second.bids.add(path)


def test_a_doubtful_amount_is_answered_by_the_owner(scoped: Job, tmp_path: Path) -> None:
    field = f"unit|{PATCH}"
    path = tmp_path / "bid.csv"
    form = scoped.bids.form
    path.write_bytes(as_csv(form, fields(form, units={PATCH: "1.200"})))
    assert [one.field for one in scoped.bids.add(path).unread] == [field]

    with pytest.raises(LeantoError, match="not understood"):
        scoped.bids.answer("alder works", field, "1.300")
    with pytest.raises(LeantoError, match="has no field"):
        scoped.bids.answer("alder works", "unit|nothing", "1200")
    bid = scoped.bids.answer("alder works", field, "1200")

    assert not bid.unread
    assert scoped.bids.all == (bid,)
    assert next(iter(scoped.walk.bids.values())).fields[field] == "1.200"
    scoped.bids.answer("alder works", field, "")
    assert scoped.bids.all[0].unread


def test_a_withdrawn_bid_counts_no_more_and_its_file_stays(scoped: Job, tmp_path: Path) -> None:
    scoped.bids.add(returned(scoped, tmp_path))

    scoped.bids.withdraw("Alder Works", "They are full.")

    assert scoped.bids.all == ()
    assert len(list(scoped.places.bids.iterdir())) == 1
    with pytest.raises(JobError, match="No bid has come back"):
        scoped.bids.table()
    with pytest.raises(LeantoError, match="There is no bid of Alder Works"):
        scoped.bids.withdraw("Alder Works")


def test_bids_go_only_through_their_own_door(scoped: Job) -> None:
    added = BidAdded(digest="5" * 64, file_name="x.pdf", bidder="X", fields={})

    for body in (added, BidWithdrawn(digest="5" * 64)):
        with pytest.raises(ValueError, match="from outside"):
            scoped.record(body)


def test_our_figures_stand_beside_the_bids(scoped: Job, tmp_path: Path) -> None:
    scoped.bids.add(returned(scoped, tmp_path))

    made = scoped.bids.table()

    likely = {line.item.id: line.total.likely for line in scoped.assess().estimate.lines}
    assert {x.line.item_id: x.ours.likely for x in made.lines if x.ours} == {
        line.item_id: likely[line.item_id] for line in made.base.form.lines
    }
    assert made.base.hidden
    assert all(work.quantity > 0 < work.ours.likely for work in made.base.hidden)


def test_a_changed_scope_makes_an_addendum_and_older_forms_are_known(
    scoped: Job, tmp_path: Path
) -> None:
    first = scoped.bids.form_now()
    assert scoped.bids.mark_sent(first) is not None
    assert scoped.bids.mark_sent(first) is None
    old = returned(scoped, tmp_path, "old.csv")
    scoped.record(ScopeQuantity(item_id=PATCH, quantity=80, reason="Looked again."))
    scoped.bids.add(old)

    assert "has changed since the form went out, in lines: 1." in scoped.bids.table().notices[0]

    second = scoped.bids.form_now()
    scoped.bids.mark_sent(second)
    made = scoped.bids.table()

    assert (first.addendum, second.addendum, second.job_id) == (0, 1, first.job_id)
    assert first.form_id != second.form_id
    assert made.bids[0].notices[0].startswith("It was priced on the first form")
    patch = next(line for line in made.lines if line.line.item_id == PATCH)
    assert (patch.cells[0].how, patch.cells[0].usd) == (How.RESCALED, 800)
    assert not any("scope has changed" in notice for notice in made.notices)


def test_an_exported_job_takes_its_forms_and_bids_along(
    scoped: Job, tmp_path: Path, clock: Callable[[], datetime]
) -> None:
    scoped.bids.mark_sent(scoped.bids.form_now())
    path = tmp_path / "bid.csv"
    form = scoped.bids.form
    path.write_bytes(as_csv(form, fields(form, units={PATCH: "1.200"})))
    scoped.bids.add(path)
    scoped.bids.answer("Alder Works", f"unit|{PATCH}", "12")
    export = tmp_path / "export.yaml"
    export.write_text(scoped.export_text(), encoding="utf-8")

    with Job.from_export(tmp_path / "again", export, clock=clock) as again:
        assert again.bids.job_id == scoped.bids.job_id
        assert again.bids.all == scoped.bids.all
        assert again.bids.form == scoped.bids.form


def test_the_table_is_written_as_pdf(scoped: Job, tmp_path: Path) -> None:
    scoped.bids.add(returned(scoped, tmp_path))

    written = scoped.bids.write_table()

    assert written.path == scoped.places.reports / "bid-table.pdf"
    assert written.path.read_bytes().startswith(b"%PDF-")
