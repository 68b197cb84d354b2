"""Forms in the PDF: filled by one library, read by another."""

from __future__ import annotations

import json
import shutil
import subprocess
from decimal import Decimal
from pathlib import Path
from typing import Any

import pytest
from bid_forms import DAY, LINES, a_form
from pypdf import PdfReader, PdfWriter

from leanto.bids.layout import field, pdf_name
from leanto.bids.model import BidForm, BidLine, State
from leanto.bids.reading.bid import bid_of
from leanto.bids.reading.pdf import read_pdf
from leanto.reports.blocks import Column, Field, FormTable, Report
from leanto.reports.contents.package_form import form_blocks
from leanto.reports.pdf import write_pdf
from leanto.reports.text import to_text
from leanto.scope.work import Trade

QPDF = shutil.which("qpdf")
READ_ONLY, MULTILINE = 1, 1 << 12
TYPED = {
    field("unit", "strip@main.north.inside"): "1.85",
    field("amount", "strip@main.north.inside"): "323.75",
    field("amount", "sill@main"): "$1,200.50",
    field("note", "sill@main"): "treated lumber",
    field("amount", "stud@main"): "by others",
    "bidder": "Ash & Alder",
    "total": "3358.75",
    "exclusions": "Painting\nPermits",
    "validity": "30 days",
    "added1|text": "Second container",
    "added1|amount": "450",
    field("askunit", "replace-stud"): "95",
    field("alt", "leave@main"): "320",
}


def a_report(form: BidForm) -> Report:
    return Report("Repair scope for bidders", "A shed", "", DAY, form_blocks(form))


@pytest.fixture
def blank(tmp_path: Path) -> Path:
    return write_pdf(a_report(a_form()), tmp_path / "form.pdf", lambda photo: tmp_path).path


def filled(blank: Path, typed: dict[str, str]) -> Path:
    writer = PdfWriter(clone_from=blank)
    for page in writer.pages:
        writer.update_page_form_field_values(
            page, {pdf_name(name): text for name, text in typed.items()}, auto_regenerate=False
        )
    path = blank.with_name("filled.pdf")
    writer.write(path)
    return path


def test_every_line_and_term_has_its_field(blank: Path) -> None:
    fields = PdfReader(blank).get_fields() or {}

    for line in LINES:
        for part in ("unit", "amount", "note"):
            assert pdf_name(f"{part}|{line.item_id}") in fields
    for name in ("askunit|hour-carpenter", "alt|leave@main", "allowance|lights", "added5|amount"):
        assert name in fields
    assert {"bidder", "total", "exclusions", "qualifications", "validity"} <= fields.keys()
    assert {"start", "duration"} <= fields.keys()
    assert not any("." in name for name in fields)


def test_what_tells_forms_apart_cannot_be_typed_over(blank: Path) -> None:
    fields = PdfReader(blank).get_fields() or {}
    fixed = {name for name, held in fields.items() if int(held.get("/Ff", 0)) & READ_ONLY}

    assert fixed == {"form_id", "job_id", "addendum", "allowance|lights", "allowance|door"}
    assert fields["form_id"]["/V"] == a_form().form_id
    assert fields["addendum"]["/V"] == "0"
    assert int(fields["exclusions"]["/Ff"]) & MULTILINE
    assert not int(fields["bidder"]["/Ff"]) & MULTILINE


def test_a_field_says_what_it_is_for_and_takes_long_text(blank: Path) -> None:
    fields = PdfReader(blank).get_fields() or {}

    held = fields[pdf_name("unit|strip@main.north.inside")]
    assert held["/TU"] == (
        "Line 1, Strip the lining, Main room, north wall, inside: price per sq ft"
    )
    assert "/MaxLen" not in fields["exclusions"]


def test_no_two_fields_lie_on_each_other_or_off_the_page(blank: Path) -> None:
    for page in PdfReader(blank).pages:
        width, height = float(page.mediabox.width), float(page.mediabox.height)
        boxes = [[float(x) for x in note["/Rect"]] for note in annotations(page)]
        for at, (left, bottom, right, top) in enumerate(boxes):
            assert 0 < left < right < width
            assert 0 < bottom < top < height
            assert right - left > 40
            for other in boxes[:at]:
                apart = (
                    left >= other[2] or right <= other[0] or bottom >= other[3] or top <= other[1]
                )
                assert apart


