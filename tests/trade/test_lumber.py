"""Members, pieces, sheets and fasteners."""

from __future__ import annotations

from typing import Literal

import pytest
from hypothesis import given
from hypothesis import strategies as st

from leanto.trade.lumber import (
    board_feet,
    boards_across,
    members_at_spacing,
    pieces_of_stock,
    sheet_fasteners,
    sheets,
    sold_length_ft,
    studs,
)


@pytest.mark.parametrize(
    ("length_ft", "spacing_in", "count"),
    [(0, 16, 1), (4, 16, 4), (4.01, 16, 5), (24, 16, 19), (24, 24, 13), (12, 19.2, 9)],
)
def test_a_row_ends_with_a_member(length_ft: float, spacing_in: float, count: int) -> None:
    assert members_at_spacing(length_ft, spacing_in) == count


def test_corners_and_meeting_walls_add_studs_as_asked() -> None:
    assert studs(8, corners=2, intersections=1) == studs(8) + 6
    assert studs(8, corners=2, per_corner=1) == studs(8) + 2


@pytest.mark.parametrize(
    ("count", "length_ft", "stock_ft", "pieces"),
    [(38, 2, 10, 8), (10, 3, 8, 5), (1, 8, 8, 1), (0, 2, 8, 0), (9, 0.1, 0.3, 3)],
)
def test_stock_is_cut_without_joints(
    count: int, length_ft: float, stock_ft: float, pieces: int
) -> None:
    assert pieces_of_stock(count, length_ft, stock_ft) == pieces


def test_a_piece_longer_than_its_stock_is_refused() -> None:
    with pytest.raises(ValueError, match="longer than its stock"):
        pieces_of_stock(1, 10.1, 10)


@pytest.mark.parametrize(
    ("length_ft", "step_ft", "sold_ft"), [(8, 2, 8), (8.1, 2, 10), (18.75, 1, 19), (0.5, 2, 2)]
)
def test_lumber_is_sold_in_steps(length_ft: float, step_ft: float, sold_ft: float) -> None:
    assert sold_length_ft(length_ft, step_ft) == sold_ft


def test_a_yield_asks_for_more_than_the_same_share_added() -> None:
    assert boards_across(100, 1, 0.85) == 118
    assert boards_across(100, 1) == 100


@pytest.mark.parametrize(
    ("area_sqft", "waste", "count"),
    [(0, 0, 0), (32, 0, 1), (32.1, 0, 2), (32, 0.1, 2), (320, 0.1, 11)],
)
def test_sheets_are_whole(area_sqft: float, waste: float, count: int) -> None:
    assert sheets(area_sqft, waste=waste) == count


# Nails 6 in. apart at edges and 12 in. in the field, framing at 16 in.: common practice, no source.
# Across: two ends of 9 and five members of 5. Along: two edges of 17, two members of 7 between the
# ends, two ends of 7 between the corners.
@pytest.mark.parametrize(("laid", "count"), [("across framing", 43), ("along framing", 62)])
def test_fasteners_of_a_sheet(laid: Literal["across framing", "along framing"], count: int) -> None:
    assert sheet_fasteners(laid) == count


@given(st.floats(0, 100), st.floats(0, 100), st.floats(0, 100), st.integers(0, 50))
def test_board_feet_grow_with_the_pieces(t: float, w: float, length: float, n: int) -> None:
    assert board_feet(t, w, length, n) == pytest.approx(n * board_feet(t, w, length))


def test_a_size_below_zero_is_refused() -> None:
    with pytest.raises(ValueError, match="sizes"):
        board_feet(2, -4, 8)
