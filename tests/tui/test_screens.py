"""Findings, gut or keep, scope and reports at 80x24: keys are pressed, the record is read."""

from __future__ import annotations

import shutil
import threading
from collections.abc import AsyncIterator, Iterator
from contextlib import asynccontextmanager
from pathlib import Path
from typing import Any

import pytest
from textual import events
from textual.app import App
from textual.pilot import Pilot
from textual.screen import Screen
from textual.widgets import Input, Static

from leanto.assessment import course_chances
from leanto.building.model import Building
from leanto.checklist.condition import Condition
from leanto.errors import JobError, ReportError
from leanto.job import Job
from leanto.library import read_library
from leanto.places import checklists_dir
from leanto.record.entry import Answered, Measured, Noted, Overruled, Zoned
from leanto.reports.written import WrittenReport
from leanto.tui.app import LeantoApp
from leanto.tui.screens.ask_reason import AskReasonScreen
from leanto.tui.screens.building import BuildingScreen
from leanto.tui.screens.decide import DecideScreen
from leanto.tui.screens.details import DetailsScreen
from leanto.tui.screens.findings import FindingsScreen
from leanto.tui.screens.reports import ReportsScreen
from leanto.tui.screens.rows_screen import RowsScreen
from leanto.tui.screens.scope import ScopeScreen
from leanto.tui.widgets.course_plot import CoursePlot
from leanto.tui.widgets.rows_table import RowsTable

WALK = """
id: trial
title: Trial
order: 1
items:
  - id: ground
    at: [site]
    prompt: Does the ground fall away?
    look: The slope of the ground.
    how: By eye.
    answers: {sound: {means: Falls away.}, worn: {means: Level.}, failed: {means: Falls in.}}
    why: Water runs to the sill otherwise.
    source: Invented for a test
  - id: roof-edge
    at: [roof]
    prompt: Is the edge of the roof closed?
    look: The edge.
    how: With binoculars.
    answers: {sound: {means: Closed.}, worn: {means: Lifted.}, failed: {means: Open.}}
    why: Rain gets in at the edge.
    source: Invented for a test
  - id: stain
    at: [wall inside]
    only_if: lined
    prompt: Is there a stain?
    look: Rings and streaks.
    how: With a lamp.
    answers:
      sound: {means: None.}
      worn: {means: Old ones.}
      failed: {means: Wet ones., measures: [moisture_pct], zone: true}
    why: It tells where water came in.
    source: Invented for a test
"""
RULES = """
rules:
  - id: ground-high
    items: [ground]
    when: worn or failed
    finding: The ground leads water in.
    urgency: keep watching
    question: Where can the water go?
    ask: Excavator
    source: Invented for a test
  - id: edge-open
    items: [roof-edge]
    when: worn or failed
    finding: The edge of the roof is open.
    urgency: before closing in
    work: [{work: test-edge, take: width}]
    source: Invented for a test, table 7
  - id: stained
    items: [stain]
    when: worn or failed
    finding: Water came in here.
    urgency: with the work
    needs_cause: true
    causes: [{rules: [edge-open], where: anywhere}]
    question: Where does it come in?
    hidden: stain-wet
    work: [{work: open-lining, take: area}]
    source: Invented for a test
  - id: wall-wet
    items: [stain]
    when: failed and moisture_pct >= 20
    finding: The wall is wet through.
    urgency: now
    watch: After rain.
    source: Invented for a test
"""
WORK = """
work:
  - id: test-edge
    title: Close the edge
    description: Close the edge of the roof with metal.
    trade: roofer
    phase: weather shell
    unit: lf
    element: B3010
"""
PRICES = """
prices:
  - work: test-edge
    hours: {low: 0.1, likely: 0.2, high: 0.3}
    materials_usd: {low: 1, likely: 2, high: 3}
    source: planning figure, no source
    dated: 2026-06-01
"""
NORTH = "main.north.inside"


@pytest.fixture(scope="module")
def library(tmp_path_factory: pytest.TempPathFactory) -> Any:
    """The shipped prices and shares with three items and four rules of our own."""
    folder = tmp_path_factory.mktemp("data") / "checklists"
    shutil.copytree(checklists_dir(), folder, ignore=shutil.ignore_patterns("walk", "rules"))
    texts = {"walk": WALK, "rules": RULES, "work": WORK, "prices": PRICES}
    for name, text in texts.items():
        (folder / name).mkdir(exist_ok=True)
        (folder / name / "trial.yaml").write_text(text, encoding="utf-8")
    return read_library(shipped=folder)


