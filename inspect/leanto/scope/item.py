"""Repair items: pieces of work with quantity, place, trade and reasons."""

from __future__ import annotations

from dataclasses import dataclass

from leanto.building.rectangle import Rectangle
from leanto.scope.work import Work


@dataclass(frozen=True, slots=True)
class RepairItem:
    """A piece of work at a place, merged from every finding that calls for it."""

    id: str
    """``<work>@<surface, block or building>``; the identity a bidder's line is matched by."""
    work: Work
    place: str
    """The surface's, block's or building's name."""
    surface_id: str | None
    quantity: float
    """Net, in the unit of the work."""
    bought: float
    """With waste and rounded up to purchases, in the unit of the work."""
    purchases: int | None
    """How many of ``work.purchase`` that is."""
    zones: tuple[Rectangle, ...]
    """The united, widened zones it was counted from; empty when it covers the whole surface."""
    findings: tuple[str, ...]
    """Ids of the findings that call for it; empty when it follows from gut or keep alone."""
    reason: str
    """How the quantity came about, in words."""
    poor_access: bool = False
    """True when it is done through an opened patch instead of bare framing."""


@dataclass(frozen=True, slots=True)
class Scope:
    """All repair items, in order of work."""

    items: tuple[RepairItem, ...]

    def for_surface(self, surface_id: str) -> tuple[RepairItem, ...]:
        return tuple(item for item in self.items if item.surface_id == surface_id)
