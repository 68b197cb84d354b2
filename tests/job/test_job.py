from __future__ import annotations

import threading
from collections.abc import Callable
from datetime import UTC, date, datetime
from pathlib import Path

import pytest
from PIL import Image

from leanto.building.model import Building
from leanto.checklist.condition import Condition
from leanto.errors import InputProblems, JobError, LeantoError, PhotoError, ReadOnlyJob
from leanto.job import Job, is_job
from leanto.record.entry import (
    AirMeasured,
    Answered,
    Body,
    BuildingSet,
    DangerMarked,
    Imported,
    Measured,
    MovedTo,
    Noted,
    Overruled,
    Undone,
    Zoned,
)
from leanto.record.observation import ObservationKey

SILL = {"station": "main.south.outside", "item": "sill"}
STAIN = {"station": "main.north.inside", "item": "stain"}
KEY = ObservationKey("main.south.outside", "sill")


def rotten() -> Answered:
    return Answered(**SILL, condition=Condition.FAILED)


def longer(shed: Building, length_ft: float) -> BuildingSet:
    block = shed.blocks[0].model_copy(update={"length": length_ft})
    return BuildingSet(building=shed.model_copy(update={"blocks": (block,)}))


def test_what_is_recorded_is_there_when_the_job_is_opened_again(job: Job, folder: Path) -> None:
    entry = job.record(rotten())
    job.close()

    with Job.open(folder) as again:
        assert again.entries[-1] == entry
        assert again.walk.observations[KEY].condition is Condition.FAILED
        assert again.walk.building == job.walk.building
    assert (entry.id, entry.who) == (2, "tester")
    assert is_job(folder)


def test_a_job_may_be_made_without_a_building(folder: Path) -> None:
    with Job.create(folder) as job:
        assert job.walk.building is None
        assert job.entries == () == job.notices
        for act in (job.assess, lambda: job.record(rotten()), lambda: job.stations):
            with pytest.raises(JobError, match="no building yet") as refused:
                act()
            assert "F7" in refused.value.remedy
        assert "leanto_export" in job.export_text()


def test_a_building_that_does_not_hold_together_makes_no_job(folder: Path, shed: Building) -> None:
    door = shed.openings[0].model_copy(update={"from_left": 23.0})
    broken = shed.model_copy(update={"openings": (door,)})

    with pytest.raises(InputProblems):
        Job.create(folder, broken)
    assert not folder.exists()
    with Job.create(folder, shed) as job, pytest.raises(InputProblems) as refused:
        job.record(BuildingSet(building=broken))
    assert refused.value.problems[0].field.startswith("openings.0")


def test_stations_and_what_is_asked_there(job: Job) -> None:
    asked = {station.id: [item.id for item in job.items_at(station.id)] for station in job.stations}

    assert next(iter(asked)) == "site"
    assert asked["site"] == ["grade"]
    assert asked["main.south.outside"] == ["sill"]
    assert asked["main.north.inside"] == ["stain"]
    assert asked["main.floor"] == []
    assert job.items_at("nowhere") == ()


