"""Why an expression has no answer: a fact that is not known, or a number that is none."""

from __future__ import annotations


class Undecidable(Exception):
    """No answer yet; ``missing`` says what is wanting."""

    def __init__(self, missing: str) -> None:
        super().__init__(missing)
        self.missing = missing


class MissingFact(Undecidable):
    """A fact that was not observed or does not exist at this place; ``name`` is its name."""

    def __init__(self, name: str) -> None:
        super().__init__(name)
        self.name = name


class NoNumber(Undecidable):
    """A division by zero, the root of a negative number, a number beyond all measure."""
