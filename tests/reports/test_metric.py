"""Whole reports of a metric job: no amount in feet, inches, pounds or degrees Fahrenheit is left.

Three things stay as they are: names of the trade (listed below), what somebody typed, and the
titles and figures of sources, which are quoted.
"""

from __future__ import annotations

import re
from collections.abc import Iterator

import pytest
from invented import FOLDERS, assessed

from leanto.assessment import Assessment
from leanto.quantities import System, showing
from leanto.reports.contents import condition_report, repair_scope
from leanto.reports.in_units import in_shown_units, typed_for
from leanto.reports.text import to_text

NOMINAL = (
    r"\b2x(?:2|3|4|6|8|10|12)\b",
    r"[0-9/-]+ in\. (?:gypsum|drywall|plywood|PVC|conduit|pipe|galvanized|bolts?)\b",
    r"[0-9/]+ in\. \([0-9.]+ mm\)",
    r"\bR[ -]?[0-9.]+ \(RSI [0-9.]+\)",
    r"\bfeed-beyond-100-ft\b",  # the id of a rule
)
_UNITS = (
    r"[0-9][ -]?(?:ft|feet|foot|in\.|inch(?:es)?|lin ft|sq\.? (?:ft|in)|square f(?:ee|oo)t|cu\.? "
    r"(?:ft|yd)|lbs?|pounds?|psf|psi|gal(?:lons?)?|oz|°? ?F|deg(?:rees)? F|Btu/h|sf|lf|cf|cy|bf|"
    r"squares?(?! meter)|mils?|tons?|yards?)(?![a-z])"
)
_MARKS = r"[0-9]['\"](?!\w)"
_LEFT = re.compile(f"{_UNITS}|{_MARKS}")


@pytest.mark.parametrize("name", FOLDERS)
def test_a_metric_report_holds_no_amount_in_feet_and_inches(name: str) -> None:
    assessment = assessed(name)
    with showing(System.METRIC):
        for report in (condition_report(assessment, who="Ann"), repair_scope(assessment)):
            text = to_text(report, 4_000)
            assert " m²" in text and " mm" in text
            assert list(_left(_without_quotes(text, assessment))) == []


def test_the_check_finds_what_is_left() -> None:
    said = "120 sq ft, 7' 3 1/2\", 6 in. of soil, 40 psf, 50 to 95 F, 12-ft board, 2x6 at 24 in."
    assert len(list(_left(said))) == 8


def test_the_same_report_in_feet_and_inches_says_no_meter() -> None:
    text = to_text(repair_scope(assessed("demo")), 4_000)
    assert not re.search(r"[0-9] (?:mm|m|m²|kg|kPa|°C)\b", text)


def test_money_is_the_same_in_both_but_for_the_price_of_an_area() -> None:
    assessment = assessed("slab-garage")
    feet = _amounts(to_text(condition_report(assessment), 4_000))
    with showing(System.METRIC):
        metric = _amounts(to_text(condition_report(assessment), 4_000))
    assert feet == metric


def test_what_somebody_typed_is_left_as_typed_and_words_beside_it_are_not() -> None:
    from leanto.reports.blocks import Paragraph, Report

    assessment = assessed("timber-barn")
    note = "An old well under rotten planks, 30 ft east of the barn."
    assert any(seen.note == note for seen in assessment.walk.observations.values())
    report = Report("", "", "", assessment.as_of, (Paragraph(f"Within 30 ft. Note: {note}"),))
    with showing(System.METRIC):
        said = in_shown_units(report, *typed_for(assessment)).blocks[0]
    assert said == Paragraph(f"Within 9.14 m. Note: {note}")


def _amounts(text: str) -> list[str]:
    return re.findall(r"\$[0-9,.]+", re.sub(r"\$[0-9,.]+ a (?:sq ft|m²)", "", text))


def _without_quotes(text: str, assessment: Assessment) -> str:
    quoted = sorted(_texts(typed_for(assessment)), key=len, reverse=True)
    for piece in quoted:
        text = text.replace(piece, "")
    return text


def _texts(value: object) -> Iterator[str]:
    """Sources, and notes, reasons and names of the walk."""
    building, walk, cited = value  # type: ignore[misc]
    yield from cited
    yield from (seen.note for seen in walk.observations.values() if seen.note)
    yield from (seen.reason for seen in walk.observations.values() if seen.reason)
    yield building.name
    yield from (piece for piece in (building.owner, building.place) if piece)


def _left(text: str) -> Iterator[str]:
    for pattern in NOMINAL:
        text = re.sub(pattern, "", text)
    for found in _LEFT.finditer(text):
        yield text[max(0, found.start() - 40) : found.end() + 20]
