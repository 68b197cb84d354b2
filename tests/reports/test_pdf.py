"""Reports as PDF files, read back."""

from __future__ import annotations

import os
import re
import shutil
import subprocess
from collections.abc import Callable
from dataclasses import replace
from datetime import date
from io import BytesIO
from pathlib import Path
from typing import Any

import pytest
from PIL import Image
from pypdf import PdfReader

from leanto.assessment import Assessment
from leanto.errors import ReportError
from leanto.record.observation import Photo
from leanto.reports.blocks import (
    Block,
    Bullets,
    Caution,
    Column,
    Entry,
    Facts,
    Heading,
    Paragraph,
    Picture,
    Report,
    Table,
)
from leanto.reports.contents import condition_report, repair_scope
from leanto.reports.pdf import write_pdf
from leanto.reports.text import to_text

PhotoPath = Callable[[Photo], Path]
PHOTO = Photo("1" * 64, "1.jpg")
MARKUP = 'see <owner note> & <b>bold <img src="/etc/hostname"/> <a href="javascript:x">y</a> &amp;'


def a_report(*blocks: Block, title: str = "A shed") -> Report:
    return Report("Test report", title, "", date(2026, 6, 1), blocks)


def text_of(path: Path) -> str:
    """All the text, in words with one blank between."""
    return " ".join(" ".join(page.extract_text() for page in PdfReader(path).pages).split())


def images_in(path: Path) -> list[bytes]:
    return [image.data for page in PdfReader(path).pages for image in page.images]


def test_pages_are_counted_and_numbered(
    small: Assessment, tmp_path: Path, pictures: PhotoPath
) -> None:
    written = write_pdf(condition_report(small), tmp_path / "report.pdf", pictures)

    pages = PdfReader(written.path).pages
    assert written.pages == len(pages) > 3
    for at, page in enumerate(pages, start=1):
        assert re.search(rf"Page {at} of\s+{len(pages)}\b", page.extract_text())


@pytest.mark.parametrize("make", [condition_report, repair_scope])
def test_every_font_is_in_the_file_and_no_more_of_it_than_is_drawn(
    make: Callable[[Assessment], Report], small: Assessment, tmp_path: Path, pictures: PhotoPath
) -> None:
    path = write_pdf(make(small), tmp_path / "report.pdf", pictures).path

    fonts = {
        str(font.get_object()["/BaseFont"]): font.get_object()
        for page in PdfReader(path).pages
        for font in page["/Resources"]["/Font"].values()
    }

    drawn = {name: font for name, font in fonts.items() if "/FontDescriptor" in font}
    assert len(drawn) >= 2
    assert all("/FontFile2" in font["/FontDescriptor"] for font in drawn.values())
    assert all(re.match(r"/[A-Z]{6}\+", name) for name in drawn)  # the mark of a subset
    assert path.stat().st_size < 400_000
    named = set(fonts) - set(drawn)
    assert not named, named


@pytest.mark.skipif(shutil.which("qpdf") is None, reason="qpdf is not installed")
@pytest.mark.parametrize("make", [condition_report, repair_scope])
def test_another_program_finds_nothing_wrong_with_the_file(
    make: Callable[[Assessment], Report], small: Assessment, tmp_path: Path, pictures: PhotoPath
) -> None:
    path = write_pdf(make(small), tmp_path / "report.pdf", pictures).path
    run = subprocess.run(["qpdf", "--check", path], capture_output=True, text=True, check=False)
    assert run.returncode == 0, run.stdout + run.stderr


@pytest.mark.parametrize("make", [condition_report, repair_scope])
def test_the_same_report_gives_the_same_bytes(
    small: Assessment, tmp_path: Path, pictures: PhotoPath, make: Callable[[Assessment], Report]
) -> None:
    first = write_pdf(make(small), tmp_path / "first.pdf", pictures).path.read_bytes()
    second = write_pdf(make(small), tmp_path / "second.pdf", pictures).path.read_bytes()

    assert first == second


def test_the_file_says_what_it_is_and_when_the_walk_was(
    small: Assessment, tmp_path: Path, pictures: PhotoPath
) -> None:
    path = write_pdf(condition_report(small), tmp_path / "report.pdf", pictures).path

    reader = PdfReader(path)
    assert reader.metadata is not None
    assert reader.metadata.title == "Test shed: condition report"
    assert reader.metadata.author == "leanto"
    assert reader.metadata.subject == "Condition report of Test shed"
    assert str(reader.metadata.creation_date_raw).startswith("D:20260601")
    assert reader.trailer["/Root"]["/Lang"] == "en-US"


def test_headings_are_in_the_outline(
    small: Assessment, tmp_path: Path, pictures: PhotoPath
) -> None:
    path = write_pdf(condition_report(small), tmp_path / "report.pdf", pictures).path

    reader = PdfReader(path)
    pages = {
        entry.title: reader.get_destination_page_number(entry)
        for entry in reader.outline
        if not isinstance(entry, list)
    }
    assert pages["Summary"] == 0
    assert pages["Findings"] == 1
    assert 1 < pages["Scope and allowances"] < pages["Appendix: where each figure comes from"]


