"""Names and notes of any kind pass through the whole program: printed plain, drawn, read back."""

from __future__ import annotations

import io
from pathlib import Path

import pytest
from hostile.wild import EVERYTHING, PIECES, TEXTS, steering
from hypothesis import HealthCheck, given, settings
from PIL import Image
from pydantic import ValidationError
from pypdf import PdfReader
from small_shed import SHED

from leanto.building.load import parse_building
from leanto.building.model import Building
from leanto.checklist.condition import Condition
from leanto.cli.main import main
from leanto.cli.plain import PlainOutput
from leanto.errors import LeantoError
from leanto.job import Job
from leanto.library import Library, read_library
from leanto.record.document import parse_export
from leanto.record.entry import Answered, Noted, Overruled
from leanto.record.observation import ObservationKey

PRINTING = ("findings", "decide", "scope", "money", "report", "list")
STORED = "".join(char for char in EVERYTHING if not "\ud800" <= char <= "\udfff")


@pytest.fixture(scope="module")
def library() -> Library:
    return read_library()


@pytest.fixture(autouse=True)
def read_once(library: Library, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr("leanto.job.job.read_library", lambda folders=(): library)


def wild_building(text: str) -> Building:
    shed = parse_building(SHED, "shed.yaml")
    name = text[:60] or "x"
    blocks = tuple(block.model_copy(update={"name": name}) for block in shed.blocks)
    return shed.model_copy(
        update={"name": name, "place": text[:200], "owner": text[-200:], "blocks": blocks}
    )


def walked(folder: Path, text: str, who: str = "x") -> None:
    """A job with the text wherever one can be entered."""
    with Job.create(folder, wild_building(text), who=who) as job:
        station = next(s.id for s in job.stations if s.surface_id and s.id.endswith("outside"))
        for item in job.items_at(station)[:6]:
            about = {"station": station, "item": item.id}
            job.record(Answered(**about, condition=Condition.FAILED))
            job.record(Noted(**about, text=text))
        reached = job.items_at(station)[6]
        job.record(
            Answered(
                station=station,
                item=reached.id,
                condition=Condition.NO_ACCESS,
                reason=text[:500],
            )
        )
        lined = next(s for s in job.grounds.surfaces.values() if s.is_lined)
        job.record(Overruled(surface_id=lined.id, course="keep", reason=text[:500] or "x"))


def printed(folder: Path, command: str, capsys: pytest.CaptureFixture[str]) -> str:
    arguments = [str(folder.parent)] if command == "list" else [str(folder)]
    assert main([command, *arguments]) == 0
    told = capsys.readouterr()
    return told.out + told.err


@pytest.mark.parametrize("command", PRINTING)
def test_nothing_in_a_job_steers_the_terminal(
    command: str, tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    folder = tmp_path / "job \x1b]0;owned\x07\u202e\n&"
    walked(folder, STORED, who="\x1b[31mme")

    said = printed(folder, command, capsys)

    assert steering(said) == []
    if command in ("findings", "list", "scope"):
        assert "U+001B" in said


def test_reports_show_what_can_be_drawn_and_name_the_rest(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    folder = tmp_path / "job"
    walked(folder, STORED)

    said = printed(folder, "report", capsys)

    text = "".join(
        page.extract_text() for page in PdfReader(folder / "reports" / "condition-report.pdf").pages
    )
    assert "Characters the font cannot draw" in said
    for piece in ("<b>never closed", "[bold red]loud[/]", "{{7*7}}", "Łódź", "Ωμέγα", "сарай"):
        assert piece in text.replace("\n", " "), piece
    host = Path("/etc/hostname")
    if host.exists() and len(host.read_text().strip()) > 6:
        assert host.read_text().strip() not in text


def test_an_export_of_it_reads_back_the_same(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    folder = tmp_path / "job"
    walked(folder, STORED)
    with Job.open(folder) as job:
        text, walk = job.export_text(), job.walk
    (tmp_path / "export.yaml").write_text(text, encoding="utf-8")

    assert parse_export(text, "export.yaml").building == walk.building
    assert main(["new", str(tmp_path / "again"), "--from", str(tmp_path / "export.yaml")]) == 0
    with Job.open(tmp_path / "again") as job:
        assert job.walk == walk


def test_errors_about_it_do_not_steer_the_terminal_either(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    bad = tmp_path / "evil\x1b]0;owned\x07\u202e.yaml"
    bad.write_text("name: [\x1b[31m\n", encoding="utf-8")
    odd = tmp_path / "odd\x9b31m.yaml"
    odd.write_text("na\u202eme: x\nblocks: 3\n", encoding="utf-8")
    for arguments in (
        ["walk", "no\x1b[2Jjob\udc80"],
        ["new", str(tmp_path / "a\x07"), "--building", str(bad)],
        ["new", str(tmp_path / "b"), "--building", str(odd)],
        ["new", str(tmp_path / "c"), "--from", str(bad)],
        ["check", str(tmp_path)],
        ["list", "no\x1b[2Jfolder"],
        ["recover", "no\x1b[2Jjob", "x"],
        ["reckon", "emc", "--temp", "\x1b[31m70", "--humidity", "50"],
    ):
        assert main(arguments) == 2
        told = capsys.readouterr()
        assert told.out + told.err
        assert steering(told.out + told.err) == []


def test_a_wrong_argument_does_not_steer_the_terminal(capsys: pytest.CaptureFixture[str]) -> None:
    for arguments in (["\x1b]0;owned\x07"], ["walk", "x", "\x1b[2J"], ["list", "--\x1b[2J"]):
        with pytest.raises(SystemExit):
            main(arguments)
        told = capsys.readouterr()
        assert told.err
        assert steering(told.err) == []


@pytest.mark.parametrize("encoding", ["ascii", "latin-1", "cp437", "utf-8"])
def test_a_terminal_of_any_encoding_gets_what_it_knows(encoding: str) -> None:
    behind = io.BytesIO()
    stream = io.TextIOWrapper(behind, encoding=encoding, newline="\n")

    PlainOutput(stream).write(EVERYTHING + "\udc80")
    stream.flush()

    said = behind.getvalue().decode(encoding)
    assert steering(said) == []
    assert "x" * 300 in said
    assert "物置小屋" in said or encoding != "utf-8"


@settings(max_examples=6, suppress_health_check=list(HealthCheck))
@given(text=TEXTS)
def test_any_text_is_printed_or_refused(
    text: str, tmp_path_factory: pytest.TempPathFactory, capsys: pytest.CaptureFixture[str]
) -> None:
    folder = tmp_path_factory.mktemp("jobs") / "job"
    try:
        walked(folder, text)
    except (LeantoError, ValidationError):
        return
    for command in ("findings", "scope"):
        assert steering(printed(folder, command, capsys)) == []


@pytest.mark.parametrize("piece", [*PIECES, "\ud800"])
def test_a_picture_of_any_name_is_kept_under_a_plain_one(piece: str, tmp_path: Path) -> None:
    name = "".join(char for char in piece if char not in "/\0")[:80] + ".png"
    picture = tmp_path / name
    try:
        Image.new("RGB", (20, 10)).save(tmp_path / "plain.png")
        (tmp_path / "plain.png").rename(picture)
    except (OSError, UnicodeEncodeError):
        pytest.skip("no such name on this disk")
    walked(tmp_path / "job", "x")
    with Job.open(tmp_path / "job") as job:
        key = next(iter(job.walk.observations))
        photo = job.add_photo(ObservationKey(key.station, key.item), picture)
        assert photo.original_name.isprintable()
        assert job.photo_path(photo).parent == job.places.photos
        assert job.walk.observations[key].photos == (photo,)


@pytest.mark.parametrize("left", [0, 300, 0.3, 0.9])
def test_a_photo_that_was_spoiled_stops_no_report(
    left: float, tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    walked(tmp_path / "job", "x")
    Image.effect_noise((1600, 1200), 50).convert("RGB").save(tmp_path / "sill.jpg")
    with Job.open(tmp_path / "job") as job:
        key = next(iter(job.walk.observations))
        stored = job.photo_path(job.add_photo(key, tmp_path / "sill.jpg"))
    content = stored.read_bytes()
    stored.write_bytes(content[: int(left if left > 1 else left * len(content))])

    assert "condition-report.pdf" in printed(tmp_path / "job", "report", capsys)


def test_a_note_of_100_kb_is_refused_and_one_of_20_kb_is_printed(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    with pytest.raises(ValidationError):
        Noted(station="site", item="sill", text="x" * 100_000)

    walked(tmp_path / "job", "x" * 20_000)

    said = printed(tmp_path / "job", "report", capsys)
    assert "condition-report.pdf" in said
