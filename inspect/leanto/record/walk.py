"""The walk as it stands now, folded from the record's entries."""

from __future__ import annotations

from dataclasses import dataclass, field

from leanto.building.model import Building
from leanto.quantities import System
from leanto.record.agreed_entry import BidAwarded, Opened, Paid
from leanto.record.bid_entry import SentForm
from leanto.record.kept_bid import KeptBid
from leanto.record.kept_change import KeptChange
from leanto.record.observation import Air, Observation, ObservationKey, Overruling
from leanto.record.scope_edit import AddedLine, ScopeEdit


@dataclass(frozen=True, slots=True)
class Walk:
    """Current state: a pure fold of entries; see ``leanto.record.fold``."""

    building: Building | None = None
    observations: dict[ObservationKey, Observation] = field(default_factory=dict)
    air: dict[str, Air] = field(default_factory=dict)
    overrulings: dict[str, Overruling] = field(default_factory=dict)
    scope_edits: dict[str, ScopeEdit] = field(default_factory=dict)
    """By the id of the repair item."""
    added_lines: tuple[AddedLine, ...] = ()
    """Repair items that the owner added, in the order they were added."""
    forms_sent: tuple[SentForm, ...] = ()
    """Bid forms that went out, the latest last."""
    bids: dict[str, KeptBid] = field(default_factory=dict)
    """By the digest of the returned file, in the order they were added."""
    award: BidAwarded | None = None
    """The bid that was chosen last, with its baseline."""
    payments: dict[int, Paid] = field(default_factory=dict)
    """By number, in the order they were entered; struck ones left out."""
    openings: dict[int, Opened] = field(default_factory=dict)
    """Likewise."""
    changes: dict[int, KeptChange] = field(default_factory=dict)
    """By number."""
    station: str = ""
    """Where the walker stood last."""
    item: str = ""
    units: System = System.FEET
    """What amounts are shown in; they are kept alike in both."""
