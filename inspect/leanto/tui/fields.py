"""One question with a typed answer: how it is put, and how the answer is read."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass

from leanto.checklist.model import Measure
from leanto.errors import LeantoError
from leanto.quantities import (
    format_ft_in,
    parse_area_sqft,
    parse_count,
    parse_length_ft,
    parse_number,
    parse_percent,
    parse_temperature_f,
    plain_number,
    shown,
)
from leanto.tui.placer import Placer
from leanto.tui.words import UNITS, value_in_words

Value = float | str

AS_PLACED = "as placed"
"""The value of a field whose rectangle was taken as it lies on the sketch."""


@dataclass(frozen=True, slots=True)
class Field:
    """What is asked at the bottom of the walk."""

    label: str
    limits: str
    """What can be typed, such as ``0 to 12 in``."""
    read: Callable[[str], Value]
    """The value of what was typed; raises LeantoError."""
    help: str = ""
    default: str = ""
    """What Enter alone takes, in words; empty when there is nothing to offer."""
    default_value: Value | None = None
    """The same as it is recorded: words are rounded, this is not."""
    default_from: str = ""
    """Where the default comes from: ``last time``."""
    options: tuple[str, ...] = ()
    """Chosen by their number, or by the beginning of the word."""
    placer: Placer | None = None
    """A rectangle that keys move over the sketch while nothing is typed."""

    def value_of(self, typed: str) -> Value:
        """The value of what was typed, or the default for nothing; raises LeantoError."""
        if typed.strip():
            return self.read(typed)
        if self.placer is not None:
            return AS_PLACED
        if self.default_value is None:
            raise LeantoError("Type it, or Escape leaves it open.")
        return self.default_value

    def is_whole(self, typed: str) -> bool:
        """True when what was typed can be taken without waiting for Enter."""
        if self.options == YES_NO:
            return typed.strip().lower() in ("y", "n")
        return len(self.options) in range(1, 10) and (
            typed.isdecimal() and 1 <= int(typed) <= len(self.options)
        )


YES_NO = ("yes", "no")


def measure_field(measure: Measure, default: Value | None, default_from: str) -> Field:
    """The question for a measure; limits are held by the job when it is recorded."""
    return Field(
        label=measure.label,
        limits=_limits(measure),
        read=_reader(measure),
        help=measure.help,
        default="" if default is None else value_in_words(measure, default),
        default_value=default,
        default_from=default_from,
        options=YES_NO if measure.unit == "yes_no" else measure.choices,
    )


def length_field(label: str, default_ft: float, at_most_ft: float, help_text: str = "") -> Field:
    """A length along a surface, in feet."""
    return Field(
        label=label,
        limits=f"{'meters' if shown().is_metric else 'feet'}, up to {format_ft_in(at_most_ft)}",
        read=_length_ft,
        help=help_text,
        default=format_ft_in(default_ft),
        default_value=default_ft,
    )


def temperature_field(default_f: float | None) -> Field:
    return Field(
        "Air temperature",
        "°C, or write 41 F" if shown().is_metric else "F, or write 5 C",
        _temperature_f,
        default="" if default_f is None else shown().temperature(default_f),
        default_value=default_f,
    )


def humidity_field(default_pct: float | None) -> Field:
    return Field(
        "Relative humidity",
        "0 to 100 %",
        parse_percent,
        default="" if default_pct is None else f"{default_pct:g} %",
        default_value=default_pct,
    )


def choice_field(label: str, choices: tuple[str, ...], default: str = "") -> Field:
    """One of the choices; ``default`` is what was chosen last."""
    return Field(
        label,
        "",
        lambda typed: choice_of(typed, choices),
        default=default,
        default_value=default or None,
        default_from="last time" if default else "",
        options=choices,
    )


def placed_field(placer: Placer, typed_first: str) -> Field:
    """A place on the surface: the rectangle as it lies, or the first of four typed lengths."""
    return Field(
        "Where is it?",
        "",
        _length_ft,
        help="Arrows move it. Shift and arrows, or w n h l: wider, narrower, higher, lower. "
        f"a: all of it. Or type, first how far {typed_first}.",
        placer=placer,
    )


def text_field(label: str, limit: int) -> Field:
    return Field(label, "in a few words", lambda typed: _text(typed, limit))


def choice_of(typed: str, choices: tuple[str, ...]) -> str:
    """The choice with that number, that name, or the only one that begins so."""
    plain = " ".join(typed.split()).lower()
    if plain.isdecimal() and 1 <= int(plain) <= len(choices):
        return choices[int(plain) - 1]
    exact = [choice for choice in choices if choice.lower() == plain]
    near = exact or [choice for choice in choices if plain and choice.lower().startswith(plain)]
    if len(near) == 1:
        return near[0]
    if near:
        raise LeantoError(f"{' or '.join(near)}?", "Type its number.")
    raise LeantoError("That is none of these.", f"Type a number from 1 to {len(choices)}.")


def _limits(measure: Measure) -> str:
    if measure.unit == "yes_no":
        return "y or n"
    if measure.unit == "choice":
        return ""
    assert measure.low is not None and measure.high is not None
    low, metric = shown().measured(measure.low, measure.unit)
    high, _ = shown().measured(measure.high, measure.unit)
    if metric:
        return f"{plain_number(low, 0)} to {plain_number(high, 0)} {metric}"
    unit = _BARE_NUMBERS.get(measure.unit, UNITS[measure.unit])
    return f"{measure.low:g} to {measure.high:g} {unit}".rstrip()


_BARE_NUMBERS = {"in": "inches", "ft": "feet", "deg_f": "F"}
"""What a number without a unit means, where it may have one."""


def _reader(measure: Measure) -> Callable[[str], Value]:
    choices = measure.choices
    match measure.unit:
        case "choice":
            return lambda typed: choice_of(typed, choices)
        case "yes_no":
            return _yes_or_no
        case "ft":
            return _length_ft
        case "in":
            return _inches
        case "sqft":
            return _area_sqft
        case "pct":
            return lambda typed: parse_percent(typed, at_most=max(100.0, measure.high or 0.0))
        case "deg_f":
            return _temperature_f
        case "count":
            return lambda typed: float(parse_count(typed))
        case _:
            return lambda typed: parse_number(_without_unit(typed, UNITS[measure.unit]))


def _inches(typed: str) -> float:
    """Inches; below zero too, as for ground that falls the wrong way."""
    size = typed.strip()
    sign = -1.0 if size.startswith(("-", "\u2212")) else 1.0
    # Back from feet the inches must not end in ...9999.
    return sign * round(
        parse_length_ft(size.lstrip("-\u2212 "), default_unit=shown().bare_short_length) * 12, 6
    )


def _length_ft(typed: str) -> float:
    return parse_length_ft(typed, default_unit=shown().bare_length)


def _temperature_f(typed: str) -> float:
    return parse_temperature_f(typed, bare=shown().bare_temperature)


def _area_sqft(typed: str) -> float:
    try:
        number = parse_number(typed)
    except LeantoError:
        return parse_area_sqft(typed)
    return parse_area_sqft(f"{typed.strip()} m2") if shown().is_metric else number


def _without_unit(typed: str, unit: str) -> str:
    """The number alone: ``3 days`` is typed as it is said, ``3 day`` and ``3 d`` too."""
    number, space, word = typed.strip().partition(" ")
    return number if space and unit.lower().startswith(word.strip().lower()) else typed


def _yes_or_no(typed: str) -> float:
    plain = typed.strip().lower()
    if plain and YES_NO[0].startswith(plain):
        return 1.0
    if plain and YES_NO[1].startswith(plain):
        return 0.0
    raise LeantoError("Yes or no is needed.", "Press y or n.")


def _text(typed: str, limit: int) -> str:
    plain = " ".join(typed.split())
    if not plain:
        raise LeantoError("A few words are needed.", "Escape leaves it open.")
    if len(plain) > limit:
        raise LeantoError(f"That is longer than {limit} characters.", "Say it shorter.")
    return plain
