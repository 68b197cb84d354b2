"""Whether names point at each other in a circle."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from graphlib import CycleError, TopologicalSorter


def circle_in(graph: Mapping[str, Iterable[str]]) -> tuple[str, ...]:
    """Names each of which is pointed at by the next, the first one again at the end.

    ``graph`` has the names that each one points at. Empty when there is no circle.
    """
    try:
        TopologicalSorter(graph).prepare()
    except CycleError as error:
        return tuple(error.args[1])
    return ()
