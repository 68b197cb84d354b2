"""General load by floor area: Centerville, Indiana, town code 152.46 (seen) and hand sums."""

from __future__ import annotations

import pytest

from leanto.trade.wiring.load import amps, circuits, farm_demand_va, planned_load, receptacle_va


@pytest.mark.published("Town code 152.46", "seen")
def test_a_house_of_30_by_55_ft_takes_three_circuits() -> None:
    # 1650 sq ft x 3 W = 4950 W; / 115 V = 43.04 A, seen; / 15 = 2.87 -> 3 circuits, by hand.
    general = planned_load("living space", 30 * 55, own_loads=())
    assert general.total_va == 4950
    assert amps(4950, 115) == pytest.approx(43.04, abs=0.005)
    assert circuits(4950, 115, 15) == 3


@pytest.mark.published("Town code 152.46", "seen")
def test_one_circuit_of_15_a_serves_575_sq_ft() -> None:
    # Same code: 1725 W. Seen.
    general = planned_load("living space", 575, own_loads=())
    assert general.total_va == 1725
    assert circuits(general.total_va, 115, 15) == 1
    assert circuits(planned_load("living space", 576, own_loads=()).total_va, 115, 15) == 2


@pytest.mark.published("Sums by hand", "by hand")
def test_general_load_of_a_workshop_of_24_by_36_ft() -> None:
    # By hand: 864 sq ft x 3 VA = 2592 VA; / 240 V = 10.8 A. A planning default, not a rule.
    general = planned_load("workshop", 24 * 36, own_loads=())
    assert general.total_va == 2592
    assert amps(general.total_va, 240) == pytest.approx(10.8)


@pytest.mark.published("NFPA 70 (National Electrical Code), loads", "seen")
def test_receptacles_outside_a_dwelling_count_180_va_each() -> None:
    # NFPA 70 (National Electrical Code), 220.14(L). Seen.
    assert receptacle_va(1) == 180
    assert receptacle_va(10) == 1800


@pytest.mark.published("NFPA 70 (National Electrical Code), loads", "seen")
def test_farm_loads_are_shared_by_rank() -> None:
    # NFPA 70 (National Electrical Code), Table 220.103: 100, 75, 65, then 50 percent. Seen; the
    # sum by hand: 10000 + 6000 + 3250 + 1000 + 500.
    assert farm_demand_va([2000, 10000, 5000, 8000, 1000]) == pytest.approx(20750)
