"""The ways of running the feed from the house, side by side with their allowances."""

from __future__ import annotations

from collections.abc import Sequence
from decimal import Decimal

from leanto.cost.feed import FeedWay, least
from leanto.money import Spread, format_usd, round_to
from leanto.reckon.model import CONFIRM_WIRING
from leanto.reports.blocks import Block, Bullets, Column, Paragraph, Table
from leanto.reports.contents.words import capitalized
from leanto.trade.wiring.conductor import size_label
from leanto.trade.wiring.confirm import EDITION_NOTE
from leanto.trade.wiring.feeder import Feeder

COLUMNS = (
    Column("Way", 0.29),
    Column("Wire and breaker", 0.17),
    Column("Ground", 0.1),
    Column("PVC pipe", 0.11),
    Column("Trench", 0.08),
    Column("Drop", 0.08, "right"),
    Column("Allowance", 0.17, "right"),
)
_STEP_USD = 50
SAID = (
    "Each allowance is for the whole feed: wire and ground, conduit, trench, both ends, the panel "
    "or shut-off with its breaker, and ground rods. Planning figures, not quotes; the price of "
    "copper moves."
)


def feed_blocks(ways: Sequence[FeedWay], source: str) -> tuple[Block, ...]:
    """The table of the ways, which is the least, and who confirms it; nothing without ways."""
    if not ways:
        return ()
    notes = _notes(ways)
    return (
        Table(COLUMNS, tuple(_row(way) for way in ways), small=True),
        Paragraph(f"{capitalized(least_in_words(ways))}."),
        *((Bullets(notes),) if notes else ()),
        Paragraph(f"{SAID} Prices: {source}. {CONFIRM_WIRING} {EDITION_NOTE}", "note"),
    )


def least_in_words(ways: Sequence[FeedWay]) -> str:
    """Which way carries the whole load for the least, and what a smaller feed would save."""
    first = least(ways)
    if first is None or first.total is None:
        return "no way of running the feed is sized and priced; an electrician must say"
    said = f"least by these figures: {first_in_words(first)}"
    smaller = saving(ways)
    if smaller is None:
        return said
    way, saved = smaller
    waits = f"{way.alternative.must_wait_a:.0f} A of the load must then wait"
    if saved < _STEP_USD:
        return f"{said}; a smaller feed saves nothing to speak of, and {waits}"
    amount = format_usd(round_to(saved, _STEP_USD))
    return f"{said}; {way.alternative.name}, saves about {amount} on its like, but {waits}"


def first_in_words(way: FeedWay) -> str:
    """A priced way with its range, such as ``aluminum in PVC conduit, $2,300 to $7,500 ...``."""
    assert way.total is not None
    return f"{way.alternative.name}, {spread_in_words(way.total)}"


def saving(ways: Sequence[FeedWay]) -> tuple[FeedWay, Decimal] | None:
    """The smaller feed that saves most against the same way at full size, and how much."""
    full = {way.alternative.name: way.total for way in ways}
    saved = []
    for way in ways:
        like = full.get(way.alternative.feeder.way.name)
        if way.alternative.must_wait_a and way.total is not None and like is not None:
            saved.append((way, like.likely - way.total.likely))
    return max(saved, key=lambda pair: pair[1], default=None)


def spread_in_words(spread: Spread) -> str:
    """Such as ``$2,100 to $4,300, likely $2,900``."""
    low, likely, high = (
        format_usd(round_to(amount, _STEP_USD))
        for amount in (spread.low, spread.likely, spread.high)
    )
    return f"{low} to {high}, likely {likely}"


def _row(way: FeedWay) -> tuple[str, ...]:
    one, feeder = way.alternative, way.alternative.feeder
    name = capitalized(one.name)
    if not isinstance(feeder, Feeder):
        return (name, "not sized", "", "", "", "", "")
    over = " over" if one.loses_too_much else ""
    if way.total is not None:
        allowance = spread_in_words(way.total)
    else:
        allowance = f"no price for {', '.join(way.missing)}"
    return (
        name,
        f"{feeder.need.supply.wires} x {feeder.conductor.label}, {feeder.rating_a} A",
        size_label(feeder.ground.size),
        f"{feeder.conduit_size} in." if feeder.conduit_size else "none",
        f"{feeder.trench_in} in.",
        f"{feeder.lost_pct:.1f} %{over}",
        allowance,
    )


def _notes(ways: Sequence[FeedWay]) -> tuple[str, ...]:
    """What it means to choose each, alike ones once."""
    notes: dict[str, list[str]] = {}
    for way in ways:
        one, feeder = way.alternative, way.alternative.feeder
        said = " ".join(filter(None, (one.note, "" if isinstance(feeder, Feeder) else feeder.why)))
        if said:
            notes.setdefault(said, []).append(one.name)
    return tuple(f"{capitalized('; '.join(names))}: {said}" for said, names in notes.items())
