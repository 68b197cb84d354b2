"""An entry of a data file together with the place where it stands, and entries laid over others."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Sequence
from dataclasses import dataclass
from typing import Generic, TypeVar

from leanto.errors import Problem
from leanto.rules.fault import Fault
from leanto.yaml_input import Lines

T = TypeVar("T")


@dataclass(frozen=True, slots=True)
class Placed(Generic[T]):
    """A value and where it was read."""

    value: T
    lines: Lines
    path: tuple[str | int, ...] = ()

    def problem(self, path: tuple[str | int, ...], message: str, remedy: str = "") -> Problem:
        """A Problem at a path below the entry."""
        return self.lines.problem((*self.path, *path), message, remedy)

    def problems(self, faults: Iterable[Fault]) -> list[Problem]:
        return [self.problem(fault.path, fault.message, fault.remedy) for fault in faults]


def laid_over(
    layers: Sequence[Sequence[Placed[T]]],
    key: Callable[[T], str],
    what: str,
    problems: list[Problem],
) -> dict[str, Placed[T]]:
    """The entries by id, those of a later layer in place of earlier ones with the same id.

    Two with one id in the same layer are a Problem; the first stays.
    """
    together: dict[str, Placed[T]] = {}
    for layer in layers:
        own: dict[str, Placed[T]] = {}
        for entry in layer:
            name = key(entry.value)
            first = own.setdefault(name, entry)
            if first is not entry:
                at = f"{first.lines.file}:{first.lines.at(*first.path)}"
                problems.append(
                    entry.problem((), f"There are two {what} called {name}; the other: {at}.")
                )
        together |= own
    return together
