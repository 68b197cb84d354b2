"""What the pages of gut or keep say: both courses, what they rest on, where to open first."""

from __future__ import annotations

import re
from dataclasses import replace

import pytest
from invented import FOLDERS, assessed

from leanto.assessment import Assessment, assess, course_chances, with_money
from leanto.decision.model import Course
from leanto.decision.unseen import posterior
from leanto.record.walk import Walk
from leanto.reports.blocks import Bullets, Table
from leanto.reports.chart_blocks import BothSpreads, CourseChart
from leanto.reports.contents import decision_report, money_report
from leanto.reports.contents.courses import interior_parts, surface_parts
from leanto.reports.contents.decision import decision_table
from leanto.reports.contents.hidden import evidence_table
from leanto.reports.contents.holes import valued_holes
from leanto.reports.contents.numbering import numbering
from leanto.reports.text import to_text

FEW = 1000
LINED = ["demo", "slab-garage"]


def _drawn(name: str) -> Assessment:
    return with_money(assessed(name), draws=FEW)


def _text(assessment: Assessment) -> str:
    return " ".join(to_text(decision_report(assessment), 500).split())


def _usd(cell: str) -> float:
    return float(cell.split("\n")[0].replace("$", "").replace(",", "") or 0)


@pytest.mark.parametrize("name", LINED)
def test_the_table_has_both_courses_of_every_surface_and_of_the_interior(name: str) -> None:
    made = _drawn(name)
    assert made.money is not None
    table = decision_table(made.decision, made.money.chances)
    assert len(table.rows) == len(made.decision.surfaces)
    for one, row in zip(made.decision.surfaces, table.rows, strict=True):
        assert isinstance(row, tuple)
        assert row[0].startswith(one.surface_name)
        assert _usd(row[1]) == pytest.approx(one.keep.expected, abs=5)
        assert _usd(row[2]) == pytest.approx(one.gut.expected, abs=5)
        assert "80 %: $" in row[1]
        assert row[3].endswith("%")
    (foot,) = table.foot
    assert _usd(foot[1]) == pytest.approx(made.decision.keep_all, abs=5)
    assert "As chosen" in foot[-1]


@pytest.mark.parametrize("name", LINED)
def test_every_column_of_parts_adds_up_to_its_foot(name: str) -> None:
    made = assessed(name)
    tables = [surface_parts(one) for one in made.decision.surfaces]
    for table in (*tables, interior_parts(made.decision)):
        (foot,) = table.foot
        for column in (1, 3):
            cells = [_usd(row[column]) for row in table.rows if isinstance(row, tuple)]
            assert sum(cells) == pytest.approx(_usd(foot[column]), abs=len(cells))


@pytest.mark.parametrize("name", LINED)
def test_the_evidence_leads_from_the_prior_to_the_posterior(name: str) -> None:
    made = assessed(name)
    for one in made.decision.surfaces:
        table = evidence_table(one, numbering(made))
        assert len(table.rows) == 1 + len(one.evidence)
        ratios = tuple(piece.ratio for piece in one.evidence)
        assert posterior(one.prior, ratios) == pytest.approx(one.unseen.p)
        for piece, row in zip(one.evidence, table.rows[1:], strict=True):
            assert f"× {piece.ratio:.2g}" == row[1]


def test_the_numbers_are_called_planning_assumptions_that_may_be_changed() -> None:
    text = _text(_drawn("demo"))
    assert "planning assumptions without a source" in text
    assert "checklists/hidden.yaml" in text


def test_conditions_that_go_before_the_cost_stand_there_with_their_sources() -> None:
    made = _drawn("demo")
    listed = [
        item for block in decision_report(made).blocks if isinstance(block, Bullets)
        for item in block.items
    ]  # fmt: skip
    for one in made.decision.surfaces:
        for reason in (*one.decisive, *one.test_first):
            assert any(reason.text in item and reason.source in item for item in listed)
    assert any(item.startswith("Test first: ") for item in listed)


@pytest.mark.parametrize("name", LINED)
def test_holes_are_listed_the_best_for_its_cost_first(name: str) -> None:
    valued = valued_holes(assessed(name).decision.surfaces)
    gains = [hole.worth_usd - hole.cost_usd for _, hole in valued]
    assert gains == sorted(gains, reverse=True)
    for _, hole in valued:
        assert 0 <= hole.worth_usd <= hole.perfect_usd + 1
        assert hole.turns or hole.worth_usd == pytest.approx(0, abs=1e-6)


def test_a_hole_that_pays_is_named_with_its_place_and_what_it_would_change() -> None:
    text = _text(_drawn("slab-garage"))
    assert "1 test hole is worth more than it costs" in text
    assert "Garage, ceiling - open it" in text
    assert "Damage: then gut it" in text
    assert "A test hole was opened here" in text


def test_both_courses_are_drawn_as_pictures() -> None:
    kinds = [type(block) for block in decision_report(_drawn("demo")).blocks]
    assert (kinds.count(BothSpreads), kinds.count(CourseChart)) == (1, 1)


def test_the_combination_is_said_to_agree_or_to_differ() -> None:
    made = _drawn("demo")
    assert "gets the same answer as on its own" in _text(made)
    decision = made.decision
    other = replace(decision.surfaces[1], alone=Course.GUT)
    surfaces = (decision.surfaces[0], other, *decision.surfaces[2:])
    differing = replace(made, decision=replace(decision, surfaces=surfaces))
    assert f"another one than alone for {other.surface_name}" in _text(differing)
    inexact = replace(made, decision=replace(decision, is_exact=False))
    assert "too many lined surfaces" in _text(inexact)


def test_the_barn_without_a_lining_has_nothing_to_gut() -> None:
    report = decision_report(_drawn("timber-barn"))
    assert not any(isinstance(block, Table) for block in report.blocks)
    assert "No surface is lined" in to_text(report)


def test_a_building_that_nobody_walked_is_unknown_and_never_sound() -> None:
    made = assessed("slab-garage")
    empty = assess(made.building, Walk(building=made.building), made.library, made.as_of)
    text = _text(with_money(empty, draws=FEW))
    assert "Unknown: nobody has looked at a lined surface yet." in text
    assert text.count("Unknown, not walked") >= 2 * len(empty.decision.surfaces)
    assert re.search(r"\bsound\b", " ".join(to_text(money_report(empty)).split())) is None
    assert "Nothing was walked yet" in to_text(money_report(empty))


def test_the_courses_of_a_screen_are_those_of_the_report() -> None:
    made = _drawn("demo")
    assert made.money is not None
    assert course_chances(made) is made.money.chances
    assert course_chances(assessed("demo"), draws=FEW) == made.money.chances


@pytest.mark.parametrize("name", sorted(FOLDERS))
def test_the_words_are_plain_and_whole(name: str) -> None:
    text = to_text(decision_report(_drawn(name)), 500)
    assert re.search(r"[{}]|\bNone\b|\bnan\b|\binf\b|\.\.(?!\.)", text) is None
    assert re.search(r"\b(safe|labour|mould|grey|colour)\b", text) is None
