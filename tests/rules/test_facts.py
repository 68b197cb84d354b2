"""The names that expressions may use, and where their values come from."""

from __future__ import annotations

from collections.abc import Callable
from datetime import date
from typing import Any

import pytest

from leanto.building.model import Building
from leanto.checklist.model import Checklist
from leanto.record.observation import Air
from leanto.rules.facts import STATIC_FACTS, fact_specs, wanting
from leanto.rules.terms import Value
from leanto.rules.values import values_for

# The names that rules and checklists are written with.
FLAGS = """
    sound worn failed no_access danger has_zone lined has_gutter has_ceiling has_valley meets_wall
    to_be_heated is_attached
    feed_is_long asbestos_suspect lead_area_over_limit
"""
TEXTS = """
    place side lining cladding covering deck insulation floor_kind foundation intended_use roof_form
    moisture_verdict
    floor_check ceiling_check ceiling_storage_check rafter_check rafter_next_layer_check slope_check
    walls_insulation_check ceiling_insulation_check floor_insulation_check recover_check life_check
    mold_band moisture_band section_remedy lining_fate pest_kind pest_activity clearance_check
    feed_there_check cut_check
"""
NUMBERS = """
    zone_area_sqft zone_width_ft zone_height_ft zone_bottom_ft zone_top_ft surface_area_sqft
    surface_width_ft surface_height_ft surface_perimeter_ft member_spacing_in member_breadth_in
    member_depth_in pitch_in_12 covering_age_years layers year_built building_age_years
    distance_to_panel_ft eave_height_ft block_length_ft block_width_ft floor_area_sqft
    floor_clear_span_ft overhang_in door_count big_door_count window_count vent_count
    skylight_count flue_count
    air_temp_f air_humidity_pct emc_pct moisture_over_air_pct section_left_pct
    floor_allowed_span_ft ceiling_allowed_span_ft rafter_allowed_span_ft roof_squares heat_now_w
    heat_keep_w heat_gut_w feed_rating_a feed_drop_pct feed_breaker_drop_pct debris_linings_high_lb
    debris_coverings_high_lb life_left_low_years life_left_high_years lead_inside_sqft
    lead_outside_sqft mold_area_sqft section_lost_pct sister_length_ft cut_height_in
    feed_there_drop_pct
"""


def test_every_promised_fact_is_there_and_no_other() -> None:
    kinds = {spec.name: spec.kind for spec in STATIC_FACTS}
    promised = {
        **dict.fromkeys(FLAGS.split(), "flag"),
        **dict.fromkeys(TEXTS.split(), "text"),
        **dict.fromkeys(NUMBERS.split(), "number"),
    }
    assert kinds == promised
    assert len(STATIC_FACTS) == len(kinds)


@pytest.mark.parametrize("spec", STATIC_FACTS, ids=lambda spec: spec.name)
def test_every_fact_is_explained_and_has_a_unit_or_choices(spec: Any) -> None:
    assert spec.doc.endswith(".")
    assert bool(spec.unit) == (spec.kind == "number")
    assert bool(spec.choices) == (spec.kind == "text")


def test_measures_are_facts_of_their_kind(checklist: Callable[..., Checklist]) -> None:
    facts = fact_specs(checklist())
    assert (facts["probe_depth_in"].kind, facts["probe_depth_in"].unit) == ("number", "in")
    assert facts["is_active"].kind == "flag"
    assert facts["stain_kind"].choices == ("ring", "streak", "edge of a lid")


def values(case: Any, station: str, **answer: Any) -> dict[str, Value]:
    """The facts of one answer of the item ``rot`` at the station."""
    observation = case.answer(station, "rot", **answer)
    stations = {stop.id: stop for stop in case.stations}
    return values_for(
        observation,
        stations[station],
        case.building,
        case.surfaces,
        stations,
        case.walk,
        fact_specs(case.checklist),
        date(2026, 6, 1),
    )


