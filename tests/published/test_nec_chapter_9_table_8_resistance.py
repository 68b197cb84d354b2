"""NFPA 70 (National Electrical Code) 2011, Chapter 9 Table 8: area and resistance at 75 C.

Seen on two pages that quote the table: one by a teacher of electrical design (2011, stranded), one
of conductor properties (solid and stranded). Each resistance is also derived again from the
conductivity standards: copper 0.017241 ohm mm2/m at 20 C and aluminum at 61 percent of its
conductivity (NBS Handbook 100, seen), temperature coefficients 0.00393 and 0.00403 per C
(Industrial Power Engineering and Applications Handbook, p. 970, seen), and 2 percent of extra
length for the lay of strands.
"""

from __future__ import annotations

import math

import pytest

from leanto.trade.wiring.conductor import Metal, ResistanceRow, conductor, resistance_table
from leanto.trade.wiring.voltage_drop import K_ALUMINUM, K_COPPER, ohm_per_kft_at

# size, AWG number, cmil, copper, copper solid, aluminum, aluminum solid (all seen)
ROWS: list[tuple[str, int, int, float, float | None, float, float | None]] = [
    ("14", 14, 4110, 3.14, 3.07, 5.17, 5.06),
    ("12", 12, 6530, 1.98, 1.93, 3.25, 3.18),
    ("10", 10, 10380, 1.24, 1.21, 2.04, 2.00),
    ("8", 8, 16510, 0.778, 0.764, 1.28, 1.26),
    ("6", 6, 26240, 0.491, None, 0.808, None),
    ("4", 4, 41740, 0.308, None, 0.508, None),
    ("3", 3, 52620, 0.245, None, 0.403, None),
    ("2", 2, 66360, 0.194, None, 0.319, None),
    ("1", 1, 83690, 0.154, None, 0.253, None),
    ("1/0", 0, 105600, 0.122, None, 0.201, None),
    ("2/0", -1, 133100, 0.0967, None, 0.159, None),
    ("3/0", -2, 167800, 0.0766, None, 0.126, None),
    ("4/0", -3, 211600, 0.0608, None, 0.100, None),
]
RHO_20C_OHM_MM2_PER_M = {"copper": 0.017241, "aluminum": 0.017241 / 0.61}
ALPHA_20C = {"copper": 0.00393, "aluminum": 0.00403}
MM2_PER_CMIL = math.pi / 4 * 0.0254**2
LAY = 1.02


def row_of(size: str) -> ResistanceRow:
    return next(row for row in resistance_table().rows if row.size == size)


def derived_k(metal: Metal, temperature_c: float, *, stranded: bool) -> float:
    """Ohm x circular mil per foot from the conductivity standards."""
    at_20c = RHO_20C_OHM_MM2_PER_M[metal] * 0.3048 / MM2_PER_CMIL
    warm = at_20c * (1 + ALPHA_20C[metal] * (temperature_c - 20))
    return warm * (LAY if stranded else 1.0)


@pytest.mark.published("NFPA 70 (National Electrical Code), chapter 9 Table 8", "seen")
@pytest.mark.parametrize(("size", "number", "cmil", "cu", "cu_solid", "al", "al_solid"), ROWS)
def test_the_printed_row_is_the_table_read_here(
    size: str,
    number: int,
    cmil: int,
    cu: float,
    cu_solid: float | None,
    al: float,
    al_solid: float | None,
) -> None:
    row = row_of(size)
    assert (cmil, cu, cu_solid, al, al_solid) == (
        row.area_cmil,
        row.copper_ohm_per_kft,
        row.copper_solid_ohm_per_kft,
        row.aluminum_ohm_per_kft,
        row.aluminum_solid_ohm_per_kft,
    )


@pytest.mark.published("American wire gauge formula", "seen")
@pytest.mark.parametrize(("size", "number"), [(row[0], row[1]) for row in ROWS])
def test_area_follows_the_gauge_formula(size: str, number: int) -> None:
    diameter_mil = 5 * 92 ** ((36 - number) / 39)
    assert row_of(size).area_cmil == pytest.approx(diameter_mil**2, rel=1e-3)


