"""Adjustment factors against the National Design Specification for Wood Construction, 2018."""

from __future__ import annotations

import pytest

from leanto.source import Mark
from leanto.trade.adjustment import (
    DURATION_FACTORS,
    Duration,
    adjusted_values,
    repetitive_factor,
    size_factor,
    wet_factors,
)
from leanto.trade.design_values import Species, design_values, known_grade
from leanto.trade.span import notched_end_shear_lb

DEPTHS_IN = (3.5, 5.5, 7.25, 9.25, 11.25)

REFERENCE: tuple[tuple[Species, float, float, float, float, Mark], ...] = (
    # NDS Supplement 2018, Table 4A, No. 2: Fb, Fv, Fc-perp, E.
    ("douglas_fir", 900, 180, 625, 1.6e6, "seen"),
    ("hem_fir", 850, 150, 405, 1.3e6, "seen"),
    ("spruce_pine_fir", 875, 135, 425, 1.4e6, "seen"),
)


@pytest.mark.published("National Design Specification 2018", "seen")
@pytest.mark.parametrize(("species", "fb", "fv", "fc_perp", "e", "mark"), REFERENCE)
def test_reference_values_of_no_2(
    species: Species, fb: float, fv: float, fc_perp: float, e: float, mark: Mark
) -> None:
    values = design_values(species, "no_2", 9.25)
    assert (values.fb_psi, values.fv_psi, values.fc_perp_psi, values.e_psi) == (fb, fv, fc_perp, e)
    assert values.source.mark == mark


PINE_MPA = (
    # Southern pine use guide, metric edition: bending by width, MPa, rounded to 0.1 ("seen").
    ("select_structural", (16.2, 14.5, 13.4, 11.7, 11.0), 12.4),
    ("no_1", (10.3, 9.3, 8.6, 7.2, 6.9), 11.0),
    ("no_2", (7.6, 6.9, 6.4, 5.5, 5.2), 9.7),
    ("no_3", (4.5, 4.0, 3.6, 3.3, 3.1), 9.0),
)
PSI_PER_MPA = 145.038


@pytest.mark.published("Southern pine use guide, metric", "seen")
@pytest.mark.parametrize(("grade", "bending_mpa", "e_gpa"), PINE_MPA)
def test_southern_pine_agrees_with_its_metric_edition(
    grade: str, bending_mpa: tuple[float, ...], e_gpa: float
) -> None:
    known = known_grade(grade)
    assert known is not None
    for depth_in, mpa in zip(DEPTHS_IN, bending_mpa, strict=True):
        values = design_values("southern_pine", known, depth_in)
        # The metric tables step by 0.1 MPa from values that step by 25 psi.
        assert values.fb_psi == pytest.approx(mpa * PSI_PER_MPA, abs=12.5)
        assert values.e_psi == pytest.approx(e_gpa * 1000 * PSI_PER_MPA, rel=0.01)
        assert values.size_factor_included


DURATIONS: tuple[tuple[Duration, float], ...] = (
    # Table 2.3.2, seen.
    ("permanent", 0.9),
    ("floor live", 1.0),
    ("snow", 1.15),
    ("roof live", 1.25),
    ("wind or seismic", 1.6),
    ("impact", 2.0),
)


@pytest.mark.published("National Design Specification 2018", "seen")
def test_load_duration_factors() -> None:
    assert dict(DURATIONS) == DURATION_FACTORS


SIZES = (
    # Supplement Table 4A, size factor on bending: depth, 2 in. thick, 4 in. thick, seen.
    (3.5, 1.5, 1.5),
    (4.0, 1.5, 1.5),
    (4.1, 1.4, 1.4),
    (5.5, 1.3, 1.3),
    (7.25, 1.2, 1.3),
    (8.0, 1.2, 1.3),
    (8.1, 1.1, 1.2),
    (9.25, 1.1, 1.2),
    (11.25, 1.0, 1.1),
    (13.25, 0.9, 1.0),
)


@pytest.mark.published("National Design Specification 2018", "seen")
@pytest.mark.parametrize(("depth_in", "two_thick", "four_thick"), SIZES)
def test_size_factor(depth_in: float, two_thick: float, four_thick: float) -> None:
    assert size_factor(depth_in, 1.5) == two_thick
    assert size_factor(depth_in, 3.5) == four_thick


@pytest.mark.published("National Design Specification 2018", "from memory")
@pytest.mark.parametrize(
    ("spacing_in", "sharing", "factor"),
    [(24.0, True, 1.15), (24.1, True, 1.0), (16.0, False, 1.0)],
    ids=["at 24 in.", "beyond 24 in.", "nothing shares"],
)
def test_repetitive_factor_from_memory_of_4_3_9(
    spacing_in: float, sharing: bool, factor: float
) -> None:
    assert repetitive_factor(spacing_in, sharing) == factor


WET: tuple[tuple[Species, float, float], ...] = (
    # Wet factor on bending: 0.85, or 1.0 where Fb x CF is 1150 psi or less (Table 10.6 of the
    # Building Design and Construction Handbook, seen).
    ("douglas_fir", 5.5, 0.85),
    ("douglas_fir", 7.25, 1.0),
    ("spruce_pine_fir", 3.5, 0.85),
    ("spruce_pine_fir", 5.5, 1.0),
    ("hem_fir", 5.5, 1.0),
    ("southern_pine", 3.5, 1.0),
)


@pytest.mark.published("National Design Specification 2018", "seen")
@pytest.mark.parametrize(("species", "depth_in", "factor"), WET)
def test_wet_factor_on_each_side_of_its_threshold(
    species: Species, depth_in: float, factor: float
) -> None:
    values = design_values(species, "no_2", depth_in)
    dry, wet = (
        adjusted_values(values, breadth_in=1.5, depth_in=depth_in, spacing_in=16, wet=state)
        for state in (False, True)
    )
    assert wet.fb_psi / dry.fb_psi == pytest.approx(factor)
    assert wet.fv_psi / dry.fv_psi == pytest.approx(0.97)
    assert wet.fc_perp_psi / dry.fc_perp_psi == pytest.approx(0.67)
    assert wet.e_psi / dry.e_psi == pytest.approx(0.9)


@pytest.mark.published("Own rule", "own")
def test_wet_threshold_itself_loses_nothing() -> None:
    assert wet_factors(1150.0).fb == 1.0
    assert wet_factors(1150.1).fb == 0.85


@pytest.mark.published("Timber design problems", "seen")
def test_worked_problem_of_hem_fir_under_snow() -> None:
    """Missouri S&T, CE 5260, problem 4.30, seen: No. 2 2x10 at 16 in., dead and snow."""
    adjusted = adjusted_values(
        design_values("hem_fir", "no_2", 9.25),
        breadth_in=1.5,
        depth_in=9.25,
        spacing_in=16,
        duration="snow",
    )
    assert round(adjusted.fb_psi) == 1237
    assert adjusted.fv_psi == pytest.approx(173, abs=0.6)
    assert adjusted.fc_perp_psi == 405
    assert adjusted.e_psi == 1.3e6


@pytest.mark.published("National Design Specification 2018", "from memory")
@pytest.mark.parametrize(
    ("end_depth_in", "shear_lb"), [(9.25, 1248.8), (8.25, 886.0), (7.25, 601.3), (6.9375, 526.8)]
)
def test_notched_end_of_spf_2x10(end_depth_in: float, shear_lb: float) -> None:
    """Equation 3.4-3, from memory; its squared term was seen in the council's own answer."""
    found = notched_end_shear_lb(135, 1.5, 9.25, end_depth_in)
    assert found == pytest.approx(shear_lb, abs=0.06)
