"""What a job shows its amounts in: set at any time, and never more than shown."""

from __future__ import annotations

from datetime import UTC, datetime
from pathlib import Path

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from leanto.building.model import Building
from leanto.checklist.condition import Condition
from leanto.cli.main import main
from leanto.job import Job
from leanto.quantities import System
from leanto.record.entry import AirMeasured, Answered, Measured, Redone, Undone, UnitsSet, Zoned
from leanto.record.fold import fold

NOON = datetime(2026, 11, 25, 12, tzinfo=UTC)
FEET_OF_STUDS = {"station": "main.north.inside", "item": "stud-feet"}


@settings(max_examples=8, suppress_health_check=[HealthCheck.function_scoped_fixture])
@given(
    st.lists(st.sampled_from(System), min_size=1, max_size=6),
    st.floats(1, 10),
    st.floats(0.01, 7),
    st.floats(-20, 120),
)
def test_changing_back_and_forth_rewrites_nothing(
    tmp_path_factory: pytest.TempPathFactory,
    shed: Building,
    systems: list[System],
    run_ft: float,
    high_ft: float,
    temp_f: float,
) -> None:
    folder = tmp_path_factory.mktemp("units") / "job"
    with Job.create(folder, shed, clock=lambda: NOON) as job:
        job.record(Answered(**FEET_OF_STUDS, condition=Condition.FAILED))
        job.record(Measured(**FEET_OF_STUDS, measure="run_ft", value=run_ft))
        job.record(
            Zoned(**FEET_OF_STUDS, left_ft=0.0, bottom_ft=0.0, width_ft=run_ft, height_ft=high_ft)
        )
        job.record(AirMeasured(station="main.north.inside", temp_f=temp_f, humidity_pct=50.0))
        facts = [entry.body for entry in job.entries]
        walk = job.walk
        for system in systems:
            job.show_in(system)
        job.show_in(System.FEET)
        assert [e.body for e in job.entries if not isinstance(e.body, UnitsSet)] == facts
        assert job.walk == walk == fold(job.entries)


def test_a_scope_and_its_money_are_the_same_in_both(tmp_path: Path, shed: Building) -> None:
    with Job.create(tmp_path / "job", shed, clock=lambda: NOON) as job:
        job.record(Answered(**FEET_OF_STUDS, condition=Condition.FAILED))
        feet = job.assess()
        job.show_in(System.METRIC)
        metric = job.assess()
    assert metric.library is not feet.library
    assert [(i.id, i.quantity) for i in metric.scope.items] == [
        (i.id, i.quantity) for i in feet.scope.items
    ]
    assert metric.estimate.range == feet.estimate.range
    assert [f.rule_id for f in metric.judged.findings] == [f.rule_id for f in feet.judged.findings]


def test_undo_passes_over_the_units_and_redo_is_not_ended_by_them(
    tmp_path: Path, shed: Building
) -> None:
    with Job.create(tmp_path / "job", shed) as job:
        answered = job.record(Answered(**FEET_OF_STUDS, condition=Condition.FAILED))
        job.show_in(System.METRIC)
        assert job.undo() == answered
        job.show_in(System.FEET)
        job.show_in(System.METRIC)
        assert job.redo() == answered
        kinds = [type(entry.body) for entry in job.entries[-5:]]
        assert kinds == [UnitsSet, Undone, UnitsSet, UnitsSet, Redone]


def test_units_are_set_said_and_exported_on_the_command_line(
    tmp_path: Path, shed: Building, capsys: pytest.CaptureFixture[str]
) -> None:
    Job.create(tmp_path / "job", shed).close()
    assert main(["units", str(tmp_path / "job")]) == 0
    assert main(["units", str(tmp_path / "job"), "metric"]) == 0
    assert capsys.readouterr().out.splitlines() == [
        "Shown in feet and inches.",
        "Shown in metric.",
    ]
    assert main(["export", str(tmp_path / "job"), "--to", str(tmp_path / "job.yaml")]) == 0
    assert main(["new", str(tmp_path / "copy"), "--from", str(tmp_path / "job.yaml")]) == 0
    with Job.open(tmp_path / "copy") as copy:
        assert copy.units is System.METRIC
