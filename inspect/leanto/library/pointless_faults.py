"""What is wrong with the earlier answers that are said to make an item pointless."""

from __future__ import annotations

from collections.abc import Iterator

from leanto.checklist.condition import Condition
from leanto.checklist.model import Item, PointlessAfter, Reach
from leanto.errors import Problem
from leanto.library.parts import Parts
from leanto.library.placed import Placed
from leanto.rules.circle import circle_in
from leanto.rules.syntax import nearest

_KEY = "pointless_after"


def pointless_faults(parts: Parts) -> Iterator[Problem]:
    """A Problem for each item, measure or choice that is not there, and for a circle of items."""
    if not parts.has_all("walk"):
        return
    for entry in parts.items.values():
        for index, after in enumerate(entry.value.pointless_after):
            yield from _faults_of(entry, index, after, parts)
    graph = {
        item_id: [after.item for after in entry.value.pointless_after]
        for item_id, entry in parts.items.items()
    }
    if circle := circle_in(graph)[::-1]:
        message = "These items make each other pointless: " + " -> ".join(circle) + "."
        yield parts.items[circle[0]].problem((_KEY,), message, "Take one out.")


def _faults_of(
    entry: Placed[Item], index: int, after: PointlessAfter, parts: Parts
) -> Iterator[Problem]:
    path = (_KEY, index, "item")
    placed = parts.items.get(after.item)
    if placed is None:
        message = f"There is no item '{after.item}'."
        yield entry.problem(path, message, nearest(after.item, parts.items))
        return
    earlier = placed.value
    if after.where is Reach.HERE and not set(earlier.at) & set(entry.value.at):
        message = f"'{after.item}' is never asked where {entry.value.id} is."
        yield entry.problem(path, message, "Write where: anywhere, or where: everywhere.")
    if after.measure:
        yield from _measure_faults(entry, index, after, earlier, parts)


def _measure_faults(
    entry: Placed[Item], index: int, after: PointlessAfter, earlier: Item, parts: Parts
) -> Iterator[Problem]:
    path = (_KEY, index, "measure")
    asked = {
        condition: answer.measures if (answer := earlier.answer(condition)) else ()
        for condition in after.answers
    }
    silent = [condition for condition, measures in asked.items() if after.measure not in measures]
    if silent:
        message = f"'{after.item}' does not ask for {after.measure} when it is {_said(silent)}."
        known = {name for measures in asked.values() for name in measures} - {after.measure}
        yield entry.problem(path, message, nearest(after.measure, known) or "Take that answer out.")
        return
    placed = parts.measures.get(after.measure)
    if placed is None:  # the item that asks for it is told already
        return
    measure = placed.value
    if measure.unit != "choice":
        message = (
            f"'{after.measure}' is entered in {measure.unit}; only a choice can be named here."
        )
        yield entry.problem(path, message, "Leave measure and choices out.")
        return
    for choice in after.choices:
        if choice not in measure.choices:
            message = f"'{after.measure}' is never '{choice}'."
            remedy = nearest(choice, measure.choices) or f"One of: {', '.join(measure.choices)}."
            yield entry.problem((_KEY, index, "choices"), message, remedy)


def _said(conditions: list[Condition]) -> str:
    return " or ".join(condition.value for condition in conditions)