@pytest.fixture
def job(
    tmp_path: Path, shed: Building, library: Any, monkeypatch: pytest.MonkeyPatch
) -> Iterator[Job]:
    """A walk with an open roof edge, a stain below it, and bad ground."""
    monkeypatch.setattr("leanto.job.job.read_library", lambda folders: library)
    with Job.create(tmp_path / "job", shed, who="walker") as job:
        for station, item in (
            ("site", "ground"),
            ("main.roof.north", "roof-edge"),
            (NORTH, "stain"),
        ):
            job.record(Answered(station=station, item=item, condition=Condition.FAILED))
        job.record(
            Zoned(station=NORTH, item="stain", left_ft=2, bottom_ft=0, width_ft=4, height_ft=2)
        )
        job.record(Noted(station=NORTH, item="stain", text="[bold]wet[/bold] \x1b[31mred"))
        yield job


class Bare(App[None]):
    """The screens must do without the app's own style sheet and keys."""


@asynccontextmanager
async def showing(screen: Screen[Any], width: int = 80) -> AsyncIterator[Pilot[None]]:
    app = Bare()
    async with app.run_test(size=(width, 24)) as pilot:
        await app.push_screen(screen)
        await pilot.pause()
        yield pilot


def text(pilot: Pilot[None], selector: str) -> str:
    return str(pilot.app.screen.query_one(selector, Static).content)


def details(pilot: Pilot[None]) -> str:
    """All that the details say."""
    assert isinstance(pilot.app.screen, DetailsScreen)
    return "\n".join(str(part.content) for part in pilot.app.screen.query(Static))


def cells(pilot: Pilot[None]) -> list[list[str]]:
    table = pilot.app.screen.query_one(RowsTable)
    return [
        [str(cell.plain).strip() for cell in table.get_row_at(row)]
        for row in range(table.row_count)
    ]


def column(pilot: Pilot[None], at: int) -> list[str]:
    return [row[at] for row in cells(pilot)]


async def typed(pilot: Pilot[None], words: str) -> None:
    """A text arrives as a paste, which costs one wait instead of many."""
    pilot.app.post_message(events.Paste(words))
    await pilot.pause()


# Findings


async def test_findings_answer_one_question_first_and_show_effects_below_causes(job: Job) -> None:
    async with showing(FindingsScreen(job)) as pilot:
        assert text(pilot, "#answer").startswith(
            "3 findings: 1 before closing in, 1 with the work, 1 keep watching."
        )
        assert column(pilot, 2) == [
            "The edge of the roof is open.",
            "└ Water came in here.",
            "The ground leads water in.",
        ]
        assert column(pilot, 1) == ["before closing in", "with the work", "keep watching"]


async def test_a_finding_is_shown_with_its_reasons_and_user_text_is_no_markup(job: Job) -> None:
    async with showing(FindingsScreen(job)) as pilot:
        await pilot.press("enter")
        said = details(pilot)
        assert "Rule: edge-open. Source: Invented for a test, table 7" in said
        assert "Is the edge of the roof closed?: failed" in said
        assert "Brings about\n- 2. Water came in here." in said
        assert "Close the edge, Main room, north roof slope (roofer)" in said
        await pilot.press("right")
        said = details(pilot)
        assert "Follows from: 1. The edge of the roof is open." in said
        assert r"Note: [bold]wet[/bold] \x1b[31mred" in said
        assert "4' 0\" × 2' 0\"" in said
        await pilot.press("escape")
        row = pilot.app.screen.query_one(RowsTable).selected
        assert row is not None
        assert row.cells[0] == "2"


async def test_tab_shows_what_is_open_and_never_calls_it_passed(job: Job) -> None:
    async with showing(FindingsScreen(job)) as pilot:
        await pilot.press("tab")
        assert text(pilot, "#answer").startswith("1 open questions, and 1 rules undecided")
        rows = cells(pilot)
        assert rows[0][:3] == ["question", "Where can the water go?", "Excavator"]
        assert rows[1][0] == "undecided"
        assert rows[1][1].startswith("Not measured:")
        await pilot.press("down", "enter")
        assert "It may be: The wall is wet through." in details(pilot)
        assert "Undecided never means passed" in details(pilot)
    job.record(Measured(station=NORTH, item="stain", measure="moisture_pct", value=30.0))
    async with showing(FindingsScreen(job)) as pilot:
        assert "The wall is wet through." in column(pilot, 2)


