"""Where one block stands against another."""

from __future__ import annotations

from leanto.building.block_shape import joined_side, side_length_ft, wall_height_ft
from leanto.building.kinds import Side
from leanto.building.model import Block, Building
from leanto.building.rectangle import Rectangle


def blocks_against(building: Building, block: Block, side: Side) -> tuple[Block, ...]:
    """The blocks that stand against that side, from the left as seen from outside."""
    against = [
        other
        for other in building.blocks
        if other.attached and (other.attached.to, other.attached.side) == (block.id, side)
    ]
    return tuple(sorted(against, key=_offset_ft))


def hidden_part(other: Block) -> Rectangle:
    """What an attached block hides of the wall it stands against, in that wall's coordinates.

    As wide as the block and as high as its roof where they meet. Of a block that meets the wall
    with a gable end, the triangle above its eaves is left out.
    """
    side = joined_side(other)
    if side is None:
        raise ValueError(f"block {other.id} stands alone")
    width = side_length_ft(other, side)
    return Rectangle(_offset_ft(other), 0.0, width, wall_height_ft(other, side))


def _offset_ft(block: Block) -> float:
    return block.attached.offset if block.attached else 0.0
