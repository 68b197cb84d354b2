"""The scope is changed by keys: each change is an entry, shows in its row, and is undone."""

from __future__ import annotations

from collections.abc import AsyncIterator
from contextlib import asynccontextmanager

import pytest
from pypdf import PdfReader
from textual import events
from textual.app import App
from textual.pilot import Pilot
from textual.widgets import Static

from leanto.checklist.condition import Condition
from leanto.job import Job
from leanto.record.entry import (
    Answered,
    Body,
    Measured,
    NoteToBidders,
    ScopeAdded,
    ScopeMarked,
    ScopeQuantity,
)
from leanto.tui.app import LeantoApp
from leanto.tui.screens.scope import ScopeScreen
from leanto.tui.widgets.scope_table import ALTERNATES, STRUCK

NORTH = "main.north.outside"
SILL = f"test-repair@{NORTH}"


@pytest.fixture
def walked(job: Job) -> Job:
    """A rotten sill, which calls for one line of 24 lin ft."""
    job.record(Answered(station=NORTH, item="sill", condition=Condition.FAILED))
    job.record(Measured(station=NORTH, item="sill", measure="probe_depth_in", value=1.0))
    return job


@asynccontextmanager
async def scope_of(job: Job, width: int = 80) -> AsyncIterator[tuple[Pilot[None], ScopeScreen]]:
    app: App[None] = LeantoApp(job)
    async with app.run_test(size=(width, 24)) as pilot:
        await pilot.press("f5")
        await pilot.pause()
        assert isinstance(app.screen, ScopeScreen)
        to_row(app.screen, SILL)
        await pilot.pause()
        yield pilot, app.screen


def to_row(screen: ScopeScreen, key: str) -> None:
    rows = [str(row.value) for row in screen.table.rows]
    screen.table.move_cursor(row=rows.index(key))


def row(screen: ScopeScreen, key: str) -> list[str]:
    return [cell.plain.strip() for cell in screen.table.get_row(key)]


def works(screen: ScopeScreen) -> list[str]:
    table = screen.table
    return [table.get_row_at(at)[2].plain.strip() for at in range(table.row_count)]


async def typed(pilot: Pilot[None], words: str) -> None:
    pilot.app.post_message(events.Paste(words))
    await pilot.pause()


@pytest.mark.parametrize(
    ("key", "mark", "sign"),
    [("x", "struck", "x"), ("o", "by owner", "o"), ("t", "alternate", "t")],
)
async def test_a_mark_is_set_and_taken_back_by_one_key(
    walked: Job, key: str, mark: str, sign: str
) -> None:
    async with scope_of(walked) as (pilot, screen):
        assert row(screen, SILL)[1] == ""
        await pilot.press(key)
        assert walked.entries[-1].body == ScopeMarked(item_id=SILL, mark=mark)
        assert row(screen, SILL)[1] == sign
        assert f"{sign} {mark}" in str(screen.query_one("#state", Static).content)
        to_row(screen, SILL)
        await pilot.press(key)
        assert walked.entries[-1].body == ScopeMarked(item_id=SILL, mark="plain")
        assert row(screen, SILL)[1] == ""


async def test_struck_lines_and_alternates_stand_apart_and_the_cursor_stays(walked: Job) -> None:
    async with scope_of(walked) as (pilot, screen):
        before = screen.assessment
        assert before is not None
        at = screen.table.cursor_row
        await pilot.press("x")
        assert works(screen)[-2:] == [STRUCK, "Mend the sill"]
        assert row(screen, SILL)[0] == row(screen, SILL)[6] == ""  # no number, no allowance
        assert abs(screen.table.cursor_row - at) <= 1
        after = screen.assessment
        assert after is not None
        assert after.estimate.total.likely < before.estimate.total.likely
        to_row(screen, SILL)
        await pilot.press("t")
        assert ALTERNATES in works(screen)
        assert STRUCK not in works(screen)


async def test_an_own_quantity_needs_a_reason_and_ours_stays_beside_it(walked: Job) -> None:
    async with scope_of(walked, width=140) as (pilot, screen):
        before = len(walked.entries)
        await pilot.press("e")
        await typed(pilot, "9' 6\"")
        await pilot.press("enter", "enter")
        assert len(walked.entries) == before
        assert "needs a reason" in str(pilot.app.screen.query_one("#fault", Static).content)
        await typed(pilot, "only two pieces")
        await pilot.press("enter")
        assert walked.entries[-1].body == ScopeQuantity(
            item_id=SILL, quantity=9.5, reason="only two pieces"
        )
        assert row(screen, SILL)[1] == "="
        assert row(screen, SILL)[4:6] == ["9.5 lin ft", "24 lin ft"]
        details = screen.details_of(screen.job.assess(), SILL).as_column().plain
        assert "9.5 lin ft by hand, 24 lin ft by the walk: only two pieces" in details
        await pilot.press("e", "delete", "enter")
        assert walked.entries[-1].body == ScopeQuantity(item_id=SILL, quantity=None)
        assert row(screen, SILL)[4:6] == ["24 lin ft", ""]


@pytest.mark.parametrize("quantity", ["nine", "0", "-3", "3 gal"])
async def test_what_is_no_quantity_is_refused_and_stays_typed(walked: Job, quantity: str) -> None:
    async with scope_of(walked) as (pilot, _):
        before = len(walked.entries)
        await pilot.press("e")
        await typed(pilot, quantity)
        await pilot.press("enter")
        await typed(pilot, "why")
        await pilot.press("enter")
        assert str(pilot.app.screen.query_one("#fault", Static).content).startswith("! ")
        assert len(walked.entries) == before
        await pilot.press("escape")
        assert len(walked.entries) == before


