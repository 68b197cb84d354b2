"""Dates, amounts, counts and places in words."""

from __future__ import annotations

from datetime import date

from leanto.building.kinds import PlaceKind
from leanto.building.rectangle import Rectangle
from leanto.building.surface import Surface
from leanto.money import Number, Spread, format_usd, round_to
from leanto.quantities import Unit, format_ft_in, format_quantity

_PLANS = (PlaceKind.FLOOR, PlaceKind.CEILING)
_MONTHS = "January February March April May June July August September October November December"
_CLOSE_FT = 1 / 24
"""Half an inch: nearer than this to an edge is at the edge."""


def date_in_words(day: date) -> str:
    """The date as ``June 1, 2026``, whatever the machine's language."""
    return f"{_MONTHS.split()[day.month - 1]} {day.day}, {day.year}"


def rounded_area(sqft: float) -> str:
    """An area in square feet, rounded to what can be counted on a site: tenths below ten."""
    return format_quantity(round(sqft, 1) if sqft < 10 else round(sqft), Unit.SQFT)


def counted(number: int, noun: str, plural: str = "") -> str:
    """``1 finding``, ``3 findings``."""
    return f"{number} {noun if number == 1 else plural or noun + 's'}"


def about(amount: Number) -> str:
    """The amount in dollars to the nearest ten."""
    return format_usd(round_to(amount, 10))


def spread_in_words(spread: Spread) -> str:
    """The likely amount, and its limits on a second line."""
    low, likely, high = (format_usd(x) for x in (spread.low, spread.likely, spread.high))
    return likely if low == high else f"{likely}\n{low} to {high}"


def capitalized(text: str) -> str:
    """The text with a capital first letter and the rest left alone."""
    return text[:1].upper() + text[1:]


def joined(words: tuple[str, ...] | list[str]) -> str:
    """``a``, ``a and b``, ``a, b and c``."""
    if len(words) < 2:
        return "".join(words)
    return f"{', '.join(words[:-1])} and {words[-1]}"


def size_in_words(zone: Rectangle) -> str:
    """Width and height, such as ``4' × 2' 6"``."""
    return f"{format_ft_in(zone.width_ft)} × {format_ft_in(zone.height_ft)}"


def zone_in_words(zone: Rectangle, surface: Surface) -> str:
    """Size and place, such as ``4' × 1', 2' from the left end, 6" above the floor line``."""
    if surface.kind in _PLANS:
        across = _from(zone.left_ft, "at the west edge", "from the west edge")
        up = _from(zone.bottom_ft, "at the south edge", "from the south edge")
    elif surface.kind is PlaceKind.ROOF:
        across = _from(zone.left_ft, "at the left end", "from the left end")
        up = _from(zone.bottom_ft, "at the eave", "up the slope from the eave")
    else:
        across = _from(zone.left_ft, "at the left end", "from the left end")
        up = _from(zone.bottom_ft, "at the floor line", "above the floor line")
    return f"{size_in_words(zone)}, {across}, {up}"


def seen_from(surface: Surface) -> str:
    """How somebody faces the surface when left and right are as drawn."""
    match surface.kind:
        case PlaceKind.WALL_INSIDE:
            return "seen from inside"
        case PlaceKind.FLOOR | PlaceKind.CEILING:
            return "plan, north at the top"
        case PlaceKind.ROOF:
            return "seen from outside, along the slope"
        case _:
            return "seen from outside"


def _from(distance_ft: float, at_edge: str, from_edge: str) -> str:
    if distance_ft < _CLOSE_FT:
        return at_edge
    return f"{format_ft_in(distance_ft)} {from_edge}"
