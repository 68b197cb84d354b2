"""Charts in characters and in the PDF."""

from __future__ import annotations

import io
from collections.abc import Sequence
from dataclasses import replace
from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st
from pypdf import PdfReader

from leanto.assessment import Assessment
from leanto.cost.simulation import Distribution
from leanto.reports.blocks import Report
from leanto.reports.characters import columns
from leanto.reports.chart_blocks import (
    BothSpreads,
    Chart,
    CourseBar,
    CourseChart,
    Mark,
    SpreadChart,
    SwingBar,
    SwingChart,
)
from leanto.reports.chart_text import chart_lines
from leanto.reports.contents import condition_report
from leanto.reports.pdf import write_pdf

TOTAL = Distribution(tuple(float(x) for x in range(1000, 3000)))
SWINGS = SwingChart(
    (SwingBar("Local wages", 800, 1400), SwingBar("A line with 台 in it", 950, 1100)), 1000
)
SPREAD = SpreadChart.of(TOTAL, (Mark("half under", 2000.0), Mark("budget", 500.0)))
COURSES = CourseChart(
    (("North wall", CourseBar("keep", 100, 200, 400, 500), CourseBar("gut", 300, 320, 350, 380)),)
)
BOTH = BothSpreads.of(TOTAL, Distribution(tuple(float(x) for x in range(2000, 2500))))
CHARTS: Sequence[Chart] = (SWINGS, SPREAD, COURSES, BOTH)


@pytest.mark.parametrize("width", [40, 60, 80, 132])
@pytest.mark.parametrize("chart", CHARTS)
def test_a_chart_fits_the_width(chart: Chart, width: int) -> None:
    lines = list(chart_lines(chart, width))
    assert max(map(columns, lines)) <= width


def test_the_longest_bar_is_drawn_longest() -> None:
    first, second = chart_lines(SWINGS, 100)
    assert first.count("█") > second.count("█") > 0
    assert ("$800" in first, "$1,400" in first, "│" in second) == (True, True, True)


def test_marks_stand_on_the_axis_with_their_figures() -> None:
    *_, axis, letters, legend = chart_lines(SPREAD, 80)
    assert axis.count("┴") == 2
    assert letters.index("B") < letters.index("A")  # the budget lies left of the middle
    assert legend == "A half under $2,000; B budget $500"


def test_both_courses_share_one_axis() -> None:
    name, keep, gut, _ = chart_lines(COURSES, 80)
    assert (name, keep.split()[0], gut.split()[0]) == ("North wall", "keep", "gut")
    assert keep.index("─") < gut.index("─")
    assert keep.count("█") > gut.count("█")


def test_two_hills_on_one_axis_are_as_high_as_they_are_often() -> None:
    # 2,000 draws over 2,000 dollars against 500 draws over 500: as high, but a quarter as wide.
    assert sum(BOTH.keep.counts) > 0.95 * 2000
    assert sum(BOTH.gut.counts) == 500
    wide, narrow = (sum(n > 0 for n in one.counts) for one in (BOTH.keep, BOTH.gut))
    assert wide == pytest.approx(4 * narrow, rel=0.2)
    assert BOTH.most == max(*BOTH.keep.counts, *BOTH.gut.counts)
    keep, *_ = chart_lines(BOTH, 80)
    assert keep == "keep: half under $2,000, four in five under $2,600"


@given(st.lists(st.floats(0, 1e6), min_size=1, max_size=50))
def test_courses_that_cost_less_than_nothing_are_not_drawn(values: list[float]) -> None:
    one = Distribution(tuple(sorted(values)))
    chart = BothSpreads.of(one, one)
    assert 0 <= chart.low_usd < chart.high_usd
    assert chart.keep.counts == chart.gut.counts


@given(st.lists(st.floats(0, 1e6), min_size=1, max_size=200), st.floats(0, 1e6))
def test_no_draw_between_the_ends_is_lost(values: list[float], budget: float) -> None:
    total = Distribution(tuple(sorted(values)))
    chart = SpreadChart.of(total, (Mark("budget", budget),))
    inside = [v for v in values if chart.low_usd <= v < chart.high_usd]
    assert sum(chart.counts) == len(inside)
    assert len(inside) >= 0.97 * len(values) - 2
    assert 0 < chart.at(budget) < 1


def test_a_scope_without_any_spread_is_drawn_all_the_same() -> None:
    chart = SpreadChart.of(Distribution((100.0,) * 50), ())
    assert sum(chart.counts) == 50


@pytest.mark.parametrize("chart", CHARTS)
def test_a_chart_is_drawn_in_the_pdf_with_its_words(
    chart: Chart, small: Assessment, tmp_path: Path
) -> None:
    report = replace(condition_report(small), blocks=(chart,))
    path = tmp_path / "chart.pdf"
    write_pdf(report, path, lambda photo: tmp_path / photo.digest)
    text = PdfReader(io.BytesIO(path.read_bytes())).pages[0].extract_text()
    words = {
        SwingChart: ("Local wages", "$1,400"),
        SpreadChart: ("half under $2,000", "budget $500"),
        CourseChart: ("North wall", "keep", "gut", "$320"),
        BothSpreads: ("keep: half under $2,000", "gut: half under $2,250"),
    }[type(chart)]
    assert [word for word in words if word not in text] == []


def test_two_runs_draw_equal_bytes(small: Assessment, tmp_path: Path) -> None:
    report: Report = replace(condition_report(small), blocks=tuple(CHARTS))
    made = []
    for name in ("one.pdf", "two.pdf"):
        write_pdf(report, tmp_path / name, lambda photo: tmp_path / photo.digest)
        made.append((tmp_path / name).read_bytes())
    assert made[0] == made[1]
