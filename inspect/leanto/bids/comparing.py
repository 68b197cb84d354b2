"""What holds for the bids together: how far apart they are, and where their order turns."""

from __future__ import annotations

from decimal import Decimal
from itertools import combinations

from leanto.bids.hidden_work import break_even
from leanto.bids.levelled import Levelled, Standing
from leanto.money import format_usd

GAP_FAR = Decimal("0.15")
"""From the lowest to the second; common practice, no source."""


def comparing_notices(made: Levelled) -> tuple[str, ...]:
    """A sentence each; nothing in them ranks the bids."""
    if not made.bids:
        return ()
    told = [_few(made), _gap(made), _against_ours(made), _order_turns(made)]
    return tuple(sentence for sentence in (*told, *_crossings(made)) if sentence)


def _few(made: Levelled) -> str:
    if len(made.bids) > 2:
        return ""
    word = "One bid is" if len(made.bids) == 1 else "Two bids are"
    return f"{word} too few to tell a fair price from an odd one: look at the allowances again."


def _gap(made: Levelled) -> str:
    """How far the lowest levelled total lies under the second."""
    if len(made.bids) < 2:
        return ""
    low, second = sorted(made.bids, key=lambda one: one.base)[:2]
    if low.base <= 0 or second.base - low.base <= GAP_FAR * low.base:
        return ""
    return (
        f"On one base {low.bid.bidder} is {second.base / low.base - 1:.0%} under the next: ask "
        "whether something was forgotten."
    )


def _against_ours(made: Levelled) -> str:
    if made.ours is None:
        return ""
    outside = [
        f"{one.bid.bidder} ({'over' if one.base > made.ours.high else 'under'})"
        for one in made.bids
        if not made.ours.low <= one.base <= made.ours.high
    ]
    if not outside:
        return "All leveled totals lie within our allowances."
    low, high = format_usd(made.ours.low), format_usd(made.ours.high)
    return f"Outside our allowances of {low} to {high}: {', '.join(outside)}."


def _order_turns(made: Levelled) -> str:
    """Where the lowest is another one on another base."""
    if len(made.bids) < 2:
        return ""
    lowest = {
        "as read": _lowest([_as_read(one) for one in made.bids], made),
        "on one base": _lowest([one.base for one in made.bids], made),
    }
    if made.base.hidden:
        lowest["with the expected hidden work"] = _lowest(
            [one.with_hidden for one in made.bids], made
        )
    if len(set(lowest.values())) == 1:
        return ""
    return "Lowest " + "; ".join(f"{how}: {who}" for how, who in lowest.items()) + "."


def _as_read(one: Standing) -> Decimal:
    stated = one.bid.stated_total.usd
    return one.summed if stated is None else stated


def _lowest(totals: list[Decimal], made: Levelled) -> str:
    return made.bids[totals.index(min(totals))].bid.bidder


def _crossings(made: Levelled) -> list[str]:
    """From how much hidden work on the cheaper base bid is the dearer job."""
    told = []
    for one, other in combinations(made.bids, 2):
        cheap, dear = sorted((one, other), key=lambda x: x.base)
        if cheap.hidden <= dear.hidden:
            continue
        times = break_even(cheap.base, cheap.hidden, dear.base, dear.hidden)
        if times is not None:
            told.append(
                f"{cheap.bid.bidder} is cheaper than {dear.bid.bidder} up to {times:.2g} times the "
                "hidden work that is expected; with more it is dearer."
            )
    return told
