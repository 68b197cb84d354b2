"""Openings that do not fit where they are said to be."""

from __future__ import annotations

from collections.abc import Iterator

from leanto.building import polygon
from leanto.building.block_shape import wall_outline, wall_sides
from leanto.building.joints import blocks_against, hidden_part
from leanto.building.kinds import OpeningKind
from leanto.building.model import Building, Opening
from leanto.building.rectangle import Rectangle
from leanto.building.roof_shape import slope_outline, slope_sides
from leanto.building.surface import Point
from leanto.building.zones import SLACK_FT
from leanto.quantities import format_ft_in

Fault = tuple[str, str]

_ON_WALLS_ONLY = (OpeningKind.DOOR, OpeningKind.BIG_DOOR, OpeningKind.WINDOW)


def opening_problems(building: Building) -> Iterator[Fault]:
    """Openings on no surface, without size, past an edge, across a lean-to, or overlapping.

    The blocks must fit together.
    """
    outlines = _outlines(building)
    hidden = _hidden(building)
    placed: dict[str, list[tuple[str, Rectangle]]] = {}
    for index, opening in enumerate(building.openings):
        field = f"openings.{index}"
        outline = outlines.get(opening.on)
        if outline is None:
            known = ", ".join(outlines)
            yield f"{field}.on", f"There is no {opening.on} here; openings can be on {known}."
            continue
        is_empty = [name for name in ("width", "height") if getattr(opening, name) <= 0]
        for name in is_empty:
            yield f"{field}.{name}", f"The {name} of {opening.id} must be more than zero."
        if is_empty:
            continue
        yield from _misplaced(opening, field)
        rectangle = Rectangle(opening.from_left, opening.from_bottom, opening.width, opening.height)
        yield from _past_an_edge(opening, rectangle, outline, field)
        for part in hidden.get(opening.on, []):
            if rectangle.reaches_into(part, SLACK_FT) and not polygon.holds(
                part.corners, rectangle, SLACK_FT
            ):
                message = f"{opening.id} is partly hidden by the block that stands against the wall"
                yield f"{field}.from_left", f"{message}."
        for other, taken in placed.get(opening.on, []):
            if rectangle.reaches_into(taken, SLACK_FT):
                yield f"{field}.from_left", f"{opening.id} overlaps {other}."
        placed.setdefault(opening.on, []).append((opening.id, rectangle))


def _outlines(building: Building) -> dict[str, tuple[Point, ...]]:
    """By what an opening may be on."""
    outlines: dict[str, tuple[Point, ...]] = {}
    for block in building.blocks:
        for side in wall_sides(block):
            outlines[f"{block.id}.{side}"] = wall_outline(block, side, inside=False)
        for side in slope_sides(block):
            outlines[f"{block.id}.roof.{side}"] = slope_outline(block, side)
    return outlines


def _hidden(building: Building) -> dict[str, list[Rectangle]]:
    return {
        f"{block.id}.{side}": [
            hidden_part(other) for other in blocks_against(building, block, side)
        ]
        for block in building.blocks
        for side in wall_sides(block)
    }


def _misplaced(opening: Opening, field: str) -> Iterator[Fault]:
    is_on_roof = ".roof." in opening.on
    if is_on_roof and opening.kind in _ON_WALLS_ONLY:
        yield f"{field}.kind", f"A {opening.kind} stands in a wall, not in a roof."
    if not is_on_roof and opening.kind is OpeningKind.SKYLIGHT:
        yield f"{field}.kind", "A skylight lies in a roof, not in a wall."


def _past_an_edge(
    opening: Opening, rectangle: Rectangle, outline: tuple[Point, ...], field: str
) -> Iterator[Fault]:
    width, height = polygon.size_ft(outline)
    size = f"{opening.on} is {format_ft_in(width)} wide and {format_ft_in(height)} high"
    fits = True
    if (past := rectangle.right_ft - width) > SLACK_FT:
        fits = False
        yield f"{field}.from_left", _past(opening, past, "the right end", size)
    if (past := rectangle.top_ft - height) > SLACK_FT:
        fits = False
        yield f"{field}.from_bottom", _past(opening, past, "the top", size)
    if fits and not polygon.holds(outline, rectangle, SLACK_FT):
        yield f"{field}.from_bottom", f"{opening.id} runs past the sloping edge; {size}."


def _past(opening: Opening, past_ft: float, where: str, size: str) -> str:
    return f"{opening.id} runs {format_ft_in(past_ft)} past {where}; {size}."
