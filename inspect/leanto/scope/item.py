"""Repair items: pieces of work with quantity, place, trade and reasons."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import datetime

from leanto.building.rectangle import Rectangle
from leanto.scope.mark import Mark
from leanto.scope.work import Work


@dataclass(frozen=True, slots=True)
class RepairItem:
    """A piece of work at a place, merged from every finding that calls for it."""

    id: str
    """``<work>@<surface, block or building>``; the identity a bidder's line is matched by. One that
    the owner added ends in ``+<number>``."""
    work: Work
    place: str
    """The surface's, block's or building's name."""
    surface_id: str | None
    quantity: float
    """Net, in the unit of the work."""
    bought: float
    """With waste and rounded up to purchases, in the unit of the work; of purchases for more than
    one place this place's share."""
    purchases: int | None
    """How many of ``work.purchase`` are bought, for all places of the work together."""
    zones: tuple[Rectangle, ...]
    """The united, widened zones it was counted from; empty when it covers the whole surface."""
    findings: tuple[str, ...]
    """Ids of the findings that call for it; empty when it follows from gut or keep alone."""
    reason: str
    """How the quantity came about, in words."""
    poor_access: bool = False
    """True when it is done through an opened patch instead of bare framing."""
    is_bought_together: bool = False
    """True when the purchases serve other places as well."""
    mark: Mark = Mark.PLAIN
    computed_quantity: float | None = None
    """What the walk gave, where the owner's quantity stands in its place; None otherwise."""
    quantity_reason: str = ""
    """The owner's reason for another quantity; it stays with the owner."""
    note_to_bidders: str = ""
    added_by_hand: bool = False


@dataclass(frozen=True, slots=True)
class Struck:
    """A repair item that the owner took out of the scope."""

    item: RepairItem
    who: str
    at: datetime | None


@dataclass(frozen=True, slots=True)
class Scope:
    """All repair items, in order of work."""

    items: tuple[RepairItem, ...]
    """What is to be done: plain lines and those by the owner."""
    alternates: tuple[RepairItem, ...] = ()
    """Priced apart; in no total."""
    struck: tuple[Struck, ...] = ()
    without_effect: tuple[str, ...] = ()
    """Changes by the owner that the scope cannot follow now, a sentence each."""

    def for_surface(self, surface_id: str) -> tuple[RepairItem, ...]:
        return tuple(item for item in self.items if item.surface_id == surface_id)

    @property
    def by_owner(self) -> tuple[RepairItem, ...]:
        return tuple(item for item in self.items if item.mark is Mark.BY_OWNER)

    @property
    def for_bidders(self) -> tuple[RepairItem, ...]:
        """The lines that bidders price in their base bid."""
        return tuple(item for item in self.items if item.mark is not Mark.BY_OWNER)

    def named(self, item_id: str) -> RepairItem | None:
        """The item of this id wherever it stands, struck ones too; None when there is none."""
        everything = (*self.items, *self.alternates, *(one.item for one in self.struck))
        return next((item for item in everything if item.id == item_id), None)
