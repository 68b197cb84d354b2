"""The bids screen at 80x24: both views, a bid added by its path, a field answered."""

from __future__ import annotations

from pathlib import Path

import pytest
from filled_bids import as_csv, fields
from textual.pilot import Pilot
from textual.widgets import Input, Static

from leanto.job import Job
from leanto.record.entry import ScopeAdded
from leanto.tui.app import LeantoApp
from leanto.tui.screens.bids import BidsScreen
from leanto.tui.screens.details import DetailsScreen

SILL = "test-repair@main.north.outside+1"
DOUBTFUL = f"unit|{SILL}"


@pytest.fixture
def with_bids(job: Job, tmp_path: Path) -> Job:
    job.record(ScopeAdded(work="test-repair", surface_id="main.north.outside", quantity=12))
    form = job.bids.form
    for bidder, price in (("Alder", "20"), ("Birch", "1.200")):
        path = tmp_path / f"{bidder}.csv"
        path.write_bytes(as_csv(form, fields(form, bidder, {SILL: price}, total="99")))
        job.bids.add(path)
    return job


async def shown(app: LeantoApp, pilot: Pilot[None]) -> BidsScreen:
    await pilot.press("b")
    await pilot.pause()
    assert isinstance(app.screen, BidsScreen)
    return app.screen


def said(screen: BidsScreen, id_: str) -> str:
    return str(screen.query_one(f"#{id_}", Static).render())


async def test_without_bids_it_says_how_to_add_one(job: Job) -> None:
    app = LeantoApp(job)
    async with app.run_test(size=(80, 24)) as pilot:
        screen = await shown(app, pilot)
        assert "No bid has come back yet. a adds one" in said(screen, "answer")


async def test_the_lines_stand_side_by_side(with_bids: Job) -> None:
    app = LeantoApp(with_bids)
    async with app.run_test(size=(80, 24)) as pilot:
        screen = await shown(app, pilot)
        assert "On one base: Alder $" in said(screen, "answer")
        assert "Not read: 1" in said(screen, "answer")
        titles = [str(column.label) for column in screen.table.ordered_columns]
        assert [title.strip() for title in titles] == ["Line", "Work", "Ours", "Alder", "Birch"]
        keys = [row.key for row in screen.table._shown]
        screen.table.move_cursor(row=keys.index(f"line {SILL}"))
        await pilot.pause()
        assert "Birch: $240 p - could not be read; the one other bid" in said(screen, "preview")
        await pilot.press("enter")
        await pilot.pause()
        assert isinstance(app.screen, DetailsScreen)


async def test_a_doubtful_field_is_answered_and_the_bid_counts(with_bids: Job) -> None:
    app = LeantoApp(with_bids)
    async with app.run_test(size=(80, 24)) as pilot:
        screen = await shown(app, pilot)
        await pilot.press("tab")
        await pilot.pause()
        keys = [row.key for row in screen.table._shown]
        screen.table.move_cursor(row=keys.index("1 unread 0"))
        await pilot.press("m")
        await pilot.pause()
        app.screen.query_one(Input).value = "1.300"
        await pilot.press("enter")
        await pilot.pause()
        assert app.screen is not screen, "a doubtful answer is refused"
        app.screen.query_one(Input).value = "12"
        await pilot.press("enter")
        await pilot.pause()
        assert app.screen is screen
        assert "Not read" not in said(screen, "answer")
    birch = with_bids.bids.all[1]
    assert birch.entries_of(SILL)[0].unit_price.usd == 12


async def test_a_bid_is_added_by_its_path_and_a_bad_file_is_said(
    with_bids: Job, tmp_path: Path
) -> None:
    form = with_bids.bids.form
    good, broken = tmp_path / "c.csv", tmp_path / "broken.csv"
    good.write_bytes(as_csv(form, fields(form, "Cedar")))
    broken.write_text("hello")
    app = LeantoApp(with_bids)
    async with app.run_test(size=(80, 24)) as pilot:
        screen = await shown(app, pilot)
        await pilot.press("a")
        await pilot.pause()
        app.screen.query_one(Input).value = str(broken)
        await pilot.press("enter")
        await pilot.pause()
        assert "has no column" in str(app.screen.query_one("#fault", Static).render())
        app.screen.query_one(Input).value = str(good)
        await pilot.press("enter")
        await pilot.pause()
        assert app.screen is screen
        assert "Cedar $" in said(screen, "answer")


async def test_the_table_is_written_as_pdf(with_bids: Job) -> None:
    app = LeantoApp(with_bids)
    async with app.run_test(size=(80, 24)) as pilot:
        await shown(app, pilot)
        await pilot.press("p")
        await app.workers.wait_for_complete()
        await pilot.pause()
    assert (with_bids.places.reports / "bid-table.pdf").is_file()
