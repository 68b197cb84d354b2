"""What is not there and should be: prices, rules for an answer, works for a lining."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from leanto.building.kinds import Lining
from leanto.errors import Problem
from leanto.library.parts import Parts
from leanto.rules.compiled import CompiledRule
from leanto.rules.load import unanswered
from leanto.rules.model import RESERVED_WORKS


def gaps(parts: Parts, rules: Sequence[CompiledRule]) -> Iterator[Problem]:
    """A Problem for each work without price, answer without rule, lining without works."""
    for work_id, work in parts.works.items():
        if work_id in RESERVED_WORKS:
            yield work.problem(("id",), f"'{work_id}' is kept for gut or keep.", "Choose another.")
        elif work_id not in parts.prices and parts.has_all("prices"):
            yield work.problem(("id",), f"'{work_id}' has no price.", "Add one under prices/.")
    if parts.has_all("rules") and len(rules) == len(parts.rules):
        yield from _unanswered(parts, rules)
    yield from _lining_gaps(parts)


def _unanswered(parts: Parts, rules: Sequence[CompiledRule]) -> Iterator[Problem]:
    for item in parts.items.values():
        for condition in unanswered(item.value, rules):
            message = f"No rule says what follows when {item.value.id} is {condition}."
            path = ("answers", condition.value)
            yield item.problem(path, message, "Add one under rules/.")


def _lining_gaps(parts: Parts) -> Iterator[Problem]:
    if parts.hidden is None:
        return
    named = [of_lining.lining for of_lining in parts.hidden.value.linings]
    for index, lining in enumerate(named):
        path = ("linings", index, "lining")
        if lining is Lining.NONE:
            yield parts.hidden.problem(path, "'none' is no lining.", "Take it out.")
        elif lining in named[:index]:
            yield parts.hidden.problem(path, f"'{lining}' stands here twice.", "Keep one.")
    for lining in Lining:
        if lining is not Lining.NONE and lining not in named:
            yield parts.hidden.problem(
                ("linings",), f"There is no entry for '{lining}'.", "Add it."
            )
