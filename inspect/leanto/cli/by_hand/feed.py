"""A feed of a length and load, each way of running it side by side."""

from __future__ import annotations

import argparse

from leanto.cli.by_hand.typed import length_ft, number, one_of
from leanto.cost.feed import FeedPrices, feed_ways
from leanto.errors import LeantoError
from leanto.library import Library
from leanto.reckon.feed import ENDS_SOURCES, ends_figures
from leanto.reckon.model import CONFIRM_WIRING, Figure, Reckoning, cited
from leanto.reports.blocks import Block
from leanto.reports.contents.feed import feed_blocks
from leanto.trade.wiring.burial import Place
from leanto.trade.wiring.confirm import EDITION_NOTE, Verdict
from leanto.trade.wiring.feed_need import FeedNeed, Supply
from leanto.trade.wiring.feed_variants import LONG_FT
from leanto.trade.wiring.feeder import Feeder, feeder_alternatives
from leanto.trade.wiring.feeder_working import feeder_working
from leanto.trade.wiring.voltage_drop import RECOMMENDED_SOURCE

HELP = "wire, ground, conduit, trench and allowance of a feed, its ways side by side"


def add_arguments(parser: argparse.ArgumentParser) -> None:
    parser.add_argument("--length", required=True, metavar="140", help="one way, feet")
    parser.add_argument("--amps", required=True, metavar="60", help="load at its voltage")
    parser.add_argument(
        "--continuous", default="0", metavar="20", help="more amps that run three hours or longer"
    )
    voltages = ", ".join(Supply)
    parser.add_argument("--volts", default=Supply.V120_240.value, metavar="V", help=voltages)
    parser.add_argument("--breaker", metavar="60", help="breaker wanted at the house")
    parser.add_argument(
        "--ground", default=Place.YARD.value, metavar="PLACE", help=", ".join(Place)
    )
    parser.add_argument("--drop", default="3", metavar="3", help="most drop, percent")


def reckoned(arguments: argparse.Namespace) -> Reckoning:
    need = _need(arguments)
    ways = feeder_alternatives(need)
    sized = [way for way in ways if isinstance(way, Feeder)]
    steps = feeder_working(sized[0]) if sized else ()
    reasons = [f"{step.label}: {step.working}: {step.result}." for step in steps]
    if sized:
        reasons.insert(0, f"The working of {sized[0].way.name}:")
    else:
        reasons.append("Past the tables: an electrician or engineer sizes it.")
    if need.one_way_ft > LONG_FT:
        reasons.append(
            f"Beyond {LONG_FT:g} ft the distance and not the breaker begins to set the wire, and "
            "the trench costs the most (common practice)."
        )
    return Reckoning(
        id="feed",
        title="Feed to a separate building",
        station_id="",
        verdict="sized by the tables" if sized else Verdict.ASK.value,
        figures=(
            Figure("To size for", f"{need.design_a:g} A over {need.one_way_ft:g} ft"),
            *(ends_figures(sized[-1]) if sized else ()),
        ),
        reasons=(*reasons, EDITION_NOTE),
        sources=cited(
            (RECOMMENDED_SOURCE, *ENDS_SOURCES),
            (step.source for way in sized for step in feeder_working(way)),
        ),
        confirm=CONFIRM_WIRING,
        cautions=("Call 811 before any digging, and a private locator for the owner's own lines.",),
    )


def blocks(arguments: argparse.Namespace, library: Library) -> tuple[Block, ...]:
    """The ways side by side, with the prices of the library."""
    if library.feed_materials is None:
        return ()
    prices = FeedPrices(library.feed_materials, library.works, library.prices, library.factors)
    return feed_blocks(feed_ways(_need(arguments), prices), library.feed_materials.source)


def _need(arguments: argparse.Namespace) -> FeedNeed:
    supplies = {one.value: one for one in Supply} | {"120": Supply.V120, "240": Supply.V240}
    breaker = number(arguments.breaker, "Breaker", 15, 600, "A") if arguments.breaker else None
    load_a = number(arguments.amps, "Amps", 0, 400, "A")
    long_a = number(arguments.continuous, "Continuous", 0, 400, "A")
    if load_a + long_a == 0:
        raise LeantoError("Amps: a feed carries more than 0 A.")
    try:
        return FeedNeed(
            load_a=load_a,
            one_way_ft=length_ft(arguments.length, "Length", 1, 1000),
            continuous_a=long_a,
            supply=one_of(arguments.volts, "Volts", supplies),
            rating_a=None if breaker is None else round(breaker),
            drop_limit_pct=number(arguments.drop, "Drop", 0.5, 10, "%"),
            place=one_of(arguments.ground, "Ground", {place.value: place for place in Place}),
        )
    except ValueError as error:
        raise LeantoError(f"Breaker: {error}.", "Give a larger one, or none.") from None
