"""``leanto bids award``, ``pay``, ``costs`` and ``leanto open-up``, from the command line."""

from __future__ import annotations

import io
import shutil
import subprocess
from pathlib import Path

import pytest
from filled_bids import as_csv, fields
from PIL import Image
from small_shed import SHED

from leanto.building.load import parse_building
from leanto.cli.main import main
from leanto.job import Job
from leanto.record.entry import ScopeAdded

QPDF = shutil.which("qpdf")
DRY = "dry-framing@building+1"


@pytest.fixture(scope="module")
def made(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """A job with one bid of $100 a unit, $15 for each unit price."""
    folder = tmp_path_factory.mktemp("made") / "shed"
    with Job.create(folder, parse_building(SHED, "shed.yaml")) as job:
        job.record(ScopeAdded(work="dry-framing", quantity=1))
        form = job.bids.form
        more = {f"askunit|{ask.id}": "15" for ask in form.unit_prices}
        path = folder.parent / "bid.csv"
        path.write_bytes(as_csv(form, fields(form, "Alder Works", {DRY: "100"}, **more)))
        job.bids.add(path)
    return folder


@pytest.fixture(scope="module")
def with_choice(made: Path) -> Path:
    folder = shutil.copytree(made, made.parent / "chosen")
    said = ["bids", "award", str(folder), "alder", "--contingency", "1,000", "--reason", "Fair."]
    assert main(said) == 0
    return folder


@pytest.fixture
def folder(made: Path, tmp_path: Path) -> Path:
    return Path(shutil.copytree(made, tmp_path / "shed"))


@pytest.fixture
def chosen(with_choice: Path, tmp_path: Path) -> Path:
    return Path(shutil.copytree(with_choice, tmp_path / "shed"))


def run(capsys: pytest.CaptureFixture[str], *arguments: str | Path) -> str:
    assert main([str(one) for one in arguments]) == 0
    return " ".join(capsys.readouterr().out.split())


def test_a_choice_says_what_is_committed_and_that_it_is_no_contract(
    folder: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    said = run(capsys, "bids", "award", folder, "Alder", "--sum", "5000", "--contingency", "400")

    assert "Chosen: Alder Works." in said
    assert "Committed $5,000, paid $0, to go $5,000." in said
    assert "Contingency: $400." in said
    assert "not a contract" in said


def test_payments_are_taken_read_back_and_struck(
    chosen: Path, tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    Image.new("RGB", (60, 80), "white").save(tmp_path / "slip.png")
    with Job.open(chosen) as job:
        line = next(x.number for x in job.contract.view().rows if x.title.startswith("Dry"))

    said = run(
        capsys,
        *("bids", "pay", chosen, line, "$1,234.50", "--on", "2026-11-02"),
        *("--note", "check 12", "--receipt", tmp_path / "slip.png"),
    )
    assert f"Payment 1: $1,234.50 on line {line}." in said
    told = run(capsys, "bids", "costs", chosen)
    assert "November 2, 2026" in told
    assert "check 12" in told
    assert f"More was paid than agreed on: {line}." in told
    written = run(capsys, "bids", "costs", chosen, "--to", tmp_path / "costs.pdf")
    assert "costs.pdf (" in written
    checked(tmp_path / "costs.pdf")
    assert "counts no more" in run(capsys, "bids", "costs", chosen, "--strike", "1")
    assert "paid $0" in run(capsys, "bids", "costs", chosen)


def test_an_opened_wall_goes_from_record_to_request_to_the_end(
    chosen: Path, tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    Image.new("RGB", (60, 80), "brown").save(tmp_path / "rot.png")

    listed = run(capsys, "open-up", chosen)
    assert "1 Main room, north wall, inside" in listed
    assert "Unit prices agreed with Alder Works" in listed

    said = run(
        capsys,
        *("open-up", chosen, "1", "--opened", "40", "--bad", "4' x 2'", "--what", "ro,pe"),
        *("--work", "sister-stud=2", "--photo", tmp_path / "rot.png", "--note", "Ants in it"),
    )
    assert "Opening 1: Main room, north wall, inside, 8 sq ft of 40 sq ft." in said
    assert "Thought before:" in said
    assert "Sister a stud, 2 each at $15.00 = $30.00 (unit price of the bid)" in said

    request = run(capsys, "open-up", chosen, "--request")
    assert "Change-order request 1".upper() in request
    assert "Ants in it" in request
    checked(chosen / "reports" / "change-order-1.pdf")

    settled = run(capsys, "open-up", chosen, "--settle", "1", "28")
    assert "asked for $30.00, agreed $28.00" in settled
    assert "used $28, left $972" in settled

    missed = run(capsys, "open-up", chosen, "--missed")
    assert "What the assessment missed, by kind of evidence" in missed
    assert "rot, pests" in missed
    checked(chosen / "reports" / "opened-walls.pdf")


def test_what_is_left_out_is_asked_for_where_somebody_answers(
    chosen: Path, capsys: pytest.CaptureFixture[str], monkeypatch: pytest.MonkeyPatch
) -> None:
    class Terminal(io.StringIO):
        def isatty(self) -> bool:
            return True

    monkeypatch.setattr("sys.stdin", Terminal("30\n3\nwet\n\nBy the door\n\n"))
    said = run(capsys, "open-up", chosen, "1")

    assert "3 sq ft of 30 sq ft" in said
    with Job.open(chosen) as job:
        (opening,) = job.walk.openings.values()
    assert (opening.found, opening.note) == (("wet",), "By the door")


REFUSED = (
    (["1"], "How much is bad?"),
    (["1", "--bad", "x"], "Bad:"),
    (["99", "--bad", "1"], "There is no surface 99"),
    (["1", "--bad", "1", "--what", "gremlins"], "is no kind of damage"),
    (["1", "--bad", "1", "--work", "sister-stud"], "It has no quantity"),
    (["1", "--bad", "1", "--work", "sister-stud=0"], "A quantity is needed"),
    (["1", "--bad", "1", "--work", "sister-studs=2"], 'Did you mean "sister-stud"?'),
    (["1", "--bad", "1", "--work", "sister-stud=1.5"], "counted in whole pieces"),
    (["1", "--bad", "1", "--on", "yesterday"], "is no day"),
    (["1", "--bad", "1", "--photo", "no.jpg"], "no.jpg"),
    (["--request"], "Nothing that was found"),
    (["--change", "7"], "There is no change 7"),
    (["--settle", "7", "10"], "There is no change 7"),
    (["--settle", "x", "10"], "is no number of a change"),
    (["--strike", "3"], "There is no opening 3"),
)


def test_what_cannot_be_is_one_line_and_records_nothing(
    chosen: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    with Job.open(chosen) as job:
        before = len(job.entries)

    for arguments, said in REFUSED:
        assert main(["open-up", str(chosen), *arguments]) == 2, arguments
        error = capsys.readouterr().err
        assert said in error
        assert len(error.strip().splitlines()) == 1
    with Job.open(chosen) as job:
        assert len(job.entries) == before


def test_before_a_choice_the_list_says_whose_prices_count(
    folder: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    assert "No bid was chosen yet" in run(capsys, "open-up", folder)
    assert main(["bids", "costs", str(folder)]) == 2
    assert "No bid was chosen yet" in capsys.readouterr().err


def test_the_table_goes_into_a_workbook_and_a_pdf(
    folder: Path, tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    run(capsys, "bids", "table", folder, "--to", tmp_path / "table.xlsx")

    assert (tmp_path / "table.xlsx").read_bytes().startswith(b"PK")
    run(capsys, "bids", "table", folder, "--to", tmp_path / "table.pdf")
    checked(tmp_path / "table.pdf")


def checked(path: Path) -> None:
    """A PDF that another program finds nothing wrong with, where that program is there."""
    assert path.read_bytes().startswith(b"%PDF-")
    if QPDF:
        subprocess.run([QPDF, "--check", str(path)], check=True, capture_output=True)
