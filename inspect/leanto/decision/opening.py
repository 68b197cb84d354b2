"""What one opening tells of the unseen part, and what its answer is worth: preposterior analysis.

Where the signs are, a hole shows damage with chance q when there is some, however much it is:

bad: p q, then x ~ Beta(a, b)        clean: 1 - p q, then p' = p (1 - q) / (1 - p q)

Anywhere else it is a sample of one point, which is bad with chance x. Damage that spreads far is
met sooner, so that the answer speaks of the share too:

bad: p a/(a+b), then x ~ Beta(a + 1, b)
clean: otherwise, then p' by q = a/(a+b), and x ~ Beta(a, b + 1) if there is damage
"""

from __future__ import annotations

from dataclasses import dataclass

from leanto.decision.unseen import Line, Unseen, least_expected


@dataclass(frozen=True, slots=True)
class Opening:
    """What is thought after each of the two answers."""

    chance_bad: float
    bad: Unseen
    clean: Unseen


def at_the_signs(unseen: Unseen, shows: float) -> Opening:
    """A hole where the signs point to; ``shows`` is q."""
    if not 0.0 <= shows <= 1.0:
        raise ValueError("a probability lies between 0 and 1")
    return Opening(
        unseen.p * shows, unseen.with_chance(1.0), unseen.with_chance(_left(unseen.p, shows))
    )


def anywhere(unseen: Unseen) -> Opening:
    """A hole at a place that nothing points to: a sample of one point."""
    a, b, shows = unseen.a, unseen.b, unseen.extent
    return Opening(
        unseen.p * shows, Unseen(1.0, a + 1, b), Unseen(_left(unseen.p, shows), a, b + 1)
    )


def value_of_answer(unseen: Unseen, opening: Opening, keep: Line, gut: Line) -> float:
    """What knowing the answer before choosing saves on average, in dollars; never negative.

    min E[cost] now - (P(bad) min E[cost | bad] + P(clean) min E[cost | clean])
    """
    bad = opening.chance_bad
    informed = bad * least_expected(opening.bad, keep, gut) + (1 - bad) * least_expected(
        opening.clean, keep, gut
    )
    return max(0.0, least_expected(unseen, keep, gut) - informed)


def clean_ratio(a: float, b: float, holes: int) -> float:
    """The likelihood ratio of so many sound samples: E[(1 - x)^n] over 1, x ~ Beta(a, b)."""
    ratio = 1.0
    for index in range(holes):
        ratio *= (b + index) / (a + b + index)
    return ratio


def _left(p: float, shows: float) -> float:
    """The chance of damage that a clean hole leaves."""
    missed = p * (1 - shows)
    return 0.0 if missed == 0.0 else missed / (1 - p * shows)
