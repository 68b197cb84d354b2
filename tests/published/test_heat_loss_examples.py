"""Heat loss against worked examples, and the table of R values against printed ones."""

from __future__ import annotations

import pytest

from leanto.trade.heat_loss import (
    air_loss_btuh,
    framed_r,
    loss_btuh,
    parallel_r,
    series_r,
    watts,
)
from leanto.trade.r_values import r_table

FACES = (0.17, 0.80, 0.63, 0.45, 0.68)
"""Outside film, bevel siding, 1/2 in. plywood, 1/2 in. gypsum board, inside film."""


# "R-value table, insulation values for selected materials", state energy hotline: the worked wall
# of 2x4 studs, in two printings. Seen, by quoting pages. They round their U values before adding.
@pytest.mark.published("Heat loss examples and R-value tables", "seen")
@pytest.mark.parametrize(
    ("framing_share", "batt_r", "printed_r"), [(0.15, 11.0, 12.05), (0.25, 13.0, 12.03)]
)
def test_a_framed_wall(framing_share: float, batt_r: float, printed_r: float) -> None:
    assert framed_r(FACES, batt_r, 4.38, framing_share) == pytest.approx(printed_r, abs=0.05)


@pytest.mark.published("Heat loss examples and R-value tables", "seen")
def test_paths_through_that_wall() -> None:
    # The same table prints 13.73 for the cavity with R-11 and 15.73 with R-13, 7.11 for the studs.
    assert series_r((*FACES, 11.0)) == pytest.approx(13.73)
    assert series_r((*FACES, 13.0)) == pytest.approx(15.73)
    assert series_r((*FACES, 4.38)) == pytest.approx(7.11)


@pytest.mark.published("Heat loss examples and R-value tables", "seen")
def test_a_cavity_beside_its_studs() -> None:
    # Builder's page "Wall assembly, 2x6 with spray foam", method of weighted U values. Seen:
    # 1 / (0.8125 / 37.4 + 0.1875 / 6.875) = 20.4, and with the faces, 3.77, it is 24.17.
    cavity = parallel_r(((0.8125, 37.4), (0.1875, 6.875)))
    assert cavity == pytest.approx(20.4, abs=0.05)
    assert series_r((cavity, 0.68, 1.12, 1.3, 0.5, 0.17)) == pytest.approx(24.17, abs=0.05)


@pytest.mark.published("Heat loss examples and R-value tables", "seen")
@pytest.mark.parametrize(
    ("area_sqft", "r", "inside_f", "outside_f", "printed_btuh"),
    [
        # Course answer: wall of 36 by 8 ft, R 39.44, 70 and 10 F. Seen.
        (36 * 8, 39.44, 70, 10, 438.13),
        # Pennsylvania State University, EGEE 102, hourly heat loss: 10 by 8 ft, R-22, 70 and 43 F.
        # The page gives the sum; 80 x 27 / 22 = 98.2 is its arithmetic. Seen.
        (10 * 8, 22, 70, 43, 98.18),
        # Page on heat loss in a house: U 0.05, 200 sq ft, 50 deg F. Seen.
        (200, 1 / 0.05, 50, 0, 500),
    ],
)
def test_heat_through_an_area(
    area_sqft: float, r: float, inside_f: float, outside_f: float, printed_btuh: float
) -> None:
    assert loss_btuh(area_sqft, r, inside_f - outside_f) == pytest.approx(printed_btuh, abs=0.01)


@pytest.mark.published("Heat loss examples and R-value tables", "seen")
def test_heat_that_goes_with_air() -> None:
    # The sample house of "Basics of Energy Efficient Living", 9,792 cu ft, comes to 186 Btu for
    # each deg F and air change. Seen. It takes 0.019 Btu for a cubic foot, the handbooks 0.018,
    # so the two differ by one part in eighteen.
    assert air_loss_btuh(9792, 1.0, 1.0) == pytest.approx(186, rel=1 / 18)


@pytest.mark.published("Heat loss examples and R-value tables", "seen")
def test_a_watt_is_3_412_btu_an_hour() -> None:
    assert watts(3412) == pytest.approx(1000)


@pytest.mark.published("Heat loss examples and R-value tables", "seen")
@pytest.mark.parametrize(
    ("part", "name", "printed_r"),
    [
        # The energy hotline's table. Seen.
        ("film", "inside wall", 0.68),
        ("film", "outside", 0.17),
        ("cladding", "lap siding", 0.80),
        ("deck", "plywood", 0.63),
        ("lining", "gypsum board", 0.45),
        # Physics teaching table of R values. Seen.
        ("cladding", "wood shingle", 0.87),
        ("lining", "fiberboard", 1.32),
        ("opening", "window", 0.89),
    ],
)
def test_printed_values(part: str, name: str, printed_r: float) -> None:
    assert r_table().layer(part, name).r == printed_r  # type: ignore[arg-type]


@pytest.mark.published("Heat loss examples and R-value tables", "seen")
def test_printed_fills() -> None:
    # Energy hotline's table: batt 3.14, blown over an attic 2.20, blown into a wall 3.20 an inch;
    # a 3-1/2 in. stud 4.38. Physics table: an air space of 3-1/2 in. 1.01. Seen.
    table = r_table()
    assert [table.fill(name).r_per_in for name in ("batts", "loose fill", "blown in")] == [
        3.14,
        2.2,
        3.2,
    ]
    assert table.wood.r_per_in * 3.5 == pytest.approx(4.38, abs=0.01)
    assert table.cavity_air.r == 1.01


# International Energy Conservation Code 2018, Table R402.1.2, by a Department of Energy page that
# sets the editions side by side. Seen.
@pytest.mark.published("International Energy Conservation Code 2018, Table R402.1.2", "seen")
@pytest.mark.parametrize(
    ("zone", "ceiling", "walls", "plus", "floor"),
    [
        (1, 30, 13, 0, 13),
        (2, 38, 13, 0, 13),
        (3, 38, 20, 0, 19),
        (4, 49, 20, 0, 19),
        (5, 49, 20, 0, 30),
        (6, 49, 20, 5, 30),
        (7, 49, 20, 5, 38),
        (8, 49, 20, 5, 38),
    ],
)
def test_insulation_by_climate_zone(
    zone: int, ceiling: float, walls: float, plus: float, floor: float
) -> None:
    row = r_table().target(zone)
    assert (row.ceiling, row.walls, row.walls_plus, row.floor) == (ceiling, walls, plus, floor)
