"""NFPA 70 (National Electrical Code), 210.8 and 210.52: receptacles of an accessory building.

210.52(G)(1): 2017 and 2023, seen. 210.8(A)(2): 2020, seen. 210.52(A): seen. 210.12(A): from memory.
"""

from __future__ import annotations

import pytest

from leanto.trade.wiring.receptacles import Call, by_spacing, plan_receptacles, protections_for


@pytest.mark.published("NFPA 70 (National Electrical Code), receptacles", "seen")
@pytest.mark.parametrize(
    ("has_power", "bays", "least"),
    [(True, 0, 1), (True, 1, 1), (True, 2, 2), (False, 2, 0)],
)
def test_least_number_in_a_garage_or_accessory_building(
    has_power: bool, bays: int, least: int
) -> None:
    plan = plan_receptacles("storage", [24, 24], vehicle_bays=bays, has_power=has_power)
    assert (least, least) == (plan.least, plan.planned)


@pytest.mark.published("NFPA 70 (National Electrical Code), receptacles", "seen")
@pytest.mark.parametrize(
    ("at_grade", "call"), [(True, Call.CODE), (False, Call.ADVISED), (None, Call.ASK)]
)
def test_ground_fault_protection_follows_the_floor(at_grade: bool | None, call: Call) -> None:
    (protection,) = protections_for("workshop", floor_at_or_below_grade=at_grade)
    assert (protection.device, protection.call) == ("GFCI", call)


@pytest.mark.published("NFPA 70 (National Electrical Code), receptacles", "seen")
def test_outdoor_receptacles_are_always_protected() -> None:
    protections = protections_for(
        "workshop", floor_at_or_below_grade=False, has_outdoor_receptacle=True
    )
    assert [one.call for one in protections] == [Call.ADVISED, Call.CODE]


@pytest.mark.published("NFPA 70 (National Electrical Code), receptacles", "from memory")
def test_arc_fault_protection_comes_with_living_space_only() -> None:
    def devices(use: str) -> set[str]:
        return {one.device for one in protections_for(use, floor_at_or_below_grade=True)}

    assert devices("living space") == {"AFCI", "GFCI"}
    assert devices("workshop") == devices("storage") == {"GFCI"}


# One receptacle reaches 6 ft to each side, a wall space is 2 ft and more: 210.52(A), quoted in a
# forum of electricians and on a code page: seen.
@pytest.mark.published("NFPA 70 (National Electrical Code), receptacles", "seen")
@pytest.mark.parametrize(
    ("walls", "count"),
    [([1.9], 0), ([2], 1), ([12], 1), ([12.5], 2), ([24], 2), ([24.5], 3), ([12, 12, 1], 2)],
)
def test_spacing_in_a_habitable_room(walls: list[float], count: int) -> None:
    assert count == by_spacing(walls)


@pytest.mark.published("NFPA 70 (National Electrical Code), receptacles", "from memory")
def test_spacing_rule_is_for_living_space_not_for_a_shed() -> None:
    walls = [24.0, 24.0, 12.0, 12.0]
    assert plan_receptacles("living space", walls).least == 6
    assert plan_receptacles("storage", walls).least == 1
