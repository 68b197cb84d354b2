"""The parts of a compiled expression: typed terms, each a closure over its parts."""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass

from leanto.rules.functions import bounded
from leanto.rules.undecidable import MissingFact, NoNumber, Undecidable

Value = float | bool | str
Values = Mapping[str, Value]
"""Facts by name; a fact that is not known is left out."""
Searches = Mapping[str, Callable[[str], bool]]
"""``found_here`` and its like, each from a rule id to whether that rule made a finding there."""


@dataclass(frozen=True, slots=True)
class Number:
    run: Callable[[Values, Searches], float]
    unit: str | None = None
    """The fact's unit; None for anything computed, whose unit is not worked out."""


@dataclass(frozen=True, slots=True)
class Flag:
    run: Callable[[Values, Searches], bool]


@dataclass(frozen=True, slots=True)
class Text:
    """A text fact; only it can be compared with a quoted word."""

    name: str
    choices: tuple[str, ...]
    run: Callable[[Values, Searches], str]


@dataclass(frozen=True, slots=True)
class Word:
    """A quoted word; no value of its own."""

    word: str


Term = Number | Flag | Text | Word


def number_fact(name: str, unit: str) -> Number:
    def run(values: Values, _: Searches) -> float:
        value = values.get(name)
        if value is None:
            raise MissingFact(name)
        if isinstance(value, bool | str):
            raise NoNumber(f"{name} is not a number")
        return float(bounded(value))

    return Number(run, unit)


def flag_fact(name: str) -> Flag:
    def run(values: Values, _: Searches) -> bool:
        value = values.get(name)
        if value is None:
            raise MissingFact(name)
        return bool(value)

    return Flag(run)


def text_fact(name: str, choices: tuple[str, ...]) -> Text:
    def run(values: Values, _: Searches) -> str:
        value = values.get(name)
        if value is None:
            raise MissingFact(name)
        return str(value)

    return Text(name, choices, run)


def is_known(name: str) -> Flag:
    """True when the fact is known; never undecidable."""
    return Flag(lambda values, _: values.get(name) is not None)


def search(function: str, rule_id: str) -> Flag:
    def run(_: Values, searches: Searches) -> bool:
        found = searches.get(function)
        if found is None:
            raise MissingFact(f"{function}('{rule_id}')")
        return found(rule_id)

    return Flag(run)


def all_of(flags: Sequence[Flag]) -> Flag:
    """False when one is false, whatever is missing; else undecidable when one is."""
    return _junction(flags, decisive=False)


def any_of(flags: Sequence[Flag]) -> Flag:
    """True when one is true, whatever is missing; else undecidable when one is."""
    return _junction(flags, decisive=True)


def _junction(flags: Sequence[Flag], *, decisive: bool) -> Flag:
    runs = tuple(flag.run for flag in flags)

    def run(values: Values, searches: Searches) -> bool:
        wanting: Undecidable | None = None
        for one in runs:
            try:
                if one(values, searches) is decisive:
                    return decisive
            except Undecidable as undecidable:
                wanting = wanting or undecidable
        if wanting is not None:
            raise wanting
        return not decisive

    return Flag(run)


def negated(flag: Flag) -> Flag:
    inner = flag.run
    return Flag(lambda values, searches: not inner(values, searches))


def is_one_of(text: Text, words: frozenset[str]) -> Flag:
    inner = text.run
    return Flag(lambda values, searches: inner(values, searches) in words)


def compared(left: Number, compare: Callable[[float, float], bool], right: Number) -> Flag:
    one, other = left.run, right.run
    return Flag(lambda values, searches: compare(one(values, searches), other(values, searches)))


def computed(operate: Callable[[list[float]], float], numbers: Sequence[Number]) -> Number:
    """The number that ``operate`` makes of the others, held within the limit."""
    runs = tuple(number.run for number in numbers)
    return Number(
        lambda values, searches: bounded(operate([one(values, searches) for one in runs]))
    )


def chosen_number(test: Flag, if_true: Number, if_false: Number) -> Number:
    asks, yes, no = test.run, if_true.run, if_false.run
    return Number(
        lambda values, searches: (yes if asks(values, searches) else no)(values, searches)
    )


def chosen_flag(test: Flag, if_true: Flag, if_false: Flag) -> Flag:
    asks, yes, no = test.run, if_true.run, if_false.run
    return Flag(lambda values, searches: (yes if asks(values, searches) else no)(values, searches))
