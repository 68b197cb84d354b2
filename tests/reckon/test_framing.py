"""Floors, ceilings and rafters: fed from the building, checked by the span tables."""

from __future__ import annotations

from collections.abc import Callable
from typing import Any

import pytest

from leanto.building.kinds import Grade, Species
from leanto.reckon.model import Reckoning
from leanto.trade.design_values import GRADE_NAMES, species_names

Figures = Callable[[Reckoning], dict[str, str]]
STAMPED = {"lumber": {"species": "douglas fir", "grade": "no. 2", "stamped": True}}


def test_every_species_and_grade_of_a_building_has_design_values() -> None:
    assert {kind.name.lower() for kind in Species} == set(species_names())
    assert {grade.name.lower() for grade in Grade} == set(GRADE_NAMES)


@pytest.mark.parametrize(
    ("span", "year", "verdict"),
    [
        # 2x8 spruce-pine-fir No. 2 at 16 in., 40 and 10 psf: 12 ft 3 in. by International
        # Residential Code 2018, Table R502.3.1(2), seen; lumber of today's dressed size.
        ("12' 3", 1990, "passes by the table"),
        ("12' 4", 1990, "does not pass"),
    ],
)
def test_the_floor_passes_up_to_the_printed_span(
    case: Any, span: str, year: int, verdict: str
) -> None:
    case.main = {"length": 24, "width": 14, "floor": {"clear_span": span}}
    case.facts = {"year_built": year, "intended_use": "living space", **STAMPED}
    case.facts["lumber"] = {**STAMPED["lumber"], "species": "spruce-pine-fir"}
    one = case.one("floor@main.floor")
    assert one.verdict == verdict
    assert one.facts["floor_check"] == verdict
    assert one.facts["floor_allowed_span_ft"] == pytest.approx(12 + 3 / 12)
    assert one.station_id == "main.floor"


def test_unstamped_lumber_never_passes_by_a_table(case: Any) -> None:
    assert case.one("floor@main.floor").verdict == "ask an engineer"
    case.main = {"floor": {"clear_span": "11 ft", "member": "2x4"}}
    assert case.one("floor@main.floor").verdict == "does not pass"


def test_a_soft_joist_is_checked_beside_the_sound_ones(case: Any, figures: Figures) -> None:
    case.answer("main.floor", "floor-joists", probe_depth_in=1.5)
    shown = figures(case.one("floor@main.floor"))
    assert "Softest joist, 1.5 in. gone" in shown
    assert case.one("floor@main.floor").facts["floor_check"] == "ask an engineer"


def test_without_a_measured_span_the_whole_short_side_is_taken(case: Any, figures: Figures) -> None:
    case.main = {"floor": {"clear_span": None}}
    shown = figures(case.one("floor@main.floor"))
    assert shown["Clear span"] == "12 ft 0 in."
    assert "no support was measured" in shown["Span taken"]


@pytest.mark.parametrize(
    ("kind", "verdict", "said"),
    [
        ("slab", "no span to check", "slab"),
        ("dirt", "no span to check", "There is no floor"),
        ("sleepers", "no span to check", "rest all along"),
    ],
)
def test_floors_that_span_nothing(case: Any, kind: str, verdict: str, said: str) -> None:
    case.main = {"floor": {"kind": kind, "clear_span": None}}
    one = case.one("floor@main.floor")
    assert one.verdict == verdict
    assert said in " ".join(one.reasons)
    assert "floor_allowed_span_ft" not in one.facts


def test_sleepers_between_skids_are_checked_over_the_gap(case: Any) -> None:
    case.main = {"floor": {"kind": "sleepers", "clear_span": "4 ft", "member": "4x6"}}
    one = case.one("floor@main.floor")
    assert one.facts["floor_allowed_span_ft"] > 4
    assert "Untreated wood there does not pass." in " ".join(one.asks)
    assert any("R317.1.2" in source for source in one.sources)


@pytest.mark.parametrize(
    ("width_in", "step_in", "verdict"),
    [
        (0.2, 0.0, "no span to check"),
        (0.25, 0.0, "ask an engineer"),
        (0.1, 0.25, "ask an engineer"),
    ],
)
def test_the_cracks_of_a_slab_come_from_the_walk(
    case: Any, width_in: float, step_in: float, verdict: str
) -> None:
    case.main = {"floor": {"kind": "slab", "clear_span": None}}
    case.answer("main.floor", "slab", crack_width_in=width_in, crack_step_in=step_in)
    assert case.one("floor@main.floor").verdict == verdict


