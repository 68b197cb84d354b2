"""The ways of feeding a building side by side: thinner wire, other voltages, a smaller feed."""

from __future__ import annotations

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from leanto.trade.wiring.feed_need import FeedNeed, Supply
from leanto.trade.wiring.feed_variants import (
    USUAL_RATINGS_A,
    Alternative,
    at_supply,
    feed_alternatives,
)
from leanto.trade.wiring.feeder import Feeder


def named(need: FeedNeed, part: str) -> list[Alternative]:
    return [one for one in feed_alternatives(need) if part in one.name]


def sized(one: Alternative) -> Feeder:
    assert isinstance(one.feeder, Feeder), one.feeder
    return one.feeder


def test_the_plan_comes_first_in_both_metals_and_both_ways() -> None:
    plan = feed_alternatives(FeedNeed(60, 140))[:4]
    assert [one.feeder.way.metal for one in plan] == ["copper", "aluminum", "copper", "aluminum"]
    assert [one.feeder.way.in_conduit for one in plan] == [False, False, True, True]
    assert all(one.answers_the_plan and not one.note for one in plan)


@pytest.mark.parametrize(
    ("feet", "count"),
    [
        # 60 A in 4 AWG copper, 0.308 ohm: 3 % of 240 V is lost at 194 ft, 7.2 / (120 x 0.000308);
        # in 3 AWG aluminum, 0.403 ohm, at 148 ft. Chapter 9 Table 8, seen.
        (140, 0),
        (150, 1),
        (190, 1),
        (200, 2),
    ],
)
def test_wire_by_the_breaker_alone_is_shown_where_the_drop_sets_the_size(
    feet: float, count: int
) -> None:
    thinner = named(FeedNeed(60, feet), "by the breaker alone")
    assert len(thinner) == count
    for one in thinner:
        assert sized(one).conductor == sized(one).by_ampacity
        assert sized(one).lost_pct > 3
        assert not one.answers_the_plan


def test_a_higher_voltage_halves_the_amps_and_quarters_the_share_lost() -> None:
    need = FeedNeed(16, 140, supply=Supply.V120, rating_a=20)
    higher = at_supply(need, Supply.V120_240)
    assert (higher.load_a, higher.running_a, higher.rating_a) == (8, 8, None)
    (one,) = named(need, "the same load at 120/240 V")
    # By hand, 14 AWG copper at 3.14 ohm: 2 x 8 x 140 x 3.14 / 1000 = 7.03 V, 2.93 % of 240 V.
    assert sized(one).conductor.size == "14"
    assert sized(one).lost_pct == pytest.approx(2.93, abs=0.005)
    plan = next(way for way in feed_alternatives(need) if way.name == "copper in PVC conduit")
    # The same at 120 V in 8 AWG at 0.778 ohm: 2 x 16 x 140 x 0.778 / 1000 = 3.49 V, 2.90 %.
    assert sized(plan).conductor.size == "8"
    assert sized(plan).lost_pct == pytest.approx(2.90, abs=0.005)


@pytest.mark.parametrize(("amps", "count"), [(50, 1), (50.1, 0)])
def test_120_v_is_compared_up_to_100_a(amps: float, count: int) -> None:
    assert len(named(FeedNeed(amps, 50), "the same load at 120 V")) == count


@pytest.mark.parametrize(("feet", "count"), [(100, 0), (101, 1)])
def test_transformers_are_compared_on_a_long_run(feet: float, count: int) -> None:
    found = named(FeedNeed(60, feet), "480 V")
    assert len(found) == count
    for one in found:
        # 60 A at 240 V are 14.4 kVA, 30 A at 480 V.
        assert sized(one).need.design_a == pytest.approx(30)
        assert one.answers_the_plan


@pytest.mark.parametrize(
    ("amps", "smaller"), [(60, 40), (90, 60), (50, 30), (30, 20), (20, None), (14, None)]
)
def test_a_smaller_feed_is_two_thirds_of_the_breaker_at_most(
    amps: float, smaller: int | None
) -> None:
    found = named(FeedNeed(amps, 60), "smaller feed")
    assert {sized(one).rating_a for one in found} == ({smaller} if smaller else set())
    for one in found:
        assert smaller is not None
        assert one.must_wait_a == pytest.approx(amps - smaller)
        assert sized(one).need.design_a <= smaller
        assert not one.answers_the_plan


@settings(max_examples=60)
@given(
    load_a=st.floats(0.5, 150),
    continuous_a=st.floats(0, 60),
    feet=st.floats(1, 600),
    supply=st.sampled_from([Supply.V120, Supply.V240, Supply.V120_240]),
)
def test_every_alternative_holds_what_it_says(
    load_a: float, continuous_a: float, feet: float, supply: Supply
) -> None:
    need = FeedNeed(load_a, feet, continuous_a=continuous_a, supply=supply)
    found = feed_alternatives(need)
    assert len({one.name for one in found}) == len(found)
    for one in found:
        watts = one.feeder.need.design_a * one.feeder.need.supply.volts
        planned = need.design_a * supply.volts
        if one.must_wait_a:
            assert watts + one.must_wait_a * supply.volts == pytest.approx(planned)
            assert isinstance(one.feeder, Feeder) is False or one.feeder.rating_a in USUAL_RATINGS_A
        else:
            assert watts == pytest.approx(planned)
        if isinstance(one.feeder, Feeder) and one.answers_the_plan:
            assert one.feeder.lost_pct <= 3
            assert one.feeder.rating_a >= one.feeder.need.design_a
