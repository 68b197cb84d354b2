"""Slope, hip and rafter factors against printed tables and framing-square figures."""

from __future__ import annotations

from collections.abc import Callable

import pytest

from leanto.trade.slope import hip_valley_factor, rafter_in_per_ft_of_run, slope_factor

# Trade magazine field guide to asphalt shingles, slope and hip/valley multipliers: seen.
# It prints three places. The cells in MISPRINTED do not agree with the formula it gives.
FIELD_GUIDE = [
    # rise in 12, slope, hip or valley
    (2, 1.014, 1.424),
    (3, 1.031, 1.436),
    (4, 1.054, 1.453),
    (5, 1.083, 1.474),
    (6, 1.118, 1.500),
    (7, 1.158, None),
    (8, 1.202, 1.563),
    (9, 1.250, 1.601),
    (10, 1.302, 1.642),
    (11, None, None),
    (12, 1.414, 1.732),
]
MISPRINTED = [
    # function, rise in 12, as printed, by the formula
    (hip_valley_factor, 7, 1.524, 1.5298),
    (slope_factor, 11, 1.356, 1.3566),
    (hip_valley_factor, 11, 1.684, 1.6853),
]


@pytest.mark.published("Field guide to shingle multipliers", "seen")
@pytest.mark.parametrize(("rise", "slope", "hip"), FIELD_GUIDE)
def test_factors_agree_with_the_field_guide(
    rise: float, slope: float | None, hip: float | None
) -> None:
    if slope is not None:
        assert slope_factor(rise) == pytest.approx(slope, abs=0.0006)
    if hip is not None:
        assert hip_valley_factor(rise) == pytest.approx(hip, abs=0.0006)


@pytest.mark.published("Own rule", "own")
@pytest.mark.parametrize(("factor", "rise", "printed", "true"), MISPRINTED)
def test_misprinted_cells_are_computed_and_not_copied(
    factor: Callable[[float], float], rise: float, printed: float, true: float
) -> None:
    assert factor(rise) == pytest.approx(true, abs=0.00006)
    assert factor(rise) != pytest.approx(printed, abs=0.0005)


# Length of common rafters per foot of run, first line of a framing square.
# 13 in 12: Army course EN5156, figure 3-13; 7 in 12: NAVEDTRA 14044, figure 2-17: both seen.
# The rest: how-to page on common rafters that lists the line of the square; 6 in 12 also in
# Griffith, Carpentry, figure 49: seen.
COMMON_RAFTER_IN_PER_FT = [
    (13, 17.69, "seen"),
    (7, 13.89, "seen"),
    (2, 12.17, "seen"),
    (3, 12.37, "seen"),
    (4, 12.65, "seen"),
    (5, 13.00, "seen"),
    (6, 13.42, "seen"),
    (8, 14.42, "seen"),
    (9, 15.00, "seen"),
    (10, 15.62, "seen"),
    (11, 16.28, "seen"),
    (12, 16.97, "seen"),
    (18, 21.63, "seen"),
]


@pytest.mark.published("Framing square tables", "by row")
@pytest.mark.parametrize(("rise", "inches", "mark"), COMMON_RAFTER_IN_PER_FT)
def test_common_rafters_agree_with_the_framing_square(
    rise: float, inches: float, mark: str
) -> None:
    assert rafter_in_per_ft_of_run(rise) == pytest.approx(inches, abs=0.006), mark


# Length of hip and valley rafters per foot of run, second line of a framing square: 3 to 12 in 12
# on a web page of its tables, seen; the two outer rows from memory.
HIP_IN_PER_FT = [
    pytest.param(2, 17.09, marks=pytest.mark.row("from memory")),
    (3, 17.23),
    (4, 17.44),
    (5, 17.69),
    (6, 18.00),
    (7, 18.36),
    (8, 18.76),
    (9, 19.21),
    (10, 19.70),
    (11, 20.22),
    (12, 20.78),
    pytest.param(18, 24.74, marks=pytest.mark.row("from memory")),
]


@pytest.mark.published("Framing square tables", "seen")
@pytest.mark.parametrize(("rise", "inches"), HIP_IN_PER_FT)
def test_hips_agree_with_the_framing_square(rise: float, inches: float) -> None:
    assert 12 * hip_valley_factor(rise) == pytest.approx(inches, abs=0.006)