@pytest.mark.parametrize("member", ["5x5", "7x9"])
def test_a_size_that_no_table_holds_stays_undecided(case: Any, member: str) -> None:
    case.main = {"floor": {"member": member}}
    one = case.one("floor@main.floor")
    assert one.verdict == "undecided"
    assert not one.facts
    assert "measure the piece" in one.reasons[0]


def test_storage_asks_more_of_a_ceiling_than_insulation(case: Any, figures: Figures) -> None:
    made = case.reckoned()
    insulated, stored = made["ceiling@main.ceiling"], made["ceiling-storage@main.ceiling"]
    assert insulated.facts["ceiling_check"] == "ask an engineer"
    assert stored.facts["ceiling_storage_check"] == "does not pass"
    assert "10 psf live" in " ".join(insulated.reasons)
    assert "20 psf live" in " ".join(stored.reasons)
    assert figures(insulated)["Allowed span"] == "11 ft 7 in."
    assert figures(stored)["Allowed span"] == "8 ft 8 in."


def test_a_high_attic_counts_as_storage_anyway(case: Any) -> None:
    case.main = {"roof": {"pitch": "12:12"}}
    assert "storage has to be expected" in " ".join(case.one("ceiling@main.ceiling").reasons)


def test_a_room_open_to_the_rafters_has_no_ceiling_to_check(case: Any) -> None:
    case.main = {"ceiling": None}
    assert not [id_ for id_ in case.reckoned() if id_.startswith("ceiling")]


def test_planned_insulation_weighs_by_the_climate_zone(case: Any, figures: Figures) -> None:
    bare = figures(case.one("ceiling@main.ceiling"))["Own weight"]
    case.facts = {"climate_zone": 5}
    cold = figures(case.one("ceiling@main.ceiling"))["Own weight"]
    case.facts = {"to_be_heated": False}
    unheated = figures(case.one("ceiling@main.ceiling"))["Own weight"]
    assert unheated < bare < cold


def test_each_layer_weighs_on_the_rafters(case: Any, figures: Figures) -> None:
    def weight() -> float:
        return float(figures(case.one("rafters@main.ceiling"))["Roof weighs"].split()[0])

    one_layer = weight()
    case.main = {"roof": {"layers": 3}}
    assert weight() == pytest.approx(one_layer + 2 * 2.0)
    added = figures(case.one("rafters-next-layer@main.ceiling"))["Roof weighs"]
    assert float(added.split()[0]) == pytest.approx(weight() + 2.0)


@pytest.mark.parametrize(
    ("snow", "verdict"),
    [(None, "ask an engineer"), (0, "passes by the table"), (300, "does not pass")],
)
def test_snow_decides_the_rafters(case: Any, snow: float | None, verdict: str) -> None:
    case.facts = {"ground_snow_psf": snow, **STAMPED}
    case.main = {"roof": {"full_size": False}}
    assert case.one("rafters@main.ceiling").facts["rafter_check"] == verdict


@pytest.mark.parametrize(
    ("has_ceiling", "answer", "asked"),
    [(True, None, False), (False, None, True), (False, "sound", False), (False, "failed", True)],
)
def test_the_walk_says_whether_the_rafters_are_tied(
    case: Any, has_ceiling: bool, answer: str | None, asked: bool
) -> None:
    case.main = {} if has_ceiling else {"ceiling": None}
    if answer:
        case.answer("main.ceiling", "roof-ties", answer)
    reasons = " ".join(case.one("rafters@main.ceiling").reasons)
    assert ("push the walls out" in reasons) is asked


def test_a_lower_roof_beside_a_higher_one_gets_its_snow(case: Any) -> None:
    case.lean_to = {}
    made = case.reckoned()
    assert "drifts" in " ".join(made["rafters@lean-to.ceiling"].reasons)
    assert "drifts" not in " ".join(made["rafters@main.ceiling"].reasons)


def test_citations_stand_once_below_and_not_in_the_sentences(case: Any) -> None:
    one = case.one("floor@main.floor")
    assert not any(
        "International Residential Code, 2018, Table" in line for line in one.reasons[:4]
    )
    assert any("Table R301.5" in source for source in one.sources)
    assert any("NDS Supplement" in source for source in one.sources)
