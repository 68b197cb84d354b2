"""NFPA 70 (National Electrical Code) 2020, 314.16: box fill. Seen, save rows marked otherwise."""

from __future__ import annotations

import pytest

from leanto.trade.wiring.box_fill import (
    BoxContents,
    box_table,
    check_box,
    conductor_volume_cuin,
    fill_cuin,
    most_conductors,
    smallest_box,
)
from leanto.trade.wiring.confirm import Verdict

TABLE_B = [
    ("18", 1.5),
    ("16", 1.75),
    ("14", 2.0),
    ("12", 2.25),
    ("10", 2.5),
    ("8", 3.0),
    ("6", 5.0),
]
TABLE_A = [
    ("octagon 4 x 1-1/4", 12.5),
    ("octagon 4 x 1-1/2", 15.5),
    ("octagon 4 x 2-1/8", 21.5),
    ("square 4 x 1-1/4", 18.0),
    ("square 4 x 1-1/2", 21.0),
    ("square 4 x 2-1/8", 30.3),
    ("square 4-11/16 x 1-1/4", 25.5),
    ("square 4-11/16 x 1-1/2", 29.5),
    ("square 4-11/16 x 2-1/8", 42.0),
    ("device 3 x 2 x 1-1/2", 7.5),
    ("device 3 x 2 x 2", 10.0),
    ("device 3 x 2 x 2-1/4", 10.5),
    ("device 3 x 2 x 2-1/2", 12.5),
    pytest.param("device 3 x 2 x 2-3/4", 14.0, marks=pytest.mark.row("from memory")),
    pytest.param("device 3 x 2 x 3-1/2", 18.0, marks=pytest.mark.row("from memory")),
]


def volume_of(name: str) -> float:
    return next(box.volume_cuin for box in box_table().boxes if box.name == name)


@pytest.mark.published("NFPA 70 (National Electrical Code), 314.16 box fill", "seen")
@pytest.mark.parametrize(("size", "volume"), TABLE_B)
def test_allowance_of_a_conductor(size: str, volume: float) -> None:
    assert volume == conductor_volume_cuin(size)


@pytest.mark.published("NFPA 70 (National Electrical Code), 314.16 box fill", "seen")
@pytest.mark.parametrize(("name", "volume"), TABLE_A)
def test_volume_of_a_box(name: str, volume: float) -> None:
    assert volume == volume_of(name)


@pytest.mark.published("NFPA 70 (National Electrical Code), 314.16 box fill", "seen")
def test_nine_12_awg_take_the_square_box_4_by_1_1_2() -> None:
    # Outlet box sizing, EC&M reprint: 9 x 2.25 = 20.25 of 21.0. Seen.
    contents = BoxContents({"12": 9})
    assert fill_cuin(contents) == 20.25
    box = smallest_box(contents, "square")
    assert box is not None
    assert box.name == "square 4 x 1-1/2"


@pytest.mark.published("NFPA 70 (National Electrical Code), 314.16 box fill", "seen")
@pytest.mark.parametrize(
    ("name", "size", "count"),
    [
        ("octagon 4 x 1-1/2", "14", 7),  # outlet box sizing, EC&M reprint; seen
        ("octagon 4 x 1-1/2", "12", 6),  # Electrical Wiring Residential, chapter 21; seen
        ("square 4-11/16 x 1-1/2", "12", 13),  # box sizing guide; seen
    ],
)
def test_most_conductors_of_one_size(name: str, size: str, count: int) -> None:
    assert count == most_conductors(volume_of(name), size)


@pytest.mark.published("NFPA 70 (National Electrical Code), 314.16 box fill", "seen")
def test_two_cables_and_a_three_wire_with_a_switch_overfill_a_square_box() -> None:
    # Box-fill question of the week: two 12/2 and one 12/3, clamps, grounds, one switch;
    # 7 + 1 + 1 + 2 = 11 allowances, 24.75 of 21.0. Seen.
    contents = BoxContents({"12": 7}, ["12"], has_internal_clamps=True, grounds={"12": 3})
    assert fill_cuin(contents) == 24.75
    assert check_box(21.0, contents).verdict is Verdict.DOES_NOT_PASS


@pytest.mark.published("NFPA 70 (National Electrical Code), 314.16 box fill", "seen")
def test_three_14_2_cables_and_a_receptacle_just_fit_18_cubic_inches() -> None:
    # Forum thread, weak: 6 + 1 + 2 = 9 allowances, 18.0. Seen. One more conductor fails.
    contents = BoxContents({"14": 6}, ["14"], grounds={"14": 3})
    assert fill_cuin(contents) == 18.0
    assert check_box(18.0, contents).verdict is Verdict.PASSES
    fuller = BoxContents({"14": 7}, ["14"], grounds={"14": 3})
    assert check_box(18.0, fuller).verdict is Verdict.DOES_NOT_PASS


@pytest.mark.published("NFPA 70 (National Electrical Code), 314.16 box fill", "seen")
def test_four_12_awg_a_device_and_grounds_take_15_75() -> None:
    # Wiring glossary, weak: 7 x 2.25. Seen.
    assert fill_cuin(BoxContents({"12": 4}, ["12"], grounds={"12": 2})) == 15.75


@pytest.mark.published("Own rule", "own")
def test_a_web_tables_wrong_volumes_are_not_ours() -> None:
    # Printed there: octagon 15.0 and 10 AWG 2.25.
    assert volume_of("octagon 4 x 1-1/2") != 15.0
    assert conductor_volume_cuin("10") != 2.25


@pytest.mark.published("NFPA 70 (National Electrical Code), 314.16 box fill", "from memory")
def test_grounds_past_four_take_a_quarter_each() -> None:
    # 314.16(B)(5), 2020; from memory.
    assert fill_cuin(BoxContents({}, grounds={"12": 4})) == 2.25
    assert fill_cuin(BoxContents({}, grounds={"12": 6})) == 2.25 * 1.5
