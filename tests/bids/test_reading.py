"""Returned files of every kind, whole and broken."""

from __future__ import annotations

import io
import zipfile
from pathlib import Path

import pytest
from filled_bids import SMALL, as_csv, as_pdf, as_xlsx, fields, form, line
from hypothesis import given
from hypothesis import strategies as st
from office import needs_office, saved_by_office

from leanto.bids.model import Allowance, Amount, Bid, State
from leanto.bids.reading import file as file_module
from leanto.bids.reading.bid import bid_of
from leanto.bids.reading.file import ReturnedFile, read_file
from leanto.bids.reading.refusal import BidFileError
from leanto.bids.reading.returned import read_fields

SILL, SIDING = "replace-sill@main.north", "replace-siding@main.north.outside"
CIRCUIT, PROTECT = "add-circuit@building+1", "protect-room@building"
STRIP = "strip-board@main.north.inside"
FILLED = fields(
    SMALL,
    units={SILL: "incl. in line 4", SIDING: "1.200", CIRCUIT: ""},
    **{
        f"note|{CIRCUIT}": "by others",
        "askunit|sister-stud": "95",
        "alt|new-door@main.south+2": "1,450",
        "total": "$ 5,000.00",
        "exclusions": "permit; paint",
        "qualifications": "power on site",
        "validity": "60 days",
        "start": "May 3",
        "duration": "8 weeks",
    },
)


def read(content: bytes, kind: str) -> Bid:
    got = read_fields(ReturnedFile(f"bid.{kind}", content, kind))  # type: ignore[arg-type]
    return bid_of(got, SMALL)


@pytest.fixture(params=["pdf", "xlsx", "csv", "csv;"])
def returned(request: pytest.FixtureRequest, tmp_path: Path) -> Bid:
    match request.param:
        case "pdf":
            return read(as_pdf(SMALL, FILLED, tmp_path), "pdf")
        case "xlsx":
            return read(as_xlsx(SMALL, FILLED), "xlsx")
        case "csv":
            return read(as_csv(SMALL, FILLED), "csv")
    return read(as_csv(SMALL, FILLED, delimiter=";"), "csv")


def test_every_kind_of_file_says_the_same(returned: Bid) -> None:
    entries = {entry.item_id: entry for entry in returned.entries}

    assert returned.bidder == "Alder Works"
    assert (returned.form_id, returned.addendum) == (SMALL.form_id, 0)
    assert entries[PROTECT].unit_price.usd == 10
    assert entries[SILL].amount.state is State.INCLUDED
    assert entries[SIDING].amount.state is State.UNREAD
    assert entries[CIRCUIT].amount.state is State.EXCLUDED
    assert returned.unit_prices == {"sister-stud": Amount.of(95, "95")}
    assert returned.alternates["new-door@main.south+2"].usd == 1450
    assert returned.stated_total.usd == 5000
    assert returned.exclusions == ("permit", "paint")
    assert returned.qualifications == ("power on site",)
    assert (returned.validity_days, returned.start, returned.duration) == (60, "May 3", "8 weeks")
    assert [(one.field, one.text) for one in returned.unread] == [(f"unit|{SIDING}", "1.200")]


def test_lines_are_matched_by_their_id_not_by_their_place() -> None:
    head, *rows = as_csv(SMALL, fields(SMALL, units={SILL: "77"})).decode().splitlines()

    bid = read("\n".join([head, *reversed(rows)]).encode(), "csv")

    assert {e.item_id: str(e.unit_price.usd) for e in bid.entries}[SILL] == "77"


def test_columns_may_stand_in_another_order_and_others_between_them() -> None:
    bid = read(f"Remark,Amount,Id\nx,250,{SILL}\ny,0,{SIDING}\nBidder,,bidder\n".encode(), "csv")

    assert [(e.item_id, e.amount.usd) for e in bid.entries] == [(SILL, 250), (SIDING, 0)]


def test_a_split_line_and_an_added_one_are_kept_as_such() -> None:
    text = (
        "Id,Work,Quantity,Unit price,Amount\n"
        f"{SILL},North sill west half,8,10,80\n"
        f"{SILL},North sill east half,6,12,72\n"
        ",Carpenter,,,\n"
        ",Blocking for a bench,,,310\n"
        ",Extra cleaning,,,\n"
        ",Subtotal,,,462\n"
    )

    bid = read(text.encode(), "csv")

    assert [(e.item_id, e.quantity, e.amount.usd) for e in bid.entries] == [
        (SILL, 8, 80),
        (SILL, 6, 72),
    ]
    assert [(a.text, a.amount.usd) for a in bid.added] == [
        ("Blocking for a bench", 310),
        ("Extra cleaning", None),
    ]


