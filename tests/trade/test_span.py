"""Allowable span: which limit governs, what loss does, where it stops."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from leanto.trade.section_loss import Section, rectangle
from leanto.trade.span import (
    LONGEST_IN,
    SpanLimit,
    allowable_span,
    bearing_needed_in,
    demand,
    feet_inches,
)


def spf_2x10(
    *,
    dead_psf: float = 10,
    wet: bool = False,
    remaining: Section | None = None,
    end_depth_in: float | None = None,
) -> SpanLimit:
    """SPF No. 2 2x10 at 16 in., 40 psf live, L/360."""
    return allowable_span(
        species="spruce_pine_fir",
        grade="no_2",
        breadth_in=1.5,
        depth_in=9.25,
        spacing_in=16,
        live_psf=40,
        dead_psf=dead_psf,
        deflection_limit=360,
        wet=wet,
        remaining=remaining,
        end_depth_in=end_depth_in,
    )


def test_whole_joist_is_governed_by_bending() -> None:
    span = spf_2x10()
    assert (span.table_in, span.governs) == (185, "bending")
    assert span.values.fb_psi == pytest.approx(1106.9, abs=0.05)


@pytest.mark.parametrize(
    ("lost_in", "allowed_in"), [(0.0, 185), (1.0, 165), (2.0, 145)], ids=["whole", "1 in", "2 in"]
)
def test_rot_off_one_edge_shortens_the_span(lost_in: float, allowed_in: int) -> None:
    """Hand arithmetic: 15-5, 13-9 and 12-1 for 9.25, 8.25 and 7.25 in. of depth left."""
    assert spf_2x10(remaining=rectangle(1.5, 9.25 - lost_in)).table_in == allowed_in


def test_wet_and_rotted_joist_fails_by_stiffness_while_bending_still_holds() -> None:
    """2 in. lost: 0.373 in. dry and 0.415 in. wet under live load, against 144/360 = 0.400."""
    left = rectangle(1.5, 7.25)
    dry, wet = spf_2x10(remaining=left), spf_2x10(remaining=left, wet=True)
    found = [
        demand(left, 144, spacing_in=16, live_psf=40, dead_psf=10, e_psi=span.values.e_psi)
        for span in (dry, wet)
    ]
    assert found[0].live_deflection_in == pytest.approx(0.373, abs=0.001)
    assert found[1].live_deflection_in == pytest.approx(0.415, abs=0.001)
    assert found[1].bending_psi == pytest.approx(1095.8, abs=0.5)
    assert wet.bending_in == dry.bending_in > 144
    assert wet.deflection_in < 144 < dry.deflection_in
    assert wet.governs == "deflection"


def test_rotted_bearing_makes_shear_govern() -> None:
    whole, rotted = spf_2x10(end_depth_in=9.25), spf_2x10(end_depth_in=3.0)
    assert whole.governs == "bending"
    assert rotted.governs == "shear"
    assert rotted.span_in < whole.span_in


def test_heavy_dead_load_alone_counts_at_its_own_duration() -> None:
    """60 psf that stays, at 0.9, asks more than 61 psf of roof with its live load, at 1.25."""
    common = {
        "breadth_in": 1.5,
        "depth_in": 9.25,
        "spacing_in": 16.0,
        "deflection_limit": 180.0,
        "dead_psf": 60.0,
        "live_psf": 1.0,
    }
    roof = allowable_span(species="hem_fir", grade="no_2", duration="roof live", **common)
    stays = allowable_span(species="hem_fir", grade="no_2", duration="permanent", **common)
    assert roof.bending_in == pytest.approx(stays.bending_in * (61 / 60) ** 0.5)


def test_span_stops_at_26_ft() -> None:
    span = allowable_span(
        species="douglas_fir",
        grade="select_structural",
        breadth_in=1.5,
        depth_in=11.25,
        spacing_in=12,
        live_psf=10,
        dead_psf=5,
        deflection_limit=240,
    )
    assert (span.span_in, span.governs) == (LONGEST_IN, "length of stock")


def test_nothing_left_spans_nothing() -> None:
    assert spf_2x10(remaining=rectangle(1.5, 0)).table_in == 0
    with pytest.raises(ValueError, match="nothing is left"):
        demand(rectangle(1.5, 0), 100, spacing_in=16, live_psf=40, dead_psf=10, e_psi=1.4e6)


def test_impossible_inputs_are_refused() -> None:
    with pytest.raises(ValueError, match="live load"):
        spf_2x10(dead_psf=-1)
    with pytest.raises(ValueError, match="the end"):
        spf_2x10(end_depth_in=10)


@given(
    st.floats(10, 100), st.floats(0, 30), st.floats(12, 24), st.floats(2, 12), st.floats(0.1, 1.0)
)
def test_more_load_wider_spacing_or_less_wood_never_lengthens_a_span(
    live_psf: float, dead_psf: float, spacing_in: float, depth_in: float, share: float
) -> None:
    def span(live: float, dead: float, spacing: float, left: Section | None) -> float:
        return allowable_span(
            species="southern_pine",
            grade="no_2",
            breadth_in=1.5,
            depth_in=depth_in,
            spacing_in=spacing,
            live_psf=live,
            dead_psf=dead,
            deflection_limit=360,
            remaining=left,
        ).span_in

    base = span(live_psf, dead_psf, spacing_in, None)
    assert span(live_psf * 1.1, dead_psf, spacing_in, None) <= base
    assert span(live_psf, dead_psf + 5, spacing_in, None) <= base
    assert span(live_psf, dead_psf, spacing_in * 1.2, None) <= base
    assert span(live_psf, dead_psf, spacing_in, rectangle(1.5, depth_in * share)) <= base


@pytest.mark.parametrize(
    ("length_in", "words"),
    [(185.2, "15 ft 5 in."), (11.5, "1 ft 0 in."), (0, "0 ft 0 in.")],
)
def test_feet_and_inches(length_in: float, words: str) -> None:
    assert feet_inches(length_in) == words


def test_bearing_needed() -> None:
    """400 lb on 1.5 in. of wood that bears 425 psi."""
    assert bearing_needed_in(400, 1.5, 425) == pytest.approx(0.6275, abs=0.0001)


def test_reasons_name_loads_limits_values_and_sources() -> None:
    reasons = " ".join(spf_2x10().reasons)
    for part in ("40 psf live", "L/360", "bending governs", "875 psi", "NDS Supplement", "1.15"):
        assert part in reasons
