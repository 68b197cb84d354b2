"""From a number one key leads to what it rests on, from there into the walk, and back."""

from __future__ import annotations

import re
from functools import partial
from pathlib import Path

import pytest
from textual.pilot import Pilot
from textual.widgets import OptionList, Static

from leanto.checklist.condition import Condition
from leanto.job import Job
from leanto.job.stands_at import stands_at
from leanto.places import JobPlaces, checklists_dir
from leanto.record.entry import Answered, Measured, Noted, ScopeAdded, ScopeQuantity, Zoned
from leanto.record.observation import ObservationKey
from leanto.tui.app import LeantoApp
from leanto.tui.origin import Origin
from leanto.tui.origin_of import of_finding, of_item, of_surface, of_total
from leanto.tui.screens.decide import DecideScreen
from leanto.tui.screens.findings import FindingsScreen
from leanto.tui.screens.origin import OriginScreen
from leanto.tui.screens.scope import ScopeScreen
from leanto.tui.screens.visit import VisitScreen

NORTH = "main.north.outside"
KEY = ObservationKey(NORTH, "sill")
SILL = f"test-repair@{NORTH}"


@pytest.fixture
def walked(job: Job) -> Job:
    job.record(Answered(station=NORTH, item="sill", condition=Condition.FAILED))
    job.record(Measured(station=NORTH, item="sill", measure="probe_depth_in", value=1.5))
    job.record(Zoned(station=NORTH, item="sill", left_ft=2, bottom_ft=0, width_ft=4, height_ft=1))
    job.record(Noted(station=NORTH, item="sill", text="soft [here]"))
    return job


def said(origin: Origin | None) -> str:
    assert origin is not None
    return "\n\n".join((origin.title, *(step.text.plain for step in origin.steps)))


def finding_id(job: Job) -> str:
    return job.assess().judged.findings[0].id


def test_a_finding_rests_on_what_was_seen_and_on_a_rule(walked: Job) -> None:
    text = said(of_finding(walked, finding_id(walked)))
    assert "Is the sill soft?: failed" in text
    assert '1 1/2"' in text
    assert "4' 0\"" in text
    assert "Note: soft [here]" in text
    made = [entry for entry in walked.entries if entry.id in (2, 3, 4, 5)]
    at = made[-1].at.astimezone()
    assert f"Entered {at:%Y-%m-%d %H:%M} by walker; entries 2, 3, 4, 5 of the record" in text
    assert "Rule sill-rotted" in text
    assert "Says: The sill is rotten." in text
    assert "When: failed or worn and probe_depth_in >= 0.5" in text
    assert "Source: Invented for a test" in text


def test_a_line_rests_on_quantity_price_wage_and_the_finding(walked: Job) -> None:
    walked.record(ScopeQuantity(item_id=SILL, quantity=9.5, reason="two pieces"))
    line = next(one for one in walked.assess().estimate.lines if one.item.id == SILL)
    text = said(of_item(walked, SILL))
    assert "Yours: 9.5 lin ft, because: two pieces" in text
    assert "By the walk: 4 lin ft" in text
    assert "Hours per lin ft: 2 (1 to 3)" in text
    assert "Materials per lin ft: $20.00 ($10.00 to $30.00)" in text
    assert "Source: planning figure, no source, 2026-06-01" in text
    assert f"Worked out: {line.explanation}" in text
    assert "Carpenter, by the hour: $" in text
    assert "Is the sill soft?: failed" in text
    assert "Rule sill-rotted" in text


def test_a_line_added_by_hand_says_so(walked: Job) -> None:
    walked.record(ScopeAdded(work="test-repair", quantity=3))
    assert "You added this line by hand" in said(of_item(walked, "test-repair@building+1"))


def test_a_surface_rests_on_the_parts_of_both_courses(walked: Job) -> None:
    one = walked.assess().decision.surfaces[0]
    text = said(of_surface(walked, one.surface_id))
    assert "To keep: about $" in text
    assert "To gut: about $" in text
    assert "hidden.yaml" in text


def test_the_total_leads_to_every_line_and_names_what_is_put_on_top(walked: Job) -> None:
    origin = of_total(walked)
    assert origin is not None
    lines = walked.assess().estimate.lines
    text = said(origin)
    assert all(f"{line.item.work.title}, {line.item.place}" in text for line in lines)
    assert walked.library.factors.markup_source in text
    leading = [step.leads_to for step in origin.steps if step.leads_to]
    assert all(isinstance(step, partial) and step() is not None for step in leading)


def test_what_is_gone_has_no_origin(walked: Job) -> None:
    assert of_finding(walked, "no-rule@no-place") is None
    assert of_item(walked, "no-work@no-place") is None
    assert of_surface(walked, "no-place") is None