def test_what_is_on_no_form_is_asked_about_and_not_dropped() -> None:
    bid = bid_of(
        {
            "amount|new-roof@main": "900",
            "note|new-roof@main": "needed",
            "askunit|gold": "5",
            "favorite color": "blue",
            "validity": "a while",
            f"quantity|{SILL}": "some",
            f"unit|{SILL}": "3",
        },
        SMALL,
    )

    assert [(a.text, a.amount.usd) for a in bid.added] == [("Line new-roof@main needed", 900)]
    assert {one.field: one.text for one in bid.unread} == {
        "line|new-roof@main": "Line new-roof@main needed",
        "askunit|gold": "5",
        "favorite color": "blue",
        "validity": "a while",
        f"quantity|{SILL}": "some",
    }


def test_blank_is_missing_and_zero_is_zero() -> None:
    bid = bid_of({f"amount|{SILL}": " ", f"amount|{SIDING}": "0"}, SMALL)

    assert [(e.item_id, e.amount.usd) for e in bid.entries] == [(SIDING, 0)]


@pytest.mark.parametrize(
    ("id_", "text", "usd", "asked"),
    [
        ("keep@main.north.inside", "800", 800, False),
        ("keep@main.north.inside", "-800", 800, False),
        ("new-door@main.south+2", "800", 800, False),
        ("new-door@main.south+2", "-800", None, True),
    ],
)
def test_only_a_deduction_may_have_a_minus(
    id_: str, text: str, usd: int | None, asked: bool
) -> None:
    bid = bid_of({f"alt|{id_}": text}, SMALL)

    assert bid.alternates[id_].usd == usd
    assert bool(bid.unread) == asked


def test_the_owners_answer_stands_in_the_place_of_what_was_typed() -> None:
    typed = {f"unit|{SIDING}": "1.200", "bidder": "Alder"}

    answered = bid_of(typed, SMALL, answers={f"unit|{SIDING}": "1200"})

    assert answered.entries[0].unit_price.usd == 1200
    assert not answered.unread


def test_an_allowance_carried_by_the_bidder_is_read() -> None:
    with_window = form(line(1, "roof@main"), allowances=(Allowance("window", "Window", 1500),))  # type: ignore[arg-type]

    bid = bid_of({"allowance|window": "1,000", "amount|roof@main": "5"}, with_window)

    assert bid.allowances == {"window": Amount.of(1000, "1,000")}


def test_figures_of_a_workbook_are_not_taken_for_thousands() -> None:
    from openpyxl import Workbook

    book = Workbook()
    sheet = book.active
    assert sheet is not None
    for row in (["Id", "Unit price"], [SILL, 1.125], [SIDING, 12.5], [CIRCUIT, 40]):
        sheet.append(row)
    out = io.BytesIO()
    book.save(out)

    bid = read(out.getvalue(), "xlsx")

    assert [str(entry.unit_price.usd) for entry in bid.entries] == ["1.1250", "12.5", "40"]
    assert not bid.unread


def zipped(**parts: bytes) -> bytes:
    out = io.BytesIO()
    with zipfile.ZipFile(out, "w", zipfile.ZIP_DEFLATED) as archive:
        for name, content in parts.items():
            archive.writestr(name.replace("__", "/"), content)
    return out.getvalue()


def scan() -> bytes:
    from pypdf import PdfWriter

    writer = PdfWriter()
    writer.add_blank_page(200, 200)
    out = io.BytesIO()
    writer.write(out)
    return out.getvalue()


def locked(content: bytes) -> bytes:
    from pypdf import PdfReader, PdfWriter

    writer = PdfWriter(clone_from=PdfReader(io.BytesIO(content)))
    writer.encrypt("secret", algorithm="RC4-128")
    out = io.BytesIO()
    writer.write(out)
    return out.getvalue()


BAD = {
    "empty.csv": (b"  \n", "is empty"),
    "macro.xlsx": (
        zipped(**{"xl__workbook.xml": b"<x/>", "xl__vbaProject.bin": b"x"}),
        "holds macros",
    ),
    "letter.xlsx": (zipped(**{"word__document.xml": b"<x/>"}), "is no XLSX workbook"),
    "hollow.xlsx": (zipped(**{"xl__workbook.xml": b"<x/>"}), "is broken or cut short"),
    "old.xls": (b"\xd0\xcf\x11\xe0\xa1\xb1\x1a\xe1" + b"\0" * 600, "protected by a password, or"),
    "photo.jpg": (b"\xff\xd8\xff\xe0" + b"\0" * 50, "is a picture"),
    "thing.bin": (b"ab\0cd", "is neither PDF, XLSX nor CSV"),
    "cut.pdf": (b"%PDF-1.7\n1 0 obj\n<<", "is broken or cut short"),
    "scan.pdf": (scan(), "is a scan"),
    "letter.csv": (b"Dear owner,\nwe offer 5,000\n", "has no column"),
    "bomb.xlsx": (
        zipped(**{"xl__workbook.xml": b"<x/>", "xl__a.xml": b"0" * 70_000_000}),
        "unpack to far more",
    ),
}


