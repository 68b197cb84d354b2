"""How the drop behaves, and which input it refuses."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from leanto.trade.wiring.voltage_drop import (
    drop_pct,
    drop_v,
    effective_ohm_per_kft,
    longest_run_ft,
    ohm_per_kft_at,
)

amps = st.floats(0.1, 400)
feet = st.floats(1, 2000)
ohms = st.floats(0.03, 6)


@given(amps, feet, ohms)
def test_drop_doubles_with_current_and_with_length(a: float, ft: float, ohm: float) -> None:
    once = drop_v(a, ft, ohm)
    assert drop_v(2 * a, ft, ohm) == pytest.approx(2 * once)
    assert drop_v(a, 2 * ft, ohm) == pytest.approx(2 * once)


@given(amps, feet, ohms)
def test_half_the_voltage_at_the_same_power_drops_four_times_the_percent(
    a: float, ft: float, ohm: float
) -> None:
    high = drop_pct(drop_v(a, ft, ohm), 240)
    low = drop_pct(drop_v(2 * a, ft, ohm), 120)
    assert low == pytest.approx(4 * high)


@given(amps, st.floats(0.5, 20), ohms)
def test_longest_run_drops_exactly_what_is_allowed(a: float, allowed: float, ohm: float) -> None:
    assert drop_v(a, longest_run_ft(a, allowed, ohm), ohm) == pytest.approx(allowed)


def test_resistance_at_75_c_is_the_tables_own() -> None:
    assert ohm_per_kft_at(0.491, "copper", 75) == 0.491
    assert ohm_per_kft_at(0.491, "copper", 20) < 0.491 < ohm_per_kft_at(0.491, "copper", 90)


def test_at_unity_power_factor_reactance_plays_no_part() -> None:
    assert effective_ohm_per_kft(0.491, 0.051, 1.0) == 0.491


@pytest.mark.parametrize("power_factor", [0.0, -0.5, 1.01])
def test_power_factor_outside_its_range_is_refused(power_factor: float) -> None:
    with pytest.raises(ValueError, match="power factor"):
        effective_ohm_per_kft(0.491, 0.051, power_factor)


@pytest.mark.parametrize("bad", [-1.0, float("nan"), float("inf")])
def test_lengths_without_sense_are_refused(bad: float) -> None:
    with pytest.raises(ValueError, match="zero or more"):
        drop_v(10, bad, 1.0)
    with pytest.raises(ValueError, match="more than zero"):
        drop_pct(1.0, bad)
