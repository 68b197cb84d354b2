"""What the money page says."""

from __future__ import annotations

import re
from dataclasses import replace
from datetime import UTC, datetime
from typing import Any

import pytest
from invented import FOLDERS, assessed

from leanto.assessment import Assessment, assess, with_money
from leanto.decision.fit import StepKind
from leanto.record.scope_edit import AddedLine, ScopeEdit
from leanto.reports.blocks import Report
from leanto.reports.chart_blocks import SpreadChart, SwingChart
from leanto.reports.contents import (
    condition_report,
    money_report,
    repair_scope,
    scope_report,
    summary_report,
)
from leanto.reports.text import to_text

FEW = 2000


def _text(report: Report) -> str:
    return " ".join(to_text(report, 500).split())


def _edited(walked: Any, *edits: ScopeEdit, added: tuple[AddedLine, ...] = ()) -> Assessment:
    """The small walk with the owner's changes."""
    plain = walked.assessment()
    walk = replace(
        plain.walk, scope_edits={edit.item_id: edit for edit in edits}, added_lines=added
    )
    with pytest.MonkeyPatch.context() as patch:
        patch.setattr("leanto.assessment.judge", lambda *_: plain.judged)
        return assess(plain.building, walk, plain.library, plain.as_of)


def test_every_report_of_one_assessment_gives_the_same_range(small: Assessment) -> None:
    said = [
        re.findall(r"half of such jobs stay under (\$[\d,]+)", _text(report), re.IGNORECASE)
        for report in (money_report(small), scope_report(small), condition_report(small))
    ]
    assert all(said)
    assert len({figure for figures in said for figure in figures}) == 1
    money = with_money(small).money
    assert money is not None
    assert said[0][0].replace(",", "").strip("$") == str(round(money.total.at(0.5) / 10) * 10)


def test_money_that_was_drawn_is_not_drawn_again(small: Assessment) -> None:
    drawn = with_money(small, draws=FEW)
    assert with_money(drawn) is drawn
    assert small.money is None


def test_the_page_has_its_charts_and_its_parts(small: Assessment) -> None:
    report = money_report(small)
    kinds = [type(block) for block in report.blocks]
    assert (kinds.count(SpreadChart), kinds.count(SwingChart)) == (1, 1)
    text = _text(report)
    for part in ("Contingency", "What moves the total most", "Does it fit"):
        assert part in text


def test_the_budget_line_stands_in_the_chart_only_where_there_is_a_budget(
    small: Assessment,
) -> None:
    building = small.building.model_copy(update={"budget_usd": None})
    for one, marks in ((small, 3), (replace(small, building=building), 2)):
        chart = next(b for b in money_report(one).blocks if isinstance(b, SpreadChart))
        assert len(chart.marks) == marks
    assert "No budget was given" in _text(money_report(replace(small, building=building)))


@pytest.mark.parametrize(
    ("budget", "said"),
    [
        (100, "even with every step below"),
        (50_000, "nothing has to be put off"),
    ],
)
def test_whether_it_fits_is_said_first(small: Assessment, budget: float, said: str) -> None:
    building = small.building.model_copy(update={"budget_usd": budget})
    assert said in _text(money_report(replace(small, building=building)))


def test_a_new_building_is_named_only_where_somebody_gave_its_price(small: Assessment) -> None:
    building = small.building.model_copy(update={"replacement_usd_per_sqft": 50.0})
    text = _text(money_report(replace(small, building=building)))
    assert "Repair against a new building" in text
    assert "288 sq ft at $50 a sq ft would be about $14,400" in text
    assert "44 CFR 59.1" in text
    assert "local building department" in text
    assert "new building" not in _text(money_report(small))


def test_nothing_to_do_has_no_money(walked: Any) -> None:
    walked.findings.clear()
    bare = walked.assessment()
    empty = replace(bare, estimate=replace(bare.estimate, lines=()))
    assert "Nothing was found that costs money." in _text(money_report(empty))


AT = datetime(2026, 6, 1, 12, tzinfo=UTC)
SILL, ROOF = "replace-sill@main.north.outside", "reroof@main.roof.south"


def test_the_owners_changes_are_listed_with_who_and_when(walked: Any) -> None:
    made = _edited(
        walked,
        ScopeEdit(SILL, mark="struck", who="A. Owner", at=AT),
        ScopeEdit(ROOF, mark="by owner", quantity=100.0, reason="half is sound"),
        added=(AddedLine("reroof@building+1", "reroof", None, "Porch", 9.0, "Low slope."),),
    )
    text = _text(money_report(made))
    assert "Struck by A. Owner on June 1, 2026: Replace the sill" in text
    assert "DANGER stays: The sill is rotten." in text
    assert "By owner, line" in text
    assert "labor $0; saves about" in text
    assert "100 sq ft by hand" in text
    assert "half is sound" in text
    assert "Added by hand, line" in text
    assert "Porch" in text


def test_bidders_see_alternates_apart_and_the_owners_lines_unpriced(walked: Any) -> None:
    made = _edited(
        walked,
        ScopeEdit(SILL, mark="alternate", note="Oak or black locust."),
        ScopeEdit(ROOF, mark="by owner", quantity=100.0, reason="half is sound"),
    )
    text = _text(repair_scope(made))
    alternates = text[
        text.index("Price each of these lines") : text.index("Not included, not seen")
    ]
    assert "Replace the sill" in alternates
    assert "Note: Oak or black locust." in alternates
    lines = text[text.index("Lines of work") : text.index("Price each of these lines")]
    assert "Replace the sill" not in lines
    assert "New covering" not in lines
    assert "The owner does these lines." in text
    assert "half is sound" not in text  # a reason stays with the owner
    assert "$" not in lines + alternates


@pytest.mark.parametrize("name", sorted(FOLDERS))
def test_the_money_of_every_invented_building_adds_up(name: str) -> None:
    made = with_money(assessed(name), draws=FEW)
    money = made.money
    assert money is not None
    assert money.contingency_usd >= 0
    assert sum(one.usd for one in money.places) == pytest.approx(money.contingency_usd)
    assert money.total.mean == pytest.approx(money.expected_usd, rel=0.02)
    assert money.total.at(0.8) == pytest.approx(assessed(name).estimate.range.p80, rel=0.06)
    decided = {one.surface_id: one for one in made.decision.surfaces}
    for chance in money.chances.surfaces:
        one = decided[chance.surface_id]
        assert chance.keep.mean == pytest.approx(one.keep.expected, rel=0.06)
        assert chance.gut.mean == pytest.approx(one.gut.expected, rel=0.06)
    urgent = {
        finding.id for finding in made.judged.grounds if finding.danger or finding.urgency == "now"
    }
    put_off = {
        id_
        for step in money.fit.offered(StepKind.WAIT)
        for item in step.items
        for id_ in item.findings
    }
    assert put_off.isdisjoint(urgent)


@pytest.mark.parametrize("name", sorted(FOLDERS))
def test_the_words_are_plain_and_whole(name: str) -> None:
    made = with_money(assessed(name), draws=FEW)
    text = to_text(money_report(made), 500)
    assert "  None" not in text
    assert re.search(r"[{}]|\bnan\b|\binf\b|\.\.(?!\.)", text) is None
    assert re.search(r"\b(safe|labour|mould|grey|colour)\b", text) is None
    assert to_text(summary_report(made))
