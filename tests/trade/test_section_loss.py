"""Soft wood counts as gone; what is left is worked out by shape."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from leanto.trade.section_loss import ProbeDepths, cavity_loss, corner_loss, face_loss, rectangle

inches = st.floats(0.5, 12)
shares = st.floats(0, 0.95)


# Worked by hand from bd^2/6 and bd^3/12 with the depth left.
@pytest.mark.parametrize(
    ("breadth", "depth", "probe", "modulus", "inertia"),
    [
        (1.5, 5.5, ProbeDepths(bottom_in=0.5), 6.250, 15.625),
        (1.5, 7.25, ProbeDepths(bottom_in=1.0), 9.766, 30.518),
        (1.5, 9.25, ProbeDepths(top_in=1.0), 17.016, 70.189),
        (1.5, 9.25, ProbeDepths(top_in=0.5, bottom_in=0.5), 17.016, 70.189),
        (1.5, 11.25, ProbeDepths(bottom_in=1.0), 26.266, 134.611),
    ],
)
def test_depth_lost_at_an_edge(
    breadth: float, depth: float, probe: ProbeDepths, modulus: float, inertia: float
) -> None:
    left = face_loss(breadth, depth, probe).remaining
    assert left.section_modulus_in3 == pytest.approx(modulus, abs=6e-4)
    assert left.inertia_in4 == pytest.approx(inertia, abs=6e-4)


def test_a_quarter_inch_off_one_side_leaves_five_sixths_and_a_lopsided_piece() -> None:
    loss = face_loss(1.5, 9.25, ProbeDepths(left_in=0.25))
    assert loss.section_modulus_share == pytest.approx(0.8333, abs=1e-4)
    assert loss.inertia_share == pytest.approx(0.8333, abs=1e-4)
    assert loss.weak_inertia_share == pytest.approx((5 / 6) ** 3)
    assert loss.lopsided
    assert not face_loss(1.5, 9.25, ProbeDepths(left_in=0.25, right_in=0.25)).lopsided


def test_a_corner_pocket_worked_by_hand() -> None:
    left = corner_loss(1.5, 9.25, 0.75, 2.0).remaining
    assert left.area_sqin == pytest.approx(12.375)
    assert left.section_modulus_in3 == pytest.approx(15.072, abs=6e-4)
    assert left.inertia_in4 == pytest.approx(76.331, abs=6e-4)


@given(breadth=inches, depth=inches, share=shares)
def test_a_corner_as_wide_as_the_piece_is_an_edge(
    breadth: float, depth: float, share: float
) -> None:
    corner = corner_loss(breadth, depth, breadth, share * depth).remaining
    edge = face_loss(breadth, depth, ProbeDepths(bottom_in=share * depth)).remaining
    assert corner.area_sqin == pytest.approx(edge.area_sqin)
    assert corner.section_modulus_in3 == pytest.approx(edge.section_modulus_in3)
    assert corner.inertia_in4 == pytest.approx(edge.inertia_in4)
    assert corner.weak_inertia_in4 == pytest.approx(edge.weak_inertia_in4)


@given(breadth=inches, depth=inches, share=shares)
def test_a_soft_middle_the_full_width_leaves_one_less_the_cube(
    breadth: float, depth: float, share: float
) -> None:
    loss = cavity_loss(breadth, depth, breadth, share * depth)
    assert loss.inertia_share == pytest.approx(1 - share**3)
    assert loss.section_modulus_share == pytest.approx(1 - share**3)


@given(breadth=inches, depth=inches, one=shares, other=shares)
def test_nothing_is_ever_gained(breadth: float, depth: float, one: float, other: float) -> None:
    probe = ProbeDepths(one * depth, other * depth, one * breadth, other * breadth)
    for loss in (
        face_loss(breadth, depth, probe),
        corner_loss(breadth, depth, one * breadth, other * depth),
        cavity_loss(breadth, depth, one * breadth, other * depth),
    ):
        for share in (loss.area_share, loss.section_modulus_share, loss.inertia_share):
            assert -1e-9 <= share <= 1 + 1e-9


def test_wood_soft_right_through_leaves_nothing() -> None:
    through = face_loss(1.5, 5.5, ProbeDepths(top_in=3.0, bottom_in=3.0))
    assert through.remaining == rectangle(1.5, 0.0)
    assert through.section_modulus_share == 0.0
    assert corner_loss(1.5, 5.5, 1.5, 5.5).area_share == 0.0


def test_impossible_shapes_are_refused() -> None:
    with pytest.raises(ValueError, match="zero or more"):
        ProbeDepths(top_in=-0.1)
    with pytest.raises(ValueError, match="above zero"):
        face_loss(0.0, 5.5, ProbeDepths())
    with pytest.raises(ValueError, match="inside"):
        corner_loss(1.5, 5.5, 1.6, 1.0)
    with pytest.raises(ValueError, match="inside"):
        cavity_loss(1.5, 5.5, 1.0, 5.6)
