"""``leanto bids``: added, answered, printed."""

from __future__ import annotations

from pathlib import Path

import pytest
from filled_bids import as_csv, fields
from invented import invented

from leanto.cli.main import main
from leanto.job import Job
from leanto.record.exchange import export_text


@pytest.fixture
def folder(tmp_path: Path) -> Path:
    """A job on the invented garage."""
    made = invented("slab-garage")
    export = tmp_path / "job.yaml"
    export.write_text(
        export_text(made.walk, job="garage", walked_on=made.written.date), encoding="utf-8"
    )
    with Job.from_export(tmp_path / "garage", export):
        pass
    return tmp_path / "garage"


def test_a_bid_is_added_answered_and_printed(
    folder: Path, tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    with Job.open(folder) as job:
        form = job.bids.form
    first = form.lines[0]
    path = tmp_path / "bid.csv"
    filled = fields(form, "Alder \x1b[31mWorks", {first.item_id: "1.200"}, total="5")
    path.write_bytes(as_csv(form, filled))

    assert main(["bids", "add", str(folder), str(path)]) == 0
    said = capsys.readouterr().out
    assert f"{len(form.lines)} of {len(form.lines)} lines" in said
    assert "Arithmetic, total: stated $5.00" in said
    assert f"Not read, unit|{first.line}: “1.200”. It may be 1,200 or 1.2. Which?" in said
    assert "\x1b" not in said

    bidder = "Alder [31mWorks"
    assert main(["bids", "answer", str(folder), bidder, f"unit|{first.item_id}", "12"]) == 0
    assert f"Not read in the bid of {bidder}: 0." in capsys.readouterr().out

    assert main(["bids", "table", str(folder)]) == 0
    said = capsys.readouterr().out
    assert "On one base" in said
    assert "To ask Alder" in said
    assert max(map(len, said.splitlines())) <= 110

    pdf = tmp_path / "table.pdf"
    assert main(["bids", "table", str(folder), "--to", str(pdf)]) == 0
    assert pdf.read_bytes().startswith(b"%PDF-")
    capsys.readouterr()

    assert main(["bids", "withdraw", str(folder), bidder]) == 0
    assert main(["bids", "table", str(folder)]) == 2
    assert "No bid has come back yet." in capsys.readouterr().err


def test_a_file_that_is_no_bid_is_one_line_on_the_error_stream(
    folder: Path, tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    path = tmp_path / "note.csv"
    path.write_text("hello")

    assert main(["bids", "add", str(folder), str(path)]) == 2

    said = capsys.readouterr()
    assert said.out == ""
    assert said.err.count("\n") == 1
    assert said.err.startswith("leanto: note.csv has no column")