@pytest.mark.parametrize(
    ("body", "said"),
    [
        (Noted(station="main.suoth.outside", item="sill", text=""), "main.south.outside"),
        (AirMeasured(station="attic", temp_f=60, humidity_pct=50), 'no station "attic"'),
        (MovedTo(station="attic"), 'no station "attic"'),
        (MovedTo(station="site", item="sil"), 'Did you mean "sill"'),
        (Noted(station="main.south.outside", item="sil", text=""), 'Did you mean "sill"'),
        (Noted(station="main.south.outside", item="stain", text=""), "not asked at Main room"),
        (Noted(station="main.floor", item="sill", text=""), "not asked at"),
        (Measured(**SILL, measure="probe_in", value=1.0), 'Did you mean "probe_depth_in"'),
        (Measured(**SILL, measure="probe_depth_in", value=12.01), "0 to 12 is possible"),
        (Measured(**SILL, measure="probe_depth_in", value=-0.01), "0 to 12 is possible"),
        (Measured(**SILL, measure="probe_depth_in", value="deep"), "a number is needed"),
        (Measured(**STAIN, measure="piece_count", value=2.5), "whole number"),
        (Measured(**STAIN, measure="is_active", value=0.5), "yes or no"),
        (Measured(**STAIN, measure="stain_kind", value="spot"), "choose one of ring, streak"),
        (Measured(**STAIN, measure="stain_kind", value=1.0), "choose one of ring, streak"),
        (Zoned(**SILL, left_ft=20, bottom_ft=0, width_ft=4.5, height_ft=1), "past the right end"),
        (
            Zoned(station="site", item="grade", left_ft=0, bottom_ft=0, width_ft=1, height_ft=1),
            "no surface",
        ),
        (Overruled(surface_id="main.roof", course="gut", reason="x"), "no surface"),
        (Overruled(surface_id="main.floor", course="gut", reason="x"), "no lining"),
        (Overruled(surface_id="main.ceiling", course="gut", reason=" "), "needs a reason"),
    ],
)
def test_what_does_not_fit_is_refused_and_not_kept(job: Job, body: Body, said: str) -> None:
    with pytest.raises(LeantoError) as refused:
        job.record(body)

    assert said in str(refused.value)
    assert len(job.entries) == 1


@pytest.mark.parametrize(
    "body",
    [
        AirMeasured(station="main.floor", temp_f=60, humidity_pct=50),
        MovedTo(station="main.floor"),
        MovedTo(station="site", item="grade"),
        DangerMarked(**SILL, on=True),
        Measured(**SILL, measure="probe_depth_in", value=0.0),
        Measured(**SILL, measure="probe_depth_in", value=12.0),
        Measured(**SILL, measure="probe_depth_in", value=None),
        Measured(**STAIN, measure="piece_count", value=2.0),
        Measured(**STAIN, measure="is_active", value=1.0),
        Measured(**STAIN, measure="stain_kind", value="ring"),
        Zoned(**SILL, left_ft=20, bottom_ft=0, width_ft=4, height_ft=1),
        Overruled(surface_id="main.ceiling", course="gut", reason="It smells."),
        Overruled(surface_id="main.ceiling", course="as computed"),
    ],
)
def test_what_fits_is_recorded(job: Job, body: Body) -> None:
    assert job.record(body).body == body


@pytest.mark.parametrize("body", [Undone(entry=1), Imported()])
def test_undo_and_import_go_their_own_ways(job: Job, body: Body) -> None:
    with pytest.raises(ValueError, match="not recorded from outside"):
        job.record(body)


def test_undo_and_redo_tell_which_entry_they_took(job: Job) -> None:
    assert (job.can_undo, job.can_redo, job.undo(), job.redo()) == (False, False, None, None)
    answer = job.record(rotten())
    job.record(MovedTo(station="site"))

    assert job.can_undo
    assert job.undo() == answer
    assert KEY not in job.walk.observations
    assert not job.can_undo
    assert job.can_redo
    assert job.redo() == answer
    assert KEY in job.walk.observations
    assert [entry.body.kind for entry in job.entries[-2:]] == ["undone", "redone"]


def test_what_one_key_enters_is_kept_whole_or_not_at_all_and_undone_as_one(job: Job) -> None:
    depth = Measured(**SILL, measure="probe_depth_in", value=1.5)
    entries = job.record_together([rotten(), depth])

    assert job.walk.observations[KEY].measures == {"probe_depth_in": 1.5}
    assert len({entry.at for entry in entries}) == 1
    assert job.undo() == entries[-1]
    assert KEY not in job.walk.observations
    assert job.redo() == entries[0]
    assert job.walk.observations[KEY].measures == {"probe_depth_in": 1.5}
    before = job.entries
    with pytest.raises(LeantoError, match="possible"):
        job.record_together([rotten(), depth.model_copy(update={"value": 4000.0})])
    assert job.entries == before


