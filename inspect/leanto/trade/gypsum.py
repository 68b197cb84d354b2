"""Gypsum board on a wall or ceiling: sheets, and what finishes their joints."""

from __future__ import annotations

from dataclasses import dataclass

from leanto.source import Source
from leanto.trade.counting import whole_units, with_waste

GYPSUM_WASTE = 0.05
TAPE_WASTE = 0.10
SCREWS_PER_SQFT = 1.0
TAPE_FT_PER_SQFT = 0.38
COMPOUND_GAL_PER_SQFT = 0.005
TAPE_ROLL_FT = 50.0
GYPSUM_SOURCE = Source(
    "Estimating in Building Construction", place="gypsum board, example 16-3 and its text"
)


@dataclass(frozen=True, slots=True)
class JointFinish:
    """What the joints and fields of gypsum board take."""

    screws: int
    compound_gal: float
    tape_ft: float
    """Tape in the joints, before waste."""
    tape_rolls: int
    """Rolls to buy, with waste."""


def gypsum_sheets(areas_sqft: tuple[float, ...], sheet_sqft: float, waste: float) -> int:
    """Sheets for surfaces lined with one kind of board, each counted whole before waste.

    Openings are not taken out unless the areas come without them.
    """
    per_surface = sum(whole_units(area / sheet_sqft) for area in areas_sqft)
    return whole_units(with_waste(per_surface, waste))


def finish_joints(
    board_sqft: float, tape_waste: float = TAPE_WASTE, roll_ft: float = TAPE_ROLL_FT
) -> JointFinish:
    """Screws, ready-mixed compound and tape for an area of gypsum board."""
    tape_ft = board_sqft * TAPE_FT_PER_SQFT
    return JointFinish(
        screws=whole_units(board_sqft * SCREWS_PER_SQFT),
        compound_gal=board_sqft * COMPOUND_GAL_PER_SQFT,
        tape_ft=tape_ft,
        tape_rolls=whole_units(with_waste(tape_ft, tape_waste) / roll_ft),
    )
