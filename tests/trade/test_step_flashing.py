"""Flashing counts along walls and round curbs."""

from __future__ import annotations

import pytest

from leanto.trade.step_flashing import (
    SideWall,
    check_cricket,
    flash_curb,
    flash_side_walls,
    step_pieces,
)


@pytest.mark.parametrize(
    ("length_ft", "exposure_in", "pieces"), [(10, 5, 24), (10, 7, 18), (0.4, 5, 1), (0, 5, 0)]
)
def test_one_piece_a_course(length_ft: float, exposure_in: float, pieces: int) -> None:
    assert step_pieces(length_ft, exposure_in) == pieces


def test_a_kickout_where_an_eave_dies_into_a_wall() -> None:
    walls = (SideWall(10, ends_at_eave=True), SideWall(5, ends_at_eave=False))
    flashing = flash_side_walls(walls)
    assert (flashing.step_pieces, flashing.kickouts) == (24 + 12, 1)


def test_no_walls_need_nothing() -> None:
    flashing = flash_side_walls(())
    assert (flashing.step_pieces, flashing.kickouts) == (0, 0)


def test_a_curb_is_flashed_on_four_sides() -> None:
    curb = flash_curb(across_in=24, along_slope_in=30)
    assert curb.step_pieces == 12  # two sides of six courses
    assert curb.apron_ft == curb.back_ft == pytest.approx(32 / 12)
    assert curb.perimeter_ft == pytest.approx(9)


def test_a_flue_through_the_ridge_needs_no_cricket() -> None:
    assert check_cricket(48).is_required
    assert not check_cricket(48, crosses_ridge=True).is_required


@pytest.mark.parametrize("side_in", [0, -4])
def test_a_curb_without_sides_is_refused(side_in: float) -> None:
    with pytest.raises(ValueError, match="curb"):
        flash_curb(side_in, 24)
    with pytest.raises(ValueError, match="across_in"):
        check_cricket(side_in)
