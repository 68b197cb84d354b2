"""Numbers on sketches keep clear of each other, and hatching stays within its zone."""

from __future__ import annotations

import re
from datetime import date
from itertools import pairwise
from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st
from pypdf import PdfReader

from leanto.building.rectangle import Rectangle
from leanto.building.sketch import SketchZone, sketch_of
from leanto.building.surface import Surface
from leanto.reports.blocks import Figure, Report
from leanto.reports.fonts import Typesetter
from leanto.reports.pdf import write_pdf
from leanto.reports.pdf_badge import Badges
from leanto.reports.pdf_hatch import Box, lines_of


@given(
    zones=st.lists(
        st.tuples(st.floats(0, 150), st.floats(0, 60), st.floats(3, 60), st.floats(3, 40)),
        max_size=8,
    )
)
def test_no_number_covers_another(zones: list[Box]) -> None:
    badges = Badges(Typesetter(), (-60, -60, 270, 160))

    boxes = [badges.box_for(str(n), zone) for n, zone in enumerate(zones, start=10)]

    for at, one in enumerate(boxes):
        for other in boxes[:at]:
            assert (
                one[0] >= other[0] + other[2]
                or other[0] >= one[0] + one[2]
                or one[1] >= other[1] + other[3]
                or other[1] >= one[1] + one[3]
            )


@pytest.mark.parametrize(("mark", "count"), [("failed", 2), ("worn", 1), ("seen", 0)])
def test_each_word_has_its_own_hatching(mark: str, count: int) -> None:
    rising = [line for line in lines_of(mark, (0, 0, 50, 20)) if line[3] > line[1]]
    falling = [line for line in lines_of(mark, (0, 0, 50, 20)) if line[3] < line[1]]

    assert bool(rising) + bool(falling) == count


def test_hatching_has_even_steps() -> None:
    starts = [line[0] for line in lines_of("worn", (10, 5, 50, 20))]

    assert {round(b - a, 6) for a, b in pairwise(starts)} == {5.0}
    assert starts[0] == 10 - 20
    assert 10 + 50 - 5 <= starts[-1] <= 10 + 50


def test_a_sketch_shows_numbers_sizes_openings_and_a_scale(
    surfaces: dict[str, Surface], tmp_path: Path
) -> None:
    wall = surfaces["main.south.outside"]
    zone = SketchZone(7, "7, 12", Rectangle(1, 0, 4, 2), "failed")
    report = Report(
        "Test", "Shed", "", date(2026, 6, 1), (Figure(sketch_of(wall, [zone]), "South wall"),)
    )

    path = write_pdf(report, tmp_path / "r.pdf", lambda photo: tmp_path / photo.digest).path

    text = PdfReader(path).pages[0].extract_text()
    for expected in ("South wall", "7, 12", "24' 0\"", "8' 0\"", "D1", "5 ft", "failed"):
        assert expected in text
    assert re.search(r"thin lines: framing", text)
