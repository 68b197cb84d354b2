"""Roof slopes: take-off, least slope, layers and years."""

from __future__ import annotations

from collections.abc import Callable
from typing import Any

import pytest

from leanto.building.kinds import Covering, RoofForm
from leanto.reckon.model import Reckoning
from leanto.reckon.roof import KIND_OF
from leanto.reckon.take_off import _FORM_OF
from leanto.trade.coverings import find_covering
from leanto.trade.roofing import WASTE_BY_FORM

Figures = Callable[[Reckoning], dict[str, str]]


def test_every_covering_and_form_has_its_row() -> None:
    assert set(KIND_OF) == set(Covering)
    for name in KIND_OF.values():
        assert find_covering(name).label
    assert set(_FORM_OF) == set(RoofForm)
    assert set(_FORM_OF.values()) <= set(WASTE_BY_FORM)


def test_a_gable_slope_is_counted(case: Any, figures: Figures) -> None:
    shown = figures(case.one("roof-take-off@main.roof.south"))
    # 24 ft by (6 + 1) ft of level run, times the slope factor 1.118: by hand 187.8 sq ft.
    assert shown["Area"] == "188 sq ft"
    assert shown["Squares"] == "1.88"
    assert shown["With 10% waste"] == "2.07 squares"
    # By hand: 1.88 x 3 = 5.63 bundles, starter 24/80 and half the caps 12/35 make 6.28; with
    # 10 percent waste 6.90, so 7 bundles. Felt: 188 of 400 sq ft.
    assert shown["Shingles"] == "7 bundles, starter and caps among them"
    assert shown["Underlayment"] == "1 roll of No. 15 felt, 1 layer"
    # Edges: 24 ft of eave, two rakes of 7 x 1.118 = 7.83 ft; 39.65 / 9.83 ft a piece = 4.03.
    assert shown["Drip edge"].endswith("5 pieces of 10 ft")
    assert shown["Ridge, this side's half"] == "12' 0\""


@pytest.mark.parametrize(
    ("pitch", "layers"), [("3:12", "doubled below 4 in 12"), ("4:12", "1 layer")]
)
def test_felt_is_doubled_on_low_slopes(
    case: Any, figures: Figures, pitch: str, layers: str
) -> None:
    case.main = {"roof": {"pitch": pitch}}
    shown = figures(case.one("roof-take-off@main.roof.south"))
    assert shown["Underlayment"].endswith(layers)


def test_openings_are_left_out_and_flashed(case: Any, figures: Figures) -> None:
    case.openings = [
        {
            "id": "F1",
            "kind": "flue",
            "on": "main.roof.south",
            "from_left": 10,
            "from_bottom": 2,
            "width": 3,
            "height": "20 in",
        }
    ]
    shown = figures(case.one("roof-take-off@main.roof.south"))
    assert shown["Area"] == "183 sq ft"
    # Round 36 by 20 in.: 9 ft 4 in. of curb; up each side of 20 in. four courses of 5 in.
    assert shown["Flue F1"] == "9' 4\" of curb, 8 step flashings"
    assert "wider than 30 in." in shown["Cricket behind F1"]


def test_a_shed_roof_dies_into_the_wall_above_with_an_apron(case: Any, figures: Figures) -> None:
    case.lean_to = {}
    shown = figures(case.one("roof-take-off@lean-to.roof.north"))
    assert shown["Apron at the wall above"] == "12' 0\""
    assert "Step flashing" not in shown


def test_a_lean_to_that_stands_end_on_is_stepped_up_the_wall(case: Any, figures: Figures) -> None:
    case.lean_to = {
        "length": 10,
        "width": 8,
        "eave_height": 6,
        "ridge_runs": "north-south",
        "roof": {
            "form": "gable",
            "pitch": "3:12",
            "high_side": None,
            "covering": "asphalt shingle",
        },
    }
    shown = figures(case.one("roof-take-off@lean-to.roof.east"))
    # (4 + 1) ft of run x 1.0308 = 5.15 ft up the wall; 61.8 in. / 5 in. = 13 courses.
    assert shown["Step flashing"] == "13 pieces up 5' 1 7/8\" of wall; 1 kickout"


@pytest.mark.parametrize(
    ("covering", "pitch", "verdict"),
    [
        ("asphalt shingle", "2:12", "passes by the table"),
        ("asphalt shingle", "1.75:12", "does not pass"),
        ("corrugated steel", "3:12", "passes by the table"),
        ("corrugated steel", "2:12", "undecided"),
        ("corrugated steel", "0.25:12", "does not pass"),
        ("slate", "3.5:12", "does not pass"),
        ("fiber cement", "6:12", "undecided"),
    ],
)
def test_the_pitch_against_the_covering(case: Any, covering: str, pitch: str, verdict: str) -> None:
    case.main = {"roof": {"covering": covering, "pitch": pitch}}
    one = case.one("roof-slope@main.roof.north")
    assert one.verdict == verdict
    assert one.facts["slope_check"] == verdict


@pytest.mark.parametrize(
    ("described", "counted", "deck", "verdict"),
    [
        (1, None, None, "undecided"),
        (1, None, "sound", "passes by the table"),
        (1, None, "failed", "does not pass"),
        (2, None, "sound", "does not pass"),
        (1, 2.0, "sound", "does not pass"),
    ],
)
def test_a_new_covering_over_what_is_there(
    case: Any, described: int, counted: float | None, deck: str | None, verdict: str
) -> None:
    case.main = {"roof": {"layers": described}}
    if counted is not None:
        case.answer("main.roof.south", "roof-layers", "worn", layers_seen_count=counted)
    if deck is not None:
        case.answer("main.ceiling", "roof-deck", deck)
    assert case.one("roof-layers@main.roof.south").facts["recover_check"] == verdict


def test_a_deck_that_is_wet_now_may_not_be_covered(case: Any) -> None:
    case.answer("main.ceiling", "roof-deck", "worn", is_active=1.0)
    one = case.one("roof-layers@main.roof.south")
    assert one.verdict == "does not pass"
    assert "soaked" in " ".join(one.reasons)


@pytest.mark.parametrize(
    ("age", "seen", "low", "high", "verdict"),
    [
        (10, "sound", 4.7, 10.0, "passes by the table"),
        (19, "sound", 0.0, 1.0, "does not pass"),
        (27, None, 0.0, 0.0, "does not pass"),
        (5, "failed", 0.0, 0.0, "does not pass"),
        (None, "worn", 0.0, 10.0, "undecided"),
    ],
)
def test_years_left_are_a_range(
    case: Any, age: int | None, seen: str | None, low: float, high: float, verdict: str
) -> None:
    case.main = {"roof": {"covering_age_years": age}}
    if seen is not None:
        case.answer("main.roof.south", "shingle-brittle", seen)
    one = case.one("roof-life@main.roof.south")
    assert one.facts["life_left_low_years"] == pytest.approx(low)
    assert one.facts["life_left_high_years"] == pytest.approx(high)
    assert one.verdict == verdict


def test_the_worst_that_was_seen_on_a_slope_counts(case: Any) -> None:
    case.main = {"roof": {"covering_age_years": 3}}
    case.answer("main.roof.south", "missing-pieces", "sound")
    case.answer("main.roof.south", "shingle-brittle", "failed")
    made = case.reckoned()
    assert made["roof-life@main.roof.south"].facts["life_left_high_years"] == 0
    assert made["roof-life@main.roof.north"].facts["life_left_high_years"] == 17
