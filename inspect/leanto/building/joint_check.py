"""What does not hold together between blocks."""

from __future__ import annotations

from collections.abc import Iterator

from leanto.building import polygon
from leanto.building.block_shape import joined_side, side_length_ft, wall_height_ft, wall_outline
from leanto.building.joints import blocks_against, hidden_part
from leanto.building.kinds import RoofForm, Side
from leanto.building.model import Attachment, Block, Building
from leanto.building.zones import SLACK_FT
from leanto.quantities import format_ft_in

Fault = tuple[str, str]


def joint_problems(building: Building) -> Iterator[Fault]:
    """Blocks that stand apart, nowhere, in a circle, too high, past the end or in one place."""
    blocks = {block.id: block for block in building.blocks}
    if len(blocks) < len(building.blocks):
        return
    alone = [index for index, block in enumerate(building.blocks) if block.attached is None]
    for index in alone[1:]:
        first = building.blocks[alone[0]].id
        yield f"blocks.{index}.attached", f"Say where this block stands against {first}."
    for index, block in enumerate(building.blocks):
        if block.attached is None:
            continue
        field = f"blocks.{index}.attached"
        other = blocks.get(block.attached.to)
        if other is None:
            known = ", ".join(id_ for id_ in blocks if id_ != block.id)
            message = f"There is no block {block.attached.to}"
            yield f"{field}.to", f"{message}; others here are {known}." if known else f"{message}."
        elif _goes_in_a_circle(block, blocks):
            yield f"{field}.to", "These blocks stand against each other in a circle."
        elif block.attached.side is joined_side(other):
            yield f"{field}.side", f"{other.id} has no {block.attached.side} wall of its own."
        else:
            roof_field = f"blocks.{index}.roof"
            yield from _roof_problems(block, block.attached, roof_field)
            yield from _fit_problems(block, block.attached, other, field)
    yield from _crowded(building)


def _goes_in_a_circle(block: Block, blocks: dict[str, Block]) -> bool:
    met: set[str] = set()
    at: Block | None = block
    while at is not None and at.attached is not None:
        if at.id in met:
            return True
        met.add(at.id)
        at = blocks.get(at.attached.to)
    return False


def _roof_problems(block: Block, attached: Attachment, field: str) -> Iterator[Fault]:
    high_side = attached.side.opposite
    if block.roof.form is RoofForm.SHED and block.roof.high_side is not high_side:
        yield (
            f"{field}.high_side",
            f"The high side must be {high_side}, where the block stands against {attached.to}.",
        )
    if block.roof.form is RoofForm.HIP:
        yield f"{field}.form", "A block that stands against another cannot have a hip roof."


def _fit_problems(block: Block, attached: Attachment, other: Block, field: str) -> Iterator[Fault]:
    side = attached.side
    wall = f"{other.id}'s {side} wall"
    wall_length = side_length_ft(other, side)
    own_side = side.opposite
    own_length = side_length_ft(block, own_side)
    past = attached.offset + own_length - wall_length
    if past > SLACK_FT:
        yield (
            f"{field}.offset",
            f"{block.id} is {format_ft_in(own_length)} long there and runs {format_ft_in(past)} "
            f"past the end of {wall}, which is {format_ft_in(wall_length)} long.",
        )
        return
    outline = wall_outline(other, side, inside=False)
    if not polygon.holds(outline, hidden_part(block), SLACK_FT):
        yield (
            field,
            f"{block.id} is {format_ft_in(wall_height_ft(block, own_side))} high where it meets "
            f"{wall}, higher than that wall; check its eave height and pitch.",
        )


def _crowded(building: Building) -> Iterator[Fault]:
    """Blocks that stand in the same place against one wall."""
    index_of = {block.id: index for index, block in enumerate(building.blocks)}
    for block in building.blocks:
        for side in Side:
            end_ft, last = 0.0, ""
            for other in blocks_against(building, block, side):
                part = hidden_part(other)
                if last and part.left_ft < end_ft - SLACK_FT:
                    field = f"blocks.{index_of[other.id]}.attached.offset"
                    yield field, f"{other.id} overlaps {last} on {block.id}'s {side} wall."
                end_ft, last = max(end_ft, part.right_ft), other.id
