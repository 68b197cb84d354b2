"""Volts lost along a run.

The load is taken as drawing constant current. A load that holds its power instead (a motor
drive, a charger) pulls more current at the lower voltage and drops a little more.
"""

from __future__ import annotations

import math

from leanto.source import Source
from leanto.trade.wiring.conductor import Metal
from leanto.trade.wiring.confirm import code

ROUND_TRIP = 2.0
"""Path factor of a single-phase run: out and back."""
SINGLE_RUN = 1.0
"""Path factor of one wire whose return is something else, as on a metal frame."""
THREE_PHASE = math.sqrt(3.0)
"""Path factor of a balanced three-phase run."""

K_COPPER = 12.9
K_ALUMINUM = 21.2
K_SOURCE = Source(
    "Electrical Wiring Residential", "19th edition", "chapter 4, voltage drop constants"
)
"""Ohm x circular mil per foot, stranded, 75 C."""

RECOMMENDED_PCT = 3.0
RECOMMENDED_TOTAL_PCT = 5.0
RECOMMENDED_SOURCE = code("informational notes to 210.19(A) and 215.2(A)")
"""Advice for a feeder or a branch circuit, and for both together. Not generally enforced."""

TEMPERATURE_COEFFICIENT_75C = {"copper": 0.00323, "aluminum": 0.00330}
TEMPERATURE_SOURCE = code("Chapter 9 Table 8, note 2")
"""Change of resistance per deg C, starting from 75 C."""


def drop_v(
    current_a: float, one_way_ft: float, ohm_per_kft: float, path_factor: float = ROUND_TRIP
) -> float:
    """Volts lost: path factor x amps x feet one way x ohm per 1000 ft / 1000."""
    _need_none_negative(current_a, one_way_ft, ohm_per_kft, path_factor)
    return path_factor * current_a * one_way_ft * ohm_per_kft / 1000.0


def drop_by_k_v(
    current_a: float,
    one_way_ft: float,
    area_cmil: float,
    k_ohm_cmil_per_ft: float,
    path_factor: float = ROUND_TRIP,
) -> float:
    """Volts lost by the textbook constant: path factor x K x amps x feet / circular mils."""
    _need_none_negative(current_a, one_way_ft, k_ohm_cmil_per_ft, path_factor)
    _need_positive(area_cmil)
    return path_factor * k_ohm_cmil_per_ft * current_a * one_way_ft / area_cmil


def area_for_drop_cmil(
    current_a: float,
    one_way_ft: float,
    allowed_v: float,
    k_ohm_cmil_per_ft: float,
    path_factor: float = ROUND_TRIP,
) -> float:
    """Circular mils that keep the drop at the allowed volts, by the textbook constant."""
    _need_none_negative(current_a, one_way_ft, k_ohm_cmil_per_ft, path_factor)
    _need_positive(allowed_v)
    return path_factor * k_ohm_cmil_per_ft * current_a * one_way_ft / allowed_v


def longest_run_ft(
    current_a: float, allowed_v: float, ohm_per_kft: float, path_factor: float = ROUND_TRIP
) -> float:
    """Feet one way at which the drop reaches the allowed volts."""
    _need_none_negative(allowed_v)
    _need_positive(current_a, ohm_per_kft, path_factor)
    return allowed_v * 1000.0 / (path_factor * current_a * ohm_per_kft)


def drop_pct(lost_v: float, supply_v: float) -> float:
    """The drop as a percent of the supply voltage."""
    _need_none_negative(lost_v)
    _need_positive(supply_v)
    return lost_v / supply_v * 100.0


def voltage_at_load_v(supply_v: float, percent: float) -> float:
    """Volts left at the far end after a drop of this percent."""
    _need_none_negative(supply_v, percent)
    return supply_v * (1.0 - percent / 100.0)


def remaining_pct(limit_pct: float, used_pct: float) -> float:
    """Percent of drop still open to the rest of the run; negative when it is overdrawn."""
    return limit_pct - used_pct


def ohm_per_kft_at(ohm_per_kft_75c: float, metal: Metal, temperature_c: float) -> float:
    """Resistance at another temperature. Source: Chapter 9 Table 8, note 2."""
    coefficient = TEMPERATURE_COEFFICIENT_75C[metal]
    return ohm_per_kft_75c * (1.0 + coefficient * (temperature_c - 75.0))


def effective_ohm_per_kft(
    ohm_per_kft: float, reactance_ohm_per_kft: float, power_factor: float
) -> float:
    """Ohms that make the drop at a lagging power factor: R cos + X sin.

    Source: Chapter 9 Table 9, note 2. At a power factor of 1 it is the resistance alone.
    """
    _need_none_negative(ohm_per_kft, reactance_ohm_per_kft)
    if not 0.0 < power_factor <= 1.0:
        raise ValueError(f"a power factor is above 0 and at most 1: {power_factor}")
    reactive = math.sqrt(1.0 - power_factor * power_factor)
    return ohm_per_kft * power_factor + reactance_ohm_per_kft * reactive


def _need_none_negative(*values: float) -> None:
    if any(not math.isfinite(value) or value < 0 for value in values):
        raise ValueError(f"values must be zero or more: {values}")


def _need_positive(*values: float) -> None:
    if any(not math.isfinite(value) or value <= 0 for value in values):
        raise ValueError(f"values must be more than zero: {values}")