def test_a_second_opening_only_reads_and_says_why(job: Job, folder: Path) -> None:
    job.record(rotten())

    with Job.open(folder) as second:
        assert not job.read_only
        assert second.read_only
        assert "another program" in second.read_only_reason
        assert second.assess().judged.findings
        assert not second.can_undo
        picture = folder / "none.jpg"
        for act in (
            lambda: second.record(rotten()),
            second.undo,
            second.redo,
            lambda: second.add_photo(KEY, picture),
        ):
            with pytest.raises(ReadOnlyJob, match="another program"):
                act()


def test_the_assessment_is_made_anew_only_after_a_change(job: Job) -> None:
    first = job.assess()
    job.record(MovedTo(station="site"))
    assert job.assess() is first

    job.record(rotten())
    second = job.assess()

    assert not first.judged.findings
    assert [finding.rule_id for finding in second.judged.findings] == ["sill-soft"]
    job.undo()
    assert not job.assess().judged.findings


def test_ages_are_counted_to_the_day_of_the_last_observation(folder: Path, shed: Building) -> None:
    days = [datetime(2026, 11, day, 12).astimezone(UTC) for day in (20, 21, 22, 23, 24, 25, 26)]
    clock = iter(days)
    with Job.create(folder, shed, clock=lambda: next(clock)) as job:
        assert job.walked_on is None
        assert job.assess().as_of == date(2026, 11, 21)
        job.record(rotten())
        assert job.walked_on == job.assess().as_of == date(2026, 11, 22)
        job.record(AirMeasured(station="site", temp_f=40, humidity_pct=80))
        job.record(Overruled(surface_id="main.ceiling", course="gut", reason="It smells."))
        job.record(MovedTo(station="site"))
        assert job.walked_on == job.assess().as_of == date(2026, 11, 23)


def test_the_jobs_own_checklists_are_laid_over(folder: Path, shed: Building) -> None:
    own = folder / "checklists" / "measures"
    own.mkdir(parents=True)
    measure = "{id: probe_depth_in, label: Awl, unit: in, low: 0, high: 3}"
    (own / "mine.yaml").write_text(f"measures:\n  - {measure}\n", encoding="utf-8")

    with Job.create(folder, shed) as job:
        job.record(Measured(**SILL, measure="probe_depth_in", value=3.0))
        with pytest.raises(LeantoError, match="0 to 3"):
            job.record(Measured(**SILL, measure="probe_depth_in", value=3.5))

    (own / "mine.yaml").write_text("measures: 4\n", encoding="utf-8")
    with Job.open(folder) as job:
        assert len(job.entries) == 2
        with pytest.raises(InputProblems, match=r"mine\.yaml"):
            job.assess()


def test_a_photo_is_copied_recorded_once_and_may_come_from_another_thread(
    job: Job, tmp_path: Path
) -> None:
    picture = tmp_path / "IMG_7.jpg"
    Image.new("RGB", (3000, 2000), "gray").save(picture)

    copying = threading.Thread(target=job.add_photo, args=(KEY, picture))
    copying.start()
    copying.join()
    photo = job.add_photo(KEY, picture)
    picture.unlink()

    assert job.walk.observations[KEY].photos == (photo,) == job.photos
    assert [entry.body.kind for entry in job.entries] == ["building set", "photo added"]
    assert job.photo_path(photo).is_file()
    assert job.notices == ()
    job.photo_path(photo).unlink()
    assert "IMG_7.jpg" in job.notices[0]


def test_a_photo_is_refused_before_it_is_copied_or_when_it_is_none(
    job: Job, folder: Path, tmp_path: Path
) -> None:
    (tmp_path / "a.jpg").write_text("no picture")

    with pytest.raises(LeantoError, match="no station"):
        job.add_photo(ObservationKey("attic", "sill"), tmp_path / "a.jpg")
    with pytest.raises(PhotoError):
        job.add_photo(KEY, tmp_path / "a.jpg")
    assert len(job.entries) == 1
    assert not (folder / "photos").exists()