@pytest.mark.published("NBS Handbook 100, conductivity of copper and aluminum", "seen")
@pytest.mark.parametrize("row", resistance_table().rows, ids=lambda row: row.size)
def test_resistance_follows_from_area_and_resistivity(row: ResistanceRow) -> None:
    kcmil = row.area_cmil / 1000
    stranded = {"copper": row.copper_ohm_per_kft, "aluminum": row.aluminum_ohm_per_kft}
    solid = {"copper": row.copper_solid_ohm_per_kft, "aluminum": row.aluminum_solid_ohm_per_kft}
    metals: tuple[Metal, Metal] = ("copper", "aluminum")
    for metal in metals:
        wanted = derived_k(metal, 75, stranded=True) / kcmil
        assert stranded[metal] == pytest.approx(wanted, rel=0.0055)
        listed_solid = solid[metal]
        if listed_solid is not None:
            wanted = derived_k(metal, 75, stranded=False) / kcmil
            assert listed_solid == pytest.approx(wanted, rel=0.0045)


@pytest.mark.published("NBS Handbook 100, conductivity of copper and aluminum", "seen")
def test_the_textbook_constants_are_the_same_chain_rounded() -> None:
    assert derived_k("copper", 75, stranded=True) == pytest.approx(K_COPPER, rel=0.003)
    assert derived_k("aluminum", 75, stranded=True) == pytest.approx(K_ALUMINUM, rel=0.001)


@pytest.mark.published("NBS Handbook 100, conductivity of copper and aluminum", "seen")
@pytest.mark.parametrize("size", [row[0] for row in ROWS[1:]])
def test_aluminum_has_about_1_65_times_the_resistance_of_copper(size: str) -> None:
    ratio = conductor(size, "aluminum").ohm_per_kft / conductor(size, "copper").ohm_per_kft
    assert (
        1.63 <= ratio <= 1.66
    )  # 17.002 x (1 + .00403 x 55) / (10.371 x (1 + .00393 x 55)) = 1.647


# Loop resistance of both wires, ohm per foot one way, uncoated copper in conduit at 25 C:
# TxDOT Highway Illumination Manual, Conductor Resistance. Seen.
TXDOT_LOOP = [
    ("12", 0.003360),
    ("10", 0.002036),
    ("8", 0.001308),
    ("6", 0.000820),
    ("4", 0.000518),
    ("2", 0.000324),
    ("1/0", 0.000204),
    ("2/0", 0.000162),
]


@pytest.mark.published("Highway and Army manuals, wire resistance", "seen")
@pytest.mark.parametrize(("size", "loop_ohm_per_ft"), TXDOT_LOOP)
def test_table_brought_to_25_c_meets_the_highway_manual(size: str, loop_ohm_per_ft: float) -> None:
    cool = ohm_per_kft_at(conductor(size, "copper").ohm_per_kft, "copper", 25)
    assert 2 * cool / 1000 == pytest.approx(loop_ohm_per_ft, rel=0.022)


@pytest.mark.published("Highway and Army manuals, wire resistance", "seen")
def test_table_brought_to_other_temperatures_meets_two_more_sources() -> None:
    # 1 AWG stranded bare copper 0.12617 ohm/kft at 20 C: US Army subcourse EN0389, seen.
    stranded = ohm_per_kft_at(conductor("1", "copper").ohm_per_kft, "copper", 20)
    assert stranded == pytest.approx(0.12617, rel=0.005)
    # 14 AWG copper 2.57 ohm/kft, solid at 25 C: Electrical Power Systems Technology, p. 276, seen.
    solid = conductor("14", "copper").solid_ohm_per_kft
    assert solid is not None
    assert ohm_per_kft_at(solid, "copper", 25) == pytest.approx(2.57, rel=0.005)
