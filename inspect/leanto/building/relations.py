"""Which surfaces bear on one another: the other face, what lies above, what lies beside."""

from __future__ import annotations

from collections.abc import Iterable

from leanto.building.kinds import PlaceKind
from leanto.building.surface import Surface

_WALLS = (PlaceKind.WALL_OUTSIDE, PlaceKind.WALL_INSIDE)


def other_face(surface: Surface, surfaces: Iterable[Surface]) -> Surface | None:
    """The same wall seen from its other side; None for a roof, ceiling or floor."""
    if surface.kind not in _WALLS:
        return None
    for other in surfaces:
        is_same_wall = (other.block, other.side) == (surface.block, surface.side)
        if is_same_wall and other.kind in _WALLS and other.kind is not surface.kind:
            return other
    return None


def above(surface: Surface, surfaces: Iterable[Surface]) -> tuple[Surface, ...]:
    """What water comes down from onto this surface.

    Over a wall: the slope whose eave it carries, under a gable or the end of a shed every slope
    of the block, and the roof of a lean-to that meets the wall. Over a ceiling: the block's
    slopes. Over a floor: the ceiling. Over a roof: nothing.
    """
    at_hand = tuple(surfaces)
    if surface.kind is PlaceKind.FLOOR:
        return tuple(s for s in _of_block(surface, at_hand) if s.kind is PlaceKind.CEILING)
    slopes = tuple(s for s in _of_block(surface, at_hand) if s.kind is PlaceKind.ROOF)
    if surface.kind is PlaceKind.CEILING:
        return slopes
    if surface.kind not in _WALLS:
        return ()
    draining = tuple(slope for slope in slopes if slope.side is surface.side)
    wall = f"{surface.block}.{surface.side}.outside"
    return (draining or slopes) + tuple(s for s in at_hand if s.meets == wall)


def beside(surface: Surface, surfaces: Iterable[Surface]) -> tuple[Surface, ...]:
    """All other surfaces of the same block."""
    return tuple(s for s in _of_block(surface, surfaces) if s.id != surface.id)


def _of_block(surface: Surface, surfaces: Iterable[Surface]) -> tuple[Surface, ...]:
    return tuple(s for s in surfaces if s.block == surface.block)
