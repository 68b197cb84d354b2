"""International Residential Code 2018, R502.8.1, R602.6, R602.6.1, R802.7.1; 2021, R802.7.1.1.

All texts seen in public copies or quotations. The limits in inches follow from the shares; those of
the 2x10 (1.54, 3.08, 2.31) were also seen printed.
"""

from __future__ import annotations

import pytest

from leanto.trade.cut_verdict import CutKind
from leanto.trade.notches import (
    Edge,
    Place,
    Spanning,
    engineered_cut,
    rafter_tail_notch,
    spanning_hole,
    spanning_notch,
)
from leanto.trade.stud_cuts import stud_hole, stud_notch, top_plate_cut

HAIR_IN = 0.005
DEPTHS = {"2x4": 3.5, "2x6": 5.5, "2x8": 7.25, "2x10": 9.25, "2x12": 11.25}
# Notch depth, notch length, depth at the bearing, hole: rounded to a thousandth or printed to two.
LIMITS = {
    "2x4": (0.583, 1.167, 0.875, 1.167),
    "2x6": (0.917, 1.833, 1.375, 1.833),
    "2x8": (1.208, 2.417, 1.8125, 2.417),
    "2x10": (1.54, 3.08, 2.31, 3.08),
    "2x12": (1.875, 3.750, 2.8125, 3.750),
}
ROWS = [
    (member, section, DEPTHS[size], *LIMITS[size])
    for size in DEPTHS
    for member, section in ((Spanning.JOIST, "R502.8.1"), (Spanning.RAFTER, "R802.7.1"))
]


@pytest.mark.published("International Residential Code, cuts and holes", "seen")
@pytest.mark.parametrize(("member", "section", "depth", "notch", "length", "end", "hole"), ROWS)
def test_each_limit_of_a_spanning_member_has_two_sides(
    member: Spanning,
    section: str,
    depth: float,
    notch: float,
    length: float,
    end: float,
    hole: float,
) -> None:
    under, over = -HAIR_IN, 2 * HAIR_IN

    def notched(deep: float, long: float, place: Place) -> CutKind:
        return spanning_notch(member, depth, deep, long, place, Edge.TOP).kind

    assert notched(notch + under, 1.0, Place.OUTER_THIRD) is CutKind.WITHIN
    assert notched(notch + over, 1.0, Place.OUTER_THIRD) is CutKind.OVER
    assert notched(0.25, length + under, Place.OUTER_THIRD) is CutKind.WITHIN
    assert notched(0.25, length + over, Place.OUTER_THIRD) is CutKind.OVER
    assert notched(end + under, 6.0, Place.END) is CutKind.WITHIN
    assert notched(end + over, 6.0, Place.END) is CutKind.OVER
    small = spanning_hole(member, depth, hole + under, 2.0, 2.0)
    large = spanning_hole(member, depth, hole + over, 2.0, 2.0)
    assert (small.kind, large.kind) == (CutKind.WITHIN, CutKind.OVER)
    assert section in large.words


@pytest.mark.published("International Residential Code, cuts and holes", "seen")
def test_the_middle_third_takes_holes_but_no_notch() -> None:
    verdict = spanning_notch(Spanning.JOIST, 9.25, 0.25, 0.5, Place.MIDDLE_THIRD, Edge.TOP)
    assert verdict.kind is CutKind.OVER
    assert verdict.over_in == 0.25
    assert "middle third" in verdict.words


@pytest.mark.published("International Residential Code, cuts and holes", "seen")
@pytest.mark.parametrize(
    ("thickness", "edge", "place", "kind"),
    [
        (4.0, Edge.BOTTOM, Place.OUTER_THIRD, CutKind.OVER),
        (3.0, Edge.BOTTOM, Place.OUTER_THIRD, CutKind.WITHIN),
        (4.0, Edge.TOP, Place.OUTER_THIRD, CutKind.WITHIN),
        (4.0, Edge.BOTTOM, Place.END, CutKind.WITHIN),
    ],
)
def test_thick_members_are_not_notched_in_tension(
    thickness: float, edge: Edge, place: Place, kind: CutKind
) -> None:
    verdict = spanning_notch(
        Spanning.JOIST, 9.25, 0.5, 1.0, place, edge, nominal_thickness_in=thickness
    )
    assert verdict.kind is kind


