"""A reading is judged against the air, a dry spot, and the limits for decay."""

from __future__ import annotations

import pytest

from leanto.trade.emc import emc_pct
from leanto.trade.moisture_meter import CorrectedMoisture
from leanto.trade.moisture_verdict import (
    EXCESS_POINTS,
    MoistureBand,
    MoistureKind,
    moisture_band,
    moisture_verdict,
)

AIR_F, AIR_RH = 70.0, 65.0
EXPLAINED = emc_pct(AIR_F, AIR_RH)


def _read(pct: float, doubt: float = 1.0, reading: float | None = None) -> CorrectedMoisture:
    return CorrectedMoisture(pct, pct if reading is None else reading, doubt, True, ())


@pytest.mark.parametrize(
    ("pct", "band"),
    [
        (15.9, MoistureBand.DRY),
        (16.0, MoistureBand.DAMP),
        (19.9, MoistureBand.DAMP),
        (20.0, MoistureBand.WET),  # Wood Handbook, decay: hold below 20 (seen)
        (27.9, MoistureBand.WET),
        (28.0, MoistureBand.VERY_WET),  # Wood Infestation Report CL-100, section J (seen)
    ],
)
def test_bands(pct: float, band: MoistureBand) -> None:
    assert moisture_band(pct) is band


@pytest.mark.parametrize(
    ("pct", "kind"),
    [
        (EXPLAINED - 3, MoistureKind.DRYING),
        (EXPLAINED + EXCESS_POINTS - 0.01, MoistureKind.DRYING),
        (EXPLAINED + EXCESS_POINTS + 0.01, MoistureKind.WETTER),
        (19.99, MoistureKind.WETTER),
        (20.0, MoistureKind.DECAY),
    ],
)
def test_against_the_air(pct: float, kind: MoistureKind) -> None:
    verdict = moisture_verdict(_read(pct), AIR_F, AIR_RH)
    assert verdict.kind is kind
    assert verdict.emc_pct == pytest.approx(EXPLAINED)
    assert verdict.excess_points == pytest.approx(pct - EXPLAINED)


@pytest.mark.parametrize(("temp_f", "rh_pct"), [(None, 65.0), (70.0, None), (None, None)])
def test_without_the_air_a_dry_reading_cannot_be_judged(
    temp_f: float | None, rh_pct: float | None
) -> None:
    verdict = moisture_verdict(_read(15.0), temp_f, rh_pct)
    assert verdict.kind is MoistureKind.UNKNOWN
    assert verdict.emc_pct is None
    assert verdict.excess_points is None


def test_without_the_air_a_wet_reading_is_still_wet_enough_for_decay() -> None:
    verdict = moisture_verdict(_read(24.0), None, None)
    assert verdict.kind is MoistureKind.DECAY
    assert any("is not known" in why for why in verdict.reasons)


def test_a_dry_spot_stands_in_for_the_air() -> None:
    assert moisture_verdict(_read(17.0), None, None, 12.0).kind is MoistureKind.WETTER
    assert moisture_verdict(_read(15.0), None, None, 12.0).kind is MoistureKind.DRYING


def test_the_wetter_of_air_and_dry_spot_is_allowed() -> None:
    # Wood lags: the air of this hour is dry while the whole building still holds 15 %.
    verdict = moisture_verdict(_read(17.0), 70.0, 30.0, 15.0)
    assert verdict.kind is MoistureKind.DRYING
    assert verdict.excess_points == pytest.approx(2.0)


def test_wet_wood_in_wet_air_is_told_apart_from_a_leak() -> None:
    in_fog = moisture_verdict(_read(23.0), 60.0, 94.0)
    leaking = moisture_verdict(_read(23.0), 60.0, 50.0)
    assert in_fog.kind is leaking.kind is MoistureKind.DECAY
    assert any("dry the room" in why for why in in_fog.reasons)
    assert any("look for a leak" in why for why in leaking.reasons)


@pytest.mark.parametrize(
    ("pct", "doubt", "reading", "borderline"),
    [
        (18.0, 1.0, 18.0, False),
        (19.5, 1.0, 19.5, True),  # the doubt reaches 20
        (18.0, 2.0, 18.0, True),
        (21.5, 1.0, 19.5, True),  # the correction alone moved it over 20
        (22.0, 1.0, 21.0, False),
    ],
)
def test_figures_near_a_limit_are_flagged(
    pct: float, doubt: float, reading: float, borderline: bool
) -> None:
    verdict = moisture_verdict(_read(pct, doubt, reading), AIR_F, AIR_RH)
    assert verdict.borderline is borderline
    assert any("Near a limit" in why for why in verdict.reasons) is borderline


def test_air_outside_the_table_is_told() -> None:
    cold = moisture_verdict(_read(15.0), 20.0, 60.0)
    assert any("outside the published table" in why for why in cold.reasons)
    assert not any("outside" in why for why in moisture_verdict(_read(15.0), 30.0, 60.0).reasons)
