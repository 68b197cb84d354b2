"""What cannot be is refused when an export is read, with file, line, field and what is possible."""

from __future__ import annotations

from pathlib import Path

import pytest

from leanto.errors import InputProblems
from leanto.job import Job

EXPORT = """leanto_export: 1
job: shed
building:
  name: A shed
  year_built: 1990
  lumber: {species: douglas fir}
  ground_snow_psf: 20
  blocks:
    - id: main
      name: Main room
      length: 24
      width: 12
      eave_height: 8
      walls: {member: 2x4, lining: none}
      roof: {pitch: 6:12}
air:
  main.floor: {temp_f: 70.0, humidity_pct: 50.0}
observations:
  - station: main.south.inside
    item: stud-feet
    condition: worn
    measures:
      probe_depth_in: 1.0
      moisture_pct: 14.0
"""


def export(folder: Path, old: str = "", new: str = "") -> Path:
    assert old in EXPORT
    file = folder / "shed.yaml"
    file.write_text(EXPORT.replace(old, new, 1) if old else EXPORT, "utf-8")
    return file


def test_what_can_be_is_read(tmp_path: Path) -> None:
    with Job.from_export(tmp_path / "job", export(tmp_path)) as job:
        assert len(job.walk.observations) == 1
        assert not job.notices


@pytest.mark.parametrize(
    ("old", "new", "field", "said"),
    [
        ("humidity_pct: 50.0", "humidity_pct: 130.0", "humidity_pct", "at most 100"),
        ("probe_depth_in: 1.0", "probe_depth_in: 4.0", "probe_depth_in", "sinks 0 to 3.5 in."),
        ("probe_depth_in: 1.0", "probe_depth_in: -1.0", "probe_depth_in", "0 to 12 is possible"),
        ("moisture_pct: 14.0", "moisture_pct: 130.0", "moisture_pct", "is possible, not 130"),
        ("ground_snow_psf: 20", "ground_snow_psf: -20", "ground_snow_psf", "at least 0"),
        ("species: douglas fir", "species: ebony", "lumber.species", "is not one of"),
    ],
)
def test_what_cannot_be_is_refused(
    tmp_path: Path, old: str, new: str, field: str, said: str
) -> None:
    with pytest.raises(InputProblems) as refused:
        Job.from_export(tmp_path / "job", export(tmp_path, old, new))
    (problem,) = refused.value.problems
    assert problem.file.endswith("shed.yaml")
    assert problem.field.endswith(field)
    assert (
        EXPORT.splitlines()[problem.line - 1]
        .strip()
        .startswith((old.split(":")[0], "lumber", "main.floor"))
    )
    assert said in str(problem)
    assert not (tmp_path / "job").exists()


def test_a_number_that_a_checklist_no_longer_asks_for_is_left_out_with_a_word(
    tmp_path: Path,
) -> None:
    # 400 ft is the most that is asked; a longer run is no impossible one.
    file = export(tmp_path, "probe_depth_in: 1.0", "run_ft: 900.0")
    with Job.from_export(tmp_path / "job", file) as job:
        assert any("run_ft" in notice or "Left out" in notice for notice in job.notices)
