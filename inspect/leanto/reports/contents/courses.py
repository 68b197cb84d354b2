"""The parts of both courses beside each other; each column adds up to its foot."""

from __future__ import annotations

from collections.abc import Sequence
from itertools import zip_longest

from leanto.decision.model import Course, CourseCost, Decision, Part, SurfaceDecision
from leanto.money import Spread, format_usd
from leanto.reports.blocks import Column, Table
from leanto.reports.contents.words import capitalized

_PARTS = (
    Column("To keep", 0.32),
    Column("Expected", 0.18, "right"),
    Column("To gut", 0.32),
    Column("Expected", 0.18, "right"),
)
_SET_UP = "share of protecting the room"
_MINIMUM = "minimum charges of small works"


def surface_parts(one: SurfaceDecision) -> Table:
    """Both courses of one surface."""
    keep, gut = one.keep, one.gut
    return _table("Keep", keep.parts, keep.expected, "Gut", gut.parts, gut.expected)


def interior_parts(decision: Decision) -> Table:
    """Both courses of all lined surfaces: set-up is paid once, minimum charges are shared."""
    keep = _summed([one.keep for one in decision.surfaces], decision.keep_all)
    gut = _summed([one.gut for one in decision.surfaces], decision.gut_all)
    titles = (f"{course.capitalize()} everything" for course in (Course.KEEP, Course.GUT))
    return _table(next(titles), keep, decision.keep_all, next(titles), gut, decision.gut_all)


def _summed(costs: Sequence[CourseCost], whole_usd: float) -> list[Part]:
    """Parts of one name added up, in the order they come; last what is missing to the whole."""
    parts: dict[str, Part] = {}
    for part in (part for cost in costs for part in cost.parts):
        name = "protecting the room" if part.text == _SET_UP else part.text
        held = parts.get(name, Part(name, Spread.zero(), 0.0))
        parts[name] = Part(name, held.cost + part.cost, held.expected + part.expected)
    for hidden in {cost.parts[-1].text for cost in costs if cost.hidden.high > 0}:
        parts[hidden] = parts.pop(hidden)  # of what each course may bring up, after all else
    missing = whole_usd - sum(part.expected for part in parts.values())
    if missing >= 1:
        parts[_MINIMUM] = Part(_MINIMUM, Spread.of(missing, missing, missing), missing)
    return list(parts.values())


def _table(
    keep_title: str,
    keep: Sequence[Part],
    keep_usd: float,
    gut_title: str,
    gut: Sequence[Part],
    gut_usd: float,
) -> Table:
    rows = tuple((*_part(one), *_part(other)) for one, other in zip_longest(keep, gut))
    foot = (keep_title, format_usd(keep_usd), gut_title, format_usd(gut_usd))
    return Table(_PARTS, rows, (foot,))


def _part(part: Part | None) -> tuple[str, str]:
    if part is None:
        return "", ""
    low, high = format_usd(part.cost.low), format_usd(part.cost.high)
    spread = "" if low == high else f"\n{low} to {high}"
    return capitalized(part.text), f"{format_usd(part.expected)}{spread}"
