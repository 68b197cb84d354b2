"""What flat public rules set aside, and the half-value rule.

HUD Handbook 4000.1, II.A.8.a, contingency reserve of the 203(k) program, article KA-04997: seen.
44 CFR 59.1 and FEMA 213, substantial improvement at 50 percent of market value: seen.
"""

from __future__ import annotations

import pytest
from small_money import a_shed, some_factors
from small_shed import three

from leanto.decision.flat_rule import flat_rule
from leanto.decision.replacement import replacement


@pytest.mark.published("HUD Handbook 4000.1", "seen")
@pytest.mark.parametrize(
    ("age_years", "termites", "utilities", "low", "high"),
    [
        # under 30 years: termite evidence 10-20, none 0-20 (discretionary)
        (29, True, True, 10, 20),
        (29, False, True, 0, 20),
        # 30 years or older: 10-20 either way
        (30, False, True, 10, 20),
        (88, True, True, 10, 20),
        # utilities not operable: 15-20 at any age
        (88, False, False, 15, 20),
        (5, False, False, 15, 20),
    ],
)
def test_the_band_of_the_public_rule(
    age_years: float, termites: bool, utilities: bool, low: float, high: float
) -> None:
    rule = flat_rule(age_years, has_termite_signs=termites, utilities_work=utilities)
    assert (rule.low_pct, rule.high_pct) == (low, high)
    assert rule.low_usd(20_000) == 200 * low
    assert rule.source.mark == "seen"


@pytest.mark.published("44 CFR 59.1 and FEMA 213", "seen")
@pytest.mark.parametrize(
    ("repair_usd", "reaches"), [(14_399, False), (14_400, True), (20_000, True)]
)
def test_half_of_a_new_building_is_where_the_rule_is_named(
    repair_usd: float, reaches: bool
) -> None:
    # 24 x 12 = 288 sq ft at 100 = 28,800; half is 14,400
    shed = a_shed(replacement_usd_per_sqft=100)
    new = replacement(shed, some_factors(), repair_usd, repair_usd)
    assert new is not None
    assert (new.reaches_half, new.floor_sqft, new.new_usd.likely) == (reaches, 288, 28_800)


@pytest.mark.published("Own rule", "own")
def test_the_planning_figure_stands_in_with_its_range() -> None:
    factors = some_factors(replacement_usd_per_sqft=three(90, 140, 220))
    new = replacement(a_shed(), factors, 10_000, 12_000)
    assert new is not None
    assert (new.new_usd.low, new.new_usd.high) == (288 * 90, 288 * 220)
    assert "planning figure" in new.source
    assert replacement(a_shed(), some_factors(), 10_000, 12_000) is None
