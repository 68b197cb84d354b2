"""What is no fault of the data files and still worth knowing before one relies on them."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass

from leanto.library.model import Library
from leanto.library.names import works_of

NO_SOURCE = "no source"
"""The words by which the source of a price says that it is a guess."""


@dataclass(frozen=True, slots=True)
class Notes:
    """Ids of works, in the order of the files."""

    without_source: tuple[str, ...]
    """The price, or a part of it, is a planning figure."""
    hours_without_source: tuple[str, ...]
    """The hours too are a planning figure, and not only the materials or a part of the hours."""
    without_range: tuple[str, ...]
    """Low, likely and high are the same, for hours and materials."""
    unused: tuple[str, ...]
    """No rule calls for the work, neither course of gut or keep, and no bidder is asked for it."""


def notes(library: Library, asked: Iterable[str] = ()) -> Notes:
    """What stands to be bettered in a library without problems.

    ``asked`` are works whose unit prices bidders are asked for: those are called for too.
    """
    used = {call.call.work for rule in library.rules for call in rule.calls} | {*asked}
    used |= {work_id for _, work_id in works_of(library.hidden)}
    prices = library.prices.items()
    return Notes(
        without_source=tuple(w for w, price in prices if NO_SOURCE in price.source.lower()),
        hours_without_source=tuple(
            w for w, price in prices if NO_SOURCE in price.source.lower().partition(";")[0]
        ),
        without_range=tuple(
            work_id
            for work_id, price in prices
            if price.hours.low == price.hours.high
            and price.materials_usd.low == price.materials_usd.high
        ),
        unused=tuple(work_id for work_id in library.works if work_id not in used),
    )
