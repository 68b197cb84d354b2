"""The ways of running the feed, side by side in report and walk."""

from __future__ import annotations

from dataclasses import replace
from typing import Any

from leanto.cost.feed import FeedPrices, FeedWay, feed_ways
from leanto.library import read_library
from leanto.reckon.model import CONFIRM_WIRING, Figure, Reckoning
from leanto.reports.blocks import Bullets, Paragraph, Table
from leanto.reports.contents.feed import feed_blocks, least_in_words, saving
from leanto.reports.contents.reckoned import long_feed_in_words
from leanto.trade.wiring.feed_need import FeedNeed

LIBRARY = read_library()
assert LIBRARY.feed_materials is not None
PRICES = FeedPrices(LIBRARY.feed_materials, LIBRARY.works, LIBRARY.prices, LIBRARY.factors)
WAYS = feed_ways(FeedNeed(60, 300), PRICES)


def text_of(blocks: tuple[Any, ...]) -> str:
    return " ".join(
        block.text if isinstance(block, Paragraph) else " ".join(block.items)
        for block in blocks
        if isinstance(block, Paragraph | Bullets)
    )


def test_every_way_is_a_row_with_wire_ground_pipe_trench_drop_and_allowance() -> None:
    table = feed_blocks(WAYS, "a made-up list")[0]
    assert isinstance(table, Table)
    assert len(table.rows) == len(WAYS) >= 8
    row = next(row for row in table.rows if row[0] == "Aluminum in PVC conduit")
    # 60 A over 300 ft: 2/0 aluminum at 0.159 ohm loses 2 x 60 x 300 x 0.159 / 1000 = 5.72 V.
    assert row[1:6] == ("3 x 2/0 AWG aluminum, 60 A", "3 AWG", "1-1/2 in.", "22 in.", "2.4 %")
    low, _, rest = row[6].partition(" to ")
    assert low.startswith("$") and ", likely $" in rest
    over = next(row for row in table.rows if "breaker alone" in row[0])
    assert over[5].endswith("% over")


def test_it_is_for_the_electrician_to_confirm_and_names_the_edition() -> None:
    said = text_of(feed_blocks(WAYS, "a made-up list"))
    assert CONFIRM_WIRING in said
    assert "2020 edition" in said
    assert "Prices: a made-up list." in said
    assert "must wait" in said and "transformer" in said
    assert "safe" not in said.lower()


def test_without_ways_nothing_is_said() -> None:
    assert feed_blocks((), "nowhere") == ()


def test_the_least_and_what_a_smaller_feed_saves() -> None:
    said = least_in_words(WAYS)
    assert said.startswith("least by these figures: aluminum conductors, direct burial, $")
    assert "A of the load must then wait" in said
    way, saved = saving(WAYS) or (None, 0)
    assert way is not None and way.total is not None
    full = next(one for one in WAYS if one.alternative.name == way.alternative.feeder.way.name)
    assert full.total is not None
    assert saved == full.total.likely - way.total.likely > 0


def test_nothing_sized_or_nothing_priced_sends_to_an_electrician() -> None:
    bare = tuple(FeedWay(way.alternative, missing=("trench",)) for way in WAYS)
    assert "an electrician must say" in least_in_words(bare)
    table = feed_blocks(bare, "nowhere")[0]
    assert isinstance(table, Table)
    assert "no price for trench" in {row[-1] for row in table.rows}
    past = feed_ways(FeedNeed(390, 900), PRICES)
    assert "not sized" in {row[1] for row in feed_blocks(past, "nowhere")[0].rows}  # type: ignore[union-attr]


def test_the_summary_names_the_least_of_a_long_feed(small: Any) -> None:
    long = Reckoning("long-feed@feed", "The long run", "feed", "", (Figure("Run", "300' 0\""),))
    said = long_feed_in_words(replace(small, reckonings=(long,), feed_ways=WAYS))
    assert "beyond 100 ft" in said
    assert "aluminum conductors, direct burial, $" in said
