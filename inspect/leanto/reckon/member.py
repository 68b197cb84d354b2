"""The framing of a building as the span checks want it."""

from __future__ import annotations

from leanto.building.model import Building, Framing
from leanto.building.surface import FramingGrid
from leanto.trade.framing_member import Member
from leanto.trade.sawn_size import Surfacing, sawn_sizes
from leanto.trade.section_loss import Section
from leanto.trade.tables import per_tables

DRESSED_SINCE = 1964
"""Lumber of buildings from this year on is taken to have today's dressed size."""


def member_size_in(framing: Framing | FramingGrid, year_built: int) -> tuple[float, float] | None:
    """Breadth and depth in inches; None for a size that no table holds.

    Of lumber dressed before 1964 the size of that time, else today's where none is published.
    """
    return _size_in(framing.member, framing.full_size, year_built < DRESSED_SINCE)


@per_tables(maxsize=256)
def _size_in(member: str, full_size: bool, is_old: bool) -> tuple[float, float] | None:
    try:
        size = sawn_sizes().size(member)
    except ValueError:
        return None
    if full_size:
        return size.actual_in(Surfacing.FULL)
    has_old = is_old and size.old_dressed_in is not None
    return size.actual_in(Surfacing.OLD_DRESSED if has_old else Surfacing.DRESSED)


def member_of(
    framing: Framing, building: Building, *, remaining: Section | None = None, wet: bool = False
) -> Member | None:
    """The member with the species and grade of the building's lumber; None without a size."""
    size = member_size_in(framing, building.year_built)
    if size is None:
        return None
    lumber = building.lumber
    return Member(
        breadth_in=size[0],
        depth_in=size[1],
        spacing_in=framing.spacing * 12,
        species=lumber.species.name.lower() if lumber.species else None,
        grade=lumber.grade.name.lower() if lumber.grade else None,
        graded=lumber.stamped,
        wet=wet,
        remaining=remaining,
    )


def size_in_words(framing: Framing, building: Building) -> str:
    """The member with its real size, such as ``2x6 (2 x 6 in.) at 24 in.``"""
    size = member_size_in(framing, building.year_built)
    real = f" ({size[0]:g} x {size[1]:g} in.)" if size else ""
    return f"{framing.member}{real} at {framing.spacing * 12:g} in."