def test_the_summary_is_one_page_with_the_answer_first(
    small: Assessment, tmp_path: Path, pictures: PhotoPath
) -> None:
    path = write_pdf(condition_report(small), tmp_path / "report.pdf", pictures).path

    first, second, *_ = (page.extract_text() for page in PdfReader(path).pages)
    assert first.index("Keep the interior") < first.index("Plan on") < first.index("do first")
    assert "by no engineer" in first
    assert "The building" in second


@pytest.mark.parametrize("budget", [None, 1, 12_000, 10_000_000])
def test_any_budget_can_be_drawn(
    small: Assessment, tmp_path: Path, pictures: PhotoPath, budget: float | None
) -> None:
    building = small.building.model_copy(update={"budget_usd": budget})
    report = condition_report(replace(small, building=building))

    path = write_pdf(report, tmp_path / "report.pdf", pictures).path

    assert ("budget $" in PdfReader(path).pages[0].extract_text()) is (budget is not None)


def test_the_bidders_file_holds_no_price_and_no_note(
    small: Assessment, tmp_path: Path, pictures: PhotoPath
) -> None:
    text = text_of(write_pdf(repair_scope(small), tmp_path / "scope.pdf", pictures).path)

    assert "Replace the sill" in text
    assert "Unit price" in text
    assert "$" not in text
    assert "Owner paid" not in text
    assert "the owner said" not in text


def test_text_is_never_markup(tmp_path: Path, pictures: PhotoPath) -> None:
    wide = (Column("Title " + MARKUP, 1.0),)
    report = a_report(
        Heading(1, MARKUP),
        Paragraph(MARKUP),
        Bullets((MARKUP,)),
        Facts(((MARKUP, MARKUP),)),
        Table(wide, ((MARKUP,),)),
        Entry("1", MARKUP, (), (MARKUP,), (MARKUP,), (Picture(PHOTO, MARKUP),)),
        Caution(MARKUP, MARKUP, MARKUP),
        title=MARKUP,
    )

    path = write_pdf(report, tmp_path / "report.pdf", pictures).path

    text = text_of(path).replace(" ", "")
    assert text.count(MARKUP.replace(" ", "")) >= 13
    assert len(images_in(path)) == 1
    assert not any("/Annots" in page for page in PdfReader(path).pages)


def test_names_in_many_scripts_are_printed(
    walked: Any, tmp_path: Path, pictures: PhotoPath
) -> None:
    names = "Δημήτρης Παπαδόπουλος, Ольга Иванова, Nguyễn Thị Ánh"
    walked.building = walked.building.model_copy(update={"owner": names})

    written = write_pdf(condition_report(walked.assessment()), tmp_path / "r.pdf", pictures)

    assert names in text_of(written.path)
    assert written.not_drawn == ""


def test_a_character_that_no_font_has_is_printed_as_code_and_named(
    walked: Any, tmp_path: Path, pictures: PhotoPath
) -> None:
    walked.building = walked.building.model_copy(update={"owner": "台北", "name": "Shed 台"})

    written = write_pdf(condition_report(walked.assessment()), tmp_path / "r.pdf", pictures)

    assert written.not_drawn == "北台"
    assert "[U+53F0][U+5317]" in text_of(written.path)


@pytest.mark.parametrize(
    "note",
    [
        "word " * 4000,
        "W" * 20_000,
        "line\n" * 4000,
        "\x00\x1b[31m\u202e\ud800 \U0001f600",
        "",
        " ",
    ],
    ids=["many words", "one word", "many lines", "odd signs", "empty", "blank"],
)
def test_any_note_can_be_printed(
    walked: Any, tmp_path: Path, pictures: PhotoPath, note: str
) -> None:
    walked.find("A finding.", "main.floor", note=note, photos=(PHOTO,))

    written = write_pdf(condition_report(walked.assessment()), tmp_path / "r.pdf", pictures)

    assert "A finding." in text_of(written.path)


@pytest.mark.parametrize("letters", [10, 500, 4_000])
def test_a_cell_of_any_length_is_printed_whole(
    tmp_path: Path, pictures: PhotoPath, letters: int
) -> None:
    table = Table((Column("a", 0.2), Column("b", 0.8)), (("x" * letters, "y"),) * 3)

    path = write_pdf(a_report(table), tmp_path / "r.pdf", pictures).path

    assert text_of(path).count("x") == 3 * letters


def test_titles_are_repeated_where_a_table_runs_on(tmp_path: Path, pictures: PhotoPath) -> None:
    rows = tuple((f"row {n}", str(n)) for n in range(120))
    table = Table((Column("Work", 0.5), Column("Number", 0.5)), rows)

    pages = PdfReader(write_pdf(a_report(table), tmp_path / "r.pdf", pictures).path).pages

    assert len(pages) > 1
    assert all("Work" in page.extract_text() for page in pages)


