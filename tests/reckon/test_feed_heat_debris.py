"""The feed, heat and debris of the whole building."""

from __future__ import annotations

from collections.abc import Callable
from typing import Any

import pytest

from leanto.building.kinds import Container, Covering, Lining, Use
from leanto.reckon.debris import COVERING_OF, LINING_OF
from leanto.reckon.model import Reckoning
from leanto.trade.debris_table import debris_table, find_debris
from leanto.trade.loads import floor_use
from leanto.trade.wiring.load import use_row

Figures = Callable[[Reckoning], dict[str, str]]


def test_every_use_has_a_floor_load_and_a_planning_load() -> None:
    for use in Use:
        assert floor_use(use.value).live_psf > 0
        assert use_row(use.value).use == use.value


@pytest.mark.parametrize(("feet", "is_there"), [(0, False), (1, True)])
def test_a_feed_is_reckoned_when_there_is_a_way_to_go(
    case: Any, feet: float, is_there: bool
) -> None:
    case.facts = {"distance_to_panel": feet}
    assert ("feed@feed" in case.reckoned()) is is_there


def test_the_feed_of_the_workshop(case: Any, figures: Figures) -> None:
    case.facts = {"distance_to_panel": 140}
    one = case.one("feed@feed")
    shown = figures(one)
    # By hand: 288 sq ft x 3 VA + 1920 + 1440 + 1500 = 5724 VA, 23.85 A; the 1500 VA run on, so
    # 4224 / 240 + 1.25 x 6.25 = 25.4 A, a 30 A breaker, 10 AWG copper at 1.24 ohm: 3.45 %.
    assert shown["Load"] == "5,724 VA, 23.9 A at 240 V"
    assert shown["To size for"].startswith("25.4 A")
    assert one.facts["feed_rating_a"] == 30
    assert one.facts["feed_breaker_drop_pct"] == pytest.approx(3.45, abs=0.005)
    # 8 AWG copper at 0.778 ohm: 2 x 23.85 x 140 x 0.778 / 1000 = 5.20 V, 2.16 %.
    assert one.facts["feed_drop_pct"] == pytest.approx(2.16, abs=0.01)
    assert "confirm" in one.confirm


def test_the_owners_own_list_takes_the_place_of_the_planned_one(
    case: Any, figures: Figures
) -> None:
    case.facts = {
        "distance_to_panel": 140,
        "appliances": [
            {"name": "kiln", "amps": 40, "volts": 240, "continuous": True},
            {"name": "press", "watts": 1200},
        ],
    }
    one = case.one("feed@feed")
    # By hand: 864 + 1200 VA and 9600 VA that run on: 8.6 + 1.25 x 40 = 58.6 A, a 60 A breaker.
    assert figures(one)["To size for"].startswith("58.6 A")
    assert one.facts["feed_rating_a"] == 60
    assert "kiln 9,600 VA" in one.reasons[0]
    assert "largest tool" not in one.reasons[0]


@pytest.mark.parametrize(("feet", "is_long"), [(100, False), (100.5, True)])
def test_beyond_100_ft_the_run_stands_on_its_own(case: Any, feet: float, is_long: bool) -> None:
    case.facts = {"distance_to_panel": feet}
    made = case.reckoned()
    assert ("long-feed@feed" in made) is is_long
    assert made["feed@feed"].facts["feed_is_long"] is is_long


def test_a_road_in_the_way_asks_for_more_cover(case: Any, figures: Figures) -> None:
    case.facts = {"distance_to_panel": 140}
    assert figures(case.one("feed@feed"))["Run"].endswith(", yard")
    assert "up to 28 in. deep" in figures(case.one("long-feed@feed"))["Trench"]
    case.answer("feed", "buried-run", "worn", burial_place="house driveway")
    assert figures(case.one("feed@feed"))["Run"].endswith(", house driveway")
    # 18 in. of cover for cable and pipe alike: the pipe sets the depth. Table 300.5, seen.
    assert "up to 22 in. deep" in figures(case.one("long-feed@feed"))["Trench"]


def test_a_load_past_the_tables_is_for_an_electrician(case: Any) -> None:
    case.facts = {
        "distance_to_panel": 900,
        "appliances": [{"name": "furnace", "watts": 48000, "volts": 240}],
    }
    one = case.one("feed@feed")
    assert one.verdict == "ask an electrician"
    assert "feed_rating_a" not in one.facts


@pytest.mark.parametrize(
    ("amp", "awg", "poles", "verdict"),
    [
        (60.0, 4.0, "two poles", "passes by the table"),
        (30.0, 10.0, "two poles", "does not pass"),
        (60.0, 10.0, "two poles", "does not pass"),
        (20.0, 12.0, "one pole", "does not pass"),
        (60.0, None, "two poles", "ask an electrician"),
    ],
)
def test_the_feed_that_is_there(
    case: Any, amp: float, awg: float | None, poles: str, verdict: str
) -> None:
    case.facts = {"distance_to_panel": 140}
    measures: dict[str, float | str] = {"feed_amp": amp, "feed_poles": poles}
    if awg is not None:
        measures["feed_awg"] = awg
    key = case.answer("feed", "feed-size", "worn", **measures)
    assert case.one(f"feed-there@{key}").facts["feed_there_check"] == verdict


def test_insulation_against_the_targets(case: Any) -> None:
    assert case.one("insulation@main").verdict == "undecided"
    case.facts = {"climate_zone": 1}
    facts = case.one("insulation@main").facts
    # R-13 fits a stud of 4 in., as zone 1 asks; R-25 fits a joist of 7-1/2 in., 13 is asked.
    assert facts["walls_insulation_check"] == "passes by the table"
    assert facts["floor_insulation_check"] == "passes by the table"
    case.facts = {"climate_zone": 5}
    assert case.one("insulation@main").facts["walls_insulation_check"] == "does not pass"
    case.facts = {"climate_zone": 5, "target_r": {"walls": 13}}
    assert case.one("insulation@main").facts["walls_insulation_check"] == "passes by the table"


