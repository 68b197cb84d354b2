"""NFPA 70 (National Electrical Code) 2011, Chapter 9 Table 9, PVC conduit. Seen.

The effective impedance at 0.85 power factor follows from the resistance of Table 8 and the
reactance of Table 9 to the two figures the table prints.
"""

from __future__ import annotations

import pytest

from leanto.trade.wiring.conductor import Metal, conductor
from leanto.trade.wiring.voltage_drop import effective_ohm_per_kft

# size, reactance, effective ohm/kft for copper and for aluminum
ROWS: list[tuple[str, float, float, float | None]] = [
    ("14", 0.058, 2.7, None),
    ("12", 0.054, 1.7, 2.8),
    ("10", 0.050, 1.1, 1.8),
    ("8", 0.052, 0.69, 1.1),
    ("6", 0.051, 0.44, 0.71),
    ("4", 0.048, 0.29, 0.46),
    ("3", 0.047, 0.23, 0.37),
    ("2", 0.045, 0.19, 0.30),
    ("1", 0.046, 0.16, 0.24),
    ("1/0", 0.044, 0.13, 0.19),
]


@pytest.mark.published("NFPA 70 (National Electrical Code), chapter 9 Table 9", "seen")
@pytest.mark.parametrize(("size", "reactance", "copper", "aluminum"), ROWS)
def test_effective_impedance_at_085_is_the_printed_one(
    size: str, reactance: float, copper: float, aluminum: float | None
) -> None:
    printed: dict[Metal, float | None] = {"copper": copper, "aluminum": aluminum}
    for metal, effective in printed.items():
        if effective is None:
            continue
        wire = conductor(size, metal)
        assert wire.reactance_ohm_per_kft == reactance
        computed = effective_ohm_per_kft(wire.ohm_per_kft, wire.reactance_ohm_per_kft, 0.85)
        # Half a unit of the last printed figure, and as much again: the table computes from its
        # own rounded metric row.
        unit = 0.1 if effective >= 1 else 0.01
        assert computed == pytest.approx(effective, abs=unit)
