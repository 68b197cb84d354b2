"""What the owner changed about the scope: marks, quantities, notes and added lines."""

from __future__ import annotations

from dataclasses import dataclass, field
from datetime import datetime


@dataclass(frozen=True, slots=True)
class ScopeEdit:
    """The owner's changes to one repair item, as they stand now."""

    item_id: str
    mark: str = "plain"
    """``plain``, ``struck``, ``by owner`` or ``alternate``."""
    quantity: float | None = None
    """In the unit of the work; None where ours stands."""
    reason: str = ""
    """For the quantity."""
    note: str = ""
    """Goes to the bidders with the line."""
    who: str = field(default="", compare=False)
    """Who entered the last change; how it came about is not what it is."""
    at: datetime | None = field(default=None, compare=False)

    @property
    def says_something(self) -> bool:
        """False once everything was taken back."""
        return self.mark != "plain" or self.quantity is not None or bool(self.note)


@dataclass(frozen=True, slots=True)
class AddedLine:
    """A repair item that the owner added by hand."""

    id: str
    """``<work>@<surface or building>+<number>``, counted over all added lines."""
    work: str
    surface_id: str | None
    place: str
    """In words; empty for the name of the surface, or for the whole building."""
    quantity: float
    note: str
    """Goes to the bidders with the line."""
    who: str = field(default="", compare=False)
    at: datetime | None = field(default=None, compare=False)

    @property
    def number(self) -> int:
        return int(self.id.rpartition("+")[2])
