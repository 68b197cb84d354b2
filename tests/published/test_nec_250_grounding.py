"""NFPA 70 (National Electrical Code) 2020, Tables 250.122 and 250.66; worked increases. Seen."""

from __future__ import annotations

import pytest

from leanto.trade.wiring.conductor import Metal, conductor
from leanto.trade.wiring.equipment_ground import (
    electrode_size,
    equipment_ground,
    table_ground_size,
)

TABLE_250_122 = [
    (15, "14", "12"),
    (20, "12", "10"),
    (60, "10", "8"),
    (100, "8", "6"),
    (200, "6", "4"),
    (300, "4", "2"),
    (400, "3", "1"),
    (500, "2", "1/0"),
    (600, "1", "2/0"),
]


@pytest.mark.published("NFPA 70 (National Electrical Code), 250 grounding", "seen")
@pytest.mark.parametrize(("rating_a", "copper", "aluminum"), TABLE_250_122)
def test_grounding_conductor_by_rating(rating_a: int, copper: str, aluminum: str) -> None:
    assert copper == table_ground_size(rating_a, "copper")
    assert aluminum == table_ground_size(rating_a, "aluminum")


@pytest.mark.published("Own rule", "own")
@pytest.mark.parametrize("row", range(len(TABLE_250_122) - 1))
def test_one_ampere_over_a_row_takes_the_next(row: int) -> None:
    assert TABLE_250_122[row + 1][1] == table_ground_size(TABLE_250_122[row][0] + 1, "copper")


# rating, from, to, ground by table, increased ground, source
INCREASES = [
    (250, "250", "350", "4", "2", "1.4 x 41740 = 58436; training notes on 250.122(B), seen"),
    (20, "12", "6", "12", "6", "code talk on 250.122(B), seen"),
    (50, "8", "1", "10", "3", "83690 / 16510 x 10380 = 52617; contractors' magazine, seen"),
    (50, "8", "4", "10", "4", "26242 is over 26240, so not 6; forum on 250.122(B), weak, seen"),
]


@pytest.mark.published("NFPA 70 (National Electrical Code), 250 grounding", "seen")
@pytest.mark.parametrize(
    ("rating_a", "needed", "run", "by_table", "increased", "source"), INCREASES
)
def test_grounding_conductor_grows_in_proportion(
    rating_a: int, needed: str, run: str, by_table: str, increased: str, source: str
) -> None:
    ground = equipment_ground(
        rating_a,
        "copper",
        conductor(needed, "copper").area_cmil,
        conductor(run, "copper").area_cmil,
    )
    assert (by_table, increased) == (ground.table_size, ground.size)


# largest supply copper, aluminum, electrode conductor copper, aluminum
TABLE_250_66 = [
    ("2", "1/0", "8", "6"),
    ("1", "2/0", "6", "4"),
    ("1/0", "3/0", "6", "4"),
    ("2/0", "4/0", "4", "2"),
    ("3/0", "250", "4", "2"),
    ("250", "300", "2", "1/0"),
]


@pytest.mark.published("NFPA 70 (National Electrical Code), 250 grounding", "seen")
@pytest.mark.parametrize(("supply_cu", "supply_al", "copper", "aluminum"), TABLE_250_66)
def test_electrode_conductor_by_supply(
    supply_cu: str, supply_al: str, copper: str, aluminum: str
) -> None:
    supplies: list[tuple[str, Metal]] = [(supply_cu, "copper"), (supply_al, "aluminum")]
    for size, metal in supplies:
        assert copper == electrode_size(size, metal, "copper", rod_only=False)
        assert aluminum == electrode_size(size, metal, "aluminum", rod_only=False)


@pytest.mark.published("NFPA 70 (National Electrical Code), 250 grounding", "seen")
def test_a_run_to_a_rod_alone_stops_at_6_copper() -> None:
    assert electrode_size("3/0", "copper", "copper", rod_only=True) == "6"
    assert electrode_size("2", "copper", "copper", rod_only=True) == "8"
