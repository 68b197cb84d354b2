"""Checks by the numbers: in the condition report, with working, sources and who confirms."""

from __future__ import annotations

from dataclasses import replace
from typing import Any

from leanto.building.surfaces import surfaces_of
from leanto.reckon.all import reckon
from leanto.record.observation import Air
from leanto.reports.blocks import Entry, Heading, Table
from leanto.reports.contents.condition import condition_report
from leanto.reports.contents.reckoned import (
    _AS_TABLE,
    _GROUPS,
    long_feed_in_words,
    reckoned_blocks,
    single_blocks,
)
from leanto.reports.contents.summary import summary_blocks
from leanto.reports.text import to_text


def reckoned(assessment: Any, **changes: Any) -> Any:
    """The assessment with what its walk computes to."""
    building = assessment.building.model_copy(update=changes)
    surfaces = {surface.id: surface for surface in surfaces_of(building)}
    from leanto.building.stations import stations_of

    stations = stations_of(building)
    walk = replace(assessment.walk, building=building, air={"main.north.outside": Air(54.0, 66.0)})
    made = reckon(building, surfaces, stations, walk, assessment.as_of)
    return replace(assessment, building=building, walk=walk, reckonings=made)


def test_without_computations_the_section_is_left_out(small: Any) -> None:
    text = to_text(condition_report(replace(small, reckonings=())))
    assert "Checks by the numbers" not in text


def test_the_section_gives_verdicts_figures_reasons_and_sources(small: Any) -> None:
    text = " ".join(to_text(condition_report(reckoned(small))).split())
    start = text.index("Checks by the numbers")
    section = text[start : text.index("What was not reached", start)]
    assert "Main room, floor under the new use: " in section
    assert "Allowed span: " in section
    assert "International Residential Code, 2018" in section
    assert "For a structural engineer" in section
    assert "Nothing here is called safe" in section


def test_readings_stand_in_a_table(small: Any) -> None:
    blocks = reckoned_blocks(reckoned(small))
    at = blocks.index(Heading(2, "Meter readings"))
    table = blocks[at + 1]
    assert isinstance(table, Table)
    (row,) = table.rows
    assert row[0] == "Main room, north wall, outside"
    assert row[1] == "24 %"
    assert row[-1] == "wet enough for decay"


def test_every_kind_of_computation_has_its_subject(small: Any) -> None:
    kinds = {kind for _, group in _GROUPS for kind in group}
    made = reckoned(small, distance_to_panel=140.0).reckonings
    assert {one.id.partition("@")[0] for one in made} <= kinds
    assert set(_AS_TABLE) <= kinds


def test_entries_are_numbered_apart_from_findings(small: Any) -> None:
    entries = [block for block in reckoned_blocks(reckoned(small)) if isinstance(block, Entry)]
    assert [one.number for one in entries] == [f"C{at}" for at in range(1, len(entries) + 1)]


def test_a_long_feed_is_named_in_the_summary(small: Any) -> None:
    from leanto.reports.contents.numbering import numbering

    near, far = reckoned(small, distance_to_panel=90.0), reckoned(small, distance_to_panel=140.0)
    assert long_feed_in_words(near) == ""
    said = long_feed_in_words(far)
    assert "140' 0\", beyond 100 ft" in said
    summary = summary_blocks(far, numbering(far))
    assert any(said in str(getattr(block, "text", "")) for block in summary)


def test_one_on_its_own_keeps_all_its_words(small: Any) -> None:
    for one in reckoned(small, distance_to_panel=140.0).reckonings:
        said = str(single_blocks(one))
        for words in (*one.reasons, *one.asks, *(figure.label for figure in one.figures)):
            assert repr(words)[1:-1] in said, one.id