@pytest.mark.published("International Residential Code, cuts and holes", "seen")
@pytest.mark.parametrize(
    ("top", "bottom", "next_cut", "kind"),
    [
        (2.0, 2.0, None, CutKind.WITHIN),
        (2.0, 2.0, 2.0, CutKind.WITHIN),
        (1.9, 2.0, None, CutKind.OVER),
        (2.0, 1.9, None, CutKind.OVER),
        (2.0, 2.0, 1.9, CutKind.OVER),
    ],
)
def test_holes_keep_two_inches_from_edges_and_other_cuts(
    top: float, bottom: float, next_cut: float | None, kind: CutKind
) -> None:
    assert spanning_hole(Spanning.JOIST, 9.25, 1.0, top, bottom, next_cut).kind is kind


# 2x4: 3-1/2 in. wide; 2x6: 5-1/2 in.
@pytest.mark.published("International Residential Code, cuts and holes", "seen")
@pytest.mark.parametrize(
    ("width", "bearing", "notch", "hole"),
    [
        (3.5, True, 0.875, 1.40),
        (3.5, False, 1.40, 2.10),
        (5.5, True, 1.375, 2.20),
        (5.5, False, 2.20, 3.30),
    ],
)
def test_studs(width: float, bearing: bool, notch: float, hole: float) -> None:
    assert stud_notch(width, notch, bearing=bearing).kind is CutKind.WITHIN
    assert stud_notch(width, notch + HAIR_IN, bearing=bearing).kind is CutKind.OVER
    assert stud_hole(width, hole, 0.7, bearing=bearing).kind is CutKind.WITHIN
    assert stud_hole(width, hole + HAIR_IN, 0.7, bearing=bearing).kind is CutKind.OVER


@pytest.mark.published("International Residential Code, cuts and holes", "seen")
@pytest.mark.parametrize(
    ("diameter", "doubled", "in_a_row", "kind"),
    [
        (2.10, True, 1, CutKind.WITHIN),
        (2.10, True, 2, CutKind.WITHIN),
        (2.10, True, 3, CutKind.OVER),
        (2.11, True, 2, CutKind.OVER),
        (1.41, False, 1, CutKind.OVER),
    ],
)
def test_doubled_bearing_studs_may_be_bored_to_sixty_percent(
    diameter: float, doubled: bool, in_a_row: int, kind: CutKind
) -> None:
    verdict = stud_hole(
        3.5, diameter, 0.7, bearing=True, doubled=doubled, doubled_in_a_row=in_a_row
    )
    assert verdict.kind is kind


@pytest.mark.published("International Residential Code, cuts and holes", "seen")
@pytest.mark.parametrize(
    ("edge", "beside_notch", "kind"),
    [
        (0.625, False, CutKind.WITHIN),
        (0.62, False, CutKind.OVER),
        (0.625, True, CutKind.OVER),
    ],
)
def test_stud_holes_keep_from_edge_and_notch(
    edge: float, beside_notch: bool, kind: CutKind
) -> None:
    assert stud_hole(3.5, 1.0, edge, bearing=True, beside_notch=beside_notch).kind is kind


@pytest.mark.published("International Residential Code, cuts and holes", "seen")
@pytest.mark.parametrize(
    ("cut", "tied", "kind"),
    [
        (1.75, False, CutKind.WITHIN),
        (1.76, False, CutKind.OVER),
        (1.76, True, CutKind.WITHIN),
        (3.51, True, CutKind.OVER),
    ],
)
def test_a_top_plate_cut_over_half_needs_a_tie(cut: float, tied: bool, kind: CutKind) -> None:
    assert top_plate_cut(3.5, cut, tied=tied).kind is kind


@pytest.mark.published("International Residential Code, cuts and holes", "seen")
@pytest.mark.parametrize(
    ("left", "overhang", "kind"),
    [
        (3.5, 24.0, CutKind.WITHIN),
        (3.4, 24.0, CutKind.OVER),
        (3.5, 24.1, CutKind.OVER),
    ],
)
def test_rafter_tails(left: float, overhang: float, kind: CutKind) -> None:
    assert rafter_tail_notch(left, overhang).kind is kind


@pytest.mark.published("International Residential Code, cuts and holes", "seen")
def test_trusses_and_engineered_lumber_ask_an_engineer() -> None:
    assert engineered_cut().kind is CutKind.ENGINEER
    assert "R502.8.2" in engineered_cut().words
