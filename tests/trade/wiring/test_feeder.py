"""The feed: what governs its size, and where each table takes over."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from leanto.trade.wiring.burial import Method, Place
from leanto.trade.wiring.conductor import conductor
from leanto.trade.wiring.confirm import CONFIRM
from leanto.trade.wiring.feed_need import WAYS, FeedNeed, Supply, Way
from leanto.trade.wiring.feeder import Feeder, NoFeeder, feeder_alternatives, size_feeder
from leanto.trade.wiring.feeder_working import feeder_working

COPPER_CABLE, ALUMINUM_BURIED, COPPER_PVC, ALUMINUM_PVC = WAYS


def sized(need: FeedNeed, way: Way = COPPER_PVC) -> Feeder:
    feeder = size_feeder(need, way)
    assert isinstance(feeder, Feeder), feeder
    return feeder


def test_alternatives_cover_both_metals_and_both_ways_in_the_ground() -> None:
    found = feeder_alternatives(FeedNeed(48, 140))
    assert {(one.way.metal, one.way.method) for one in found} == {
        (metal, method)
        for metal in ("copper", "aluminum")
        for method in (Method.DIRECT_BURIAL, Method.PVC)
    }
    assert all(one.confirm == CONFIRM for one in found)


def test_48_a_over_140_ft_by_hand() -> None:
    # 48 A -> 50 A breaker. 60 C: 6 AWG copper is 55 A. 2 x 48 x 140 x 0.491 / 1000 = 6.599 V,
    # 2.75 % of 240. Ground for 50 A: 10 AWG. 3 x .0507 + .0211 = .1732 sq in: 3/4 in Schedule 40
    # (.203), 1 in Schedule 80. Cover 18 in; 18 + 1.05 + 2 = 21.05, so 22 in.
    feeder = sized(FeedNeed(48, 140))
    assert (feeder.rating_a, feeder.column_c) == (50, 60)
    assert (feeder.conductor.size, feeder.governs) == ("6", "ampacity")
    assert feeder.lost_v == pytest.approx(6.599, abs=0.001)
    assert feeder.lost_pct == pytest.approx(2.75, abs=0.005)
    assert feeder.ground.size == "10"
    assert (feeder.conduit_size, feeder.riser_size) == ("3/4", "1")
    assert (feeder.cover_in, feeder.trench_in) == (18, 22)


def test_long_feed_is_set_by_the_drop_and_takes_its_ground_along() -> None:
    # 100 A, 400 ft, 240 V: 3 % is 7.2 V, so at most 0.09 ohm/kft: 3/0 copper (0.0766).
    # 60 C: 1 AWG is 110 A. Ground 8 AWG x 167800 / 83690 = 33103 cmil, so 4 AWG.
    feeder = sized(FeedNeed(100, 400))
    assert (feeder.by_ampacity.size, feeder.conductor.size) == ("1", "3/0")
    assert feeder.governs == "voltage drop"
    assert (feeder.ground.table_size, feeder.ground.size) == ("8", "4")
    assert feeder.ground.wanted_cmil == pytest.approx(33103, abs=1)


def test_ground_is_never_larger_than_the_circuit_conductors() -> None:
    # 16 A at 120 V over 140 ft: 12 AWG -> 8 AWG; ground 12 x 16510 / 6530 is 8 AWG as well.
    feeder = sized(FeedNeed(16, 140, supply=Supply.V120, is_branch_circuit=True))
    assert (
        feeder.by_ampacity.size,
        feeder.conductor.size,
        feeder.ground.size,
    ) == ("12", "8", "8")


def test_aluminum_starts_at_6_awg_and_its_ground_knows_the_increase() -> None:
    feeder = sized(FeedNeed(16, 20), ALUMINUM_PVC)
    assert (feeder.by_ampacity.size, feeder.conductor.size) == ("10", "6")
    assert feeder.governs == "smallest size used"
    assert feeder.ground.size == "6"


@pytest.mark.parametrize(
    ("limit_pct", "size"),
    [(2.76, "6"), (2.74, "4")],  # 6 AWG copper loses 2.75 %
)
def test_drop_limit_has_two_sides(limit_pct: float, size: str) -> None:
    assert size == sized(FeedNeed(48, 140, drop_limit_pct=limit_pct)).conductor.size


@pytest.mark.parametrize(
    ("amps", "way", "terminals_75c", "column_c"),
    [
        (100, COPPER_PVC, False, 60),  # 110.14(C): to 100 A, ends not known for 75 C
        (101, COPPER_PVC, False, 75),
        (100, COPPER_PVC, True, 75),
        (100, COPPER_CABLE, True, 60),  # UF-B stays in the 60 C column
        (150, COPPER_CABLE, False, 60),
    ],
)
def test_temperature_column_follows_ends_and_cable(
    amps: float, way: Way, terminals_75c: bool, column_c: int
) -> None:
    assert column_c == sized(FeedNeed(amps, 50, terminals_75c=terminals_75c), way).column_c


def test_continuous_load_counts_a_quarter_more_for_size_but_not_for_drop() -> None:
    need = FeedNeed(0, 50, continuous_a=200)
    feeder = sized(need)
    assert (need.design_a, feeder.rating_a) == (250, 250)
    assert feeder.conductor.size == "250"
    assert feeder.lost_v == pytest.approx(2 * 200 * 50 * 0.0515 / 1000)


def test_a_branch_circuit_may_not_take_the_next_size_up() -> None:
    # 55 A in the 60 C column: a feeder may have 60 A on it, several receptacles may not.
    assert sized(FeedNeed(52, 30)).conductor.size == "6"
    assert sized(FeedNeed(52, 30, is_branch_circuit=True)).conductor.size == "4"


@pytest.mark.parametrize(
    ("supply", "amps", "gfci", "cover_in"),
    [
        (Supply.V120, 20, True, 12),
        (Supply.V120, 21, True, 24),  # a 25 A breaker
        (Supply.V120, 20, False, 24),
        (Supply.V240, 20, True, 24),
    ],
)
def test_shallow_cover_is_for_a_small_protected_branch_only(
    supply: Supply, amps: float, gfci: bool, cover_in: int
) -> None:
    need = FeedNeed(amps, 30, supply=supply, is_branch_circuit=True, gfci_at_source=gfci)
    assert cover_in == sized(need, COPPER_CABLE).cover_in


def test_low_power_factor_can_ask_for_more_copper_in_large_sizes() -> None:
    # 3/0 copper: .0766 alone, .0766 x .85 + .042 x .527 = .0872 at 0.85.
    at_unity = sized(FeedNeed(100, 400, power_factor=1.0))
    lagging = sized(FeedNeed(100, 400, power_factor=0.85))
    assert at_unity.conductor.size == lagging.conductor.size == "3/0"
    assert lagging.lost_v / at_unity.lost_v == pytest.approx(0.0872 / 0.0766, rel=0.001)


def test_what_the_tables_cannot_size_says_why() -> None:
    far = size_feeder(FeedNeed(100, 3000), COPPER_PVC)
    assert isinstance(far, NoFeeder)
    assert "350 kcmil copper loses" in far.why
    heavy = size_feeder(FeedNeed(390, 20), COPPER_PVC)
    assert isinstance(heavy, NoFeeder)
    assert "390 A" in heavy.why
    past_ratings = size_feeder(FeedNeed(700, 20), COPPER_PVC)
    assert isinstance(past_ratings, NoFeeder)
    under_floor = FeedNeed(20, 20, place=Place.UNDER_BUILDING)
    assert isinstance(size_feeder(under_floor, COPPER_CABLE), NoFeeder)
    assert sized(under_floor, COPPER_PVC).cover_in == 0


@pytest.mark.parametrize(
    ("load_a", "feet", "continuous_a", "rating_a"),
    [(0, 50, 0, None), (-1, 50, 0, None), (10, float("nan"), 0, None), (10, 50, 40, 50)],
)
def test_a_need_without_sense_is_refused(
    load_a: float, feet: float, continuous_a: float, rating_a: int | None
) -> None:
    with pytest.raises(ValueError, match=r"."):
        FeedNeed(load_a, feet, continuous_a=continuous_a, rating_a=rating_a)


def test_working_lists_every_step_with_its_source() -> None:
    steps = feeder_working(sized(FeedNeed(100, 400)))
    assert [step.label for step in steps] == [
        "Load to size for",
        "Breaker at the supply end",
        "Temperature column",
        "Size by load and breaker",
        "Voltage drop",
        "Size to run",
        "Grounding conductor by breaker",
        "Grounding conductor, increased",
        "Conduit",
        "Cover",
        "Trench depth",
    ]
    drop = steps[4]
    assert drop.working == "2 x 100 A x 400 ft x 0.0766 ohm/kft / 1000"
    assert drop.result == "6.13 V, 2.55 % of 240 V"
    assert all(step.source.title for step in steps)
    buried = feeder_working(sized(FeedNeed(20, 20), COPPER_CABLE))
    assert "Conduit" not in {step.label for step in buried}


def test_notes_warn_of_digging_and_name_the_edition() -> None:
    notes = " ".join(sized(FeedNeed(48, 140)).notes)
    assert "811" in notes
    assert "2020 edition" in notes


@given(
    load_a=st.floats(1, 150),
    feet=st.floats(1, 900),
    way=st.sampled_from(WAYS),
    supply=st.sampled_from(Supply),
)
def test_every_sized_feed_holds_its_limits(
    load_a: float, feet: float, way: Way, supply: Supply
) -> None:
    need = FeedNeed(load_a, feet, supply=supply)
    feeder = size_feeder(need, way)
    if isinstance(feeder, NoFeeder):
        return
    assert feeder.lost_pct <= need.drop_limit_pct
    assert feeder.conductor.ampacity_a(feeder.column_c) >= need.design_a
    assert feeder.rating_a >= need.design_a
    ground = conductor(feeder.ground.size, way.metal)
    assert ground.area_cmil <= feeder.conductor.area_cmil
    longer = size_feeder(FeedNeed(load_a, feet * 2, supply=supply), way)
    if isinstance(longer, Feeder):
        assert longer.conductor.area_cmil >= feeder.conductor.area_cmil
        assert conductor(longer.ground.size, way.metal).area_cmil >= ground.area_cmil
