"""Where each key and each list entry of a YAML file stands."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, field

from leanto.errors import Problem

Step = str | int
"""A key of a mapping, or the place of a list entry counted from 0."""


@dataclass(slots=True)
class Node:
    """A place in the file: the line of its key or dash, and what lies below it."""

    line: int
    below: dict[Step, Node] = field(default_factory=dict)


@dataclass(frozen=True, slots=True)
class Place:
    """Where a validation error lies."""

    path: tuple[Step, ...]
    line: int
    node: Node
    is_exact: bool
    """Whether the last step of the error was found, and not only what holds it."""
    is_union: bool
    """Whether a step before the last is not in the file, as the name of a union's branch is."""

    def field(self, *more: Step) -> str:
        return dotted((*self.path, *more))


@dataclass(frozen=True, slots=True)
class Lines:
    """The line of every key and entry of one file."""

    file: str
    root: Node

    def at(self, *path: Step) -> int:
        """The 1-based line of the key or entry; of the nearest one above it when it is missing."""
        node = self.root
        for step in path:
            if step not in node.below:
                break
            node = node.below[step]
        return node.line

    def problem(self, path: Sequence[Step], message: str, remedy: str = "") -> Problem:
        """A Problem that names this file, the dotted path and its line."""
        return Problem(self.file, self.at(*path), dotted(path), message, remedy)

    def locate(self, loc: Sequence[Step]) -> Place:
        """The place of a pydantic error, passing over steps that are not in the file.

        A union's branch may be called like a key beside it. It is taken for the branch when
        the step after it is found here and not below that key.
        """
        node = self.root
        path: list[Step] = []
        missed: list[int] = []
        for index, step in enumerate(loc):
            child = node.below.get(step)
            after = loc[index + 1] if index + 1 < len(loc) else None
            is_branch = after in node.below and child is not None and after not in child.below
            if child is None or is_branch:
                missed.append(index)
            else:
                node = child
                path.append(step)
        last = len(loc) - 1
        return Place(
            tuple(path), node.line, node, last not in missed, any(index < last for index in missed)
        )


def dotted(path: Sequence[Step]) -> str:
    return ".".join(str(step) for step in path)
