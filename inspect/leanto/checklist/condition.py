"""The five answers to a checklist item."""

from __future__ import annotations

from enum import StrEnum


class Condition(StrEnum):
    SOUND = "sound"
    WORN = "worn"
    FAILED = "failed"
    NO_ACCESS = "no access"
    NOT_THERE = "not there"

    @property
    def needs_measures(self) -> bool:
        return self in (Condition.WORN, Condition.FAILED)
