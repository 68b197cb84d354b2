"""The building is typed at 80x24 by keys alone; what the record holds is read."""

from __future__ import annotations

from collections.abc import AsyncIterator, Iterator
from contextlib import asynccontextmanager
from pathlib import Path

import pytest
from textual import events
from textual.app import App
from textual.pilot import Pilot
from textual.widgets import Static

from leanto.building.model import Building
from leanto.errors import JobError
from leanto.job import Job
from leanto.record.entry import BuildingSet
from leanto.tui.screens.building import BuildingScreen
from leanto.tui.widgets.building_row import FieldRow


@pytest.fixture
def new_job(tmp_path: Path) -> Iterator[Job]:
    with Job.create(tmp_path / "new", who="walker") as job:
        yield job


@pytest.fixture
def shed_job(tmp_path: Path, shed: Building, monkeypatch: pytest.MonkeyPatch) -> Iterator[Job]:
    with Job.create(tmp_path / "shed", shed, who="walker") as job:
        yield job


class Bare(App[None]):
    """Keeps what the screen returned."""

    returned: bool | None = None

    def keep(self, returned: bool | None) -> None:
        self.returned = returned


@asynccontextmanager
async def typing(job: Job, width: int = 80) -> AsyncIterator[Pilot[None]]:
    app = Bare()
    async with app.run_test(size=(width, 24)) as pilot:
        await app.push_screen(BuildingScreen(job), app.keep)
        await pilot.pause()
        yield pilot


def screen_of(pilot: Pilot[None]) -> BuildingScreen:
    assert isinstance(pilot.app.screen, BuildingScreen)
    return pilot.app.screen


def row(pilot: Pilot[None], path: str) -> FieldRow:
    return next(one for one in screen_of(pilot).query(FieldRow) if one.path == path)


def field(pilot: Pilot[None]) -> str:
    """The path of the field that is typed in."""
    parent = screen_of(pilot).focused.parent  # type: ignore[union-attr]
    assert isinstance(parent, FieldRow)
    return parent.path


def said(pilot: Pilot[None], selector: str = "#state") -> str:
    return str(screen_of(pilot).query_one(selector, Static).content)


async def fill(pilot: Pilot[None], **texts: str) -> None:
    """Go to fields of the page and type into them."""
    screen = screen_of(pilot)
    for name, text in texts.items():
        form = screen.form
        assert form is not None
        prefix = form.rows[0].path.removesuffix(form.rows[0].field.path)
        form.focus_field(prefix + name.replace("__", "."))
        await pilot.pause()
        pilot.app.post_message(events.Paste(text))
        await pilot.pause()


async def test_a_new_building_is_typed_and_recorded(new_job: Job) -> None:
    async with typing(new_job) as pilot:
        assert said(pilot).startswith("The building: 6 fields to fill in or to put right")
        await fill(pilot, name="Coal shed", year_built="1921")
        await pilot.press("pagedown")
        await fill(pilot, length="16-6", width="3.6 m", eave_height="7' 6\"", roof__pitch="5:12")
        await pilot.press("ctrl+s")
        assert isinstance(pilot.app, Bare)
        assert pilot.app.returned is True
    body = new_job.entries[-1].body
    assert isinstance(body, BuildingSet)
    block = body.building.blocks[0]
    assert (body.building.name, body.building.year_built) == ("Coal shed", 1921)
    assert (block.length, block.eave_height, block.roof.pitch) == (16.5, 7.5, 5.0)
    assert block.width == pytest.approx(3.6 / 0.3048)


async def test_a_refusal_names_every_field_and_loses_nothing(new_job: Job) -> None:
    async with typing(new_job) as pilot:
        await fill(pilot, name="Coal shed", year_built="1921")
        await pilot.press("pagedown")
        await fill(pilot, length="about 16", width="12'", roof__overhang="12")
        await pilot.press("ctrl+s")
        assert len(new_job.entries) == 0
        assert field(pilot) == "blocks.0.length"  # the first one
        assert '! "about 16" is not understood as a length.' in said(pilot, "#help")
        assert "Write it like 7' 3 1/2\"" in said(pilot, "#help")
        assert said(pilot).startswith("Coal shed: 4 fields")
        wrong = {one.path for one in screen_of(pilot).query(FieldRow) if one.has_class("-wrong")}
        assert wrong == {
            "blocks.0.length",
            "blocks.0.eave_height",
            "blocks.0.roof.pitch",
            "blocks.0.roof.overhang",
        }
        assert row(pilot, "blocks.0.length").text == "about 16"
        assert row(pilot, "blocks.0.width").text == "12'"


