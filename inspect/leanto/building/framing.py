"""Where framing members stand: at their spacing from the left end, and one at the far end.

The end members are taken at the very ends of the framing, where their center is in truth half
their thickness in.
"""

from __future__ import annotations

import math

from leanto.building.block_shape import plan_ft, side_length_ft
from leanto.building.kinds import FloorKind, RoofForm, Side
from leanto.building.model import Block, Framing
from leanto.building.roof_shape import rakes_ft
from leanto.building.surface import FramingGrid
from leanto.building.union import SAME_FT


def positions_ft(length_ft: float, spacing_ft: float) -> tuple[float, ...]:
    """Member centers along a length: one more than there are spaces, a short last space counted."""
    if length_ft <= 0 or spacing_ft <= 0:
        raise ValueError(f"no framing over {length_ft} ft at {spacing_ft} ft")
    spaces = max(1, math.ceil((length_ft - SAME_FT) / spacing_ft))
    return (*(number * spacing_ft for number in range(spaces)), length_ft)


def wall_grid(block: Block, side: Side, *, inside: bool) -> FramingGrid:
    """The studs of a wall; both faces show the same studs, so the inside is mirrored."""
    width = side_length_ft(block, side)
    outside = positions_ft(width, block.walls.spacing)
    studs = tuple(width - at for at in reversed(outside)) if inside else outside
    return _grid(block.walls, studs, runs_up=True)


def slope_grid(block: Block, side: Side) -> FramingGrid:
    """The rafters of a slope, over the walls; a rake that stands out carries one at its edge."""
    left, right = rakes_ft(block, side)
    wall = side_length_ft(block, side)
    rafters = tuple(left + at for at in positions_ft(wall, block.roof.spacing))
    if block.roof.form is not RoofForm.HIP:
        rafters = (
            *((0.0,) if left > SAME_FT else ()),
            *rafters,
            *((left + wall + right,) if right > SAME_FT else ()),
        )
    return _grid(block.roof, rafters, runs_up=True)


def ceiling_grid(block: Block) -> FramingGrid:
    """Ceiling joists across the short way; open to the roof, the rafters across the ridge."""
    if block.ceiling is not None:
        return _across_short_way(block, block.ceiling)
    runs_up = block.ridge_runs == "east-west"
    if block.roof.form is RoofForm.HIP:
        runs_up = _is_long_east_west(block)
    along = plan_ft(block)[0 if runs_up else 1]
    return _grid(block.roof, positions_ft(along, block.roof.spacing), runs_up=runs_up)


def floor_grid(block: Block) -> FramingGrid | None:
    """Floor joists or sleepers across the short way; None for a slab or dirt floor."""
    if block.floor.kind in (FloorKind.SLAB, FloorKind.DIRT):
        return None
    return _across_short_way(block, block.floor)


def _across_short_way(block: Block, framing: Framing) -> FramingGrid:
    runs_up = _is_long_east_west(block)
    return _grid(framing, positions_ft(max(plan_ft(block)), framing.spacing), runs_up=runs_up)


def _is_long_east_west(block: Block) -> bool:
    east_west, north_south = plan_ft(block)
    return east_west >= north_south


def _grid(framing: Framing, positions: tuple[float, ...], *, runs_up: bool) -> FramingGrid:
    return FramingGrid(
        positions_ft=positions,
        runs="up" if runs_up else "across",
        spacing_ft=framing.spacing,
        member=framing.member,
        full_size=framing.full_size,
    )
