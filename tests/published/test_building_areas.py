"""Areas and member counts of whole buildings against published statements and worked examples.

Each row tells its source and whether it was seen. "worked by hand" rows have no published answer:
the sum stands beside them.
"""

from __future__ import annotations

import math
from typing import Any

import pytest

from leanto.building.framing import positions_ft
from leanto.building.kinds import PlaceKind
from leanto.building.model import Block, Building
from leanto.building.surfaces import surfaces_of
from leanto.source import Source

TEXTBOOK = "Estimating in Building Construction"
SAME_AREA = Source(TEXTBOOK, place="sections 14-10 and 14-11, roof area", mark="seen")
SHEATHING = Source(TEXTBOOK, place="example 13-17, wall and gable sheathing", mark="seen")
STUDS = Source(TEXTBOOK, place="example 13-11, studs", mark="seen")
GABLE_STUDS = Source(TEXTBOOK, place="example 13-15, gable studs", mark="seen")
HALF_ROOF = Source("Roof slope multiplying factors (article)", mark="seen")
PLAN_TO_ROOF = Source("Roof area from plan area at 6:12 (worked web page)", mark="seen")
HIP_SHEATHING = Source("Textbook solution, roof sheathing and fascia of a hip roof", mark="seen")
SHINGLED_GABLE = Source(
    "Bundles for a gable roof, 44 ft by 16 ft slopes (worked page)", mark="seen"
)


def _building(length: float, width: float, eave: float, roof: dict[str, Any]) -> Building:
    block = Block.model_validate(
        {
            "id": "main",
            "name": "Main",
            "length": length,
            "width": width,
            "eave_height": eave,
            "roof": roof,
        }
    )
    return Building(name="Published example", year_built=1950, blocks=(block,))


def _roof_sqft(building: Building) -> float:
    slopes = [s for s in surfaces_of(building) if s.kind is PlaceKind.ROOF]
    return sum(slope.gross_area_sqft for slope in slopes)


@pytest.mark.published("Building textbooks and worked pages", "seen")
@pytest.mark.parametrize("pitch", [2, 6, 12])
@pytest.mark.parametrize("source", [SAME_AREA], ids=str)
def test_a_hip_roof_has_the_area_of_the_gable_roof_of_its_span_slope_and_length(
    pitch: float, source: Source
) -> None:
    sides = {"pitch": pitch, "overhang": 1.5, "rake_overhang": 1.5}
    gable = _roof_sqft(_building(50, 24, 8, {"form": "gable"} | sides))
    hip = _roof_sqft(_building(50, 24, 8, {"form": "hip"} | sides))
    # "Ridge length x rafter length x 2", the ridge of the gable running over both rakes.
    stated = 53 * (13.5 * math.hypot(1, pitch / 12)) * 2
    assert gable == pytest.approx(stated)
    assert hip == pytest.approx(gable)


@pytest.mark.published("Building textbooks and worked pages", "seen")
@pytest.mark.parametrize("source", [SHEATHING], ids=str)
def test_wall_sheathing_with_two_gables(source: Source) -> None:
    # 148 ft around x 8 ft = 1,184; two gables 0.5 x 24 x 3 = 72; printed 1,256 sq ft.
    building = _building(50, 24, 8, {"form": "gable", "pitch": 3})
    walls = [s for s in surfaces_of(building) if s.kind is PlaceKind.WALL_OUTSIDE]
    assert sum(wall.width_ft for wall in walls) == 148
    assert sum(wall.gross_area_sqft for wall in walls) == pytest.approx(1256)


@pytest.mark.published("Building textbooks and worked pages", "seen")
@pytest.mark.parametrize("source", [HALF_ROOF], ids=str)
def test_half_roof_length(source: Source) -> None:
    # 28 ft wide at 4:12, no overhang: 14 x 1.0541, printed 14.75 ft (14.757 unrounded).
    building = _building(30, 28, 8, {"form": "gable", "pitch": 4, "overhang": 0})
    slope = next(s for s in surfaces_of(building) if s.id == "main.roof.south")
    assert slope.height_ft == pytest.approx(14.75, abs=0.01)


