"""Where a line of work lies, in words that a bidder can measure."""

from __future__ import annotations

from dataclasses import replace
from typing import Any

from leanto.building.rectangle import Rectangle
from leanto.reports.contents.placed import MOST_ZONES, where_in_words


def test_a_line_says_from_where_to_where_and_how_one_faces_it(walked: Any) -> None:
    assessment = walked.assessment()
    item = next(item for item in assessment.scope.items if item.surface_id and item.zones)
    placed = replace(item, surface_id="main.north.outside", zones=(Rectangle(6, 0, 8.5, 1),))

    assert where_in_words(placed, assessment) == (
        'Where: 6\' 0" to 14\' 6" from the left end, 0" to 1\' 0" from the floor line '
        "(seen from outside)."
    )


def test_a_line_of_a_whole_surface_or_building_has_no_place_of_its_own(walked: Any) -> None:
    assessment = walked.assessment()
    item = replace(assessment.scope.items[0], zones=(), findings=())

    assert where_in_words(replace(item, surface_id="main.north.outside"), assessment) == ""
    assert where_in_words(replace(item, surface_id=None), assessment) == ""


def test_a_line_counted_in_pieces_lies_where_its_finding_was_entered(walked: Any) -> None:
    assessment = walked.assessment()
    finding = next(f for f in assessment.judged.findings if f.zone is not None)
    item = replace(
        assessment.scope.items[0],
        zones=(),
        findings=(finding.id,),
        surface_id=finding.surface_id,
    )

    assert where_in_words(item, assessment).startswith("Where: ")


def test_many_zones_are_left_to_the_sketch(walked: Any) -> None:
    assessment = walked.assessment()
    zones = tuple(Rectangle(2 * n, 0, 1, 1) for n in range(MOST_ZONES + 2))
    item = replace(assessment.scope.items[0], surface_id="main.north.outside", zones=zones)

    said = where_in_words(item, assessment)

    assert said.count("from the left end") == MOST_ZONES
    assert "and 2 more zones, see the sketch" in said
