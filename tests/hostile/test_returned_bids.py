"""A returned bid of any content is read or refused in words; nothing is printed or unpacked."""

from __future__ import annotations

import io
import os
import random
import zipfile
import zlib
from collections.abc import Callable
from pathlib import Path

import pytest
from filled_bids import SMALL, as_csv, as_pdf, as_xlsx, fields
from hostile.wild import EVERYTHING

from leanto.bids.reading.bid import bid_of
from leanto.bids.reading.file import read_file
from leanto.bids.reading.refusal import BidFileError
from leanto.bids.reading.returned import read_fields

ROUNDS = 200 if os.environ.get("LEANTO_NIGHTLY") else 25
FILLED = fields(SMALL, **{"note|replace-sill@main.north": "by others", "total": "$ 5,000.00"})


def whole(kind: str, folder: Path) -> bytes:
    match kind:
        case "pdf":
            return as_pdf(SMALL, FILLED, folder)
        case "xlsx":
            return as_xlsx(SMALL, FILLED)
    return as_csv(SMALL, FILLED)


def was_read(content: bytes, folder: Path) -> bool:
    (folder / "returned").write_bytes(content)
    try:
        bid_of(read_fields(read_file(folder / "returned")), SMALL, bidder="x")
    except BidFileError as refused:
        assert refused.remedy
        assert len(str(refused)) < 500
        return False
    return True


@pytest.mark.parametrize("kind", ["pdf", "xlsx", "csv"])
def test_a_bid_with_changed_bytes(
    kind: str, tmp_path: Path, capfd: pytest.CaptureFixture[str]
) -> None:
    luck = random.Random(kind)
    content = whole(kind, tmp_path)
    assert was_read(content, tmp_path)
    for _ in range(ROUNDS):
        changed = bytearray(content)
        for _ in range(luck.randint(1, 30)):
            changed[luck.randrange(len(changed))] = luck.randrange(256)
        was_read(bytes(changed), tmp_path)
    assert capfd.readouterr() == ("", "")


@pytest.mark.parametrize("kind", ["pdf", "xlsx", "csv"])
def test_a_bid_that_is_cut_short(
    kind: str, tmp_path: Path, capfd: pytest.CaptureFixture[str]
) -> None:
    content = whole(kind, tmp_path)
    for end in range(0, len(content), max(1, len(content) // ROUNDS)):
        was_read(content[:end], tmp_path)
    assert capfd.readouterr() == ("", "")


def pdf_bomb() -> bytes:
    packed = zlib.compress(zlib.compress(b"\0" * 200_000_000, 9), 9)
    return (
        b"%%PDF-1.7\n1 0 obj<</Type/Catalog/Pages 2 0 R>>endobj\n"
        b"2 0 obj<</Type/Pages/Kids[3 0 R]/Count 1>>endobj\n"
        b"3 0 obj<</Type/Page/Parent 2 0 R/Contents 4 0 R>>endobj\n"
        b"4 0 obj<</Filter[/FlateDecode/FlateDecode]/Length %d>>stream\n%b\nendstream endobj\n"
        b"trailer<</Root 1 0 R>>\n%%%%EOF\n" % (len(packed), packed)
    )


def pdf_circle() -> bytes:
    return (
        b"%PDF-1.7\n1 0 obj<</Type/Catalog/Pages 2 0 R/AcroForm<</Fields[3 0 R]>>>>endobj\n"
        b"2 0 obj<</Type/Pages/Kids[2 0 R]/Count 1>>endobj\n"
        b"3 0 obj<</T(a)/Kids[3 0 R]>>endobj\ntrailer<</Root 1 0 R>>\n%%EOF\n"
    )


def workbook(**parts: bytes) -> bytes:
    out = io.BytesIO()
    with (
        zipfile.ZipFile(io.BytesIO(as_xlsx(SMALL, FILLED))) as old,
        zipfile.ZipFile(out, "w", zipfile.ZIP_DEFLATED) as new,
    ):
        for name in old.namelist():
            new.writestr(name, parts.pop(name, old.read(name)))
        for name, content in parts.items():
            new.writestr(name, content)
    return out.getvalue()


def laughing() -> bytes:
    entities = "".join(f'<!ENTITY a{n} "{f"&a{n - 1};" * 20 if n else "ha"}">' for n in range(20))
    return (
        f'<?xml version="1.0"?><!DOCTYPE sst [{entities}]>'
        '<sst xmlns="http://schemas.openxmlformats.org/spreadsheetml/2006/main">'
        "<si><t>&a19;</t></si></sst>"
    ).encode()


BOMBS: dict[str, Callable[[], bytes]] = {
    "a PDF that unpacks to 200 MB": pdf_bomb,
    "a PDF whose pages and fields go in a circle": pdf_circle,
    "a workbook that unpacks to 60 MB": lambda: workbook(**{"xl/more.xml": b"<x>" * 20_000_000}),
    "a workbook of nested entities": lambda: workbook(**{"xl/sharedStrings.xml": laughing()}),
    "a workbook with parts outside": lambda: workbook(**{"../../../../tmp/outside.xml": b"<x/>"}),
    "a table of 100,000 rows": lambda: b"Id,Amount\n" + b"a,1\n" * 100_000,
    "one cell of 5 MB": lambda: b"Id,Amount\nreplace-sill@main.north," + b"9" * 5_000_000,
    "all kinds of text": lambda: f"Id,Amount\n{EVERYTHING}\n".encode("utf-8", "replace"),
}


@pytest.mark.parametrize("name", BOMBS)
def test_a_bomb_is_refused_or_comes_to_little(
    name: str, tmp_path: Path, capfd: pytest.CaptureFixture[str]
) -> None:
    was_read(BOMBS[name](), tmp_path)

    assert [path.name for path in tmp_path.iterdir()] == ["returned"]
    assert capfd.readouterr() == ("", "")