@pytest.mark.parametrize(
    ("station", "expected"),
    [
        (
            "main.south.inside",
            {
                "place": "wall inside",
                "side": "south",
                "lined": True,
                "lining": "beaded board",
                "cladding": "board",
                "insulation": "batts",
                "surface_width_ft": 24.0,
                "surface_height_ft": 8.0,
                "surface_area_sqft": 24 * 8 - 3 * 6.5 - 2 * 3,
                "surface_perimeter_ft": 64.0,
                "member_spacing_in": 24.0,
                "member_breadth_in": 1.625,
                "member_depth_in": 3.625,
                "door_count": 1.0,
                "window_count": 1.0,
                "flue_count": 0.0,
                "covering": "asphalt shingle",
                "deck": "boards",
                "roof_form": "gable",
                "pitch_in_12": 6.0,
                "covering_age_years": None,
                "layers": 2.0,
                "overhang_in": 12.0,
                "has_gutter": False,
                "has_ceiling": True,
                "has_valley": False,
                "meets_wall": False,
                "is_attached": False,
                "floor_kind": "joists",
                "foundation": "stone and skids",
                "intended_use": "workshop",
                "to_be_heated": True,
                "year_built": 1938.0,
                "building_age_years": 88.0,
                "distance_to_panel_ft": 140.0,
                "eave_height_ft": 8.0,
                "block_length_ft": 24.0,
                "block_width_ft": 12.0,
                "floor_area_sqft": 288.0,
                "floor_clear_span_ft": 12.0,
            },
        ),
        ("main.south.outside", {"lined": True, "lining": "beaded board", "cladding": "board"}),
        ("main.west.inside", {"lined": False, "lining": "none", "insulation": "batts"}),
        ("main.floor", {"side": "none", "lining": "none", "member_depth_in": 7.5}),
        ("feed-room.floor", {"floor_kind": "dirt", "member_depth_in": None, "floor_area_sqft": 72}),
        ("main.roof.south", {"flue_count": 1.0, "door_count": 0.0, "cladding": "none"}),
        (
            "feed-room.roof.north",
            {
                "is_attached": True,
                "meets_wall": True,
                "has_gutter": True,
                "has_ceiling": False,
                "covering": "corrugated steel",
                "covering_age_years": 30.0,
                "pitch_in_12": 3.0,
            },
        ),
        (
            "site",
            {
                "place": "site",
                "side": "none",
                "lining": None,
                "covering": None,
                "pitch_in_12": None,
                "deck": "boards",
                "has_gutter": True,
                "is_attached": True,
                "floor_area_sqft": 360.0,
                "door_count": 1.0,
                "flue_count": 1.0,
                "surface_area_sqft": None,
                "zone_area_sqft": None,
                "year_built": 1938.0,
            },
        ),
    ],
)
def test_a_place_has_these_facts(case: Any, station: str, expected: dict[str, object]) -> None:
    found = values(case, station)
    assert {name: found.get(name) for name in expected} == pytest.approx(expected)


@pytest.mark.parametrize(
    ("condition", "true"),
    [
        ("sound", "sound"),
        ("worn", "worn"),
        ("failed", "failed"),
        ("no access", "no_access"),
        ("not there", None),
        (None, None),
    ],
)
def test_the_condition_is_four_flags(case: Any, condition: str | None, true: str | None) -> None:
    found = values(case, "main.floor", condition=condition)
    flags = ("sound", "worn", "failed", "no_access")
    assert [name for name in flags if found[name]] == ([true] if true else [])


def test_zone_facts_are_those_of_the_zone(case: Any) -> None:
    found = values(case, "main.floor", zone=(1, 2, 3, 4))
    names = ("area_sqft", "width_ft", "height_ft", "bottom_ft", "top_ft")
    assert [found[f"zone_{name}"] for name in names] == [12, 3, 4, 2, 6]
    assert found["has_zone"] is True


def test_without_a_zone_the_zone_facts_are_those_of_the_whole_surface(case: Any) -> None:
    found = values(case, "main.floor")
    names = ("area_sqft", "width_ft", "height_ft", "bottom_ft", "top_ft")
    assert [found[f"zone_{name}"] for name in names] == [288, 24, 12, 0, 12]
    assert found["has_zone"] is False


def test_measures_take_the_kind_of_their_fact_and_strangers_are_left_out(case: Any) -> None:
    found = values(
        case,
        "main.floor",
        run_ft=3.0,
        is_active=1.0,
        stain_kind="ring",
        gone_measure=1.0,
        probe_depth_in="deep",
        moisture_pct=float("nan"),
    )
    assert (found["run_ft"], found["is_active"], found["stain_kind"]) == (3.0, True, "ring")
    assert not {"gone_measure", "probe_depth_in", "moisture_pct"} & found.keys()
    assert "stain_kind" not in values(case, "main.floor", stain_kind="a choice of last year")
    assert values(case, "main.floor", is_active=0.0)["is_active"] is False


