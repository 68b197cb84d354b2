"""Whether it pays to open one hole in a lined surface before choosing its course."""

from __future__ import annotations

from leanto.building.rectangle import Rectangle
from leanto.decision.courses import Book
from leanto.decision.model import Course, HoleValue, SurfaceDecision
from leanto.decision.opening import Opening, anywhere, at_the_signs, value_of_answer
from leanto.decision.unseen import Line, Unseen, value_of_perfect_information
from leanto.scope.call import Call


def one_hole(one: SurfaceDecision, gut_over_keep_usd: float, book: Book) -> HoleValue | None:
    """What one hole is worth against its cost; None where its answer can't matter: a condition
    decides, damage was seen, or nothing is unseen.

    Of a hole at the signs and one elsewhere it is the one that is worth more.
    ``gut_over_keep_usd`` is what gutting costs more than keeping with all other surfaces as
    chosen, so that shared set-up and minimum charges are in what the answer could change.
    """
    unseen, keep = one.unseen, one.keep.line
    if one.decisive or unseen.p >= 1.0 or one.keep.all_bad_usd <= 0:
        return None
    level = keep.at(unseen.mean) + gut_over_keep_usd
    gut = Line(level - one.gut.line.rise_usd * unseen.mean, one.gut.line.rise_usd)
    terms = book.hidden.test_hole
    openings: list[tuple[Rectangle | None, Opening]] = [(None, anywhere(unseen))]
    if one.place is not None:
        openings.insert(0, (one.place, at_the_signs(unseen, terms.shows_at_evidence)))
    worths = [value_of_answer(unseen, opening, keep, gut) for _, opening in openings]
    best = worths.index(max(worths))
    place, opening = openings[best]
    return HoleValue(
        worth_usd=worths[best],
        perfect_usd=value_of_perfect_information(unseen, keep, gut),
        cost_usd=book.expected(book.lines((Call(terms.work, one.surface_id, quantity=1.0),))),
        shows=opening.chance_bad / unseen.p if unseen.p else 0.0,
        place=place,
        away=place is None and one.place is not None,
        now=_better(unseen, keep, gut),
        if_bad=_better(opening.bad, keep, gut),
        if_clean=_better(opening.clean, keep, gut),
        chance_bad=opening.chance_bad,
        after_clean=opening.clean.p,
    )


def _better(unseen: Unseen, keep: Line, gut: Line) -> Course:
    return Course.GUT if gut.at(unseen.mean) < keep.at(unseen.mean) else Course.KEEP