async def test_a_note_goes_to_the_bidders_with_its_line(walked: Job) -> None:
    async with scope_of(walked) as (pilot, screen):
        await pilot.press("n")
        await typed(pilot, "Keep the [old] stones")
        await pilot.press("enter")
        text = "Keep the [old] stones"
        assert walked.entries[-1].body == NoteToBidders(item_id=SILL, text=text)
        assert row(screen, SILL)[1] == '"'
        assert text in str(screen.query_one("#preview", Static).content)
        await pilot.press("n", "delete", "enter")
        assert walked.walk.scope_edits == {}


async def test_a_line_is_added_by_hand_with_work_place_quantity_and_note(walked: Job) -> None:
    async with scope_of(walked) as (pilot, screen):
        await pilot.press("a")
        await typed(pilot, "mend sill")
        await pilot.press("enter")
        await typed(pilot, "south outside")
        await pilot.press("enter")
        await typed(pilot, "3 m")
        await pilot.press("enter")
        await typed(pilot, "behind the ramp")
        await pilot.press("enter")
        added = walked.entries[-1].body
        assert isinstance(added, ScopeAdded)
        assert (added.work, added.surface_id) == ("test-repair", "main.south.outside")
        assert added.quantity == pytest.approx(3 / 0.3048)
        assert added.note == "behind the ramp"
        assert row(screen, "test-repair@main.south.outside+1")[1] == '+"'


async def test_a_place_in_own_words_and_escape_adds_nothing(walked: Job) -> None:
    async with scope_of(walked) as (pilot, screen):
        before = len(walked.entries)
        await pilot.press("a", "escape")
        assert pilot.app.screen is screen
        await pilot.press("a")
        await typed(pilot, "mend sill")
        await pilot.press("enter")
        await typed(pilot, "the ramp")
        await pilot.press("enter")
        await pilot.press("escape")
        assert len(walked.entries) == before
        await pilot.press("a")
        await typed(pilot, "mend sill")
        await pilot.press("enter")
        await typed(pilot, "the ramp")
        await pilot.press("enter")
        await typed(pilot, "4")
        await pilot.press("enter", "enter")
        assert walked.entries[-1].body == ScopeAdded(
            work="test-repair", place="the ramp", quantity=4
        )


@pytest.mark.parametrize(
    "body",
    [
        ScopeMarked(item_id=SILL, mark="struck"),
        ScopeMarked(item_id=SILL, mark="by owner"),
        ScopeMarked(item_id=SILL, mark="alternate"),
        ScopeQuantity(item_id=SILL, quantity=9.5, reason="two pieces"),
        NoteToBidders(item_id=SILL, text="Keep the stones."),
        ScopeAdded(work="test-repair", quantity=3),
    ],
    ids=lambda body: f"{body.kind} {getattr(body, 'mark', '')}",
)
async def test_every_change_is_undone_and_redone_by_key(walked: Job, body: Body) -> None:
    before = walked.walk
    walked.record(body)
    after = walked.walk
    assert after != before
    async with scope_of(walked) as (pilot, screen):
        shown = [
            str(cell)
            for at in range(screen.table.row_count)
            for cell in screen.table.get_row_at(at)
        ]
        await pilot.press("u")
        assert walked.walk == before
        await pilot.press("r")
        assert walked.walk == after
        assert shown == [
            str(cell)
            for at in range(screen.table.row_count)
            for cell in screen.table.get_row_at(at)
        ]


async def test_a_job_that_cannot_be_written_refuses_every_key(walked: Job) -> None:
    with Job.open(walked.places.folder) as second:
        async with scope_of(second) as (pilot, screen):
            await pilot.press("x", "o", "t", "e", "n", "a", "u")
            assert pilot.app.screen is screen
            assert second.walk == walked.walk


async def test_work_for_a_firm_is_not_marked_by_owner(walked: Job) -> None:
    walked.record(ScopeAdded(work="electrician-look", quantity=1))
    async with scope_of(walked) as (pilot, screen):
        before = len(walked.entries)
        to_row(screen, "electrician-look@building+1")
        await pilot.press("o")
        assert len(walked.entries) == before


def test_the_pdf_for_bidders_follows_every_change(walked: Job) -> None:
    walked.record(ScopeQuantity(item_id=SILL, quantity=9.5, reason="my own reason"))
    walked.record(NoteToBidders(item_id=SILL, text="Keep the stones."))
    walked.record(ScopeAdded(work="test-repair", place="the ramp", quantity=4, note="Steep."))
    walked.record(ScopeAdded(work="test-repair", place="the yard", quantity=5))
    walked.record(ScopeMarked(item_id="test-repair@building+2", mark="struck"))
    walked.record(ScopeAdded(work="test-repair", place="the porch", quantity=6))
    walked.record(ScopeMarked(item_id="test-repair@building+3", mark="alternate"))
    written = walked.write_reports()
    said = " ".join(page.extract_text() for page in PdfReader(written[1].path).pages)
    said = " ".join(said.split())
    assert "9.5 lin ft" in said
    assert "Keep the stones." in said
    assert "the ramp" in said
    assert "Steep." in said
    assert "the yard" not in said
    assert "my own reason" not in said  # it stays with the owner
    assert said.index("Alternates") < said.rindex("the porch")
    owner = " ".join(page.extract_text() for page in PdfReader(written[0].path).pages)
    assert "24 lin ft by the walk: my own reason" in " ".join(owner.split())