@pytest.mark.parametrize("name", BAD)
def test_a_file_that_is_no_bid_gets_one_clear_line(name: str, tmp_path: Path) -> None:
    content, said = BAD[name]
    path = tmp_path / name
    path.write_bytes(content)

    with pytest.raises(BidFileError) as refused:
        read_fields(read_file(path))

    assert said in refused.value.what
    assert refused.value.what.startswith(name)
    assert "\n" not in str(refused.value)


def test_a_locked_a_cut_and_a_printed_form_are_told_apart(tmp_path: Path) -> None:
    whole = as_pdf(SMALL, FILLED, tmp_path)
    plain = (tmp_path / "form.pdf").read_bytes()
    for content, said in (
        (locked(whole), "is protected by a password"),
        (whole[: len(whole) // 2], "is broken or cut short"),
        (without_fields(plain), "was printed to a new PDF"),
    ):
        with pytest.raises(BidFileError, match=said):
            read_fields(ReturnedFile("bid.pdf", content, "pdf"))


def without_fields(content: bytes) -> bytes:
    from pypdf import PdfReader, PdfWriter

    writer = PdfWriter()
    for page in PdfReader(io.BytesIO(content)).pages:
        if "/Annots" in page:
            del page["/Annots"]
        writer.add_page(page)
    out = io.BytesIO()
    writer.write(out)
    return out.getvalue()


def test_a_cut_workbook_is_broken() -> None:
    content = as_xlsx(SMALL, FILLED)

    with pytest.raises(BidFileError, match="is broken or cut short"):
        file_module._kind("bid.xlsx", content[: len(content) // 2])


def test_a_large_file_is_not_read(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(file_module, "MOST_BYTES", 1_000_000)
    path = tmp_path / "large.pdf"
    path.write_bytes(b"%PDF-" + b"0" * 1_000_001)

    with pytest.raises(BidFileError, match="is larger than 1 MB"):
        read_file(path)


@pytest.mark.parametrize(("make", "said"), [("nothing", "There is no file"), ("dir", "a folder")])
def test_what_is_no_file_is_refused(make: str, said: str, tmp_path: Path) -> None:
    path = tmp_path / "bid.pdf"
    if make == "dir":
        path.mkdir()

    with pytest.raises(BidFileError, match=said):
        read_file(path)


AMOUNTS = [f"{part}|{one.item_id}" for part in ("unit", "amount") for one in SMALL.lines]
AMOUNTS += ["askunit|sister-stud", "alt|new-door@main.south+2", "total", "added1|amount", "odd one"]


@given(st.dictionaries(st.sampled_from(AMOUNTS), st.text(max_size=30)))
def test_whatever_is_typed_is_read_or_asked_about_and_nothing_is_dropped(
    typed: dict[str, str],
) -> None:
    bid = bid_of(typed, SMALL)

    kept = [one.text for one in bid.unread]
    kept += [amount.text for e in bid.entries for amount in (e.amount, e.unit_price)]
    kept += [x.text for x in (*bid.unit_prices.values(), *bid.alternates.values())]
    kept += [bid.stated_total.text, *(added.amount.text for added in bid.added)]
    words = {" ".join(text.split()) for text in kept}
    assert {" ".join(text.split()) for text in typed.values() if text.strip()} <= words


@needs_office
def test_a_workbook_saved_by_another_program_says_the_same(tmp_path: Path) -> None:
    filled = as_xlsx(SMALL, {k: v for k, v in FILLED.items() if k != "total"})

    bid = read(saved_by_office(filled, tmp_path), "xlsx")

    prices = {entry.item_id: entry.unit_price.usd for entry in bid.entries}
    amounts = {entry.item_id: entry.amount for entry in bid.entries}
    assert prices[STRIP] == 10
    assert amounts[STRIP].usd == 1200
    assert amounts[SILL].state is State.INCLUDED
    assert amounts[SIDING].state is State.UNREAD
    assert amounts[CIRCUIT].state is State.EXCLUDED
    assert bid.stated_total.usd == 10 + 1200
    assert bid.alternates["new-door@main.south+2"].usd == 1450
    assert bid.added == ()
    assert [one.field for one in bid.unread] == [f"unit|{SIDING}"]
    assert (bid.bidder, bid.form_id) == ("Alder Works", SMALL.form_id)
