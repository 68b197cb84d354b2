"""Choosing a bid, paying, and opening walls, by keys at 80x24; the record is read afterwards."""

from __future__ import annotations

from decimal import Decimal
from pathlib import Path

import pytest
from filled_bids import as_csv, fields
from textual.pilot import Pilot
from textual.widgets import Input, Static

from leanto.job import Job
from leanto.record.entry import ScopeAdded
from leanto.tui.app import LeantoApp
from leanto.tui.screens.ask_choice import AskChoice
from leanto.tui.screens.bids import BidsScreen
from leanto.tui.screens.costs import CostsScreen
from leanto.tui.screens.opening import OpeningScreen

SILL = "test-repair@main.north.outside+1"
INSIDE = "main.north.inside"


@pytest.fixture
def with_bid(job: Job, tmp_path: Path) -> Job:
    """A bid of 12 x $20 for the sill and $10 a unit for all other lines, $8,680 together."""
    job.record(ScopeAdded(work="test-repair", surface_id="main.north.outside", quantity=12))
    form = job.bids.form
    path = tmp_path / "alder.csv"
    more = {f"askunit|{ask.id}": "20" for ask in form.unit_prices}
    path.write_bytes(as_csv(form, fields(form, "Alder", {SILL: "20"}, **more)))
    job.bids.add(path)
    others = sum(line.quantity for line in form.lines if line.item_id != SILL)
    assert 12 * 20 + 10 * others == 8_680
    return job


def said(screen: BidsScreen | CostsScreen | OpeningScreen, id_: str = "answer") -> str:
    return str(screen.query_one(f"#{id_}", Static).render())


async def typed(pilot: Pilot[None], *texts: str) -> None:
    for text in texts:
        pilot.app.screen.query_one(Input).value = text
        await pilot.press("enter")
        await pilot.pause()


async def test_a_bid_is_chosen_and_its_costs_are_shown(with_bid: Job) -> None:
    app = LeantoApp(with_bid)
    async with app.run_test(size=(80, 24)) as pilot:
        await pilot.press("b")
        await pilot.pause()
        await pilot.press("g")
        await pilot.pause()
        assert isinstance(app.screen, AskChoice)
        await pilot.press("1")
        await pilot.pause()
        await typed(pilot, "The only one.")
        assert isinstance(app.screen, CostsScreen)
        assert "Committed $8,680, paid $0, to go $8,680." in said(app.screen)
        await pilot.press("u")
        await pilot.pause()
        assert "No bid was chosen yet" in said(app.screen)
    assert with_bid.contract.award is None


async def test_a_payment_is_recorded_on_the_line_under_the_cursor(with_bid: Job) -> None:
    with_bid.contract.choose("Alder")
    app = LeantoApp(with_bid)
    async with app.run_test(size=(80, 24)) as pilot:
        await pilot.press("b", "c")
        await pilot.pause()
        assert isinstance(app.screen, CostsScreen)
        keys = [row.key for row in app.screen.table._shown]
        app.screen.table.move_cursor(row=keys.index("line 1"))
        await pilot.press("a")
        await pilot.pause()
        await typed(pilot, "1.200")
        assert "no clear amount" in str(app.screen.query_one("#fault", Static).render())
        await typed(pilot, "100", "check 7")
        await pilot.press("escape")
        await pilot.pause()
        assert isinstance(app.screen, CostsScreen)
        assert "paid $100, to go $8,580" in said(app.screen)
        await pilot.press("tab")
        await pilot.pause()
        assert [row.key for row in app.screen.table._shown] == ["paid 1"]
        await pilot.press("x")
        await pilot.pause()
        assert "paid $0" in said(app.screen)
    assert with_bid.walk.payments == {}


async def test_an_opening_is_asked_for_priced_and_settled(with_bid: Job) -> None:
    with_bid.contract.choose("Alder", contingency_usd=Decimal(500))
    app = LeantoApp(with_bid)
    async with app.run_test(size=(80, 24)) as pilot:
        await pilot.press("b", "o")
        await pilot.pause()
        screen = app.screen
        assert isinstance(screen, OpeningScreen)
        assert "Nothing was opened yet." in said(screen)
        keys = [row.key for row in screen.table._shown]
        screen.table.move_cursor(row=keys.index(INSIDE))
        await pilot.press("a")
        await pilot.pause()
        await typed(pilot, "40", "50", "ro", "", "Behind the boards")
        await pilot.press("escape")
        await pilot.pause()
        assert not with_bid.walk.openings, "50 sq ft bad does not fit into 40"
        await pilot.press("a")
        await pilot.pause()
        await typed(pilot, "40", "4", "ro", "sister-stud=2", "Behind the boards")
        await pilot.press("escape")
        await pilot.pause()
        assert "In no change request yet: $40" in said(screen)
        await pilot.press("p")
        await pilot.pause()
        await pilot.press("g")
        await pilot.pause()
        await typed(pilot, "35.50")
        assert "used $36, left $465" in said(screen)
    opening = with_bid.walk.openings[1]
    assert (opening.surface_id, opening.opened_sqft, opening.bad_sqft) == (INSIDE, 40, 4)
    assert opening.found == ("rot",)
    assert with_bid.walk.changes[1].settled_usd == Decimal("35.50")
    assert (with_bid.places.reports / "change-order-1.pdf").is_file()


async def test_without_a_choice_openings_are_priced_by_ours(with_bid: Job) -> None:
    app = LeantoApp(with_bid)
    async with app.run_test(size=(80, 24)) as pilot:
        await pilot.press("b", "o")
        await pilot.pause()
        assert isinstance(app.screen, OpeningScreen)
        assert "No bid was chosen yet" in said(app.screen)
