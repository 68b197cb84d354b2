"""Amounts inside sentences of our own, said in metric. Pure.

Checklists, rules and trade computations are written the way the trade speaks, in feet and inches.
For a metric job the amounts in such a sentence are put into millimeters, meters, square meters,
kilograms, kilopascals and degrees Celsius, to the nearest millimeter or three figures, as building
codes print them beside feet and inches: never rounded to a handier number, which would shift a
limit. A name of the trade stays what it is: 2x6, 1/2 in. gypsum, 16 in. (406 mm) on center.
"""

from __future__ import annotations

import re
from collections.abc import Sequence
from fractions import Fraction
from functools import lru_cache
from math import floor, log10

_NUM = (
    r"(?:[0-9]+[ -][0-9]+/[0-9]+|[0-9]+/[0-9]+"
    r"|[0-9]{1,3}(?:,[0-9]{3})+(?:\.[0-9]+)?|[0-9]+(?:\.[0-9]+)?|\.[0-9]+)"
)
_BETWEEN = r" to | or | and | by | x | × |x|×| ?[-–] ?"
_FRACTIONS = r"[0-9]+/[0-9]+(?:, [0-9]+/[0-9]+)+"
_AMOUNTS = rf"(?:{_FRACTIONS}|{_NUM}(?:(?:{_BETWEEN}){_NUM})*)"

_INCH = r"(?:in\.|inch(?:es)?\b)"
_MATERIAL = (
    r"(?:thick )?(?:gypsum|drywall|plywood|OSB|PVC|EMT|conduit|pipe|hardware cloth|galvanized"
    r"|bolts?|rebar)\b"
)
_NOMINAL = rf"{_NUM}[ -]{_INCH} {_MATERIAL}|{_NUM} in\. \([0-9]+ mm\)"
_CENTERS = rf"(?P<center>{_NUM}) in\. on center"
_MARKS = (
    r"(?P<feet>[0-9]+)'(?: (?P<part>[0-9]+(?: [0-9]+/[0-9]+)?|[0-9]+/[0-9]+)\")?(?!\w)"
    rf"|(?P<whole>[0-9]+) ft (?P<rest>{_NUM}) in\."
)
_INCH_MARKS = r"(?P<inches>[0-9]+(?: [0-9]+/[0-9]+)?|[0-9]+/[0-9]+)\"(?!\w)"
_R_VALUE = r"\bR[ -]?(?P<r>[0-9]{1,2}(?:\.[0-9]+)?)\b(?![.0-9]*[0-9]|:| \(RSI)(?= |,|;|\.|\)|$)"

_SQFT = r"(?:sq\.? ?(?:ft|feet|foot)\b\.?|square (?:feet|foot)\b|sf\b)"
_CUFT = r"(?:cu\.? ?(?:ft|feet|foot)\b|cubic (?:feet|foot)\b|cf\b)"
_CUYD = r"(?:cu\.? ?yd\b|cubic yards?\b|cy\b)"
_POUND = r"(?:lbs?\b\.?|pounds?\b)"
_UNITS: dict[str, tuple[str, str, float]] = {
    # name: (as it is written, in metric, so many of it in one of ours)
    "kg_sqm": (rf"{_POUND} ?(?:per|a|/) ?{_SQFT}", "kg/m²", 4.882427636),
    "kg_cum": (rf"{_POUND} ?(?:per|a|/) ?{_CUFT}", "kg/m³", 16.01846337),
    "kg_cuyd": (rf"{_POUND} ?(?:per|a|/) ?{_CUYD}", "kg/m³", 0.593276421),
    "sqm": (_SQFT, "m²", 0.09290304),
    "sqmm": (r"(?:sq\.? in\.|square inch(?:es)?\b)", "mm²", 645.16),
    "cum": (_CUFT, "m³", 0.028316846592),
    "cuyd": (_CUYD, "m³", 0.764554857984),
    "cumm": (r"(?:cu\.? in\.|cubic inch(?:es)?\b)", "cm³", 16.387064),
    "lin": (r"(?:lin\.? ?ft\b|linear (?:feet|foot)\b|lf\b)", "m", 304.8),
    "ft": (r"(?:ft\b|feet\b|foot\b)", "m", 304.8),
    "in": (_INCH, "mm", 25.4),
    "yd": (r"(?:yd\b|yards?\b)", "m", 914.4),
    "square": (
        r"(?:squares\b(?! (?:feet|foot|inch|in\.))|square\b(?=[.,;)]|$| bought))",
        "m²",
        9.290304,
    ),
    "timber": (r"(?:bf\b|board[ -]f(?:oo|ee)t\b)", "m³", 0.002359737216),
    "kg": (_POUND, "kg", 0.45359237),
    "tonne": (r"tons?\b(?! of refrigeration)", "t", 0.90718474),
    "kpa": (r"psf\b", "kPa", 0.04788025898),
    "mpa": (r"psi\b", "MPa", 0.006894757293),
    "liter": (r"(?:gal\b|gallons?\b)", "L", 3.785411784),
    "wk": (r"Btu/h (?:for|in|a|per) (?:each|every)? ?(?:deg|degree) F\b", "W/K", 0.5275279),
    "watt": (r"Btu/h\b", "W", 0.29307107),
    "ohm": (r"ohms?/kft\b", "ohm/km", 3.280839895),
    "micron": (r"mils?\b", "mm", 0.0254),
    "kmh": (r"mph\b", "km/h", 1.609344),
    "days": (r"degree[ -]days\b(?! \()", "degree days (°C)", 5 / 9),
    "celsius": (r"(?:° ?F\b|deg\.? F\b|degrees? F(?:ahrenheit)?\b|F\b)", "°C", 5 / 9),
}
_TAIL = "|".join(f"(?P<{name}>{written})" for name, (written, _, _) in _UNITS.items())
_AMOUNT = rf"(?P<amounts>{_AMOUNTS})[ -]?(?:{_TAIL})(?! \([0-9])"
_SPELLED = {
    "half an inch": "1/2 inch",
    "a quarter inch": "1/4 inch",
    "an inch": "1 inch",
    "one inch": "1 inch",
    "two inches": "2 inches",
    "three inches": "3 inches",
    "four inches": "4 inches",
    "six inches": "6 inches",
    "two feet": "2 feet",
    "three feet": "3 feet",
    "four feet": "4 feet",
    "six feet": "6 feet",
    "ten feet": "10 feet",
}
_WORDS = re.compile(rf"\b(?:{'|'.join(_SPELLED)})\b", re.IGNORECASE)
_ANY = re.compile(
    rf"(?P<nominal>{_NOMINAL})|(?<![-\w.$/#])(?:{_CENTERS}|{_MARKS}|{_INCH_MARKS}|{_AMOUNT})"
    rf"|{_R_VALUE}"
)
_DIFFERENCE = re.compile(r"\b(?:each|every) $")
"""What stands before degrees that count a difference."""
_PER = re.compile(r"\b([Pp])er (square )?foot(?= of )")
_SHORT = 45
"""Characters: a longer text that ends in ``in.`` is a sentence and keeps its full stop."""