def test_a_corrected_building_keeps_the_walk_and_moves_zones_onto_it(
    job: Job, shed: Building
) -> None:
    job.record(rotten())
    job.record(Zoned(**SILL, left_ft=20, bottom_ft=0, width_ft=4, height_ft=1))
    job.record(longer(shed, 22.0))

    (finding,) = job.assess().judged.findings

    assert finding.zone is not None
    assert (finding.zone.left_ft, finding.zone.width_ft) == (18.0, 4.0)
    assert "2' 0\" past the right end" in job.notices[0]
    entered = job.walk.observations[KEY].zone
    assert entered is not None
    assert entered.left_ft == 20
    job.record(longer(shed, 24.0))
    assert job.notices == ()


def test_answers_to_what_is_gone_are_left_out_with_a_word(
    job: Job, shed: Building, small_library: Path
) -> None:
    job.record(rotten())
    job.record(Measured(**SILL, measure="probe_depth_in", value=2.0))
    job.record(Answered(**STAIN, condition=Condition.FAILED))
    job.record(Measured(**STAIN, measure="stain_kind", value="ring"))
    job.record(Overruled(surface_id="main.ceiling", course="gut", reason="It smells."))
    job.record(
        BuildingSet(
            building=shed.model_copy(
                update={"blocks": (shed.blocks[0].model_copy(update={"ceiling": None}),)}
            )
        )
    )
    folder = job.places.folder
    job.close()
    walk, measures = small_library / "walk/trial.yaml", small_library / "measures/trial.yaml"
    walk.write_text(walk.read_text().replace("id: sill", "id: plate"))
    rules = small_library / "rules/trial.yaml"
    rules.write_text(rules.read_text().replace("[sill]", "[plate]"))
    measures.write_text(measures.read_text().replace("ring", "drop"))

    with Job.open(folder) as again:
        notices = again.notices
        assessment = again.assess()

    assert [finding.rule_id for finding in assessment.judged.findings] == ["stained"]
    assert len(notices) == 3
    assert notices[0] == (
        "main.south.outside/sill#1: this item is not in the checklists; left out."
    )
    assert "choose one of drop, streak" in notices[1]
    assert notices[2].startswith("main.ceiling: there is no lining here now")


@pytest.fixture
def walked(job: Job, tmp_path: Path) -> Job:
    Image.new("RGB", (300, 200), "gray").save(tmp_path / "IMG_7.jpg")
    job.record(AirMeasured(station="site", temp_f=40, humidity_pct=80))
    job.record(rotten())
    job.record(Measured(**SILL, measure="probe_depth_in", value=2.0))
    job.record(Zoned(**SILL, left_ft=20, bottom_ft=0, width_ft=4, height_ft=1))
    job.record(Answered(**STAIN, condition=Condition.WORN))
    job.undo()
    job.record(Noted(**SILL, text="By the downspout.\n台"))
    job.record(Overruled(surface_id="main.ceiling", course="keep", reason="It is fine."))
    job.add_photo(KEY, tmp_path / "IMG_7.jpg")
    job.record(MovedTo(station="main.south.outside", item="sill"))
    return job


@pytest.mark.parametrize("place", ["beside the job", "with a photos folder"])
def test_an_export_comes_back_as_an_equal_job(walked: Job, tmp_path: Path, place: str) -> None:
    folder = walked.places.folder
    file = folder.parent / "shed.yaml"
    if place == "with a photos folder":
        file = tmp_path / "sent" / "shed.yaml"
        file.parent.mkdir()
        walked.places.photos.rename(file.parent / "photos")
    file.write_text(walked.export_text(), encoding="utf-8")

    def later() -> datetime:
        return datetime(2028, 1, 1, 12, tzinfo=UTC)

    with Job.from_export(tmp_path / "new", file, clock=later, who="heir") as back:
        assert back.walk == walked.walk
        assert back.notices == ()
        assert back.photo_path(back.photos[0]).is_file()
        assert back.walked_on == walked.walked_on == date(2026, 11, 25)
        assert back.assess().as_of == walked.assess().as_of
        assert back.assess().estimate == walked.assess().estimate
        assert {(entry.who, entry.at) for entry in back.entries} == {("heir", later())}
        assert not back.can_undo
        back.record(rotten())
        assert back.walked_on == date(2028, 1, 1)
        assert back.can_undo


