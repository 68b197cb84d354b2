"""A meter reading is corrected for species, then warmth, and says how far it may be trusted."""

from __future__ import annotations

import pytest

from leanto.trade.moisture_meter import SpeciesRow, corrected_moisture_pct, species_table

FIR = SpeciesRow(id="fir", name="Douglas-fir", a=1.0, b=0.0, mark="from memory")
NAMED_ONLY = SpeciesRow(id="oak", name="oak", mark="from memory")


@pytest.mark.parametrize(
    ("reading_pct", "wood_temp_f", "reliable"),
    [
        (7.0, 70, True),
        (6.9, 70, False),
        (7.0, 90, False),  # corrected to 6
        (25.0, 70, True),
        (25.1, 70, False),
        (24.5, 50, False),  # corrected to 25.5
        (15.0, 30, True),
        (15.0, 29, False),
        (15.0, 122, True),
        (15.0, 123, False),
    ],
)
def test_where_a_reading_can_be_relied_on(
    reading_pct: float, wood_temp_f: float, reliable: bool
) -> None:
    assert corrected_moisture_pct(reading_pct, wood_temp_f, FIR).reliable is reliable


def test_a_wet_reading_only_says_wet() -> None:
    assert any("only says: wet" in why for why in corrected_moisture_pct(35, 70, FIR).reasons)


def test_species_goes_before_temperature() -> None:
    row = SpeciesRow(id="made", name="made up", a=0.5, b=1.0, mark="from memory")
    assert corrected_moisture_pct(9.0, 50, row).pct == pytest.approx((9 - 1) / 0.5 + 1)


def test_wood_without_figures_is_left_as_read_with_more_doubt() -> None:
    moisture = corrected_moisture_pct(15.0, 70, NAMED_ONLY)
    assert moisture.pct == 15.0
    assert moisture.doubt_points > corrected_moisture_pct(15.0, 70, FIR).doubt_points
    assert any("No correction figures for oak" in why for why in moisture.reasons)


def test_a_species_figure_from_memory_says_so() -> None:
    assert any("from memory" in why for why in corrected_moisture_pct(15, 70, FIR).reasons)


def test_treated_wood_is_noted_and_nothing_taken_off() -> None:
    moisture = corrected_moisture_pct(15.0, 70, FIR, treated=True)
    assert moisture.pct == 15.0
    assert any("Salt-treated" in why for why in moisture.reasons)


def test_hot_dry_wood_never_falls_below_zero() -> None:
    assert corrected_moisture_pct(1.0, 150, FIR).pct == 0.0


@pytest.mark.parametrize(
    ("reading_pct", "wood_temp_f"), [(-1, 70), (101, 70), (15, -41), (15, 161)]
)
def test_impossible_readings_are_refused(reading_pct: float, wood_temp_f: float) -> None:
    with pytest.raises(ValueError, match="not"):
        corrected_moisture_pct(reading_pct, wood_temp_f, FIR)


def test_the_shipped_table_changes_nothing_for_douglas_fir() -> None:
    row = species_table().row("douglas_fir")
    assert (row.a, row.b) == (1.0, 0.0)
    assert corrected_moisture_pct(15.0, 50, "douglas_fir").pct == 16.0


def test_no_shipped_figure_claims_to_be_seen() -> None:
    assert all(row.mark == "from memory" for row in species_table().rows)


def test_an_unknown_species_is_refused() -> None:
    with pytest.raises(ValueError, match="balsa"):
        corrected_moisture_pct(15.0, 70, "balsa")
