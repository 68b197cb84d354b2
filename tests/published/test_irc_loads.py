"""Loads against the International Residential Code 2018 and ASCE 7."""

from __future__ import annotations

import pytest

from leanto.trade.loads import (
    UNHEATED_THERMAL,
    attic_live_load,
    flat_roof_snow_psf,
    floor_use,
    roof_live_psf,
)


@pytest.mark.published("International Residential Code 2018, loads", "seen")
@pytest.mark.parametrize(
    ("use", "live_psf"),
    [
        # Table R301.5, seen.
        ("sleeping room", 30),
        ("habitable attic", 30),
        ("living space", 40),
        ("deck", 40),
        ("garage", 50),
        # ASCE 7-16 Table 4.3-1, light storage, from memory.
        pytest.param("storage", 125, marks=pytest.mark.row("from memory")),
    ],
)
def test_floor_live_load(use: str, live_psf: float) -> None:
    assert floor_use(use).live_psf == live_psf


@pytest.mark.published("International Residential Code 2018, loads", "seen")
@pytest.mark.parametrize(
    ("storage", "clear_height_in", "live_psf"),
    [
        # Table R301.5, seen: limited storage 20, none 10 where less than 42 in. is clear.
        (True, None, 20),
        (True, 20.0, 20),
        (False, None, 10),
        (False, 41.9, 10),
        (False, 42.0, 20),
    ],
)
def test_attic_live_load(storage: bool, clear_height_in: float | None, live_psf: float) -> None:
    assert attic_live_load(storage, clear_height_in).psf == live_psf


@pytest.mark.published("International Residential Code 2018, loads", "seen")
@pytest.mark.parametrize(
    ("rise_in_12", "live_psf"),
    # Table R301.6, first column, up to 200 sq ft, seen.
    [(0, 20), (3.99, 20), (4, 16), (11.99, 16), (12, 12), (18, 12)],
)
def test_roof_live_load(rise_in_12: float, live_psf: float) -> None:
    assert roof_live_psf(rise_in_12) == live_psf


@pytest.mark.published("ASCE 7", "seen")
def test_flat_roof_snow_of_the_worked_example() -> None:
    """ASCE 7-10 equation 7.3-1, seen: 40 psf on the ground gives 28 psf."""
    assert flat_roof_snow_psf(40) == pytest.approx(28.0)


@pytest.mark.published("ASCE 7", "from memory")
def test_flat_roof_snow_on_an_unheated_building() -> None:
    """The same with the thermal factor 1.2 of ASCE 7-16 Table 7.3-2, from memory."""
    assert flat_roof_snow_psf(40, thermal=UNHEATED_THERMAL) == pytest.approx(33.6)