@pytest.mark.parametrize(
    ("taken_at", "asked_at", "is_known"),
    [
        ("main.south.inside", "main.south.inside", True),
        ("main.floor", "main.south.inside", True),
        ("feed-room.floor", "main.south.inside", False),
        ("site", "main.south.inside", False),
        ("main.south.outside", "main.south.inside", False),
        ("site", "feed-room.roof.north", True),
        ("main.south.outside", "feed", True),
        ("main.floor", "wiring", True),
        ("main.floor", "site", False),
        ("a-stop-that-is-gone", "site", False),
    ],
)
def test_air_is_taken_from_here_or_from_its_like(
    case: Any, taken_at: str, asked_at: str, is_known: bool
) -> None:
    case.air[taken_at] = Air(70.0, 50.0)
    found = values(case, asked_at)
    assert found.get("air_temp_f") == (70.0 if is_known else None)
    assert ("emc_pct" in found) is is_known


def test_air_taken_here_goes_before_air_taken_later_elsewhere(case: Any) -> None:
    case.air |= {
        "main.south.inside": Air(70.0, 50.0),
        "main.east.inside": Air(60.0, 40.0),
        "main.floor": Air(50.0, 90.0),
    }
    assert values(case, "main.south.inside")["air_temp_f"] == 70.0
    assert values(case, "main.west.inside")["air_temp_f"] == 50.0


def test_emc_is_that_of_the_wood_handbook(case: Any) -> None:
    # Wood Handbook, FPL-GTR-190, 2010, Table 4-2: 70 F and 50 % give 9.2 %. From memory.
    case.air["main.floor"] = Air(70.0, 50.0)
    assert values(case, "main.floor")["emc_pct"] == pytest.approx(9.2, abs=0.1)


def test_air_colder_than_the_computation_reaches_gives_no_emc(case: Any) -> None:
    case.air["main.floor"] = Air(-55.0, 50.0)
    found = values(case, "main.floor", moisture_pct=15.0)
    assert "emc_pct" not in found
    assert "moisture_verdict" not in found


@pytest.mark.parametrize(
    ("air", "measures", "verdict"),
    [
        # EMC at 70 F and 50 % is 9.2; 4 points over it is what the air explains at most.
        (Air(70.0, 50.0), {"moisture_pct": 13.0}, "drying out with the room"),
        (Air(70.0, 50.0), {"moisture_pct": 13.5}, "wetter than the air explains"),
        (Air(70.0, 50.0), {"moisture_pct": 19.9}, "wetter than the air explains"),
        (Air(70.0, 50.0), {"moisture_pct": 20.0}, "wet enough for decay"),
        (None, {"moisture_pct": 20.0}, "wet enough for decay"),
        (None, {"moisture_pct": 19.9}, None),
        (
            None,
            {"moisture_pct": 19.0, "dry_spot_moisture_pct": 12.0},
            "wetter than the air explains",
        ),
        (None, {"moisture_pct": 15.0, "dry_spot_moisture_pct": 12.0}, "drying out with the room"),
        (Air(70.0, 50.0), {}, None),
    ],
)
def test_a_reading_is_judged_against_air_and_dry_spot(
    case: Any, air: Air | None, measures: dict[str, float], verdict: str | None
) -> None:
    if air is not None:
        case.air["main.floor"] = air
    assert values(case, "main.floor", **measures).get("moisture_verdict") == verdict


def test_the_excess_is_the_reading_for_the_warmth_of_the_wood_less_emc(case: Any) -> None:
    # At 70 F a pin meter needs no correction; at 50 F the reading is 1 point low.
    case.air["main.floor"] = Air(70.0, 50.0)
    found = values(case, "main.floor", moisture_pct=15.0)
    assert found["moisture_over_air_pct"] == pytest.approx(15.0 - float(found["emc_pct"]))
    case.air["main.floor"] = Air(50.0, 50.0)
    found = values(case, "main.floor", moisture_pct=15.0)
    assert found["moisture_over_air_pct"] == pytest.approx(16.0 - float(found["emc_pct"]))


