"""What the owner does with a repair item."""

from __future__ import annotations

from enum import StrEnum


class Mark(StrEnum):
    PLAIN = "plain"
    STRUCK = "struck"
    """Left out: it is listed, and counts nowhere."""
    BY_OWNER = "by owner"
    """The owner does it: materials cost money, labor does not, and no bidder prices it."""
    ALTERNATE = "alternate"
    """Priced apart by every bidder, as an amount to add; it is in no total."""
