"""How a measure compares with a published table."""

from __future__ import annotations

from dataclasses import dataclass
from enum import StrEnum

from leanto.source import Source


class Outcome(StrEnum):
    """The words for a comparison; none of them says that a building can be trusted."""

    PASSES = "passes by the table"
    FAILS = "does not pass"
    UNDECIDED = "undecided"
    """Something needed is not known, or the sources differ."""


@dataclass(frozen=True, slots=True)
class Check:
    """A comparison with the reasons that decided it and where its limits come from."""

    outcome: Outcome
    reasons: tuple[str, ...]
    sources: tuple[Source, ...]