@pytest.mark.parametrize(
    ("station", "probe_in", "left_pct"),
    [
        # Rectangle, S = bd^2/6: 1.5 in. off a joist 7 1/2 in. deep leaves (6 / 7.5)^2.
        ("main.floor", 1.5, 64.0),
        ("main.floor", 0.0, 100.0),
        ("main.floor", 9.0, 0.0),
        ("feed-room.floor", 1.5, None),
    ],
)
def test_section_left_follows_the_probe(
    case: Any, station: str, probe_in: float, left_pct: float | None
) -> None:
    found = values(case, station, probe_depth_in=probe_in)
    assert found.get("section_left_pct") == (None if left_pct is None else pytest.approx(left_pct))


@pytest.mark.parametrize(
    ("year", "full_size", "depth_in"), [(1963, False, 7.5), (1964, False, 7.25), (1938, True, 8.0)]
)
def test_lumber_has_the_size_of_its_time(
    case: Any, year: int, full_size: bool, depth_in: float
) -> None:
    block = case.building.blocks[0]
    floor = block.floor.model_copy(update={"full_size": full_size})
    case.building = case.building.model_copy(
        update={
            "year_built": year,
            "blocks": (block.model_copy(update={"floor": floor}), *case.building.blocks[1:]),
        }
    )
    assert values(case, "main.floor")["member_depth_in"] == depth_in


def test_a_size_without_an_old_figure_is_taken_as_dressed_today(case: Any) -> None:
    block = case.building.blocks[0]
    floor = block.floor.model_copy(update={"member": "4x8"})
    case.building = case.building.model_copy(
        update={"blocks": (block.model_copy(update={"floor": floor}),)}
    )
    assert values(case, "main.floor")["member_depth_in"] == 7.25


def test_a_flat_roof_has_a_pitch_of_zero(case: Any, building: Callable[..., Building]) -> None:
    block = building().blocks[0].model_dump(mode="json")
    block["roof"] |= {"form": "flat", "pitch": None}
    case.building = building(blocks=[block], openings=[])
    assert values(case, "main.south.outside")["pitch_in_12"] == 0.0


WING = {
    "id": "wing",
    "name": "Wing",
    "length": 10,
    "width": 8,
    "eave_height": 7,
    "ridge_runs": "north-south",
    "roof": {"form": "gable", "pitch": "6:12"},
    "attached": {"to": "main", "side": "north"},
}


@pytest.mark.parametrize(
    ("changes", "has_valley"),
    [
        # Ridge at 7 + 4 * 6/12 = 9 ft over an eave at 8 ft.
        ({}, True),
        ({"eave_height": 6}, False),
        ({"eave_height": 6.25}, True),
        ({"ridge_runs": "east-west"}, False),
        ({"attached": {"to": "main", "side": "east"}}, False),
        ({"roof": {"form": "flat"}}, False),
    ],
)
def test_a_ridge_that_runs_into_a_slope_makes_a_valley_on_both_blocks(
    case: Any, building: Callable[..., Building], changes: dict[str, Any], has_valley: bool
) -> None:
    main = building().blocks[0].model_dump(mode="json", exclude_none=True)
    case.building = building(blocks=[main, WING | changes], openings=[])
    assert values(case, "main.south.outside")["has_valley"] is has_valley
    assert values(case, "wing.floor")["has_valley"] is has_valley


@pytest.mark.parametrize(
    ("name", "known", "expected"),
    [
        ("moisture_verdict", set(), "moisture_pct"),
        ("moisture_verdict", {"moisture_pct"}, "air_temp_f"),
        ("moisture_over_air_pct", {"moisture_pct", "air_temp_f"}, "air_humidity_pct"),
        ("section_left_pct", {"probe_depth_in"}, "member_depth_in"),
        ("run_ft", set(), "run_ft"),
        ("division by zero", set(), "division by zero"),
    ],
)
def test_what_is_wanting_is_what_the_walker_can_enter(
    checklist: Callable[..., Checklist], name: str, known: set[str], expected: str
) -> None:
    assert wanting(name, fact_specs(checklist()), dict.fromkeys(known, 1.0)) == expected


def test_values_do_not_hang_on_other_observations(case: Any) -> None:
    alone = values(case, "main.floor", run_ft=3.0)
    case.answer("main.floor", "stain", run_ft=9.0)
    again = values(case, "main.floor", run_ft=3.0)
    assert alone == again
