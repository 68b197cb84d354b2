"""The money screen at 80x24: it is drawn beside the keys, scrolled, and left."""

from __future__ import annotations

import pytest
from textual.containers import VerticalScroll
from textual.pilot import Pilot
from textual.widgets import Static

from leanto.assessment import with_money
from leanto.building.model import Building
from leanto.checklist.condition import Condition
from leanto.errors import LeantoError
from leanto.job import Job
from leanto.record.entry import Answered, BuildingSet, Zoned
from leanto.tui.app import LeantoApp
from leanto.tui.screens.money import MoneyScreen
from leanto.tui.widgets.spread_plot import SpreadPlot
from leanto.tui.widgets.swing_plot import SwingPlot

SILL = {"station": "main.north.outside", "item": "sill"}


@pytest.fixture(autouse=True)
def few_draws(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(
        "leanto.tui.screens.money.with_money", lambda made: with_money(made, draws=300)
    )


def _rotten(job: Job) -> None:
    job.record(Answered(**SILL, condition=Condition.FAILED))
    job.record(Zoned(**SILL, left_ft=1, bottom_ft=0, width_ft=6, height_ft=1))


def _budget(job: Job, shed: Building, usd: float) -> None:
    job.record(BuildingSet(building=shed.model_copy(update={"budget_usd": usd})))


async def _shown(app: LeantoApp, pilot: Pilot[None]) -> MoneyScreen:
    await pilot.press("f9")
    await app.workers.wait_for_complete()
    await pilot.pause()
    assert isinstance(app.screen, MoneyScreen)
    return app.screen


def _said(screen: MoneyScreen, id_: str) -> str:
    return str(screen.query_one(f"#{id_}", Static).render())


async def test_the_range_and_the_budget_stand_on_top(job: Job, shed: Building) -> None:
    _rotten(job)
    _budget(job, shed, 100)
    app = LeantoApp(job)
    async with app.run_test(size=(80, 24)) as pilot:
        screen = await _shown(app, pilot)
        assert "four in five under $" in _said(screen, "answer")
        assert "The budget of $100 does not fit" in _said(screen, "answer")
        assert screen.query_one(SpreadPlot).display
        assert screen.query_one(SwingPlot).display
        assert "budget $100" in _said(screen, "legend")
        assert "What moves the total most" in _said(screen, "text")


async def test_what_moves_the_total_is_drawn_between_its_words_and_the_rest(job: Job) -> None:
    _rotten(job)
    app = LeantoApp(job)
    async with app.run_test(size=(80, 24)) as pilot:
        screen = await _shown(app, pilot)
        plot = screen.query_one(SwingPlot)
        assert _said(screen, "text").split()[-2:] == ["has", "seen."]
        assert "Does it fit" in _said(screen, "rest")
        drawn = plot.plt.build()
        assert "Local wages, all trades" in drawn
        assert "█" in drawn
        assert plot.size.height > 4
        for _ in range(9):  # every part is reached by its key, also below the picture
            await pilot.press("n")
        await pilot.pause()
        page = screen.query_one("#page", VerticalScroll)
        assert page.scroll_y >= plot.virtual_region.y


async def test_keys_go_from_part_to_part_and_back_out(job: Job) -> None:
    _rotten(job)
    app = LeantoApp(job)
    async with app.run_test(size=(80, 24)) as pilot:
        screen = await _shown(app, pilot)
        page = screen.query_one("#page", VerticalScroll)
        await pilot.press("n")
        await pilot.pause()
        first = page.scroll_y
        await pilot.press("n")
        await pilot.pause()
        assert page.scroll_y > first > 0
        await pilot.press("p")
        await pilot.pause()
        assert page.scroll_y == first
        await pilot.press("escape")
        await pilot.pause()
        assert not isinstance(app.screen, MoneyScreen)


async def test_no_line_of_the_page_is_wider_than_the_terminal(job: Job) -> None:
    _rotten(job)
    app = LeantoApp(job)
    for width in (80, 132):
        async with app.run_test(size=(width, 40)) as pilot:
            screen = await _shown(app, pilot)
            assert max(map(len, _said(screen, "text").splitlines())) <= width - 2
        app = LeantoApp(job)


async def test_a_fault_in_the_files_is_said_where_the_answer_stands(
    job: Job, monkeypatch: pytest.MonkeyPatch
) -> None:
    app = LeantoApp(job)

    def fault() -> object:
        raise LeantoError("A file is broken.", "Mend it.")

    async with app.run_test(size=(80, 24)) as pilot:
        monkeypatch.setattr(job, "assess", fault)
        screen = await _shown(app, pilot)
        assert "A file is broken. Mend it." in _said(screen, "answer")
        assert not screen.query_one(SpreadPlot).display
