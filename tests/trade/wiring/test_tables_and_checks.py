"""What the wiring tables refuse, and that an unknown is asked about and never passed."""

from __future__ import annotations

import pytest

from leanto.trade.wiring.box_fill import BoxContents, fill_cuin, fill_steps, smallest_box
from leanto.trade.wiring.burial import Method, Place, check_cover, trench_depth_in
from leanto.trade.wiring.conductor import (
    conductor,
    crowding_factor,
    size_label,
    smallest_for_ampacity,
    smallest_for_area,
)
from leanto.trade.wiring.conduit import (
    Conduit,
    conductor_area_sqin,
    fill_share,
    inside_area_sqin,
    most_of_one_size,
    smallest_trade_size,
)
from leanto.trade.wiring.confirm import CONFIRM, Verdict
from leanto.trade.wiring.equipment_ground import electrode_size, table_ground_size
from leanto.trade.wiring.load import Load, circuits, planned_load, whole_amps
from leanto.trade.wiring.overcurrent import check_rating, rating_at_least_a, rating_at_most_a
from leanto.trade.wiring.receptacles import plan_receptacles
from leanto.trade.wiring.separate_building import check_neutral, least_shut_off_a


def test_unknown_facts_are_asked_about() -> None:
    unknown = [
        check_rating(None, "14"),
        check_rating(20, None),
        check_cover(None, Place.YARD, Method.PVC),
    ]
    assert {check.verdict for check in unknown} == {Verdict.ASK}
    assert {check.confirm for check in unknown} == {CONFIRM}


def test_no_verdict_speaks_of_safety_or_compliance() -> None:
    words = " ".join(verdict.value for verdict in Verdict)
    assert "safe" not in words
    assert "compl" not in words


@pytest.mark.parametrize(
    ("size", "label"), [("6", "6 AWG"), ("4/0", "4/0 AWG"), ("250", "250 kcmil")]
)
def test_size_is_said_with_its_unit(size: str, label: str) -> None:
    assert label == size_label(size)


def test_sizes_past_the_tables() -> None:
    assert smallest_for_ampacity("copper", 311, 75) is None
    assert smallest_for_area("copper", 350001) is None
    assert rating_at_least_a(601) is None
    assert rating_at_most_a(14) is None
    # One conductor may take 53 percent: 2.488 sq in of 2-1/2 in, 3.852 of 3 in.
    assert smallest_trade_size([2.4], Conduit.SCHEDULE_40) == "2-1/2"
    assert smallest_trade_size([2.5], Conduit.SCHEDULE_40) == "3"
    assert smallest_trade_size([3.0] * 3, Conduit.SCHEDULE_40) is None
    for refused in (
        lambda: conductor("5", "copper"),
        lambda: crowding_factor(21),
        lambda: crowding_factor(0),
        lambda: table_ground_size(601, "copper"),
        lambda: table_ground_size(0, "copper"),
        lambda: conductor_area_sqin("500"),
        lambda: inside_area_sqin("4", Conduit.EMT),
        lambda: fill_share(0),
        lambda: check_neutral(5, is_bonded=True, has_metal_path=False),
        lambda: least_shut_off_a(0),
        lambda: planned_load("garage band", 100),
        lambda: planned_load("workshop", 0),
        lambda: fill_cuin(BoxContents({"4": 1})),
        lambda: fill_cuin(BoxContents({"12": -1})),
    ):
        with pytest.raises(ValueError, match=r"."):
            refused()


def test_every_listed_supply_has_an_electrode_conductor() -> None:
    assert electrode_size("350", "copper", rod_only=False) == "2"
    assert electrode_size("350", "aluminum", rod_only=False) == "2"


@pytest.mark.parametrize(
    ("cover_in", "outside_in", "depth_in"), [(18, 1.0, 21), (18, 1.05, 22), (24, 1.5, 28)]
)
def test_trench_is_dug_past_the_cover(cover_in: int, outside_in: float, depth_in: int) -> None:
    assert depth_in == trench_depth_in(cover_in, outside_in)


# 1 in Schedule 40 is 0.832 sq in: one conductor to .441, two to .258 together, more to .333.
@pytest.mark.parametrize(("area", "count"), [(0.5, 0), (0.3, 1), (0.12, 2), (0.1, 3), (0.08, 4)])
def test_one_and_two_conductors_have_shares_of_their_own(area: float, count: int) -> None:
    assert count == most_of_one_size(area, "1", Conduit.SCHEDULE_40)


# Same size: 0.3328 / area, rounded up from a remainder of 0.8.
@pytest.mark.parametrize(("exact", "count"), [(5.79, 5), (5.81, 6)])
def test_same_size_count_rounds_up_from_0_8(exact: float, count: int) -> None:
    assert count == most_of_one_size(0.832 * 0.40 / exact, "1", Conduit.SCHEDULE_40)


def test_box_contents_name_each_allowance() -> None:
    contents = BoxContents(
        {"12": 4, "14": 2}, ["14"], fittings=1, has_internal_clamps=True, grounds={"12": 5}
    )
    # 9 + 4 + clamps 2.25 + stud 2.25 + device 4 + grounds 1.25 x 2.25
    assert fill_cuin(contents) == 24.3125
    assert len(fill_steps(contents)) == 6
    assert smallest_box(contents, "device") is None


def test_planned_load_keeps_continuous_apart_and_takes_the_owners_list() -> None:
    planned = planned_load("workshop", 360)
    # 1080 general + 1920 + 1440, and 1500 continuous
    assert (planned.other_va, planned.continuous_va) == (4440, 1500)
    own = planned_load("workshop", 360, [Load(name="press", va=800, is_continuous=False)])
    assert own.total_va == 1880


@pytest.mark.parametrize(("exact", "whole"), [(10.49, 10), (10.5, 11), (10.0, 10)])
def test_a_small_fraction_of_an_ampere_is_dropped(exact: float, whole: int) -> None:
    assert whole == whole_amps(exact)


def test_circuits_round_up_but_not_for_dust() -> None:
    assert circuits(1800, 120, 15) == 1
    assert circuits(1801, 120, 15) == 2
    assert circuits(0.1 * 3 * 1000, 100, 3) == 1


def test_a_workshop_is_planned_more_densely_than_the_least() -> None:
    plan = plan_receptacles("workshop", [12, 12, 24, 24], floor_at_or_below_grade=True)
    assert (plan.least, plan.planned) == (1, 12)
    assert plan.planned_source.mark == "common practice, no source"
    tiny = plan_receptacles("workshop", [4], vehicle_bays=2)
    assert (tiny.least, tiny.planned) == (2, 2)