async def test_rows_are_sorted_and_narrowed_down_by_keys(job: Job) -> None:
    async with showing(FindingsScreen(job)) as pilot:
        await pilot.press("s", "s")
        assert text(pilot, "#state").startswith("3 rows by place; ")
        assert column(pilot, 3)[0] == "Site and drainage"
        await pilot.press("slash")
        await typed(pilot, "water RED")
        assert text(pilot, "#state").startswith('1 of 3 rows with "water RED" by place; ')
        assert column(pilot, 0) == ["2"]
        await pilot.press("escape")
        assert len(cells(pilot)) == 3


async def test_a_wide_screen_shows_the_details_beside_the_table(job: Job) -> None:
    async with showing(FindingsScreen(job), width=120) as pilot:
        assert "Rule: edge-open." in text(pilot, "#side-text")
        await pilot.press("down")
        assert "Rule: stained." in text(pilot, "#side-text")


async def test_without_a_building_the_screen_says_what_to_do(tmp_path: Path) -> None:
    with Job.create(tmp_path / "empty") as job:
        async with showing(FindingsScreen(job)) as pilot:
            assert "There is no building yet." in text(pilot, "#answer")


# Gut or keep


async def test_overruling_needs_a_reason_and_is_recorded_with_it(job: Job) -> None:
    async with showing(DecideScreen(job)) as pilot:
        assert "surface" in text(pilot, "#answer") or "interior" in text(pilot, "#answer")
        before = len(job.entries)
        await pilot.press("g", "enter")
        assert "needs a reason" in text(pilot, "#fault")
        assert len(job.entries) == before
        await typed(pilot, "it smells")
        await pilot.press("enter")
        assert job.entries[-1].body == Overruled(surface_id=NORTH, course="gut", reason="it smells")
        assert column(pilot, 1)[0] == "Gut (your choice)"
        await pilot.press("c")
        assert job.entries[-1].body == Overruled(surface_id=NORTH, course="as computed")
        assert job.walk.overrulings == {}
        await pilot.press("u")
        assert job.walk.overrulings[NORTH].reason == "it smells"


async def test_escape_leaves_the_choice_alone(job: Job) -> None:
    async with showing(DecideScreen(job)) as pilot:
        before = len(job.entries)
        await pilot.press("k", "escape")
        assert isinstance(pilot.app.screen, DecideScreen)
        assert len(job.entries) == before


async def test_a_reason_that_could_not_be_written_stays_typed(
    job: Job, monkeypatch: pytest.MonkeyPatch
) -> None:
    def full(body: object) -> None:
        raise JobError("The disk is full.", "Free some space and try again.")

    async with showing(DecideScreen(job)) as pilot:
        monkeypatch.setattr(job, "record", full)
        await pilot.press("k")
        await typed(pilot, "I like the boards")
        await pilot.press("enter")
        assert text(pilot, "#fault") == "The disk is full. Free some space and try again."
        assert isinstance(pilot.app.screen, AskReasonScreen)
        assert pilot.app.screen.query_one(Input).value == "I like the boards"
        monkeypatch.undo()
        monkeypatch.setattr("leanto.job.job.read_library", lambda folders: job.library)
        await pilot.press("enter")
        assert job.walk.overrulings[NORTH].course == "keep"


async def test_a_job_that_cannot_be_written_says_so_and_refuses_the_keys(job: Job) -> None:
    with Job.open(job.places.folder) as second:
        async with showing(DecideScreen(second)) as pilot:
            assert text(pilot, "#answer").startswith("READ ONLY.")
            await pilot.press("g")
            assert isinstance(pilot.app.screen, DecideScreen)


async def test_a_decision_is_shown_with_both_courses(job: Job) -> None:
    async with showing(DecideScreen(job)) as pilot:
        await pilot.press("enter")
        said = details(pilot)
        assert "To keep: about $" in said
        assert "To gut: about $" in said
        assert "stain that is wet now (findings 2)" in said


