"""What is still to be asked about one answer, one field at a time."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import dataclass

from leanto.tui.fields import Field, Value


@dataclass(frozen=True, slots=True)
class Step:
    """One field and what happens to its value."""

    field: Callable[[], Field]
    """Made when its turn comes: limits and defaults hang on what was entered before it."""
    keep: Callable[[Value], Sequence[Step]]
    """Records the value, and gives the steps that it calls for; raises LeantoError."""
    group: str = ""
    """Steps of one group make one fact together: they are skipped together."""


class Asking:
    """The steps of one answer, in order, with the one that is open."""

    def __init__(self, steps: Sequence[Step]) -> None:
        self._steps = list(steps)
        self._at = 0

    @property
    def step(self) -> Step | None:
        """The open step; None when all are done."""
        return self._steps[self._at] if self._at < len(self._steps) else None

    @property
    def left(self) -> int:
        """How many steps come after the open one."""
        return max(0, len(self._steps) - self._at - 1)

    def take(self, value: Value) -> None:
        """Keep the value of the open step and go on; raises LeantoError and stays."""
        step = self.step
        if step is None:
            return
        more = step.keep(value)
        self._at += 1
        self._steps[self._at : self._at] = more

    def skip(self) -> None:
        """Leave the open step without a value, and the rest of its group."""
        step = self.step
        if step is None:
            return
        self._at += 1
        while step.group and self.step is not None and self.step.group == step.group:
            self._at += 1

    def back(self) -> None:
        """Open the step before, to put its value right."""
        self._at = max(0, self._at - 1)