def test_photos_that_are_not_found_are_named_and_the_job_is_made_all_the_same(
    walked: Job, tmp_path: Path
) -> None:
    file = tmp_path / "sent" / "shed.yaml"
    (file.parent / "photos").mkdir(parents=True)
    (photo,) = walked.photos
    # A file of the right name with something else in it is not taken.
    (file.parent / "photos" / f"{photo.digest}.jpg").write_bytes(b"another picture")
    file.write_text(walked.export_text(), encoding="utf-8")

    with Job.from_export(tmp_path / "new", file) as back:
        assert back.walk == walked.walk
        assert "IMG_7.jpg" in back.notices[0]
        assert not back.places.photos.exists()


@pytest.mark.parametrize("name", ["..", ".", "../jobs/shed", "/"])
def test_an_export_leads_to_no_other_folder_by_its_jobs_name(
    walked: Job, tmp_path: Path, name: str
) -> None:
    file = tmp_path / "jobs" / "sent" / "shed.yaml"
    file.parent.mkdir()
    walked.places.photos.rename(tmp_path / "jobs" / "photos")
    text = walked.export_text().replace("job: shed\n", f"job: '{name}'\n")
    file.write_text(text, encoding="utf-8")

    with Job.from_export(tmp_path / "new", file) as back:
        assert back.notices != ()


def test_an_export_with_a_fault_makes_no_job(walked: Job, tmp_path: Path) -> None:
    file = tmp_path / "shed.yaml"
    file.write_text(walked.export_text().replace("condition: failed", "condition: rotten"))

    with pytest.raises(InputProblems, match="condition"):
        Job.from_export(tmp_path / "new", file)

    assert not (tmp_path / "new").exists()


def test_reports_are_written_where_they_are_wanted(
    walked: Job, tmp_path: Path, clock: Callable[[], datetime]
) -> None:
    steps: list[tuple[int, int]] = []

    default = walked.write_reports()
    elsewhere = walked.write_reports(tmp_path / "out" / "here", lambda *step: steps.append(step))

    for folder, written in (
        (walked.places.reports, default),
        (tmp_path / "out" / "here", elsewhere),
    ):
        assert [report.path for report in written] == [
            folder / "condition-report.pdf",
            folder / "repair-scope.pdf",
        ]
        assert all(report.path.read_bytes().startswith(b"%PDF") for report in written)
        assert all(report.pages >= 1 for report in written)
    assert steps


def test_what_an_earlier_answer_made_pointless_is_asked_again_once_it_is_taken_back(
    job: Job, small_library: Path
) -> None:
    """The walk, its progress and what was not looked at go by one list."""

    def asked() -> list[str]:
        (covered,) = [c for c in job.assess().coverage if c.station.id == STAIN["station"]]
        here = [item.id for item in job.items_at(STAIN["station"])]
        assert list(covered.items) == here
        return here

    walk = small_library / "walk/trial.yaml"
    after = "    pointless_after: [{item: grade, answers: [failed], where: anywhere}]\n"
    text = walk.read_text("utf-8").replace("    prompt: Stain\n", after + "    prompt: Stain\n")
    walk.write_text(text, encoding="utf-8")
    assert asked() == ["stain"]
    job.record(Answered(station="site", item="grade", condition=Condition.FAILED))
    assert asked() == []
    job.undo()
    assert asked() == ["stain"]
    job.redo()
    job.record(Answered(**STAIN, condition=Condition.WORN))
    assert asked() == ["stain"]
