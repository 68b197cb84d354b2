"""Board feet, members at a spacing, pieces from stock, sheets and their fasteners."""

from __future__ import annotations

import math
from typing import Literal

from leanto.source import COMMON_PRACTICE, Source
from leanto.trade.counting import whole_units, with_waste

BOARD_WASTE = 0.20
LUMBER_WASTE = 0.10
LUMBER_WASTE_SOURCE = Source("FM 5-426, Carpentry", place="chapter 3", mark="from memory")
"""20 percent for boards one inch thick, 10 percent for two-inch lumber."""

NARROW_FLOOR_YIELD = 0.85
NARROW_FLOOR_SOURCE = Source("US Army course EN01136", place="lesson 5, self-test answers")
"""Share of tongued or narrow floor boards that ends up in the floor."""

SHEET_SQFT = 32.0
"""A sheet of 4 by 8 ft."""

STUDS_PER_CORNER = 2
STUDS_PER_INTERSECTION = 2
STUD_SOURCE = Source("Estimating in Building Construction", place="examples 13-11 and 13-12")

GABLE_STUD_SHARE = 2 / 3
GABLE_STUD_SOURCE = Source("Estimating in Building Construction", place="example 13-15")
"""Average gable stud as a share of the rise. The triangle's mean is 1/2; the rest is cutting."""

SHEET_NAILING_SOURCE = COMMON_PRACTICE


def board_feet(
    thickness_in: float, width_in: float, length_ft: float, pieces: float = 1.0
) -> float:
    """Board feet of lumber from its nominal size: thickness x width x length / 12."""
    _need_none_negative(thickness_in, width_in, length_ft, pieces)
    return thickness_in * width_in * length_ft / 12.0 * pieces


def members_at_spacing(length_ft: float, spacing_in: float) -> int:
    """Joists, rafters or studs along a length: whole spaces, and one more to end the row."""
    _need_none_negative(length_ft)
    if spacing_in <= 0:
        raise ValueError(f"spacing_in must be more than zero: {spacing_in}")
    return whole_units(length_ft * 12.0 / spacing_in) + 1


def studs(
    length_ft: float,
    spacing_in: float = 16.0,
    corners: int = 0,
    intersections: int = 0,
    per_corner: int = STUDS_PER_CORNER,
    per_intersection: int = STUDS_PER_INTERSECTION,
) -> int:
    """Studs in a wall: the row, and the extra ones at corners and where walls meet.

    Openings are not taken out; what they save goes into their trimmers.
    """
    row = members_at_spacing(length_ft, spacing_in)
    return row + corners * per_corner + intersections * per_intersection


def pieces_of_stock(count: int, length_ft: float, stock_ft: float) -> int:
    """Pieces of stock that yield `count` pieces of a length, none of them joined."""
    if length_ft <= 0 or stock_ft <= 0 or count < 0:
        raise ValueError(f"nothing to cut: {count} pieces of {length_ft} ft from {stock_ft} ft")
    per_stock = math.floor(stock_ft / length_ft + 1e-9)
    if per_stock == 0:
        raise ValueError(f"a piece of {length_ft} ft is longer than its stock of {stock_ft} ft")
    return -(-count // per_stock)


def sold_length_ft(length_ft: float, step_ft: float = 2.0) -> float:
    """The shortest length sold, in steps of this many feet, that holds this length."""
    if step_ft <= 0:
        raise ValueError(f"step_ft must be more than zero: {step_ft}")
    return whole_units(length_ft / step_ft) * step_ft


def gable_studs(span_ft: float, spacing_in: float = 16.0) -> int:
    """Studs that fill one gable over this span."""
    return members_at_spacing(span_ft, spacing_in)


def gable_stud_stock(
    span_ft: float,
    rise_ft: float,
    stock_ft: float,
    spacing_in: float = 16.0,
    gables: int = 2,
    average_share: float = GABLE_STUD_SHARE,
) -> int:
    """Pieces of stock for the studs of the gables, each stud taken at the average length."""
    count = gable_studs(span_ft, spacing_in) * gables
    return pieces_of_stock(count, rise_ft * average_share, stock_ft)


def boards_across(width_in: float, face_in: float, yield_share: float = 1.0) -> int:
    """Boards side by side over a width, when only this share of what is bought gets laid.

    Waste taken as a yield divides; 0.85 is a little more than adding 15 percent.
    """
    if face_in <= 0 or not 0 < yield_share <= 1:
        raise ValueError(f"a board needs a face and a yield: {face_in}, {yield_share}")
    return whole_units(width_in / face_in / yield_share)


def sheets(area_sqft: float, sheet_sqft: float = SHEET_SQFT, waste: float = 0.0) -> int:
    """Whole sheets over an area; take openings out beforehand if they are to be taken out."""
    if sheet_sqft <= 0:
        raise ValueError(f"sheet_sqft must be more than zero: {sheet_sqft}")
    return whole_units(with_waste(area_sqft, waste) / sheet_sqft)


def sheet_fasteners(
    laid: Literal["across framing", "along framing"],
    length_ft: float = 8.0,
    width_ft: float = 4.0,
    framing_in: float = 16.0,
    edge_in: float = 6.0,
    field_in: float = 12.0,
) -> int:
    """Nails or screws in one sheet, before waste; the local code's schedule goes before this.

    Across the framing the long edges hang free between members. Along it all four edges are
    nailed, and a nail at a corner is counted once.
    """
    length_in, width_in = length_ft * 12.0, width_ft * 12.0
    if laid == "across framing":
        inner = whole_units(length_in / framing_in) - 1
        return 2 * _row(width_in, edge_in) + inner * _row(width_in, field_in)
    inner = whole_units(width_in / framing_in) - 1
    short_edges = 2 * (_row(width_in, edge_in) - 2)
    return 2 * _row(length_in, edge_in) + inner * (_row(length_in, field_in) - 2) + short_edges


def _row(length_in: float, spacing_in: float) -> int:
    """Nails along a line, one at each end."""
    return whole_units(length_in / spacing_in) + 1


def _need_none_negative(*values: float) -> None:
    if any(value < 0 or not math.isfinite(value) for value in values):
        raise ValueError(f"sizes must be zero or more: {values}")
