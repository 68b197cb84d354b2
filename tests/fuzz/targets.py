"""What is fuzzed: every way by which text or files from outside come in, with whole samples.

A target takes any bytes; it returns, or raises one of ``REFUSED``. Anything else is a fault.
"""

from __future__ import annotations

import io
import tempfile
from collections.abc import Callable, Iterator
from functools import cache
from pathlib import Path

from filled_bids import SMALL, as_csv, as_pdf, as_xlsx, fields
from hostile.wild import steering
from PIL import Image
from small_shed import SHED

from leanto.bids.reading.bid import bid_of
from leanto.bids.reading.file import read_file
from leanto.bids.reading.numbers import read_amount
from leanto.bids.reading.returned import read_fields
from leanto.building.load import parse_building
from leanto.checklist.model import Section
from leanto.cost.price import PriceFile
from leanto.errors import LeantoError
from leanto.places import checklists_dir
from leanto.quantities import parse_length_ft
from leanto.record.document import parse_export
from leanto.record.photos import import_photo
from leanto.record.salvage import salvage
from leanto.record.store import Store
from leanto.reports.characters import printable
from leanto.reports.text_wrap import wrapped
from leanto.rules.expression import ExpressionError, compile_expression
from leanto.rules.facts import STATIC_FACTS
from leanto.rules.model import RuleFile
from leanto.tui.shown import on_one_line, visible
from leanto.yaml_input import parse_model

REFUSED = (LeantoError, ExpressionError)
_FACTS = {fact.name: fact for fact in STATIC_FACTS}
_EXPORT = """leanto_export: 1
job: shed
observations:
  - station: main.south.outside
    item: sill
    condition: failed
    measures: {probe_depth_in: 1.5}
    zone: {left_ft: 2, bottom_ft: 0, width_ft: 4, height_ft: 1}
    note: Soft to the awl.
"""


@cache
def _folder() -> Path:
    return Path(tempfile.mkdtemp(prefix="leanto-fuzz-"))


def _text(data: bytes) -> str:
    return data.decode("utf-8", "replace")


def building(data: bytes) -> None:
    parse_building(_text(data), "shed.yaml")


def export(data: bytes) -> None:
    parse_export(_text(data), "export.yaml")


def checklist(data: bytes) -> None:
    parse_model(_text(data), Section, "walk.yaml")


def prices(data: bytes) -> None:
    parse_model(_text(data), PriceFile, "prices.yaml")


def rules(data: bytes) -> None:
    parse_model(_text(data), RuleFile, "rules.yaml")


def expression(data: bytes) -> None:
    compile_expression(_text(data), _FACTS)


def length(data: bytes) -> None:
    parse_length_ft(_text(data))


def amount(data: bytes) -> None:
    said = _text(data)
    for comma_decimals in (False, True):
        read_amount(said, comma_decimals=comma_decimals, below_zero=True)


def text(data: bytes) -> None:
    any_text = data.decode("utf-8", "surrogateescape")
    for shown in (printable(any_text), visible(any_text), on_one_line(any_text)):
        assert not steering(shown), ascii(shown)
    wrapped(printable(any_text), 40)


def photo(data: bytes) -> None:
    (_folder() / "photo").write_bytes(data)
    import_photo(_folder() / "photo", _folder() / "photos")


def exif(data: bytes) -> None:
    """A whole picture that carries any camera data."""
    out = io.BytesIO()
    Image.new("RGB", (8, 6)).save(out, "JPEG", exif=b"Exif\0\0" + data[:60_000])
    photo(out.getvalue())


def bid(data: bytes) -> None:
    """A returned file of any kind."""
    (_folder() / "bid").write_bytes(data)
    bid_of(read_fields(read_file(_folder() / "bid")), SMALL, bidder="x")


def record(data: bytes) -> None:
    folder = _folder() / "job"
    folder.mkdir(exist_ok=True)
    for left in folder.iterdir():
        left.unlink()
    (folder / "record.db").write_bytes(data)
    salvage(folder / "record.db")
    with Store.open(folder / "record.db") as store:
        store.entries()


TARGETS: dict[str, Callable[[bytes], None]] = {
    one.__name__: one
    for one in (
        *(building, export, checklist, prices, rules, expression, length),
        *(amount, bid, exif, photo, record, text),
    )
}
LIBRARIES = {"bid": ("pypdf", "openpyxl"), "exif": ("PIL",), "photo": ("PIL",)}
"""Libraries whose branches lead the fuzzing too, by target."""


def samples(target: str) -> Iterator[bytes]:
    """Some whole inputs of the kind."""
    match target:
        case "building":
            yield SHED.encode()
        case "export":
            yield _EXPORT.encode()
        case "checklist" | "prices" | "rules":
            folder = {"checklist": "walk"}.get(target, target)
            for path in sorted((checklists_dir() / folder).glob("*.yaml")):
                yield path.read_bytes()[:1500]
        case "expression":
            yield b"worn and (zone_area_sqft > 4 or found_above('roof-leaks'))"
        case "length":
            yield from (b"7' 3 1/2\"", b"2.24 m", b"88", b"7-3")
        case "amount":
            yield from (b"$1,200.50", b"incl. in line 4", b"1.200,00 per sq ft", b"2 to 3k")
        case "bid":
            filled = fields(SMALL)
            yield as_csv(SMALL, filled)
            yield as_xlsx(SMALL, filled)
            yield as_pdf(SMALL, filled, _folder())
        case "exif":
            camera = Image.Exif()
            camera[0x0112] = 6
            camera.get_ifd(0x8769)[0x9003] = "2026:11:25 10:00:00"
            yield camera.tobytes()[6:]
        case "photo":
            for kind in ("JPEG", "PNG", "GIF", "TIFF", "WEBP", "BMP"):
                out = io.BytesIO()
                Image.effect_noise((24, 16), 40).convert("RGB").save(out, kind)
                yield out.getvalue()
        case "record":
            Store.create(_folder() / "sample.db").close()
            yield (_folder() / "sample.db").read_bytes()
        case "text":
            yield "\x1b[31m\u202ered [bold]\x9b2J".encode()