def test_photos_are_scaled_to_what_print_shows(tmp_path: Path, pictures: PhotoPath) -> None:
    path = write_pdf(a_report(Picture(PHOTO, "wall")), tmp_path / "r.pdf", pictures).path

    (data,) = images_in(path)
    with Image.open(BytesIO(data)) as image:
        assert 300 < image.width < 700
        assert image.width / image.height == pytest.approx(4 / 3, rel=0.01)


def test_a_small_photo_passes_through_byte_for_byte(tmp_path: Path) -> None:
    stored = tmp_path / "small.jpg"
    Image.new("RGB", (200, 150), "#886644").save(stored, "JPEG", quality=70)

    path = write_pdf(a_report(Picture(PHOTO, "x")), tmp_path / "r.pdf", lambda _: stored).path

    assert stored.read_bytes() in path.read_bytes()


def test_no_camera_data_reaches_the_file(tmp_path: Path) -> None:
    stored = tmp_path / "camera.jpg"
    exif = Image.Exif()
    exif[0x010F] = "SecretCameraMaker"
    Image.new("RGB", (200, 150), "#886644").save(stored, "JPEG", exif=exif)
    assert b"SecretCameraMaker" in stored.read_bytes()

    path = write_pdf(a_report(Picture(PHOTO, "x")), tmp_path / "r.pdf", lambda _: stored).path

    assert len(images_in(path)) == 1
    assert b"SecretCameraMaker" not in path.read_bytes()


@pytest.mark.parametrize("content", [None, b"", b"no picture at all", b"\xff\xd8\xff\xe0 cut off"])
def test_a_photo_that_cannot_be_read_leaves_a_frame_that_says_so(
    tmp_path: Path, content: bytes | None
) -> None:
    stored = tmp_path / "photo.jpg"
    if content is not None:
        stored.write_bytes(content)

    path = write_pdf(a_report(Picture(PHOTO, "wall")), tmp_path / "r.pdf", lambda _: stored).path

    assert "picture not found" in text_of(path)


def test_progress_ends_at_all_blocks(
    small: Assessment, tmp_path: Path, pictures: PhotoPath
) -> None:
    told: list[tuple[int, int]] = []
    report = condition_report(small)

    write_pdf(report, tmp_path / "r.pdf", pictures, lambda done, of: told.append((done, of)))

    assert told == sorted(told)
    assert told[-1] == (len(report.blocks), len(report.blocks))


def test_stopping_leaves_the_older_file_and_nothing_else(
    small: Assessment, tmp_path: Path, pictures: PhotoPath
) -> None:
    target = tmp_path / "out" / "r.pdf"
    target.parent.mkdir()
    target.write_bytes(b"older")

    def stop(done: int, _of: int) -> None:
        if done > 3:
            raise KeyboardInterrupt

    with pytest.raises(KeyboardInterrupt):
        write_pdf(condition_report(small), target, pictures, stop)

    assert [path.name for path in target.parent.iterdir()] == ["r.pdf"]
    assert target.read_bytes() == b"older"


def test_a_refusing_file_system_is_said_in_plain_words(
    small: Assessment, tmp_path: Path, pictures: PhotoPath, monkeypatch: pytest.MonkeyPatch
) -> None:
    def full(*_arguments: object) -> None:
        raise OSError(28, os.strerror(28))

    monkeypatch.setattr(Path, "replace", full)

    with pytest.raises(ReportError, match=r"could not be written to .*: No space left") as caught:
        write_pdf(condition_report(small), tmp_path / "out" / "r.pdf", pictures)

    assert caught.value.remedy
    assert list((tmp_path / "out").iterdir()) == []


def test_a_folder_in_the_way_is_refused(tmp_path: Path, pictures: PhotoPath) -> None:
    (tmp_path / "r.pdf").mkdir()

    with pytest.raises(ReportError):
        write_pdf(a_report(Paragraph("x")), tmp_path / "r.pdf", pictures)


def test_an_invented_building_is_called_so_on_every_page(
    walked: Any, tmp_path: Path, pictures: PhotoPath
) -> None:
    walked.building = walked.building.model_copy(update={"invented": True})
    assessment = walked.assessment()

    for make in (condition_report, repair_scope):
        path = write_pdf(make(assessment), tmp_path / "r.pdf", pictures).path
        assert all("Invented example" in page.extract_text() for page in PdfReader(path).pages)


def test_the_file_says_what_the_text_says(
    small: Assessment, tmp_path: Path, pictures: PhotoPath
) -> None:
    report = condition_report(small)

    printed = text_of(write_pdf(report, tmp_path / "r.pdf", pictures).path)

    text = to_text(report, 10_000)
    for block in report.blocks:
        if isinstance(block, Heading | Paragraph):
            assert " ".join(block.text.split()) in text
            assert block.text.replace(" ", "") in printed.replace(" ", "")