@pytest.mark.published("Building textbooks and worked pages", "seen")
@pytest.mark.parametrize("form", ["gable", "hip"])
@pytest.mark.parametrize("source", [PLAN_TO_ROOF], ids=str)
def test_roof_area_of_a_plan(form: str, source: Source) -> None:
    # 5,000 sq ft of plan at 6:12, printed 5,590 sq ft; any shape of 5,000 sq ft will do.
    building = _building(100, 50, 8, {"form": form, "pitch": 6, "overhang": 0})
    assert _roof_sqft(building) == pytest.approx(5590, abs=0.5)


@pytest.mark.published("Building textbooks and worked pages", "seen")
@pytest.mark.parametrize("source", [HIP_SHEATHING], ids=str)
def test_hip_sheathing_and_fascia(source: Source) -> None:
    # 75 ft 4 in by 53 ft 4 in over the overhangs, x 1.12, printed 4,499 sq ft. The printed factor
    # has two digits; with 1.118 it is 4,492, hence the 0.2 %.
    overhang = 2.0
    roof = {"form": "hip", "pitch": 6, "overhang": overhang}
    building = _building(75 + 4 / 12 - 2 * overhang, 53 + 4 / 12 - 2 * overhang, 9, roof)
    assert _roof_sqft(building) == pytest.approx(4499, rel=0.002)
    slopes = [s for s in surfaces_of(building) if s.kind is PlaceKind.ROOF]
    eaves_ft = sum(slope.width_ft for slope in slopes)
    assert eaves_ft == pytest.approx(257 + 4 / 12)  # printed 257 ft 4 in of fascia


@pytest.mark.published("Building textbooks and worked pages", "seen")
@pytest.mark.parametrize("source", [SHINGLED_GABLE], ids=str)
def test_gable_of_two_slopes_of_16_ft(source: Source) -> None:
    # 44 x 16 x 2, printed 1,408 sq ft. A span of 25.6 ft at 9:12 gives the rafter of 16 ft.
    building = _building(44, 25.6, 8, {"form": "gable", "pitch": 9, "overhang": 0})
    assert _roof_sqft(building) == pytest.approx(1408)


@pytest.mark.published("Sums by hand", "by hand")
def test_garage_worked_by_hand() -> None:
    # Worked by hand, no published answer: 24 x 36 ft, 1 ft overhangs, 6:12.
    # Slope length 13 x 1.1180 = 14.534 ft; area 2 x 38 x 14.534 = 1,104.6 sq ft.
    roof = {"form": "gable", "pitch": 6, "overhang": 1, "rake_overhang": 1}
    building = _building(36, 24, 8, roof)
    slope = next(s for s in surfaces_of(building) if s.id == "main.roof.south")
    assert slope.height_ft == pytest.approx(14.534, abs=0.001)
    assert _roof_sqft(building) == pytest.approx(1104.6, abs=0.1)


@pytest.mark.published("Sums by hand", "by hand")
def test_roll_roofing_worked_by_hand() -> None:
    # The question (60 ft gable, rafter 11 ft 4 in and 2 ft of overhang) was seen in an Army
    # self-test, its printed answer was not: 2 x 60 x 13.333 = 1,600 sq ft by hand.
    factor = math.hypot(1, 5 / 12)
    rafter_ft, overhang_ft = 11 + 4 / 12, 2
    roof = {"form": "gable", "pitch": 5, "overhang": overhang_ft / factor}
    building = _building(60, 2 * rafter_ft / factor, 8, roof)
    assert _roof_sqft(building) == pytest.approx(1600)


@pytest.mark.published("Building textbooks and worked pages", "seen")
@pytest.mark.parametrize(
    ("length_ft", "members", "source"),
    [
        (148, 112, STUDS),  # 111 spaces of 16 in
        (24, 19, GABLE_STUDS),  # 18 spaces of 16 in
    ],
    ids=str,
)
def test_studs_at_16_inches(length_ft: float, members: int, source: Source) -> None:
    assert len(positions_ft(length_ft, 16 / 12)) == members
