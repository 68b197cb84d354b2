"""Voltage drop against numpy's linear solver on the run's node equations (numpy: tests only).

The run is cut into pieces, Kirchhoff's current law is written at every node, and the solver finds
the voltages. One figure is kept from a circuit simulator and a power-flow library, run once:
240 V, 60 A constant, 210 ft of 4 AWG aluminum loses 12.8016 V.
"""

from __future__ import annotations

import numpy as np
import pytest

from leanto.trade.wiring.conductor import Metal, conductor
from leanto.trade.wiring.voltage_drop import drop_v


def solved_drop_v(supply_v: float, wire_ohm: float, amps: float, pieces: int = 8) -> float:
    """Drop at the far end of an out-and-back ladder with a constant current drawn at its end."""
    # Nodes: outgoing 1..n, returning n+1..2n; the supply holds outgoing 0 at supply_v, return at 0.
    count = 2 * pieces
    conductance = pieces / wire_ohm
    matrix = np.zeros((count, count))
    known = np.zeros(count)
    for start, held_v in ((0, supply_v), (pieces, 0.0)):
        for piece in range(pieces):
            node = start + piece
            matrix[node, node] += conductance
            if piece == 0:
                known[node] += conductance * held_v
            else:
                matrix[node - 1, node - 1] += conductance
                matrix[node, node - 1] -= conductance
                matrix[node - 1, node] -= conductance
    known[pieces - 1] -= amps
    known[count - 1] += amps
    volts = np.linalg.solve(matrix, known)
    return supply_v - float(volts[pieces - 1] - volts[count - 1])


RUNS: list[tuple[str, Metal, float, float, float]] = [
    ("12", "copper", 120, 16, 100),
    ("6", "copper", 240, 48, 140),
    ("4", "aluminum", 240, 60, 210),
    ("2", "aluminum", 240, 60, 210),
    ("4/0", "aluminum", 240, 150, 600),
]


@pytest.mark.published("numpy, node equations", "library")
@pytest.mark.parametrize(("size", "metal", "supply_v", "amps", "feet"), RUNS)
def test_drop_is_what_the_node_equations_give(
    size: str, metal: Metal, supply_v: float, amps: float, feet: float
) -> None:
    ohm_per_kft = conductor(size, metal).ohm_per_kft
    solved = solved_drop_v(supply_v, ohm_per_kft * feet / 1000, amps)
    assert drop_v(amps, feet, ohm_per_kft) == pytest.approx(solved, rel=1e-9)


@pytest.mark.published("Circuit simulator and power-flow library", "library")
def test_drop_is_what_a_circuit_simulator_gave() -> None:
    assert drop_v(60, 210, conductor("4", "aluminum").ohm_per_kft) == pytest.approx(
        12.8016, abs=0.00005
    )


@pytest.mark.published("numpy, node equations", "library")
def test_balanced_three_wire_feed_has_no_drop_in_its_neutral() -> None:
    # Two 120 V loads of 30 A on 140 ft of 6 AWG copper: three node equations, hot, neutral, hot.
    ohm = conductor("6", "copper").ohm_per_kft * 140 / 1000
    matrix = np.eye(3) / ohm
    known = np.array([120 / ohm - 30, 0.0, -120 / ohm + 30])
    hot, neutral, other_hot = np.linalg.solve(matrix, known)
    assert neutral == pytest.approx(0.0, abs=1e-12)
    assert 240 - (hot - other_hot) == pytest.approx(
        drop_v(30, 140, conductor("6", "copper").ohm_per_kft), rel=1e-9
    )