def annotations(page: Any) -> list[Any]:
    return [note.get_object() for note in page.get("/Annots", [])]


def test_a_filled_form_is_read_back(blank: Path) -> None:
    path = filled(blank, TYPED)

    read = read_pdf("filled.pdf", path.read_bytes())

    assert {name: read[name] for name in TYPED} == TYPED
    bid = bid_of(read, a_form())
    assert bid.bidder == "Ash & Alder"
    assert bid.form_id == a_form().form_id
    assert bid.entries_of("sill@main")[0].amount.usd == Decimal("1200.50")
    assert bid.entries_of("stud@main")[0].amount.state is State.EXCLUDED
    assert bid.exclusions == ("Painting", "Permits")
    assert bid.added[0].amount.usd == 450
    assert bid.allowances["door"].usd == Decimal("1234.50")
    assert not bid.unread


def test_the_blank_form_says_nothing(blank: Path) -> None:
    bid = bid_of(read_pdf("form.pdf", blank.read_bytes()), a_form())

    assert bid.bidder == ""
    assert not bid.added
    assert not bid.unread
    assert all(entry.amount.state is State.MISSING for entry in bid.entries)


@pytest.mark.skipif(QPDF is None, reason="qpdf is not here")
def test_a_second_reader_finds_nothing_wrong_and_the_same_text(blank: Path) -> None:
    path = filled(blank, TYPED)
    for one in (blank, path):
        subprocess.run([str(QPDF), "--check", str(one)], check=True, capture_output=True)

    told = subprocess.run(
        [str(QPDF), "--json", "--json-key=acroform", str(path)], check=True, capture_output=True
    )

    form = json.loads(told.stdout)["acroform"]
    read = {one["fullname"]: one["value"] for one in form["fields"]}
    for name, text in TYPED.items():
        assert read[pdf_name(name)].removeprefix("u:") == text


@pytest.mark.skipif(QPDF is None, reason="qpdf is not here")
def test_a_form_filled_by_another_program_says_the_same(blank: Path, tmp_path: Path) -> None:
    dumped = subprocess.run([str(QPDF), "--json-output", str(blank), "-"], capture_output=True)
    header, objects = json.loads(dumped.stdout)["qpdf"]
    wanted = {f"u:{pdf_name(name)}": f"u:{text}" for name, text in TYPED.items()}
    changed = {}
    for key, held in objects.items():
        value = held.get("value")
        if isinstance(value, dict) and value.get("/T") in wanted:
            changed[key] = {"value": value | {"/V": wanted[value["/T"]]}}
    update, path = tmp_path / "update.json", tmp_path / "filled.pdf"
    update.write_text(json.dumps({"qpdf": [header, changed]}))
    subprocess.run([str(QPDF), str(blank), f"--update-from-json={update}", str(path)], check=True)

    read = read_pdf("filled.pdf", path.read_bytes())

    assert len(changed) == len(TYPED)
    assert {name: read[name] for name in TYPED} == TYPED


def test_the_same_form_gives_the_same_bytes(blank: Path, tmp_path: Path) -> None:
    again = write_pdf(a_report(a_form()), tmp_path / "again.pdf", lambda photo: tmp_path)

    assert again.path.read_bytes() == blank.read_bytes()


def test_a_form_over_many_pages_has_each_field_once(tmp_path: Path) -> None:
    lines = tuple(
        BidLine(f"w{n}@x", n, f"Work {n}", "A place " * 9, Trade.CARPENTER, "B2010", 1.0, "each")
        for n in range(1, 121)
    )
    written = write_pdf(
        a_report(a_form(lines=lines)), tmp_path / "long.pdf", lambda photo: tmp_path
    )

    names = [
        str(note["/T"]) for page in PdfReader(written.path).pages for note in annotations(page)
    ]
    assert written.pages > 4
    assert len(names) == len(set(names))
    assert sum(name.startswith("unit|") for name in names) == 120


def test_the_form_is_text_too() -> None:
    text = to_text(a_report(a_form()))

    assert "Strip the lining" in text
    assert "________" in text
    assert a_form().form_id in text


def test_a_row_needs_a_cell_for_every_column() -> None:
    with pytest.raises(ValueError, match="a cell for every column"):
        FormTable((Column("A", 1), Column("B", 1)), ((Field("a", "A"),),))