async def test_both_courses_are_drawn_for_each_surface_and_for_the_interior(
    job: Job, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(
        "leanto.tui.screens.courses.course_chances",
        lambda assessment: course_chances(assessment, draws=300),
    )
    async with showing(DecideScreen(job)) as pilot:
        surfaces = job.assess().decision.surfaces
        await pilot.press("d")
        await pilot.app.workers.wait_for_complete()
        await pilot.pause()
        assert text(pilot, "#title") == surfaces[0].surface_name
        said = text(pilot, "#said")
        assert "keep: half under $" in said
        assert "Keeping is cheaper in" in said
        plot = pilot.app.screen.query_one(CoursePlot)
        assert plot.display
        assert "█" in plot.plt.build()
        await pilot.press("left")
        assert text(pilot, "#title") == "All lined surfaces"
        await pilot.press("right", "right")
        assert text(pilot, "#title") == surfaces[1].surface_name
        await pilot.press("escape")
        assert isinstance(pilot.app.screen, DecideScreen)


# Scope


async def test_the_scope_is_grouped_by_phase_and_remembers_why(job: Job) -> None:
    async with showing(ScopeScreen(job)) as pilot:
        assert "Contingency" in text(pilot, "#answer")
        assert "WEATHER SHELL" in column(pilot, 2)
        at = column(pilot, 2).index("Close the edge")
        assert cells(pilot)[at][4] == "24 lin ft"  # the eave of a 24 ft slope without rakes
        table = pilot.app.screen.query_one(RowsTable)
        table.move_cursor(row=at)
        await pilot.press("enter")
        said = details(pilot)
        line = next(one for one in job.assess().estimate.lines if one.item.work.id == "test-edge")
        assert line.explanation in said
        assert "Price source: planning figure, no source, 2026-06-01" in said
        assert "The edge of the roof is open. (Main room, north roof slope; record entries" in said


async def test_the_cursor_passes_over_the_headings_of_the_scope(job: Job) -> None:
    async with showing(ScopeScreen(job)) as pilot:
        table = pilot.app.screen.query_one(RowsTable)
        assert table.selected is not None
        numbers = [table.selected.cells[0]]
        for _ in range(3):
            await pilot.press("down")
            assert table.selected is not None
            numbers.append(table.selected.cells[0])
        assert numbers == ["1", "2", "3", "4"]
        await pilot.press("s")
        assert all(row[0] for row in cells(pilot))  # no headings in a sorted table


# Reports


async def test_both_reports_are_written_and_named(
    job: Job, monkeypatch: pytest.MonkeyPatch, tmp_path: Path
) -> None:
    def write(progress: Any) -> tuple[WrittenReport, ...]:
        progress(1, 2)
        progress(2, 2)
        progress(1, 1)
        return (
            WrittenReport(tmp_path / "condition-report.pdf", 12, not_drawn="台"),
            WrittenReport(tmp_path / "repair-scope.pdf", 1),
        )

    monkeypatch.setattr(job, "write_reports", write)
    async with showing(ReportsScreen(job)) as pilot:
        assert "not written yet" in text(pilot, "#text")
        await pilot.press("enter")
        await pilot.app.workers.wait_for_complete()
        await pilot.pause()
        assert text(pilot, "#answer") == "2 reports are written."
        assert "condition-report.pdf: 12 pages" in text(pilot, "#text")
        assert "repair-scope.pdf: 1 page" in text(pilot, "#text")
        assert "No font here draws: 台" in text(pilot, "#text")


async def test_writing_stops_at_the_next_step_and_can_begin_again(
    job: Job, monkeypatch: pytest.MonkeyPatch
) -> None:
    go_on, ended = threading.Event(), threading.Event()

    def write(progress: Any) -> tuple[WrittenReport, ...]:
        try:
            progress(1, 9)
            go_on.wait(10)
            progress(2, 9)
        finally:
            ended.set()
        raise AssertionError("it went on")

    monkeypatch.setattr(job, "write_reports", write)
    async with showing(ReportsScreen(job)) as pilot:
        await pilot.press("enter")
        assert "1 of 9" in text(pilot, "#answer")
        await pilot.press("escape")
        go_on.set()
        assert ended.wait(10)
        await pilot.pause()
        assert text(pilot, "#answer").startswith("Stopped.")
        await pilot.press("escape")
        assert not isinstance(pilot.app.screen, ReportsScreen)


async def test_a_report_that_could_not_be_written_is_told_in_one_line(
    job: Job, monkeypatch: pytest.MonkeyPatch
) -> None:
    def write(progress: Any) -> tuple[WrittenReport, ...]:
        raise ReportError("The disk is full.", "Free some space.")

    monkeypatch.setattr(job, "write_reports", write)
    async with showing(ReportsScreen(job)) as pilot:
        await pilot.press("enter")
        await pilot.app.workers.wait_for_complete()
        await pilot.pause()
        assert text(pilot, "#answer") == "The disk is full. Free some space."


# In the app


async def test_function_keys_lay_each_screen_over_the_walk(job: Job) -> None:
    app = LeantoApp(job)
    async with app.run_test(size=(80, 24)) as pilot:
        for key, kind in (
            ("f3", FindingsScreen),
            ("f4", DecideScreen),
            ("f5", ScopeScreen),
            ("f6", ReportsScreen),
            ("f7", BuildingScreen),
        ):
            await pilot.press(key)
            assert isinstance(app.screen, kind)
            assert isinstance(app.screen, RowsScreen) == (key in ("f3", "f4", "f5"))
        await pilot.press("escape")
        assert len(app.screen_stack) == 1
