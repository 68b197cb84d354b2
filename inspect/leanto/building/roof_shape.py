"""The slopes of a block's roof, seen from outside with the eave at the bottom."""

from __future__ import annotations

from leanto.building.block_shape import (
    eave_sides,
    joined_side,
    plan_ft,
    side_length_ft,
    slope_factor,
)
from leanto.building.kinds import RoofForm, Side
from leanto.building.model import Block
from leanto.building.surface import Point
from leanto.building.union import SAME_FT


def slope_sides(block: Block) -> tuple[Side, ...]:
    """The sides that the slopes face: two for a gable, four for a hip, one for shed and flat.

    A shed faces its low side. A flat roof is said to face away from the block it stands
    against, else south, or west when its length runs north-south.
    """
    form = block.roof.form
    if form is RoofForm.HIP:
        return tuple(Side)
    if form is RoofForm.GABLE:
        return eave_sides(block)
    if form is RoofForm.SHED and block.roof.high_side:
        return (block.roof.high_side.opposite,)
    if block.attached and block.attached.side in eave_sides(block):
        return (block.attached.side,)
    return (eave_sides(block)[1],)


def overhang_ft(block: Block, side: Side) -> float:
    """How far the roof stands out on that side, measured level; not at all against another block.

    A hip has eaves all around, so its rake overhang is not used.
    """
    if side is joined_side(block):
        return 0.0
    if block.roof.form is RoofForm.HIP or side in eave_sides(block):
        return block.roof.overhang
    return block.roof.rake_overhang


def slope_outline(block: Block, side: Side) -> tuple[Point, ...]:
    """The slope's outline with its overhangs, lengths up the slope by the slope factor.

    A rectangle, and for a hip a trapezoid or a triangle; all planes of a hip have one pitch.
    """
    factor = slope_factor(block)
    left, right = rakes_ft(block, side)
    base = left + side_length_ft(block, side) + right
    if block.roof.form is RoofForm.HIP:
        run = min(plan_ft(block)) / 2 + block.roof.overhang
        height = run * factor
        if base - 2 * run <= SAME_FT:
            return (0.0, 0.0), (base, 0.0), (base / 2, height)
        return (0.0, 0.0), (base, 0.0), (base - run, height), (run, height)
    if block.roof.form is RoofForm.GABLE:
        run = block.width / 2 + overhang_ft(block, side)
    else:
        run = block.width + overhang_ft(block, side) + overhang_ft(block, side.opposite)
    height = run * factor
    return (0.0, 0.0), (base, 0.0), (base, height), (0.0, height)


def rakes_ft(block: Block, side: Side) -> tuple[float, float]:
    """(left, right) overhang of the slope past the walls below it, seen from outside."""
    order = list(Side)
    at = order.index(side)
    return overhang_ft(block, order[(at + 1) % 4]), overhang_ft(block, order[(at - 1) % 4])
