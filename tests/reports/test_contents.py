"""What the reports say about an assessment."""

from __future__ import annotations

import re
from collections.abc import Callable
from dataclasses import replace
from pathlib import Path
from typing import Any

import pytest

from leanto.assessment import Assessment
from leanto.bids.quantity import bid_quantity
from leanto.building.rectangle import Rectangle
from leanto.reports.blocks import Bullets, Caution, Entry, Figure, Heading, Report
from leanto.reports.contents import (
    condition_report,
    decision_report,
    findings_report,
    repair_scope,
    scope_report,
    summary_report,
)
from leanto.reports.contents.allowances import budget_in_words
from leanto.reports.contents.numbering import chains, in_ranges, numbering
from leanto.reports.contents.sketches import finding_figures, item_figures
from leanto.reports.contents.summary import MOST_LISTED, first_blocks
from leanto.reports.text import to_text
from leanto.rules.model import Urgency
from leanto.scope.item import RepairItem

GOLDEN = Path(__file__).parent / "golden"
SHORT = (findings_report, decision_report, scope_report, summary_report)


@pytest.mark.parametrize("report", [findings_report, scope_report, repair_scope])
def test_the_text_is_as_it_was_read_and_approved(
    small: Assessment, report: Callable[[Assessment], Report]
) -> None:
    """Put the printed text into the golden file when a change of it is meant."""
    golden = GOLDEN / f"{report.__name__}.txt"

    assert to_text(report(small)) == golden.read_text("utf-8")


@pytest.mark.parametrize("report", [*SHORT, condition_report, repair_scope])
@pytest.mark.parametrize("width", [60, 80, 132])
def test_every_report_fits_the_width(
    small: Assessment, report: Callable[[Assessment], Report], width: int
) -> None:
    lines = to_text(report(small), width).splitlines()

    assert max(map(len, lines)) <= width


@pytest.mark.parametrize("report", [*SHORT, condition_report, repair_scope])
def test_a_walk_without_a_finding_gives_a_report(
    walked: Any, report: Callable[[Assessment], Report]
) -> None:
    walked.findings.clear()
    walked.questions.clear()
    walked.undecided.clear()
    assert walked.building.name in to_text(report(walked.assessment()))


def _blocks(report: Report, kind: type) -> list[Any]:
    return [block for block in report.blocks if isinstance(block, kind)]


def test_the_effect_stands_below_its_cause_and_says_so(small: Assessment) -> None:
    sill, stain, roof = _blocks(findings_report(small), Entry)

    assert [e.number for e in (sill, stain, roof)] == ["1", "2", "3"]
    assert [e.depth for e in (sill, stain, roof)] == [0, 1, 0]
    assert "follows from 1" in stain.lines[0]


def test_a_chain_stands_under_its_most_urgent_finding(walked: Any) -> None:
    cause = walked.find("A cause that can wait.", "site", urgency=Urgency.KEEP_WATCHING)
    walked.find("An effect that can not.", "site", urgency=Urgency.NOW, cause_id=cause.id)

    report = findings_report(walked.assessment())

    order = [
        block.text if isinstance(block, Heading) else block.title
        for block in report.blocks
        if isinstance(block, Heading | Entry)
    ]
    assert order.index("A cause that can wait.") < order.index("Before closing in")
    assert order.index("An effect that can not.") == order.index("A cause that can wait.") + 1


def test_findings_that_name_each_other_as_cause_are_all_listed_once(walked: Any) -> None:
    first, second = walked.findings[0], walked.findings[1]
    looped = (replace(first, cause_id=second.id), second)

    listed = [finding.id for chain in chains(looped) for finding, _ in chain]

    assert listed == [first.id, second.id]


def test_a_note_and_its_pictures_stand_with_the_first_finding_of_an_observation(
    walked: Any,
) -> None:
    first = walked.findings[0]
    walked.findings.insert(1, replace(first, id="again@" + first.id, rule_id="again"))

    entries = _blocks(findings_report(walked.assessment()), Entry)

    assert len(entries[0].pictures) == 1
    assert entries[1].pictures == ()
    assert entries[1].body == (first.advice,)
    assert "seen as under 1" in entries[1].lines[0]


def test_zones_carry_the_numbers_of_their_findings(small: Assessment) -> None:
    figures = {f.sketch.surface: f for f in finding_figures(small, numbering(small))}

    zone = figures["main.north.outside"].sketch.zones[0]
    assert (zone.number, zone.label, zone.mark) == (1, "1", "failed")
    assert figures["main.north.inside"].sketch.zones[0].mark == "worn"
    assert "Whole surface: 3" in figures["main.roof.south"].caption


def test_findings_on_one_zone_share_one_number_tag(walked: Any) -> None:
    zone = walked.findings[0].zone
    walked.find("Ants live in it.", "main.north.outside", zone)
    same = replace(walked.findings[0], id="again", rule_id="again")
    walked.findings.insert(1, same)
    assessment = walked.assessment()

    figures = finding_figures(assessment, numbering(assessment))

    wall = next(f for f in figures if f.sketch.surface == "main.north.outside")
    assert [z.label for z in wall.sketch.zones] == ["1, 5"]  # 2 is seen as under 1


def test_every_surface_with_an_opening_is_sketched(small: Assessment) -> None:
    drawn = {f.sketch.surface for f in finding_figures(small, numbering(small))}

    assert {"main.south.outside", "main.south.inside"} <= drawn
    assert "main.east.outside" not in drawn