async def test_escape_keeps_the_draft_for_the_next_time(new_job: Job) -> None:
    async with typing(new_job) as pilot:
        await fill(pilot, name="Coal shed")
        await pilot.press("escape")
        assert isinstance(pilot.app, Bare)
        assert pilot.app.returned is False
    assert len(new_job.entries) == 0
    async with typing(new_job) as pilot:
        assert row(pilot, "name").text == "Coal shed"


async def test_keys_go_from_field_to_field_and_change_choices(new_job: Job) -> None:
    async with typing(new_job) as pilot:
        assert field(pilot) == "name"
        await pilot.press("down", "enter", "tab", "down")
        assert field(pilot) == "foundation"
        await pilot.press("right")
        assert row(pilot, "foundation").text == "piers"
        await pilot.press("left", "left", "m")
        assert row(pilot, "foundation").text == "masonry wall"
        await pilot.press("up")
        assert field(pilot) == "year_built"


async def test_fields_come_and_go_with_what_they_hang_on(shed_job: Job) -> None:
    async with typing(shed_job) as pilot:
        await pilot.press("pagedown")
        form = screen_of(pilot).form
        assert form is not None
        paths = {one.field.path for one in form.rows}
        assert "ceiling.lining" in paths
        assert "on_wall.north.lining" not in paths
        form.focus_field("blocks.0.ceiling")
        await pilot.press("n")
        paths = {one.field.path for one in form.rows}
        assert "ceiling.lining" not in paths


async def test_openings_are_added_moved_over_and_removed(shed_job: Job) -> None:
    async with typing(shed_job) as pilot:
        await pilot.press("pageup", "pageup")  # past the appliances
        assert field(pilot) == "openings.0.id"
        await pilot.press("ctrl+n")
        assert field(pilot) == "openings.1.from_left"
        await fill(pilot, from_left="2'", width="30 in")
        await pilot.press("ctrl+n")
        assert row(pilot, "openings.2.width").text == "30 in"
        await pilot.press("ctrl+r")
        assert "Ctrl+R once more removes the opening D3." in said(pilot)
        await pilot.press("ctrl+r", "ctrl+s")
    building = shed_job.walk.building
    assert building is not None
    assert [(one.id, one.from_left) for one in building.openings] == [("D1", 10.0), ("D2", 2.0)]
    assert building.openings[1].width == 2.5


async def test_a_lean_to_is_added_with_few_words(shed_job: Job) -> None:
    async with typing(shed_job) as pilot:
        await pilot.press("pagedown", "ctrl+n")
        assert field(pilot) == "blocks.1.name"
        await fill(pilot, name="Lean-to", length="10'", width="6'", eave_height="5'")
        await fill(pilot, roof__pitch="3:12")
        await pilot.press("ctrl+s")
    building = shed_job.walk.building
    assert building is not None
    assert building.blocks[1].attached is not None
    assert building.blocks[1].attached.to == "main"


async def test_openings_follow_the_short_name_of_their_block(shed_job: Job) -> None:
    async with typing(shed_job) as pilot:
        await pilot.press("pagedown")
        await fill(pilot, id="shop")
        await pilot.press("ctrl+s")
    building = shed_job.walk.building
    assert building is not None
    assert building.blocks[0].id == "shop"
    assert building.openings[0].on == "shop.south"


async def test_what_could_not_be_written_can_be_tried_again(
    shed_job: Job, monkeypatch: pytest.MonkeyPatch
) -> None:
    def full(body: object) -> None:
        raise JobError("The disk is full.", "Free some space and try again.")

    async with typing(shed_job) as pilot:
        await fill(pilot, owner="A. Owner")
        with monkeypatch.context() as patched:
            patched.setattr(shed_job, "record", full)
            await pilot.press("ctrl+s")
            await pilot.pause(0.5)  # longer than typing waits for its check
            assert "Not recorded. The disk is full." in said(pilot)
            assert row(pilot, "owner").text == "A. Owner"
        await pilot.press("ctrl+s")
    assert shed_job.walk.building is not None
    assert shed_job.walk.building.owner == "A. Owner"


async def test_a_job_that_cannot_be_written_is_shown_only(shed_job: Job) -> None:
    with Job.open(shed_job.places.folder) as second:
        async with typing(second, width=120) as pilot:
            await pilot.press("ctrl+s")
            assert said(pilot).startswith("READ ONLY.")
            assert len(second.entries) == 1
