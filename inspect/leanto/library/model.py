"""Everything that is data, in one value."""

from __future__ import annotations

from dataclasses import dataclass

from leanto.checklist.model import Checklist
from leanto.cost.feed_materials import FeedMaterials
from leanto.cost.price import Factors, Price
from leanto.decision.hidden import HiddenFile
from leanto.rules.compiled import CompiledRule
from leanto.scope.work import Work
from leanto.trade.tables import NO_OWN, OwnTables


@dataclass(frozen=True, slots=True)
class Library:
    """Everything that is data, cross-checked."""

    checklist: Checklist
    rules: tuple[CompiledRule, ...]
    """In the order in which they are judged."""
    works: dict[str, Work]
    prices: dict[str, Price]
    """By the id of the work."""
    factors: Factors
    hidden: HiddenFile
    versions: dict[str, str]
    """Content hash by kind of file, printed in every report."""
    feed_materials: FeedMaterials | None = None
    """What the ways of running a feed are priced by; None prices none of them."""
    tables: OwnTables = NO_OWN
    """Tables of the owner's own, in place of shipped ones."""
