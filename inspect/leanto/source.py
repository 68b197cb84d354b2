"""Where a number comes from."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal

Mark = Literal["seen", "from memory", "common practice, no source"]


@dataclass(frozen=True, slots=True)
class Source:
    """A citation that stands beside a constant, a table, a rule or a check."""

    title: str
    edition: str = ""
    place: str = ""
    """Section, table, figure or page."""
    mark: Mark = "seen"
    """Whether the value was read in the source, recalled, or is a rule of thumb."""

    def __str__(self) -> str:
        cited = ", ".join(part for part in (self.title, self.edition, self.place) if part)
        return cited if self.mark == "seen" else f"{cited} ({self.mark})"


COMMON_PRACTICE = Source("Common practice", mark="common practice, no source")
