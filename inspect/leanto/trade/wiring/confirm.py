"""What every wiring answer says of itself: who confirms it, and which code edition it is from."""

from __future__ import annotations

from dataclasses import dataclass
from enum import StrEnum

from leanto.source import Source

CONFIRM = "for a licensed electrician to confirm"
EDITION = "2020"
EDITION_NOTE = (
    "Numbers are from NFPA 70 (National Electrical Code), 2020 edition, unless a line names "
    "another. The edition adopted locally, and its local changes, govern."
)
LOOK_ONLY = (
    "Look and photograph only. Do not open, touch, pull, dig or reset. Treat every wire as live."
)


def code(place: str, *, edition: str = EDITION, from_memory: bool = False) -> Source:
    """A citation of the electrical code at a section or table."""
    return Source(
        "NFPA 70 (National Electrical Code)",
        edition,
        place,
        "from memory" if from_memory else "seen",
    )


class Verdict(StrEnum):
    """How a number stands against the table. None of these words means safe."""

    PASSES = "passes by the table"
    DOES_NOT_PASS = "does not pass"
    ASK = "ask an electrician"


@dataclass(frozen=True, slots=True)
class Check:
    """One comparison with a table, and why it came out so."""

    verdict: Verdict
    reason: str
    source: Source
    confirm: str = CONFIRM


@dataclass(frozen=True, slots=True)
class Step:
    """One line of working that a report can print."""

    label: str
    working: str
    """The sum in words and figures, such as ``2 x 48 A x 140 ft x 0.491 ohm/kft / 1000``."""
    result: str
    source: Source
