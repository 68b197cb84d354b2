"""What does not hold together within one block."""

from __future__ import annotations

from collections.abc import Iterator

from leanto.building.block_shape import joined_side
from leanto.building.model import Building, Framing
from leanto.quantities import format_ft_in

NARROWEST_SPACING_FT = 4 / 12
WIDEST_SPACING_FT = 20.0
"""No framing stands closer or wider; such a number is a slip, often of the unit."""


def framing_problems(building: Building) -> Iterator[tuple[str, str]]:
    """Member spacings that no framing has."""
    for index, block in enumerate(building.blocks):
        parts: dict[str, Framing | None] = {
            "walls": block.walls,
            "roof": block.roof,
            "ceiling": block.ceiling,
            "floor": block.floor,
        }
        for name, framing in parts.items():
            if framing and not NARROWEST_SPACING_FT <= framing.spacing <= WIDEST_SPACING_FT:
                yield (
                    f"blocks.{index}.{name}.spacing",
                    f"A spacing of {format_ft_in(framing.spacing)} is not between "
                    f"{format_ft_in(NARROWEST_SPACING_FT)} and {format_ft_in(WIDEST_SPACING_FT)}.",
                )


def block_problems(building: Building) -> Iterator[tuple[str, str]]:
    """Floor spans longer than the floor, and changes on a wall that is not there."""
    for index, block in enumerate(building.blocks):
        span = block.floor.clear_span
        longest = max(block.length, block.width)
        if span is not None and not 0 < span <= longest:
            yield (
                f"blocks.{index}.floor.clear_span",
                f"A clear span of {format_ft_in(span)} does not fit a floor of "
                f"{format_ft_in(block.length)} by {format_ft_in(block.width)}.",
            )
        joined = joined_side(block)
        if joined in block.on_wall:
            yield (
                f"blocks.{index}.on_wall.{joined}",
                f"{block.id} has no {joined} wall of its own: it stands against another block "
                "there.",
            )
