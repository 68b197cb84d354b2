"""Asks for one of many things, narrowed down by typing parts of their names."""

from __future__ import annotations

from collections.abc import Sequence
from typing import ClassVar

from textual.binding import Binding, BindingType

from leanto.tui.screens.narrowing import Narrowing


class Pick(Narrowing[str | int]):
    """Returns the place of the chosen one in the list; with ``own_words`` also a typed text.

    None when nothing was chosen.
    """

    BINDINGS: ClassVar[list[BindingType]] = [
        Binding("escape", "leave", "Leave", id="pick.leave", tooltip="Choose nothing"),
    ]

    def __init__(self, question: str, names: Sequence[str], *, own_words: bool = False) -> None:
        super().__init__(
            question, "part of its name", "Enter takes the marked one.  Esc leaves.", 80
        )
        self._names, self._own_words = names, own_words

    def found(self, typed: str) -> Sequence[tuple[str, str | int]]:
        own = typed.strip() if self._own_words else ""
        listed: list[tuple[str, str | int]] = [
            (self._names[at], at) for at in matching(self._names, typed)
        ]
        return [*listed, (f'In your own words: "{own}"', own)] if own else listed


def matching(names: Sequence[str], typed: str) -> list[int]:
    """Where the names stand that hold every part typed."""
    wanted = typed.casefold().split()
    return [at for at, name in enumerate(names) if all(w in name.casefold() for w in wanted)]
