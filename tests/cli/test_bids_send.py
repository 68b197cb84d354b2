"""``leanto bids send``: the package from the command line."""

from __future__ import annotations

from pathlib import Path

import pytest
from small_shed import SHED

from leanto.building.load import parse_building
from leanto.cli.main import main
from leanto.job import Job
from leanto.record.entry import ScopeAdded


@pytest.fixture
def folder(tmp_path: Path) -> Path:
    folder = tmp_path / "shed"
    with Job.create(folder, parse_building(SHED, "shed.yaml")) as job:
        job.record(ScopeAdded(work="dry-framing", quantity=1))
    return folder


def test_it_says_what_was_written_and_what_is_open(
    folder: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    assert main(["bids", "send", str(folder)]) == 0

    said = capsys.readouterr().out
    assert f"Made {folder / 'bidding.yaml'}" in said
    assert str(folder / "reports" / "bid-package.zip") in said
    assert "The invitation leaves open: place" in said
    assert f"leanto bids add {folder} FILE" in said
    assert (folder / "reports" / "bid-package" / "bid-form.xlsx").is_file()


def test_the_owners_file_is_made_once_and_used(
    folder: Path, capsys: pytest.CaptureFixture[str], tmp_path: Path
) -> None:
    main(["bids", "send", str(folder)])
    own = folder / "bidding.yaml"
    own.write_text(own.read_text("utf-8").replace('contact: ""', 'contact: "Pat"'), "utf-8")
    edited = own.read_text("utf-8")
    capsys.readouterr()

    assert main(["bids", "send", str(folder), "--to", str(tmp_path / "out")]) == 0

    said = capsys.readouterr().out
    assert own.read_text("utf-8") == edited
    assert "Made " not in said
    assert "contact" not in said.partition("leaves open")[2].partition("\n")[0]
    assert (tmp_path / "out.zip").is_file()


def test_a_fault_in_the_owners_file_is_a_line_and_nothing_is_sent(
    folder: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    (folder / "bidding.yaml").write_text("instructions: 5\n", "utf-8")

    assert main(["bids", "send", str(folder)]) == 2

    assert "bidding.yaml:1" in capsys.readouterr().err
    assert not (folder / "reports").exists()
    with Job.open(folder) as job:
        assert not job.bids.sent


def test_what_is_no_job_is_said(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["bids", "send", str(tmp_path / "none")]) == 2

    assert "There is no folder" in capsys.readouterr().err
