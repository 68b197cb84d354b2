"""Other ways of feeding the same building: thinner wire, another voltage, a smaller feed."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, replace
from typing import Final

from leanto.source import COMMON_PRACTICE
from leanto.trade.tables import per_tables
from leanto.trade.wiring.confirm import code
from leanto.trade.wiring.feed_need import WAYS, FeedNeed, Supply, Way
from leanto.trade.wiring.feeder import Feeder, NoFeeder, size_feeder

LONG_FT: Final = 100.0
"""From here on the distance sets the wire, the conduit and the price."""
LONG_SOURCE = COMMON_PRACTICE
ANY_DROP_PCT: Final = 100.0
MOST_120V_A: Final = 100.0
"""Past this nobody would run one hot wire. Common practice."""
SMALLER_SHARE: Final = 2 / 3
USUAL_RATINGS_A: Final = (15, 20, 30, 40, 50, 60, 70, 90, 100, 125, 150, 200)
"""Breakers that a feed is usually given. Common practice."""
SMALLER_SOURCE = COMMON_PRACTICE
TRANSFORMER_SOURCE = code(
    "450.3(B), 240.21(C) and 250.30: each transformer is protected and grounded anew",
    from_memory=True,
)


@dataclass(frozen=True, slots=True)
class Alternative:
    """One way of feeding the building, with what sets it apart from the plan."""

    name: str
    """Such as ``copper in PVC conduit, smaller feed of 30 A``."""
    feeder: Feeder | NoFeeder
    note: str = ""
    """What it means to choose it; empty for the plan itself."""
    must_wait_a: float = 0.0
    """Amps of the planned load that cannot run with the rest."""
    loses_too_much: bool = False
    """The drop was left out of account."""

    @property
    def answers_the_plan(self) -> bool:
        """True when it is sized, carries the whole load and keeps the drop within the advice."""
        return isinstance(self.feeder, Feeder) and not self.must_wait_a and not self.loses_too_much


@per_tables(maxsize=64)
def feed_alternatives(need: FeedNeed) -> tuple[Alternative, ...]:
    """The plan in copper and aluminum, buried and in conduit, then what else may be run.

    Thinner wire is shown where the drop and not the breaker set the size; a lower voltage as the
    measure of what the higher one saves; transformers on a long run; and a smaller feed.
    """
    plan = tuple(Alternative(way.name, size_feeder(need, way)) for way in WAYS)
    return (
        *plan,
        *_thinner(need, plan),
        *_other_voltage(need),
        *_transformers(need),
        *_smaller(need, plan),
    )


def _conduit_ways() -> tuple[Way, ...]:
    return tuple(way for way in WAYS if way.in_conduit)


def _thinner(need: FeedNeed, plan: tuple[Alternative, ...]) -> Iterator[Alternative]:
    for one in plan:
        way, feeder = one.feeder.way, one.feeder
        if not (isinstance(feeder, Feeder) and way.in_conduit):
            continue
        if feeder.governs == "voltage drop":
            loose = size_feeder(replace(need, drop_limit_pct=ANY_DROP_PCT), way)
            yield Alternative(
                f"{way.name}, wire by the breaker alone",
                loose,
                "Loses more than the advice: lamps dim and motors run hot.",
                loses_too_much=True,
            )


def _other_voltage(need: FeedNeed) -> Iterator[Alternative]:
    """The same load on the voltage that was not planned, in copper and conduit."""
    is_low = need.supply is Supply.V120
    other = Supply.V120_240 if is_low else Supply.V120
    if need.supply is Supply.V480:
        return
    changed = at_supply(need, other)
    if other is Supply.V120 and changed.design_a > MOST_120V_A:
        return
    said = (
        "Half the amps; tools for 120 V must be spread over both hot wires."
        if is_low
        else "Twice the amps, and nothing for 240 V can run: shown for what 240 V saves."
    )
    way = next(way for way in _conduit_ways() if way.metal == "copper")
    yield Alternative(
        f"{way.name}, the same load at {other.value}", size_feeder(changed, way), said
    )


def _transformers(need: FeedNeed) -> Iterator[Alternative]:
    if need.one_way_ft <= LONG_FT or need.supply not in (Supply.V240, Supply.V120_240):
        return
    for way in _conduit_ways():
        if way.metal == "copper":
            yield Alternative(
                f"{way.name}, stepped up to {Supply.V480.value} and down again",
                size_feeder(at_supply(need, Supply.V480), way),
                "A transformer at each end; each hums, warms and loses a little all year.",
            )


def _smaller(need: FeedNeed, plan: tuple[Alternative, ...]) -> Iterator[Alternative]:
    sized = [one.feeder for one in plan if isinstance(one.feeder, Feeder)]
    most = sized[0].rating_a if sized else need.design_a
    fits = [rating for rating in USUAL_RATINGS_A if rating <= most * SMALLER_SHARE]
    if not fits:
        return
    rating_a = fits[-1]
    if rating_a >= need.design_a:
        return
    share = rating_a / need.design_a * (1 - 1e-9)  # a rounded sum must not pass the breaker
    less = replace(
        need,
        load_a=need.load_a * share,
        continuous_a=need.continuous_a * share,
        rating_a=rating_a,
    )
    over_a = need.design_a - rating_a
    for way in _conduit_ways():
        yield Alternative(
            f"{way.name}, smaller feed of {rating_a} A",
            size_feeder(less, way),
            f"Not all at once: {over_a:.0f} A of the {need.design_a:.0f} A planned must wait.",
            must_wait_a=over_a,
        )


def at_supply(need: FeedNeed, supply: Supply) -> FeedNeed:
    """The same watts at another voltage: amps in the opposite proportion."""
    factor = need.supply.volts / supply.volts
    return replace(
        need,
        load_a=need.load_a * factor,
        continuous_a=need.continuous_a * factor,
        supply=supply,
        rating_a=None,
    )
