"""Whether it pays to open one hole in a lined surface before choosing its course."""

from __future__ import annotations

from leanto.building.rectangle import Rectangle
from leanto.building.surface import Surface
from leanto.decision.courses import Book
from leanto.decision.model import Course, CourseCost, HoleValue
from leanto.decision.unseen import (
    Unseen,
    value_of_opening,
    value_of_perfect_information,
)
from leanto.scope.call import Call


def one_hole(
    surface: Surface,
    unseen: Unseen,
    place: Rectangle | None,
    keep: CourseCost,
    gut: CourseCost,
    book: Book,
) -> HoleValue | None:
    """What one hole is worth against its cost; None when damage was seen or nothing is unseen."""
    if unseen.p >= 1.0 or keep.all_bad_usd <= 0:
        return None
    hole = book.hidden.test_hole
    shows = hole.shows_elsewhere if place is None else hole.shows_at_evidence
    bad = unseen.with_chance(1.0)
    clean = unseen.with_chance(unseen.p * (1 - shows) / (1 - unseen.p * shows))
    return HoleValue(
        worth_usd=value_of_opening(unseen, keep.line, gut.line, shows),
        perfect_usd=value_of_perfect_information(unseen, keep.line, gut.line),
        cost_usd=book.expected(book.lines((Call(hole.work, surface.id, quantity=1.0),))),
        shows=shows,
        place=place,
        if_bad=_better(bad, keep, gut),
        if_clean=_better(clean, keep, gut),
    )


def _better(unseen: Unseen, keep: CourseCost, gut: CourseCost) -> Course:
    return Course.GUT if gut.line.at(unseen.mean) < keep.line.at(unseen.mean) else Course.KEEP
