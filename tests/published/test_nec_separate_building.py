"""NFPA 70 (National Electrical Code), Articles 225 and 250.32: a building fed by another. Seen."""

from __future__ import annotations

import pytest

from leanto.trade.wiring.confirm import Verdict
from leanto.trade.wiring.overhead import Below, check_height, least_height_ft, least_open_size
from leanto.trade.wiring.separate_building import (
    check_electrode,
    check_neutral,
    check_shut_off,
    check_supplies,
    least_shut_off_a,
)

# wires, bonded, metal path, existing, verdict: 250.32(B) as of 2008
NEUTRALS = [
    (4, True, False, True, Verdict.DOES_NOT_PASS),
    (4, False, False, True, Verdict.PASSES),
    (3, True, True, True, Verdict.DOES_NOT_PASS),
    (3, True, False, True, Verdict.ASK),  # existing; the code office decides
    (3, True, None, True, Verdict.ASK),
    (3, False, False, True, Verdict.DOES_NOT_PASS),
    (3, True, False, False, Verdict.DOES_NOT_PASS),  # new: needs its own grounding conductor
    (4, None, None, True, Verdict.ASK),
    (None, None, None, True, Verdict.ASK),
]


@pytest.mark.published("NFPA 70 (National Electrical Code), separate building", "seen")
@pytest.mark.parametrize(("wires", "bonded", "metal_path", "existing", "verdict"), NEUTRALS)
def test_neutral_of_a_feed(
    wires: int | None,
    bonded: bool | None,
    metal_path: bool | None,
    existing: bool,
    verdict: Verdict,
) -> None:
    check = check_neutral(wires, is_bonded=bonded, has_metal_path=metal_path, is_existing=existing)
    assert check.verdict is verdict


# rod, single branch circuit, ground wire in it, verdict: 250.32(A)
ELECTRODES = [
    (False, True, True, Verdict.PASSES),  # one 20 A branch circuit with a ground wire: no rod
    (False, True, False, Verdict.DOES_NOT_PASS),
    (False, False, True, Verdict.DOES_NOT_PASS),  # a feeder
    (True, False, True, Verdict.PASSES),
    (None, False, True, Verdict.ASK),
    (False, None, None, Verdict.ASK),
    (False, True, None, Verdict.ASK),
]


@pytest.mark.published("NFPA 70 (National Electrical Code), separate building", "seen")
@pytest.mark.parametrize(("rod", "single", "ground", "verdict"), ELECTRODES)
def test_ground_electrode(
    rod: bool | None, single: bool | None, ground: bool | None, verdict: Verdict
) -> None:
    check = check_electrode(rod, is_single_branch=single, has_ground_wire=ground)
    assert check.verdict is verdict


@pytest.mark.published("NFPA 70 (National Electrical Code), separate building", "seen")
@pytest.mark.parametrize(
    ("count", "verdict"),
    [
        (0, Verdict.DOES_NOT_PASS),
        (1, Verdict.PASSES),
        (6, Verdict.PASSES),
        (7, Verdict.DOES_NOT_PASS),
        (None, Verdict.ASK),
    ],
)
def test_shut_offs_number_one_to_six(count: int | None, verdict: Verdict) -> None:
    assert check_shut_off(count).verdict is verdict


@pytest.mark.published("NFPA 70 (National Electrical Code), separate building", "seen")
@pytest.mark.parametrize(
    ("count", "verdict"),
    [(1, Verdict.PASSES), (2, Verdict.DOES_NOT_PASS), (None, Verdict.ASK)],
)
def test_one_supply_is_the_rule(count: int | None, verdict: Verdict) -> None:
    assert check_supplies(count).verdict is verdict


# 225.39(A) to (D)
@pytest.mark.published("NFPA 70 (National Electrical Code), separate building", "seen")
@pytest.mark.parametrize(
    ("two_wire_circuits", "dwelling", "amps"),
    [(1, False, 15), (2, False, 30), (3, False, 60), (9, False, 60), (3, True, 100)],
)
def test_least_rating_of_the_shut_off(two_wire_circuits: int, dwelling: bool, amps: int) -> None:
    assert amps == least_shut_off_a(two_wire_circuits, is_dwelling=dwelling)


# 225.18, feet
@pytest.mark.published("NFPA 70 (National Electrical Code), separate building", "seen")
@pytest.mark.parametrize(
    ("below", "feet"), [(Below.WALK, 10), (Below.DRIVEWAY, 12), (Below.TRUCKS, 18)]
)
def test_height_of_a_span_has_two_sides(below: Below, feet: float) -> None:
    assert feet == least_height_ft(below)
    assert check_height(feet, below).verdict is Verdict.PASSES
    assert check_height(feet - 0.1, below).verdict is Verdict.DOES_NOT_PASS
    assert check_height(None, below).verdict is Verdict.ASK


# 225.6: 10 AWG to 50 ft, 8 AWG beyond
@pytest.mark.published("NFPA 70 (National Electrical Code), separate building", "seen")
@pytest.mark.parametrize(("span_ft", "size"), [(50, "10"), (50.5, "8")])
def test_open_wires_by_span(span_ft: float, size: str) -> None:
    assert size == least_open_size(span_ft)