def test_a_rule_and_a_price_are_found_where_they_stand() -> None:
    places = JobPlaces(Path("no-such-job"))
    for kind, field, named in (("rules", "id", "sill"), ("prices", "work", "sill")):
        path = next(
            p
            for p in sorted((checklists_dir() / kind).glob("*.yaml"))
            if re.search(rf"{field}: \S*{named}\S*", p.read_text("utf-8"))
        )
        lines = path.read_text("utf-8").splitlines()
        at, entry = next(
            (at, match[1])
            for at, line in enumerate(lines, 1)
            if (match := re.match(rf"  - {{?{field}: (\S*{named}[a-z-]*)", line))
        )
        found = stands_at(kind, entry, places)  # type: ignore[arg-type]
        assert found == f"checklists/{kind}/{path.name}:{at}"


def test_the_jobs_own_file_comes_first_and_a_faulty_one_is_passed_over(tmp_path: Path) -> None:
    places = JobPlaces(tmp_path)
    rules = tmp_path / "checklists" / "rules"
    rules.mkdir(parents=True)
    shipped = sorted((checklists_dir() / "rules").glob("*.yaml"))[0].read_text("utf-8")
    name = re.findall(r"(?m)^  - id: (\S+)$", shipped)[0]
    (rules / "a.yaml").write_text("rules: [", "utf-8")
    (rules / "mine.yaml").write_text(f"rules:\n\n  - id: {name}\n", "utf-8")
    assert stands_at("rules", name, places) == f"{places.checklists}/rules/mine.yaml:3"
    assert stands_at("rules", "nothing-of-the-kind", places) == ""


# By key


async def started(app: LeantoApp, pilot: Pilot[None], *keys: str) -> None:
    for key in keys:
        await pilot.press(key)
        await pilot.pause()


@pytest.mark.parametrize(
    ("key", "kind", "says"),
    [
        ("f3", FindingsScreen, "1. The sill is rotten."),
        ("f4", DecideScreen, "Main room"),
        ("f5", ScopeScreen, "1. "),
        ("f9", None, "All lines: $"),
    ],
)
async def test_each_screen_leads_to_the_origin_and_back(
    walked: Job, key: str, kind: type | None, says: str
) -> None:
    app = LeantoApp(walked)
    async with app.run_test(size=(80, 24)) as pilot:
        await started(app, pilot, key)
        await app.workers.wait_for_complete()
        await pilot.pause()
        below = app.screen
        assert kind is None or isinstance(below, kind)
        await started(app, pilot, "w")
        assert isinstance(app.screen, OriginScreen)
        assert says in str(app.screen.query_one("#title", Static).content)
        await started(app, pilot, "escape")
        assert app.screen is below


async def test_enter_goes_to_the_observation_in_the_walk_and_escape_comes_back(
    walked: Job,
) -> None:
    app = LeantoApp(walked)
    async with app.run_test(size=(80, 24)) as pilot:
        await started(app, pilot, "f3", "w")
        origin = app.screen
        await started(app, pilot, "enter")
        visit = app.screen
        assert isinstance(visit, VisitScreen)
        assert visit.standing.key == KEY
        await started(app, pilot, "down", "escape")
        assert app.screen is visit  # one step back at a time
        assert visit.standing.key == KEY
        await started(app, pilot, "escape")
        assert app.screen is origin
        await started(app, pilot, "escape", "escape")
        assert len(app.screen_stack) == 1


async def test_an_answer_changed_on_the_visit_shows_when_one_comes_back(walked: Job) -> None:
    app = LeantoApp(walked)
    async with app.run_test(size=(80, 24)) as pilot:
        await started(app, pilot, "f3", "w", "enter", "1")
        assert walked.walk.observations[KEY].condition is Condition.SOUND
        await started(app, pilot, "escape")
        assert isinstance(app.screen, OriginScreen)
        title = str(app.screen.query_one("#title", Static).content)
        assert title.endswith("This number is not there any more")
        assert app.screen.query_one(OptionList).option_count == 0
        await started(app, pilot, "escape")
        assert isinstance(app.screen, FindingsScreen)
        assert app.screen.table.row_count == 0


async def test_a_rule_leads_nowhere_and_a_line_of_the_total_to_its_own_origin(
    walked: Job,
) -> None:
    app = LeantoApp(walked)
    async with app.run_test(size=(80, 24)) as pilot:
        await started(app, pilot, "f3", "w", "down", "enter")
        assert len(app.screen_stack) == 3
        await started(app, pilot, "f9")
        await app.workers.wait_for_complete()
        await started(app, pilot, "w", "down", "down", "enter")
        assert len(app.screen_stack) == 4
        assert isinstance(app.screen, OriginScreen)


def test_a_photo_is_named_with_the_time_it_was_taken(walked: Job, tmp_path: Path) -> None:
    from PIL import Image

    picture = Image.new("RGB", (8, 8), "gray")
    exif = picture.getexif()
    exif.get_ifd(0x8769)[0x9003] = "2026:06:01 09:30:00"
    picture.save(tmp_path / "sill.jpg", exif=exif)
    photo = walked.add_photo(KEY, tmp_path / "sill.jpg")
    assert photo.taken_at is not None
    taken = f"taken {photo.taken_at:%Y-%m-%d %H:%M}"
    assert f"Photo: sill.jpg, {taken}" in said(of_finding(walked, finding_id(walked)))