def test_an_attic_takes_what_the_code_asks_for(case: Any) -> None:
    case.facts = {"climate_zone": 8}
    assert case.one("insulation@main").facts["ceiling_insulation_check"] == "passes by the table"
    case.main = {"ceiling": None}
    assert case.one("insulation@main").facts["ceiling_insulation_check"] == "does not pass"


def test_watts_fall_with_insulation_and_a_milder_winter(case: Any) -> None:
    assert not case.one("heat@main").facts
    case.facts = {"winter_low_f": 5, "indoor_f": 65}
    cold = case.one("heat@main").facts
    assert cold["heat_now_w"] > cold["heat_keep_w"] > cold["heat_gut_w"] > 0
    case.facts = {"winter_low_f": 35, "indoor_f": 65}
    mild = case.one("heat@main").facts
    assert mild["heat_now_w"] == pytest.approx(cold["heat_now_w"] / 2)


def test_the_heat_of_a_bare_shed_by_hand(case: Any) -> None:
    """A slab shed of bare boards under a fiberboard ceiling, one hour at one degree."""
    case.facts = {"winter_low_f": 67, "indoor_f": 68}
    case.main = {
        "walls": {"lining": "none"},
        "ceiling": {"lining": "none"},
        "floor": {"kind": "slab", "clear_span": None},
    }
    # Walls: (24 + 24 + 12 + 12) x 8 = 576 sq ft. Between studs R 0.17 + 0.94 + 0.68 = 1.79, at
    # studs 5 more; 22 percent wood: U = 0.78/1.79 + 0.22/6.79 = 0.4682. 269.7 Btu/h.
    # Ceiling: 288 sq ft, R 1.22 between joists, 5 more at joists, 2/24 wood: 0.7648, 220.3.
    # Slab edge 72 ft x 0.73 = 52.6; air 2304 cu ft x 0.018 = 41.5. In all 584.0 Btu/h, 171.2 W.
    assert case.one("heat@main").facts["heat_now_w"] == pytest.approx(171.2, abs=0.3)


def test_an_unheated_building_has_no_heat_to_reckon(case: Any) -> None:
    case.facts = {"to_be_heated": False}
    assert not [id_ for id_ in case.reckoned() if id_.startswith(("heat", "insulation"))]


def test_every_container_lining_and_covering_has_its_row() -> None:
    assert {one.value for one in Container} == set(debris_table().containers)
    assert set(LINING_OF) == set(Lining) - {Lining.NONE}
    for name, _ in LINING_OF.values():
        assert find_debris(name)
    assert set(COVERING_OF) < set(Covering)
    for name in COVERING_OF.values():
        assert find_debris(name).unit == "square"


def test_the_debris_of_every_lining(case: Any, figures: Figures) -> None:
    shown = figures(case.one("debris-linings@site"))
    # Walls 576 sq ft of boards at 2.5 lb, ceiling 288 sq ft at 0.75 to 1 lb: 1,656 to 1,728 lb.
    assert shown["Beaded board"] == "576 sq ft"
    assert shown["Weight"].startswith("1,656 to 1,728 lb")
    assert "10 cu yd" in " ".join(shown)
    case.facts = {"haul": {"container": "roll-off-20"}}
    assert "20 cu yd" in " ".join(figures(case.one("debris-linings@site")))


def test_every_layer_of_covering_counts(case: Any) -> None:
    once = case.one("debris-coverings@site").facts["debris_coverings_high_lb"]
    case.main = {"roof": {"layers": 2}}
    twice = case.one("debris-coverings@site").facts["debris_coverings_high_lb"]
    assert twice == pytest.approx(2 * once)


def test_nothing_lined_makes_no_debris_of_linings(case: Any) -> None:
    case.main = {"walls": {"lining": "none"}, "ceiling": None}
    assert "debris-linings@site" not in case.reckoned()


def test_what_may_not_go_with_the_debris(case: Any, figures: Figures) -> None:
    case.facts = {"year_built": 1938}
    one = case.one("debris-apart@site")
    shown = " ".join(figures(one))
    assert one.verdict == "sort before loading"
    # Fiberboard of 1938 may hold asbestos, and its paint lead.
    assert "asbestos" in shown and "paint from before 1978" in shown
    assert "fouled" not in shown
    assert any(reason.startswith("If there: fill and lining fouled") for reason in one.reasons)
    assert "Loads, " not in shown
    case.answer("main.ceiling", "fill-nests", "failed")
    assert "fouled by animals" in " ".join(figures(case.one("debris-apart@site")))


def test_a_newer_building_still_has_things_to_look_for(case: Any, figures: Figures) -> None:
    case.facts = {"year_built": 1995, "foundation": "concrete wall"}
    one = case.one("debris-apart@site")
    assert figures(one) == {}
    assert len(one.reasons) > 5


@pytest.mark.parametrize(
    ("facts", "floor", "is_expected"),
    [
        ({"foundation": "posts in ground"}, {}, True),
        ({"foundation": "piers"}, {"kind": "sleepers"}, True),
        ({"foundation": "piers"}, {}, False),
    ],
)
def test_wood_in_the_soil_is_taken_to_be_treated(
    case: Any, figures: Figures, facts: dict[str, str], floor: dict[str, str], is_expected: bool
) -> None:
    case.facts = facts
    case.main = {"floor": floor}
    shown = " ".join(figures(case.one("debris-apart@site")))
    assert ("treated against rot" in shown) is is_expected
