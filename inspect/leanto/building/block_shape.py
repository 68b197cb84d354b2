"""The shape of one block: how long, how high and against what each of its sides stands.

Seen from outside, the left end of a wall is the corner with the next side clockwise
(facing the south wall, west is at the left); from inside it is the other corner.
"""

from __future__ import annotations

import math

from leanto.building.kinds import RoofForm, Side
from leanto.building.model import Block
from leanto.building.surface import Point


def clockwise_from(side: Side) -> tuple[Side, ...]:
    """The four sides in the order of somebody walking clockwise, as seen from above."""
    order = list(Side)
    start = order.index(side)
    return tuple(order[start:] + order[:start])


def plan_ft(block: Block) -> tuple[float, float]:
    """(east-west, north-south) size of the block."""
    if block.ridge_runs == "east-west":
        return block.length, block.width
    return block.width, block.length


def side_length_ft(block: Block, side: Side) -> float:
    """Length of the wall on that side."""
    east_west, north_south = plan_ft(block)
    return east_west if side in (Side.NORTH, Side.SOUTH) else north_south


def eave_sides(block: Block) -> tuple[Side, Side]:
    """The two sides along the length, where a gable, shed or flat roof has its eaves."""
    if block.ridge_runs == "east-west":
        return Side.NORTH, Side.SOUTH
    return Side.EAST, Side.WEST


def joined_side(block: Block) -> Side | None:
    """The side that stands against another block and so has no wall of its own."""
    return block.attached.side.opposite if block.attached else None


def wall_sides(block: Block) -> tuple[Side, ...]:
    """The sides that have a wall of their own."""
    return tuple(side for side in Side if side is not joined_side(block))


def rise_per_ft(block: Block) -> float:
    """Feet of rise for each foot of level run; zero for a flat roof."""
    return (block.roof.pitch or 0.0) / 12


def slope_factor(block: Block) -> float:
    """Length along the slope for each foot of level run: sqrt(1 + (rise/12)^2)."""
    return math.hypot(1.0, rise_per_ft(block))


def wall_height_ft(block: Block, side: Side) -> float:
    """Height of the wall's rectangular part: to the eave, or to the top of a shed's high wall."""
    is_high = block.roof.form is RoofForm.SHED and side is block.roof.high_side
    return block.eave_height + (block.width * rise_per_ft(block) if is_high else 0.0)


def wall_outline(block: Block, side: Side, *, inside: bool) -> tuple[Point, ...]:
    """The wall's outline: a rectangle, under a gable a pentagon, at the end of a shed a trapezoid.

    Inside, a ceiling cuts every wall off at the eave height.
    """
    width = side_length_ft(block, side)
    eave = block.eave_height
    if inside and block.ceiling is not None:
        return (0.0, 0.0), (width, 0.0), (width, eave), (0.0, eave)
    is_end = side not in eave_sides(block)
    if is_end and block.roof.form is RoofForm.GABLE:
        peak = eave + block.width / 2 * rise_per_ft(block)
        return (0.0, 0.0), (width, 0.0), (width, eave), (width / 2, peak), (0.0, eave)
    if is_end and block.roof.form is RoofForm.SHED:
        high = eave + block.width * rise_per_ft(block)
        is_high_at_left = (clockwise_from(side)[1] is block.roof.high_side) is not inside
        left, right = (high, eave) if is_high_at_left else (eave, high)
        return (0.0, 0.0), (width, 0.0), (width, right), (0.0, left)
    height = wall_height_ft(block, side)
    return (0.0, 0.0), (width, 0.0), (width, height), (0.0, height)
