"""Moment, shear and deflection against PyNiteFEA, a general-purpose frame analysis library.

The library solves each beam numerically by finite elements; nothing of our closed form is in it.
"""

from __future__ import annotations

import random
from dataclasses import dataclass

import pytest
from Pynite import FEModel3D

from leanto.trade.design_values import Species
from leanto.trade.section_loss import Section, rectangle
from leanto.trade.span import allowable_span, demand, line_load_lb_in

CLOSE = 1e-6


@dataclass(frozen=True)
class Solved:
    moment_lb_in: float
    shear_lb: float
    deflection_in: float


def solved(section: Section, span_in: float, load_lb_in: float, e_psi: float) -> Solved:
    """A simple beam under a uniform load, by finite elements without shear deflection."""
    model = FEModel3D()
    model.add_node("left", 0, 0, 0)
    model.add_node("right", span_in, 0, 0)
    model.add_material("wood", e_psi, e_psi / 16, 0.3, 0.0)
    weak = section.weak_inertia_in4
    model.add_section("joist", section.area_sqin, weak, section.inertia_in4, weak)
    model.add_member("joist", "left", "right", "wood", "joist")
    model.def_support("left", True, True, True, True, False, False)
    model.def_support("right", False, True, True, False, False, False)
    model.add_member_dist_load("joist", "Fy", -load_lb_in, -load_lb_in)
    model.analyze()
    joist = model.members["joist"]
    moments = (joist.max_moment("Mz"), joist.min_moment("Mz"))
    shears = (joist.max_shear("Fy"), joist.min_shear("Fy"))
    return Solved(
        moment_lb_in=max(abs(float(moment)) for moment in moments),
        shear_lb=max(abs(float(shear)) for shear in shears),
        deflection_in=abs(float(joist.deflection("dy", span_in / 2))),
    )


@dataclass(frozen=True)
class Case:
    breadth_in: float
    depth_in: float
    span_in: float
    spacing_in: float
    live_psf: float
    dead_psf: float
    e_psi: float


def _cases(count: int) -> list[Case]:
    """Invented beams, the same in every run."""
    dice = random.Random(1938)
    return [
        Case(
            breadth_in=dice.uniform(1.0, 4.0),
            depth_in=dice.uniform(2.0, 12.0),
            span_in=dice.uniform(30.0, 312.0),
            spacing_in=dice.choice((12.0, 16.0, 19.2, 24.0, 32.5)),
            live_psf=dice.uniform(5.0, 130.0),
            dead_psf=dice.uniform(0.0, 30.0),
            e_psi=dice.uniform(0.9e6, 2.0e6),
        )
        for _ in range(count)
    ]


@pytest.mark.published("PyNiteFEA, frame analysis library", "library")
@pytest.mark.parametrize("case", _cases(40), ids=lambda case: f"{case.span_in:.0f}in")
def test_demand_agrees_with_finite_elements(case: Case) -> None:
    section = rectangle(case.breadth_in, case.depth_in)
    ours = demand(
        section,
        case.span_in,
        spacing_in=case.spacing_in,
        live_psf=case.live_psf,
        dead_psf=case.dead_psf,
        e_psi=case.e_psi,
    )
    whole = line_load_lb_in(case.live_psf + case.dead_psf, case.spacing_in)
    live = line_load_lb_in(case.live_psf, case.spacing_in)
    theirs = solved(section, case.span_in, whole, case.e_psi)
    under_live = solved(section, case.span_in, live, case.e_psi)

    assert ours.moment_lb_in == pytest.approx(theirs.moment_lb_in, rel=CLOSE)
    assert ours.shear_lb == pytest.approx(theirs.shear_lb, rel=CLOSE)
    assert ours.live_deflection_in == pytest.approx(under_live.deflection_in, rel=CLOSE)


SPECIES: tuple[Species, ...] = ("douglas_fir", "hem_fir", "spruce_pine_fir", "southern_pine")


@pytest.mark.published("PyNiteFEA, frame analysis library", "library")
@pytest.mark.parametrize("seed", range(16))
def test_at_the_allowable_span_one_limit_is_used_up_and_none_is_passed(seed: int) -> None:
    """Load each beam at its allowable span and read the library's stresses back."""
    dice = random.Random(seed)
    depth_in = dice.choice((3.5, 5.5, 7.25, 9.25, 11.25))
    live_psf, dead_psf = dice.uniform(10, 70), dice.uniform(5, 20)
    spacing_in, limit = dice.choice((12.0, 16.0, 24.0)), dice.choice((180.0, 240.0, 360.0))
    left = rectangle(1.5, depth_in * dice.uniform(0.7, 1.0))
    span = allowable_span(
        species=dice.choice(SPECIES),
        grade="no_2",
        breadth_in=1.5,
        depth_in=depth_in,
        spacing_in=spacing_in,
        live_psf=live_psf,
        dead_psf=dead_psf,
        deflection_limit=limit,
        remaining=left,
    )
    whole = line_load_lb_in(live_psf + dead_psf, spacing_in)
    live = line_load_lb_in(live_psf, spacing_in)
    theirs = solved(left, span.span_in, whole, span.values.e_psi)
    under_live = solved(left, span.span_in, live, span.values.e_psi)
    used = {
        "bending": theirs.moment_lb_in / left.section_modulus_in3 / span.values.fb_psi,
        "shear": 1.5 * theirs.shear_lb / left.area_sqin / span.values.fv_psi,
        "deflection": under_live.deflection_in / (span.span_in / limit),
    }

    assert used[span.governs] == pytest.approx(1.0, rel=CLOSE)
    assert max(used.values()) <= 1.0 + CLOSE
