"""Reports as HTML pages."""

from __future__ import annotations

import re
from collections.abc import Callable
from dataclasses import replace
from datetime import date
from html.parser import HTMLParser
from itertools import pairwise
from pathlib import Path

import pytest

from leanto.assessment import Assessment
from leanto.building.rectangle import Rectangle
from leanto.building.sketch import Sketch, SketchZone
from leanto.errors import ReportError
from leanto.record.observation import Photo
from leanto.reports.blocks import (
    Band,
    Block,
    Caution,
    Column,
    Entry,
    Figure,
    Heading,
    Paragraph,
    Picture,
    Report,
    Table,
)
from leanto.reports.contents import condition_report, repair_scope
from leanto.reports.html import to_html, write_html
from leanto.reports.text import to_text

PhotoPath = Callable[[Photo], Path]
PHOTO = Photo("1" * 64, "1.jpg")
MARKUP = 'see <b>bold <img src="/etc/hostname"/> <script>alert(1)</script> &amp; ]]> \x1b[2J'
VOID = {"meta", "br", "img"}


class Page(HTMLParser):
    """The elements of a page in order, with their texts; fails where they do not nest."""

    def __init__(self, html: str) -> None:
        super().__init__()
        self.open: list[str] = []
        self.elements: list[tuple[str, dict[str, str | None]]] = []
        self.texts: list[tuple[str, str]] = []
        self.feed(html)
        self.close()
        assert self.open == []

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        self.elements.append((tag, dict(attrs)))
        if tag not in VOID:
            self.open.append(tag)

    def handle_endtag(self, tag: str) -> None:
        assert self.open.pop() == tag

    def handle_data(self, data: str) -> None:
        if self.open and self.open[-1] != "style":
            self.texts.append((self.open[-1], data))

    @property
    def text(self) -> str:
        return " ".join(" ".join(text for _, text in self.texts).split())

    def of(self, tag: str) -> list[dict[str, str | None]]:
        return [attributes for name, attributes in self.elements if name == tag]


def a_report(*blocks: Block) -> Report:
    return Report("Test report", "A shed", "Nowhere", date(2026, 6, 1), blocks)


def page_of(*blocks: Block, pictures: PhotoPath | None = None) -> Page:
    return Page(to_html(a_report(*blocks), pictures or (lambda photo: Path("nowhere.jpg"))))


@pytest.mark.parametrize("make", [condition_report, repair_scope])
def test_a_whole_report_says_what_the_plain_text_says(
    make: Callable[[Assessment], Report], small: Assessment, pictures: PhotoPath
) -> None:
    report = make(small)

    page = Page(to_html(report, pictures))

    said = set(re.findall(r"[a-z]{3,}", page.text.lower()))
    for block in report.blocks:
        if isinstance(block, Paragraph | Heading | Entry | Caution):
            words = re.findall(r"[a-z]{3,}", to_text(a_report(block), 400).lower())
            assert set(words) - {"test", "report", "shed", "nowhere", "picture"} <= said


def test_no_text_becomes_markup_and_nothing_steers_a_terminal() -> None:
    html = to_html(
        a_report(
            Heading(1, MARKUP),
            Paragraph(MARKUP),
            Table((Column(MARKUP, 1),), (Band(MARKUP), (MARKUP,))),
            Entry("1", MARKUP, (MARKUP,), (MARKUP,), (MARKUP,)),
            Caution(MARKUP, MARKUP, MARKUP),
        ),
        lambda photo: Path("nowhere.jpg"),
    )

    page = Page(html)
    assert page.of("script") == page.of("img") == page.of("b") == []
    assert "\x1b" not in html
    assert page.text.count('<img src="/etc/hostname"/>') >= 8


def test_headings_never_skip_a_level(small: Assessment, pictures: PhotoPath) -> None:
    page = Page(to_html(condition_report(small), pictures))

    levels = [int(tag[1]) for tag, _ in page.elements if re.fullmatch("h[1-6]", tag)]

    assert levels[0] == 1
    assert levels.count(1) == 1
    assert all(below - above <= 1 for above, below in pairwise(levels))


def test_every_link_of_the_contents_leads_to_its_part(
    small: Assessment, pictures: PhotoPath
) -> None:
    page = Page(to_html(condition_report(small), pictures))

    links = [str(attributes["href"]) for attributes in page.of("a")]
    targets = {f"#{attributes['id']}" for _, attributes in page.elements if "id" in attributes}

    assert len(links) > 5
    assert set(links) <= targets


def test_a_table_has_head_cells_for_columns_and_groups() -> None:
    columns = (Column("Work", 1), Column("Likely", 1, "right"))
    page = page_of(Table(columns, (Band("Strip", "$40"), ("Lining", "$40")), (("Total", "$40"),)))

    assert [th.get("scope") for th in page.of("th")] == ["col", "col", "rowgroup"]
    assert ("th", "Strip  $40") in page.texts
    assert [cell for tag, cell in page.texts if tag == "td"] == ["Lining", "$40", "Total", "$40"]


def test_a_photo_stands_inside_the_page_and_a_missing_one_is_said(pictures: PhotoPath) -> None:
    page = page_of(Picture(PHOTO, "The sill"), pictures=pictures)
    missing = page_of(Picture(PHOTO, "The sill"))

    (image,) = page.of("img")
    assert str(image["src"]).startswith("data:image/jpeg;base64,")
    assert missing.of("img") == []
    assert "(picture not found) The sill" in missing.text


def test_a_sketch_is_drawn_the_right_way_up_with_words_beside_it() -> None:
    outline = ((0.0, 0.0), (10.0, 0.0), (10.0, 8.0), (0.0, 8.0))
    low = SketchZone(1, "7", Rectangle(1, 0, 2, 1), "failed")
    sketch = Sketch("s", "North wall", 10.0, 8.0, outline, (), (), (), (low,))

    page = page_of(Figure(sketch, "North wall\n7  Rotted sill"))

    (svg,) = page.of("svg")
    (rect,) = page.of("rect")
    assert str(svg["aria-label"]).startswith("Sketch of North wall, 10")
    assert float(str(rect["y"])) == pytest.approx(6 + 7 * 32)  # px: margin, then 7 ft from the top
    assert float(str(rect["height"])) == pytest.approx(32)
    assert str(rect["fill"]) == "url(#s-failed)"
    assert [p["id"] for p in page.of("pattern")] == ["s-failed"]
    assert "7  Rotted sill" in [text for _, text in page.texts]


def test_the_same_report_gives_the_same_bytes_and_loads_nothing(
    small: Assessment, pictures: PhotoPath, tmp_path: Path
) -> None:
    first = write_html(condition_report(small), tmp_path / "1.html", pictures).read_text("utf-8")
    second = write_html(condition_report(small), tmp_path / "2.html", pictures).read_text("utf-8")

    assert first == second
    assert re.findall(r"(?:src|href)=\"(?!data:image/jpeg|#)[^\"]*", first) == []


def test_an_invented_building_says_so(small: Assessment, pictures: PhotoPath) -> None:
    report = replace(a_report(), invented=True)
    assert "Invented example." in Page(to_html(report, pictures)).text


def test_a_refused_file_is_an_error_in_a_sentence(tmp_path: Path, pictures: PhotoPath) -> None:
    (tmp_path / "out").write_text("in the way")
    with pytest.raises(ReportError, match="could not be written"):
        write_html(a_report(), tmp_path / "out" / "r.html", pictures)
