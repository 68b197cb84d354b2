"""Every entry of the data files by id, each with the place where it stands."""

from __future__ import annotations

from dataclasses import dataclass

from leanto.checklist.model import Caution, Item, Measure
from leanto.cost.price import Price
from leanto.decision.hidden import HiddenFile
from leanto.library.placed import Placed
from leanto.rules.model import Rule
from leanto.scope.work import Work


@dataclass(frozen=True, slots=True)
class Parts:
    items: dict[str, Placed[Item]]
    measures: dict[str, Placed[Measure]]
    cautions: dict[str, Placed[Caution]]
    rules: dict[str, Placed[Rule]]
    works: dict[str, Placed[Work]]
    prices: dict[str, Placed[Price]]
    """By the id of the work."""
    hidden: Placed[HiddenFile] | None
    unread: frozenset[str]
    """Folders, or files of their own, of which something could not be read: ``walk``, ``rules``,
    ``hidden.yaml`` ... A name that leads nowhere may stand there, so it is no problem yet."""

    def has_all(self, *kinds: str) -> bool:
        return self.unread.isdisjoint(kinds)
