"""Bids as they stand now: the form that went out, and what came back."""

from __future__ import annotations

from dataclasses import dataclass, field
from datetime import date


@dataclass(frozen=True, slots=True)
class KeptBid:
    """A returned form as it was typed, with the owner's readings of what was not clear."""

    digest: str
    """SHA-256 of the returned file."""
    file_name: str
    bidder: str
    fields: dict[str, str]
    answers: dict[str, str] = field(default_factory=dict)
    """By field."""
    added_on: date | None = None
