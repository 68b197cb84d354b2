"""The three bids for the demo building, each with the fault that it was given."""

from __future__ import annotations

from collections.abc import Iterator

import pytest

from leanto.bids.levelled import Levelled
from leanto.demo.bids import add_demo_bids
from leanto.demo.make import make_demo
from leanto.demo.opening import add_demo_opening
from leanto.job import Job


@pytest.fixture(scope="module")
def job(tmp_path_factory: pytest.TempPathFactory) -> Iterator[Job]:
    with make_demo(tmp_path_factory.mktemp("bids") / "demo-job") as job:
        assert add_demo_bids(job) is not None
        yield job


@pytest.fixture(scope="module")
def made(job: Job) -> Levelled:
    return job.bids.table()


def test_one_comes_in_each_format_and_everything_is_read(job: Job) -> None:
    bids = job.bids.all

    assert [bid.file_name for bid in bids] == [
        "marrow-lane.xlsx",
        "tern-hill.pdf",
        "three-gates.csv",
    ]
    assert not [unread for bid in bids for unread in bid.unread]
    assert all("(invented)" in bid.bidder for bid in bids)
    assert {bid.form_id for bid in bids} == {job.bids.form.form_id}


def test_each_is_caught_at_its_own_fault_and_no_other(made: Levelled) -> None:
    missing, wrong, unbalanced = made.bids

    assert missing.missing_trades == ("electrician",)
    assert missing.plugged > 0
    assert [len(one.faults) for one in made.bids] == [0, 2, 0]
    line, total = wrong.faults
    assert line.stated - line.computed == 900
    assert total.stated - total.computed == -450
    assert [bool(one.unbalanced) for one in made.bids] == [False, False, True]
    assert any(said.startswith("Front-loaded") for said in unbalanced.unbalanced)
    assert any("Unit prices for what may be found" in said for said in unbalanced.unbalanced)


def test_the_lowest_base_bid_is_not_the_cheapest_job(made: Levelled) -> None:
    missing, wrong, unbalanced = made.bids

    assert unbalanced.base < missing.base < wrong.base
    assert unbalanced.with_hidden > max(missing.with_hidden, wrong.with_hidden)


def test_bids_are_added_once(job: Job) -> None:
    entries = len(job.entries)

    assert add_demo_bids(job) is None
    assert len(job.entries) == entries


def test_what_came_after_the_bids_is_told_once_and_by_the_bidders_prices(job: Job) -> None:
    assert add_demo_opening(job)
    assert not add_demo_opening(job), "what is there stays as it is"

    view = job.contract.view()
    (change,) = job.walk.changes.values()
    assert {line.basis for line in change.lines} == {"agreed unit price"}
    assert view.contract == job.bids.table().bids[1].summed
    assert view.contingency_left == view.contingency - 225
    verdicts = [row.verdict for row in job.opening.compared()]
    assert len(verdicts) == 2
    assert "expected, not found" in verdicts
