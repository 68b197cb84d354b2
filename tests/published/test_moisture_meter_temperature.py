"""Temperature rules for pin meters: an extension answer and two instrument manuals (all seen).

The three rules differ; the program follows the first and claims a point of doubt either side.
"""

from __future__ import annotations

import pytest

from leanto.trade.moisture_meter import DOUBT_POINTS, SpeciesRow, corrected_moisture_pct

DOUGLAS_FIR = SpeciesRow(id="fir", name="Douglas-fir", a=1.0, b=0.0, mark="from memory")


# "Moisture Meters: Correcting for Temperature": a point for 20 F; its own example is 30 F, 7 -> 9.
# The other rows are worked out from that sentence.
@pytest.mark.published("Pin meter temperature rules", "seen")
@pytest.mark.parametrize(
    ("reading_pct", "wood_temp_f", "true_pct"),
    [(7, 30, 9.0), (15, 50, 16.0), (15, 90, 14.0), (20, 40, 21.5), (18, 70, 18.0)],
)
def test_a_point_for_twenty_degrees(
    reading_pct: float, wood_temp_f: float, true_pct: float
) -> None:
    assert corrected_moisture_pct(reading_pct, wood_temp_f, DOUGLAS_FIR).pct == true_pct


# A meter manual: set at 20 C, half a point for 5 C. A second manual's chart: 15 reads 17 at 10 C
# and 11 at 50 C, rounded to whole points.
@pytest.mark.published("Pin meter temperature rules", "seen")
@pytest.mark.parametrize(
    ("wood_temp_c", "manual_pct", "rounding"),
    [(10, 16.0, 0.0), (50, 12.0, 0.0), (10, 17.0, 0.5), (50, 11.0, 0.5)],
)
def test_other_published_rules_lie_within_the_claimed_doubt(
    wood_temp_c: float, manual_pct: float, rounding: float
) -> None:
    ours = corrected_moisture_pct(15, wood_temp_c * 9 / 5 + 32, DOUGLAS_FIR)
    assert ours.doubt_points == DOUBT_POINTS
    assert abs(ours.pct - manual_pct) <= ours.doubt_points + rounding
