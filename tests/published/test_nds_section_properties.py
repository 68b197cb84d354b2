"""NDS Supplement, Table 1B, section properties of standard dressed sawn lumber.

2x4 to 2x12: seen in a public copy of the table. The rest: from memory to four figures; 4x4 to 8x8
seen to three figures on an engineering reference page on structural lumber.
The sizes from before 1964: Civil Engineering Formulas, Table 6.1 (seen).
"""

from __future__ import annotations

import pytest

from leanto.trade.sawn_size import Surfacing, actual_size_in
from leanto.trade.section_loss import Section, rectangle

SEEN = [
    ("2x4", 5.25, 3.06, 5.36),
    ("2x6", 8.25, 7.56, 20.80),
    ("2x8", 10.88, 13.14, 47.63),
    ("2x10", 13.88, 21.39, 98.93),
    ("2x12", 16.88, 31.64, 177.98),
]
FROM_MEMORY = [
    ("1x4", 2.625, 1.531, 2.680),
    ("1x6", 4.125, 3.781, 10.40),
    ("1x8", 5.438, 6.570, 23.82),
    ("4x4", 12.25, 7.146, 12.51),
    ("4x6", 19.25, 17.65, 48.53),
    ("4x8", 25.38, 30.66, 111.1),
    ("4x10", 32.38, 49.91, 230.8),
    ("4x12", 39.38, 73.83, 415.3),
    ("6x6", 30.25, 27.73, 76.26),
    ("6x8", 41.25, 51.56, 193.4),
    ("8x8", 56.25, 70.31, 263.7),
]
THREE_FIGURES = [
    ("4x4", 12.25, 7.15, 12.5),
    ("4x6", 19.25, 17.6, 48.5),
    ("4x8", 25.375, 30.7, 111),
    ("4x10", 32.375, 49.9, 231),
    ("4x12", 39.375, 73.8, 415),
    ("6x6", 30.3, 27.7, 76.3),
    ("6x8", 41.3, 51.6, 193),
    ("8x8", 56.3, 70.3, 264),
]
BEFORE_1964 = [
    ("2x4", 5.89, 3.56, 6.45),
    ("2x6", 8.93, 8.19, 22.53),
    ("2x8", 12.19, 15.23, 57.13),
]


@pytest.mark.published("NDS Supplement, Table 1B", "seen")
@pytest.mark.parametrize(
    ("name", "area", "modulus", "inertia"),
    [
        *SEEN,
        *(pytest.param(*row, marks=pytest.mark.row("from memory")) for row in FROM_MEMORY),
    ],
)
def test_dressed_sizes(name: str, area: float, modulus: float, inertia: float) -> None:
    _same(rectangle(*actual_size_in(name, Surfacing.DRESSED)), area, modulus, inertia)


@pytest.mark.published("Structural lumber, engineering reference page", "seen")
@pytest.mark.parametrize(("name", "area", "modulus", "inertia"), THREE_FIGURES)
def test_heavy_sizes_to_three_figures(
    name: str, area: float, modulus: float, inertia: float
) -> None:
    section = rectangle(*actual_size_in(name, Surfacing.DRESSED))
    assert section.area_sqin == pytest.approx(area, rel=3e-3)
    assert section.section_modulus_in3 == pytest.approx(modulus, rel=4e-3)
    assert section.inertia_in4 == pytest.approx(inertia, rel=4e-3)


@pytest.mark.published("Civil Engineering Formulas, Table 6.1", "seen")
@pytest.mark.parametrize(("name", "area", "modulus", "inertia"), BEFORE_1964)
def test_sizes_before_1964(name: str, area: float, modulus: float, inertia: float) -> None:
    _same(rectangle(*actual_size_in(name, Surfacing.OLD_DRESSED)), area, modulus, inertia)


def _same(section: Section, area: float, modulus: float, inertia: float) -> None:
    # Printed to four figures or two places; some are cut off, so a whole last place may be missing.
    assert section.area_sqin == pytest.approx(area, rel=5e-4, abs=0.01)
    assert section.section_modulus_in3 == pytest.approx(modulus, rel=5e-4, abs=0.01)
    assert section.inertia_in4 == pytest.approx(inertia, rel=5e-4, abs=0.01)
