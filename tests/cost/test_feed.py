"""Allowances of the ways of running a feed."""

from __future__ import annotations

from dataclasses import replace
from decimal import Decimal

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from leanto.cost.feed import FeedPrices, FeedWay, feed_ways, least
from leanto.library import read_library
from leanto.trade.wiring.conductor import conductors
from leanto.trade.wiring.conduit import conduit_table
from leanto.trade.wiring.equipment_ground import grounding_table
from leanto.trade.wiring.feed_need import WAYS, FeedNeed, Supply
from leanto.trade.wiring.feeder import Feeder

LIBRARY = read_library()
assert LIBRARY.feed_materials is not None
PRICES = FeedPrices(LIBRARY.feed_materials, LIBRARY.works, LIBRARY.prices, LIBRARY.factors)


def one(need: FeedNeed, name: str, prices: FeedPrices = PRICES) -> FeedWay:
    return next(way for way in feed_ways(need, prices) if way.alternative.name == name)


def test_every_size_that_is_run_and_every_conduit_has_a_price() -> None:
    rows = {row.size: row for row in PRICES.materials.wires}
    for way in WAYS:
        sizes = [wire.size for wire in conductors(way.metal)]
        run = sizes[sizes.index(way.smallest_size) : sizes.index(way.largest_size) + 1]
        for size in run:
            assert getattr(rows[size], f"{way.metal}_usd") > 0, (size, way.metal)
    for row in grounding_table().equipment[:6]:
        assert rows[row.copper].copper_usd and rows[row.aluminum].aluminum_usd, row
    priced = {row.size for row in PRICES.materials.conduits}
    assert priced == {row.trade_size for row in conduit_table().sizes}


def test_wire_and_conduit_are_worked_by_hand() -> None:
    way = one(FeedNeed(60, 140), "copper in PVC conduit")
    parts = {part.name: part.allowance for part in way.parts}
    # Three 4 AWG at 1.50 and one 10 AWG at 0.36: 4.86 a foot, 680.40 in all, 8 % waste: 734.83,
    # 7 % tax: 786.27. Hours 140 x (3 x 0.01 + 0.007) = 5.18 at 30 x 1.433: 222.69. Together
    # 1008.96, x 1.21 for overhead and profit: 1220.84.
    assert float(parts["wire and ground"].likely) == pytest.approx(1220.84, abs=0.05)
    # 1.10 x 140 x 1.08 x 1.07 = 177.96; 140 x 0.045 = 6.3 h, 270.84; x 1.21: 543.05.
    assert float(parts["1 in. conduit"].likely) == pytest.approx(543.05, abs=0.05)
    assert way.total is not None
    assert way.total.likely == sum((part.allowance.likely for part in way.parts), Decimal(0))


def test_the_parts_are_those_that_the_feed_needs() -> None:
    names = [part.name for part in one(FeedNeed(60, 140), "copper cable, direct burial").parts]
    assert names == [
        "wire and ground",
        "trench of 28 in.",
        "both ends",
        "panel with shut-off",
        "ground rods",
    ]
    small = FeedNeed(12, 140, supply=Supply.V120)
    names = [part.name for part in one(small, "copper in PVC conduit").parts]
    assert "shut-off" in names
    assert not {"ground rods", "panel with shut-off"} & set(names)
    up = next(way for way in feed_ways(FeedNeed(60, 140), PRICES) if "480" in way.alternative.name)
    assert "two transformers" in [part.name for part in up.parts]


def test_a_missing_price_is_named_and_nothing_is_added_up() -> None:
    without = replace(PRICES, prices={**PRICES.prices})
    del without.prices["ground-rods"]  # type: ignore[attr-defined]
    way = one(FeedNeed(60, 140), "copper in PVC conduit", without)
    assert way.total is None
    assert way.missing == ("ground rods",)
    assert least(feed_ways(FeedNeed(60, 140), without)) is None


def test_the_least_carries_everything_within_the_advice() -> None:
    ways = feed_ways(FeedNeed(60, 300), PRICES)
    best = least(ways)
    assert best is not None and best.total is not None
    assert best.alternative.answers_the_plan
    cheaper = [way for way in ways if way.total and way.total.likely < best.total.likely]
    assert cheaper, "thinner wire is cheaper and still not the answer"
    assert all(not way.alternative.answers_the_plan for way in cheaper)


def test_what_the_tables_do_not_size_has_no_allowance() -> None:
    ways = feed_ways(FeedNeed(300, 900), PRICES)
    for way in ways:
        assert isinstance(way.alternative.feeder, Feeder) or way.total is None
    assert any(way.total is None for way in ways)


@settings(max_examples=40, deadline=None)
@given(feet=st.floats(1, 400), farther=st.floats(0, 200), amps=st.floats(5, 90))
def test_a_longer_run_never_costs_less(feet: float, farther: float, amps: float) -> None:
    near = {way.alternative.name: way.total for way in feed_ways(FeedNeed(amps, feet), PRICES)}
    far = {
        way.alternative.name: way.total for way in feed_ways(FeedNeed(amps, feet + farther), PRICES)
    }
    for way in WAYS:
        before, after = near[way.name], far[way.name]
        if before is not None and after is not None:
            assert after.low >= before.low and after.high >= before.high
            assert after.low <= after.likely <= after.high
