"""What does not hold together in a building, beyond what each of its fields can tell."""

from __future__ import annotations

from collections.abc import Iterable, Iterator

from leanto.building.block_check import block_problems, framing_problems
from leanto.building.joint_check import joint_problems
from leanto.building.model import Building
from leanto.building.opening_check import opening_problems

Fault = tuple[str, str]
"""(field path such as ``openings.2.from_left``, message)."""


def building_problems(building: Building) -> list[Fault]:
    """Every fault as (field path, message); none means that surfaces and stations can be made.

    Openings are looked at once the blocks fit together, as walls have no sizes before.
    """
    problems = [
        *_twice((block.id for block in building.blocks), "blocks", "block"),
        *_twice((opening.id for opening in building.openings), "openings", "opening"),
        *framing_problems(building),
        *block_problems(building),
        *joint_problems(building),
    ]
    return problems if problems else list(opening_problems(building))


def _twice(ids: Iterable[str], field: str, noun: str) -> Iterator[Fault]:
    seen: set[str] = set()
    for index, id_ in enumerate(ids):
        if id_ in seen:
            yield f"{field}.{index}.id", f"Another {noun} is already called {id_}."
        seen.add(id_)
