"""How a notch or hole stands against the limits of a code, rule by rule."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from enum import StrEnum
from typing import Final

from leanto.source import Source

_NOISE_IN: Final = 1e-9


class CutKind(StrEnum):
    """How a cut stands against the table of the code."""

    WITHIN = "within the limits"
    OVER = "over the limit"
    ENGINEER = "ask an engineer"


@dataclass(frozen=True, slots=True)
class CutCheck:
    """One rule met or missed, and by how many inches."""

    rule: str
    source: Source
    within: bool
    over_in: float = 0.0
    """Inches over the limit; zero within it or where there is nothing to measure."""


@dataclass(frozen=True, slots=True)
class CutVerdict:
    """Whether a notch or hole is within the limits, with every rule that was looked at."""

    kind: CutKind
    checks: tuple[CutCheck, ...]

    @property
    def missed(self) -> tuple[CutCheck, ...]:
        """The rules that are not met."""
        return tuple(check for check in self.checks if not check.within)

    @property
    def over_in(self) -> float:
        """The most inches over any limit; zero when all are met."""
        return max((check.over_in for check in self.missed), default=0.0)

    @property
    def words(self) -> str:
        """The verdict in a sentence for each missed rule."""
        if self.kind is CutKind.WITHIN:
            sources = dict.fromkeys(str(check.source) for check in self.checks)
            return f"Within the limits of {', '.join(sources)}."
        return " ".join(f"{check.rule} ({check.source})." for check in self.missed)


def at_most(what: str, measured_in: float, limit_in: float, source: Source) -> CutCheck:
    """The check that a measure is no more than its limit."""
    rule = f"{what[0].upper()}{what[1:]}, {limit_in:.3g} in. allowed"
    return _measured(rule, source, measured_in - limit_in)


def at_least(what: str, measured_in: float, limit_in: float, source: Source) -> CutCheck:
    """The check that a measure is no less than its limit."""
    rule = f"{what[0].upper()}{what[1:]}, {limit_in:.3g} in. needed"
    return _measured(rule, source, limit_in - measured_in)


def never(rule: str, source: Source, over_in: float = 0.0) -> CutCheck:
    """The check of something that is not allowed at any size."""
    return CutCheck(rule, source, within=False, over_in=over_in)


def cut_verdict(checks: Sequence[CutCheck]) -> CutVerdict:
    """Within the limits when every check is met, else over the limit."""
    met = all(check.within for check in checks)
    return CutVerdict(CutKind.WITHIN if met else CutKind.OVER, tuple(checks))


def need_positive(**values: float) -> None:
    """ValueError naming the first measure that is zero or less."""
    for name, value in values.items():
        if value <= 0:
            raise ValueError(f"{name} must be more than zero, not {value}")


def need_none_negative(**values: float) -> None:
    """ValueError naming the first measure below zero."""
    for name, value in values.items():
        if value < 0:
            raise ValueError(f"{name} must be zero or more, not {value}")


def _measured(rule: str, source: Source, over_in: float) -> CutCheck:
    within = over_in <= _NOISE_IN
    return CutCheck(rule, source, within, 0.0 if within else over_in)
