"""``leanto money``: the whole page in the terminal."""

from __future__ import annotations

from pathlib import Path

import pytest
from invented import invented

from leanto.cli.main import main
from leanto.job import Job
from leanto.record.exchange import export_text


def test_the_money_of_a_job_is_printed(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    export = tmp_path / "job.yaml"
    made = invented("slab-garage")
    export.write_text(
        export_text(made.walk, job="garage", walked_on=made.written.date), encoding="utf-8"
    )
    with Job.from_export(tmp_path / "garage", export):
        pass

    assert main(["money", str(tmp_path / "garage")]) == 0

    said = capsys.readouterr().out
    assert "Half of such jobs stay under $" in said
    assert "What moves the total most" in said
    assert "Does it fit" in said
    assert max(map(len, said.splitlines())) <= 80


def test_a_folder_that_is_no_job_is_refused(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    assert main(["money", str(tmp_path)]) == 2
    assert "is not a job" in capsys.readouterr().err
