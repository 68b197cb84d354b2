"""The best combination of courses over all lined surfaces.

Surfaces share the set-up of a gutted room and the minimum charge of each work, so that the best
answer for all is not always the best answer for each.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass

from leanto.decision.model import Course, CourseCost

MOST_EXACT = 16
"""Up to so many free surfaces every combination is compared; beyond, one at a time is changed."""


@dataclass(frozen=True, slots=True)
class Choice:
    """Both courses of one surface; ``fixed`` when there is nothing to choose."""

    keep: CourseCost
    gut: CourseCost
    setup_usd: float
    """This surface's part of the set-up, which is in the gut course's expected cost."""
    fixed: Course | None = None


@dataclass(frozen=True, slots=True)
class Shared:
    """What surfaces share: the set-up of gutting, and the minimum charge of each work."""

    setup_usd: float
    minimum_by_work: Mapping[str, float]


@dataclass(frozen=True, slots=True)
class Best:
    courses: tuple[Course, ...]
    expected_usd: float
    is_exact: bool


def combined_cost(choices: Sequence[Choice], courses: Sequence[Course], shared: Shared) -> float:
    """The expected cost of one combination, in dollars."""
    total = shared.setup_usd if Course.GUT in courses else 0.0
    by_work: dict[str, float] = {}
    for choice, course in zip(choices, courses, strict=True):
        cost = choice.gut if course is Course.GUT else choice.keep
        total += cost.expected - (choice.setup_usd if course is Course.GUT else 0.0)
        for work, likely in cost.likely_by_work.items():
            by_work[work] = by_work.get(work, 0.0) + likely
    return total + _shortfall(by_work, shared)


def best_combination(choices: Sequence[Choice], shared: Shared) -> Best:
    """The cheapest courses of all surfaces together; ties go to keeping.

    Exact for up to ``MOST_EXACT`` free surfaces, where all 2^n combinations are compared. Beyond,
    single surfaces are changed from the single answers until no change helps.
    """
    free = [index for index, choice in enumerate(choices) if choice.fixed is None]
    start = [
        choice.fixed or (Course.GUT if choice.gut.expected < choice.keep.expected else Course.KEEP)
        for choice in choices
    ]
    if len(free) > MOST_EXACT:
        return _improved(choices, start, free, shared)
    return _of_all(choices, start, free, shared)


def _of_all(
    choices: Sequence[Choice], start: list[Course], free: Sequence[int], shared: Shared
) -> Best:
    """Every combination, each reached from the one before by changing one surface (Gray code)."""
    courses = list(start)
    for index in free:
        courses[index] = Course.KEEP
    running = _Running(choices, courses, shared)
    best, least = list(courses), running.total()
    for step in range(1, 2 ** len(free)):
        index = free[(step & -step).bit_length() - 1]
        running.change(index)
        cost = running.total()
        if cost < least - 1e-6:
            best, least = list(running.courses), cost
    return Best(tuple(best), combined_cost(choices, best, shared), True)


class _Running:
    """The cost of a combination, kept up to date while single surfaces change."""

    def __init__(
        self, choices: Sequence[Choice], courses: Sequence[Course], shared: Shared
    ) -> None:
        self.courses = list(courses)
        self._choices, self._shared = choices, shared
        self._own = 0.0
        self._by_work: dict[str, float] = {}
        for index in range(len(choices)):
            self._count(index, 1)

    def change(self, index: int) -> None:
        self._count(index, -1)
        other = Course.KEEP if self.courses[index] is Course.GUT else Course.GUT
        self.courses[index] = other
        self._count(index, 1)

    def total(self) -> float:
        setup = self._shared.setup_usd if Course.GUT in self.courses else 0.0
        return self._own + setup + _shortfall(self._by_work, self._shared)

    def _count(self, index: int, sign: int) -> None:
        choice = self._choices[index]
        is_gut = self.courses[index] is Course.GUT
        cost = choice.gut if is_gut else choice.keep
        self._own += sign * (cost.expected - (choice.setup_usd if is_gut else 0.0))
        for work in cost.likely_by_work.keys() & self._shared.minimum_by_work.keys():
            likely = sign * cost.likely_by_work[work]
            self._by_work[work] = self._by_work.get(work, 0.0) + likely


def _shortfall(by_work: Mapping[str, float], shared: Shared) -> float:
    """What is missing to the minimum charges of the works that are used."""
    return sum(
        max(0.0, shared.minimum_by_work.get(work, 0.0) - likely)
        for work, likely in by_work.items()
        if likely > 1e-6
    )


def _improved(
    choices: Sequence[Choice], start: list[Course], free: Sequence[int], shared: Shared
) -> Best:
    courses, least = list(start), combined_cost(choices, start, shared)
    changed = True
    while changed:
        changed = False
        for index in free:
            other = list(courses)
            other[index] = Course.KEEP if courses[index] is Course.GUT else Course.GUT
            cost = combined_cost(choices, other, shared)
            if cost < least - 1e-9:
                courses, least, changed = other, cost, True
    return Best(tuple(courses), least, False)