def test_the_bidders_zones_are_those_the_quantity_was_counted_from(small: Assessment) -> None:
    figures = {f.sketch.surface: f for f in item_figures(small, numbering(small))}

    (zone,) = figures["main.north.outside"].sketch.zones
    assert zone.rectangle == Rectangle(4, 0, 6, 1)  # from 4.5 to 9.5 ft, out to studs 2 ft apart
    assert zone.label == "1"


def test_cautions_of_findings_and_of_work_stand_once(small: Assessment) -> None:
    for report in (condition_report(small), repair_scope(small)):
        assert [c.title for c in _blocks(report, Caution)] == ["Unstable structure"]


def test_bidders_get_no_price_no_note_and_no_reason_of_the_owner(small: Assessment) -> None:
    text = to_text(repair_scope(small))

    assert "$" not in text
    for private in (
        "Owner paid",
        "the owner said",
        "12,000",
        "budget",
        "allowance",
        "keep against",
    ):
        assert private not in text
    assert "Owner paid" in to_text(condition_report(small))
    assert "the owner said: locked" in to_text(condition_report(small))


def test_line_numbers_are_the_same_for_owner_and_bidder(small: Assessment) -> None:
    numbers = numbering(small)

    for report in (condition_report(small), repair_scope(small)):
        text = " ".join(to_text(report, 200).split())
        for item in small.scope.items:
            assert f" {numbers.items[item.id]} {item.work.title}" in text


def test_every_line_says_where_it_comes_from(small: Assessment) -> None:
    text = to_text(condition_report(small), 500)

    for line in small.estimate.lines:
        assert line.item.id in text
        assert line.explanation in text
    for finding in small.judged.findings:
        assert str(finding.observation) in text
        assert finding.rule_id in text


def test_the_owner_reads_that_nobody_licensed_wrote_this(small: Assessment) -> None:
    for report in (condition_report(small), summary_report(small)):
        text = " ".join(to_text(report).split())
        assert "by no engineer, licensed inspector or code official" in text
        assert "local officials govern" in text


def test_an_invented_building_is_called_so(walked: Any) -> None:
    walked.building = walked.building.model_copy(update={"invented": True})
    assessment = walked.assessment()

    for make in (*SHORT, condition_report):
        assert "are invented" in " ".join(to_text(make(assessment)).split())
    assert repair_scope(assessment).invented


@pytest.mark.parametrize(
    ("budget", "expected"),
    [
        (None, "No budget"),
        ("over p80", "fits: it covers"),
        ("p80", "fits: it covers"),
        ("under p80", "fits only if little goes wrong"),
        ("p50", "fits only if little goes wrong"),
        ("under p50", "does not fit"),
    ],
)
def test_the_budget_is_held_against_the_range(
    small: Assessment, budget: str | None, expected: str
) -> None:
    total = small.estimate.range
    given = {
        "over p80": total.p80 + 1,
        "p80": total.p80,
        "under p80": total.p80 - 1,
        "p50": total.p50,
        "under p50": total.p50 - 1,
    }
    usd = None if budget is None else given[budget]
    held = replace(small, building=small.building.model_copy(update={"budget_usd": usd}))

    assert expected in budget_in_words(held)


@pytest.mark.parametrize(
    ("unit", "quantity", "expected"),
    [
        ("sf", 9.94, 10.0),
        ("sf", 9.0, 9.0),
        ("sf", 0.04, 0.1),
        ("sf", 10.0, 10.0),
        ("sf", 10.001, 11.0),
        ("sf", 0.1 + 0.2, 0.3),  # noise of floats buys nothing
        ("each", 1.2, 2.0),
        ("each", 3.0, 3.0),
    ],
)
def test_the_bid_quantity_is_rounded_up(
    small: Assessment, unit: str, quantity: float, expected: float
) -> None:
    item: RepairItem = small.scope.items[0]
    work = item.work.model_copy(update={"unit": type(item.work.unit)(unit)})

    assert bid_quantity(replace(item, work=work, quantity=quantity)) == expected


def test_numbers_on_a_sketch_stand_in_the_list_below_it(small: Assessment) -> None:
    for report in (condition_report(small), repair_scope(small)):
        for figure in _blocks(report, Figure):
            below = re.findall(r"\d+", figure.caption)
            for zone in figure.sketch.zones:
                assert set(zone.label.split(", ")) <= set(below)


@pytest.mark.parametrize(
    ("numbers", "expected"),
    [
        ((), ""),
        ((3,), "3"),
        ((3, 4), "3, 4"),
        ((5, 4, 3, 9, 3), "3-5, 9"),
        ((1, 2, 4, 5), "1, 2, 4, 5"),
    ],
)
def test_three_numbers_in_a_row_are_a_range(numbers: tuple[int, ...], expected: str) -> None:
    assert in_ranges(numbers) == expected


def test_dangers_are_named_first_and_the_rest_is_counted(walked: Any) -> None:
    for n in range(6):
        walked.find(f"Urgent {n}.", "site", urgency=Urgency.NOW)
    last = walked.find("A live wire.", "wiring", danger=True)
    walked.findings.append(replace(last, id="again", rule_id="again", text="Seen twice."))
    assessment = walked.assessment()

    (bullets,) = first_blocks(assessment, numbering(assessment))

    assert isinstance(bullets, Bullets)
    assert [text.split(".")[0:2] for text in bullets.items[:2]] == [
        ["DANGER", " The sill is rotten"],
        ["DANGER", " A live wire"],
    ]
    assert not any("Seen twice" in text for text in bullets.items)
    assert bullets.items[-1] == f"And {8 - MOST_LISTED} more places to act on now: see Findings."
