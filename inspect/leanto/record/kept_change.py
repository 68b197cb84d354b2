"""A change as it stands now: what was asked for, and what both agreed on."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import date
from decimal import Decimal

from leanto.record.agreed_entry import AskedLine


@dataclass(frozen=True, slots=True)
class KeptChange:
    number: int
    lines: tuple[AskedLine, ...]
    asked_on: date
    settled_usd: Decimal | None = None
    """None while it is open; 0 where nothing is to be done."""
    settled_on: date | None = None

    @property
    def openings(self) -> tuple[int, ...]:
        return tuple(dict.fromkeys(line.opening for line in self.lines))
