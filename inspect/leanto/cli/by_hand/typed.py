"""Arguments as people say them; whatever is impossible is refused with the range that is not."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from difflib import get_close_matches
from typing import TypeVar

from leanto.errors import LeantoError
from leanto.quantities import parse_length_ft, parse_number, parse_percent, parse_temperature_f
from leanto.quantities.length import LengthUnit
from leanto.quantities.refusal import QuantityError

V = TypeVar("V")


def length_in(
    text: str, what: str, low_in: float, high_in: float, *, bare: LengthUnit = "in"
) -> float:
    """A length in inches between limits; a bare number is in ``bare``."""
    try:
        inches = parse_length_ft(text, default_unit=bare) * 12
    except QuantityError as error:
        raise LeantoError(f"{what}: {error.what}", error.remedy) from None
    return between(inches, what, low_in, high_in, "in.")


def length_ft(text: str, what: str, low_ft: float, high_ft: float) -> float:
    """A length in feet between limits; a bare number is in feet."""
    try:
        feet = parse_length_ft(text, default_unit="ft")
    except QuantityError as error:
        raise LeantoError(f"{what}: {error.what}", error.remedy) from None
    return between(feet, what, low_ft, high_ft, "ft")


def number(text: str, what: str, low: float, high: float, unit: str = "") -> float:
    """A plain number between limits."""
    try:
        return between(parse_number(text), what, low, high, unit)
    except QuantityError as error:
        raise LeantoError(f"{what}: {error.what}", error.remedy) from None


def percent(text: str, what: str, low: float = 0.0, high: float = 100.0) -> float:
    """A percentage between limits."""
    try:
        return between(parse_percent(text, at_most=1e6), what, low, high, "%")
    except QuantityError:
        return between(_plain(text, what), what, low, high, "%")


def temperature_f(text: str, what: str, low_f: float, high_f: float) -> float:
    """A temperature in deg F between limits; a bare number is in deg F."""
    try:
        degrees = parse_temperature_f(text)
    except QuantityError:
        degrees = _plain(text, what)
    return between(degrees, what, low_f, high_f, "F")


def between(value: float, what: str, low: float, high: float, unit: str) -> float:
    """The value when it lies between the limits; LeantoError with the range otherwise."""
    if low <= value <= high:
        return value
    of = f" {unit}" if unit else ""
    raise LeantoError(f"{what}: {low:g} to {high:g}{of} is possible, not {value:g}.")


def one_of(text: str, what: str, known: Mapping[str, V]) -> V:
    """What a word stands for, spelled with spaces, hyphens or underscores; else the nearest."""
    by_plain = {_spelled(name): value for name, value in known.items()}
    plain = _spelled(text)
    if plain in by_plain:
        return by_plain[plain]
    near = get_close_matches(plain, by_plain, n=1, cutoff=0.5)
    names = {_spelled(name): name for name in known}
    remedy = f"Did you mean {names[near[0]]}?" if near else f"Known are {', '.join(known)}."
    raise LeantoError(f"{what}: {text!r} is not known.", remedy)


def words(names: Iterable[str]) -> dict[str, str]:
    """Each name standing for itself."""
    return {name: name for name in names}


def _spelled(text: str) -> str:
    return " ".join(text.lower().replace("_", " ").replace("-", " ").replace(".", " ").split())


def _plain(text: str, what: str) -> float:
    """The number however impossible, so that the refusal can name the range."""
    try:
        return parse_number(text)
    except QuantityError as error:
        raise LeantoError(f"{what}: {error.what}", error.remedy) from None