@lru_cache(maxsize=16_384)
def metric_words(text: str) -> str:
    """The text with the amounts in it in metric; the same text when there are none.

    Doing it twice does no more than doing it once.
    """
    spelled = _WORDS.sub(lambda found: _SPELLED[found[0].lower()], text)
    return _PER.sub(r"\1er \2meter", _ANY.sub(_said, spelled))


def _said(found: re.Match[str]) -> str:
    if found["nominal"]:
        return found[0]
    if center := found["center"]:
        return f"{center} in. ({_mm(25.4 * _value(center))} mm) on center"
    if r := found["r"]:
        return f"{found[0]} (RSI {_three(float(r) * 0.17611)})"
    feet = found["feet"] or found["whole"] or "0"
    inches = found["part"] or found["rest"] or found["inches"] or "0"
    if found["feet"] or found["whole"] or found["inches"]:
        said = _lengths([304.8 * _value(feet) + 25.4 * _value(inches)], [""])
        return said + (_full_stop(found) if found["whole"] else "")
    name = next(name for name in _UNITS if found[name])
    parts = re.split(rf"({_BETWEEN}|, )", _apart(found["amounts"]))
    values, joints = [_value(part) for part in parts[::2]], ["", *parts[1::2]]
    _, symbol, factor = _UNITS[name]
    match name:
        case "in" | "ft" | "lin" | "yd":
            said = _lengths([value * factor for value in values], joints)
        case "celsius":
            apart = _DIFFERENCE.search(found.string[: found.start()])
            zero = 0 if apart else 32
            said = _list([f"{(value - zero) * factor:.0f}" for value in values], joints, symbol)
        case _:
            said = _list([_three(value * factor) for value in values], joints, symbol)
    return said + _full_stop(found)


def _apart(amounts: str) -> str:
    """``3-1/2`` as ``3 1/2``: its dash is no range."""
    return re.sub(r"([0-9])-([0-9]+/[0-9])", r"\1 \2", amounts)


def _value(text: str) -> float:
    """The value of ``7``, ``1,200``, ``1/2`` or ``3 1/2``."""
    return float(sum(Fraction(part) for part in text.replace(",", "").replace("-", " ").split()))


def _lengths(mm: Sequence[float], joints: Sequence[str]) -> str:
    """All in one unit: meters when the longest has one."""
    if max(mm) < 1000:
        return _list([_mm(one) for one in mm], joints, "mm")
    return _list([_three(one / 1000, 2) for one in mm], joints, "m")


def _list(numbers: Sequence[str], joints: Sequence[str], symbol: str) -> str:
    return "".join(f"{joint}{n}" for joint, n in zip(joints, numbers, strict=True)) + f" {symbol}"


def _mm(value: float) -> str:
    return f"{value:.1f}".removesuffix(".0") if value < 10 else f"{value:.0f}"


def _three(value: float, least_decimals: int = 0) -> str:
    """Three figures, whole from a hundred on."""
    if not value:
        return "0"
    decimals = max(2 - floor(log10(abs(value))), 0)
    if least_decimals:
        decimals = min(decimals, least_decimals)
    text = f"{value:,.{decimals}f}"
    return text.rstrip("0").rstrip(".") if "." in text else text


def _full_stop(found: re.Match[str]) -> str:
    """The full stop that stood in an abbreviation and ended the sentence as well."""
    if not found[0].endswith("."):
        return ""
    rest = found.string[found.end() :]
    if not rest.strip():
        return "." if len(found.string) > _SHORT else ""
    return "." if re.match(r"\s+[A-Z“\"]", rest) else ""
