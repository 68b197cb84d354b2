"""The feed from the house: load by use, and each way of running it side by side."""

from __future__ import annotations

from collections.abc import Iterator
from functools import lru_cache
from typing import Final

from leanto.building.model import Appliance, Building
from leanto.quantities import FEET
from leanto.reckon import asked
from leanto.reckon.basis import Basis, number, word
from leanto.reckon.model import CONFIRM_WIRING, Fact, Figure, Reckoning, cited
from leanto.source import Source
from leanto.trade.tables import per_tables
from leanto.trade.wiring.burial import Place
from leanto.trade.wiring.conductor import conductor, size_label
from leanto.trade.wiring.confirm import EDITION_NOTE, Verdict
from leanto.trade.wiring.equipment_ground import ROD_LIMIT_SOURCE, electrode_size
from leanto.trade.wiring.feed_need import CONTINUOUS_FACTOR, FeedNeed, Supply
from leanto.trade.wiring.feed_variants import LONG_FT, LONG_SOURCE
from leanto.trade.wiring.feeder import Feeder, NoFeeder, feeder_alternatives
from leanto.trade.wiring.feeder_working import feeder_working
from leanto.trade.wiring.load import Load, PlannedLoad, planned_load
from leanto.trade.wiring.overcurrent import check_rating
from leanto.trade.wiring.separate_building import (
    ELECTRODE_SOURCE,
    SHUT_OFF_RATING_SOURCE,
    SHUT_OFF_SOURCE,
    is_one_circuit,
    least_shut_off_a,
)
from leanto.trade.wiring.voltage_drop import (
    RECOMMENDED_PCT,
    RECOMMENDED_SOURCE,
    drop_pct,
    drop_v,
)

FEED: Final = "feed"
SEVERAL: Final = 3
"""Two-wire circuits of a building with a panel: from three on the rule asks the most."""
PLACE_OF: Final = {
    "yard": Place.YARD,
    "house driveway": Place.HOUSE_DRIVEWAY,
    "farm lane or road": Place.ROAD,
}
_WAYS = per_tables(maxsize=64)(feeder_alternatives)


def feeds(basis: Basis) -> Iterator[Reckoning]:
    """The new feed by its distance and load, a long run on its own, and the feed that is there."""
    building = basis.building
    need = feed_need(basis)
    if need is None:
        return
    load = load_of(building, basis.floor_sqft())
    ways = _WAYS(need)
    yield _new_feed(building, load, need, ways)
    if building.distance_to_panel > LONG_FT:
        yield _long(building, need, ways)
    yield from _there(basis, need)


def feed_need(basis: Basis) -> FeedNeed | None:
    """What the new feed must carry, and how far; None where nothing is to be fed."""
    building = basis.building
    if building.distance_to_panel <= 0 or FEED not in basis.stations:
        return None
    need = need_of(building, load_of(building, basis.floor_sqft()), _ground(basis))
    return None if need is None else _as_before(need)


@lru_cache(maxsize=64)
def _as_before(need: FeedNeed) -> FeedNeed:
    """The very need that was asked for before, so that what is remembered by it is found."""
    return need


def load_of(building: Building, floor_sqft: float) -> PlannedLoad:
    """The load by use, or by the owner's own list when there is one."""
    own = [_load(one) for one in building.appliances]
    return planned_load(building.intended_use.value, floor_sqft, own or None)


def need_of(building: Building, load: PlannedLoad, place: Place = Place.YARD) -> FeedNeed | None:
    """What the feed must carry at 240 V; None for a load of nothing."""
    supply = Supply.V120_240
    if load.total_va <= 0:
        return None
    return FeedNeed(
        load_a=load.other_va / supply.volts,
        continuous_a=load.continuous_va / supply.volts,
        one_way_ft=building.distance_to_panel,
        supply=supply,
        place=place,
    )


def _load(one: Appliance) -> Load:
    va = one.watts if one.watts is not None else (one.amps or 0.0) * one.volts
    return Load(name=one.name, va=va, is_continuous=one.continuous)


def _ground(basis: Basis) -> Place:
    """The ground the run crosses, where the walk says so; else the yard."""
    for seen in basis.seen(asked.FEED_ROUTE):
        place = PLACE_OF.get(word(seen, "burial_place") or "")
        if place is not None:
            return place
    return Place.YARD


def _new_feed(
    building: Building, load: PlannedLoad, need: FeedNeed, ways: tuple[Feeder | NoFeeder, ...]
) -> Reckoning:
    sized = [way for way in ways if isinstance(way, Feeder)]
    figures = [
        Figure("Load", f"{load.total_va:,.0f} VA, {need.running_a:.1f} A at 240 V"),
        Figure("To size for", f"{need.design_a:.1f} A, loads of three hours x {CONTINUOUS_FACTOR}"),
        Figure("Run", f"{FEET.length(need.one_way_ft)}, {need.place.value}"),
    ]
    facts: dict[str, Fact] = {"feed_is_long": building.distance_to_panel > LONG_FT}
    sources: list[Source] = [load.source, load.general_source]
    if sized:
        first = _usual(sized)
        by_breaker = _drop_by_breaker_pct(first)
        facts |= {
            "feed_rating_a": float(first.rating_a),
            "feed_drop_pct": first.lost_pct,
            "feed_breaker_drop_pct": by_breaker,
        }
        sources += [step.source for way in sized for step in feeder_working(way)]
        figures += ends_figures(first)
        sources += ENDS_SOURCES
    whose = (
        "the owner's list"
        if building.appliances
        else f"a planning list for {building.intended_use}"
    )
    return Reckoning(
        id="feed@feed",
        title="Feed from the house panel",
        station_id=FEED,
        verdict="sized by the tables" if sized else Verdict.ASK.value,
        figures=tuple(figures),
        reasons=(
            f"Load by floor area and {whose}: "
            + "; ".join(f"{one.name} {one.va:,.0f} VA" for one in load.loads)
            + ".",
            f"Every way keeps the drop within {need.drop_limit_pct:g} percent, which is advice.",
            EDITION_NOTE,
        ),
        sources=cited(sources),
        confirm=CONFIRM_WIRING,
        facts=facts,
        cautions=("Call 811 before any digging, and a private locator for the owner's own lines.",),
    )


ENDS_SOURCES: Final = (SHUT_OFF_SOURCE, SHUT_OFF_RATING_SOURCE, ELECTRODE_SOURCE, ROD_LIMIT_SOURCE)


def ends_figures(feeder: Feeder) -> tuple[Figure, Figure]:
    """What stands at the far end of a feed: a shut-off, and a ground rod with its wire."""
    if is_one_circuit(feeder):
        return (
            Figure("Shut-off at the building", f"{least_shut_off_a(1)} A at least, one circuit"),
            Figure("Ground rod", "none asked for: one circuit with a grounding conductor"),
        )
    least_a = max(least_shut_off_a(SEVERAL), feeder.rating_a)
    rod = electrode_size(feeder.conductor.size, feeder.conductor.metal)
    return (
        Figure("Shut-off at the building", f"{least_a} A, in reach at the building"),
        Figure("Ground rod", f"{size_label(rod)} copper to it; the neutral is not bonded there"),
    )


def _usual(sized: list[Feeder]) -> Feeder:
    """Copper in conduit where it could be sized: what facts and rules go by."""
    return next(
        (way for way in sized if way.way.in_conduit and way.way.metal == "copper"), sized[0]
    )


def _drop_by_breaker_pct(way: Feeder) -> float:
    """What would be lost over the run in wire that the breaker alone asks for."""
    need = way.need
    lost = drop_v(need.running_a, need.one_way_ft, way.by_ampacity.ohm_per_kft)
    return drop_pct(lost, need.supply.volts)


def _long(building: Building, need: FeedNeed, ways: tuple[Feeder | NoFeeder, ...]) -> Reckoning:
    sized = [way for way in ways if isinstance(way, Feeder)]
    larger = [way for way in sized if way.governs == "voltage drop"]
    figures = [
        Figure("Run", FEET.length(building.distance_to_panel)),
        *(
            Figure(
                way_name(way),
                f"{way.by_ampacity.label} by the breaker loses {_drop_by_breaker_pct(way):.1f} %; "
                f"{way.conductor.label} loses {way.lost_pct:.1f} %",
            )
            for way in sized
        ),
    ]
    trench = max((way.trench_in for way in sized), default=None)
    if trench is not None:
        figures.append(
            Figure(
                "Trench",
                f"{FEET.length(building.distance_to_panel)} long, up to {trench} in. deep",
            )
        )
    return Reckoning(
        id="long-feed@feed",
        title="The long run to the house",
        station_id=FEED,
        verdict=f"beyond {LONG_FT:g} ft",
        figures=tuple(figures),
        reasons=(
            f"The run is {FEET.length(building.distance_to_panel)}; past {LONG_FT:g} ft the "
            "distance and not the breaker begins to set the wire, and the trench costs the most.",
            f"{len(larger)} of {len(sized)} ways need larger wire than the breaker asks for.",
            "The grounding conductor grows with the others, and the conduit with all of them.",
        ),
        sources=cited((LONG_SOURCE, RECOMMENDED_SOURCE)),
        confirm=CONFIRM_WIRING,
        facts={"feed_is_long": True},
    )


def _there(basis: Basis, need: FeedNeed) -> Iterator[Reckoning]:
    """The feed that is there: its breaker against its wire and the load, and its drop."""
    for seen in basis.seen(asked.FEED_SIZE):
        amp, awg = number(seen, "feed_amp"), number(seen, "feed_awg")
        if amp is None:
            continue
        volts = 240.0 if word(seen, "feed_poles") == "two poles" else 120.0
        load_a = need.design_a * need.supply.volts / volts
        size = f"{awg:g}" if awg is not None else None
        wire = check_rating(amp, _listed(size), several_receptacles=False)
        verdicts = [wire.verdict]
        reasons = [wire.reason]
        figures = [
            Figure("Breaker", f"{amp:g} A, {volts:g} V"),
            Figure("Planned load", f"{load_a:.1f} A at {volts:g} V"),
        ]
        enough = amp >= load_a
        verdicts.append(Verdict.PASSES if enough else Verdict.DOES_NOT_PASS)
        more_less = "covers" if enough else "is less than"
        reasons.append(f"{amp:g} A {more_less} the {load_a:.1f} A that the plan comes to.")
        facts: dict[str, Fact] = {}
        if _listed(size) is not None and size is not None:
            running_a = min(need.running_a * need.supply.volts / volts, amp)
            lost = drop_v(running_a, need.one_way_ft, conductor(size, "copper").ohm_per_kft)
            lost_pct = drop_pct(lost, volts)
            verdicts.append(
                Verdict.PASSES if lost_pct <= RECOMMENDED_PCT else Verdict.DOES_NOT_PASS
            )
            figures.append(Figure("Drop", f"{lost_pct:.1f} % in {size_label(size)} copper"))
            reasons.append(f"{RECOMMENDED_PCT:g} percent is advised; the wire was taken as copper.")
            facts["feed_there_drop_pct"] = lost_pct
        verdict = _worst(verdicts)
        facts["feed_there_check"] = verdict.value
        yield Reckoning(
            id=f"feed-there@{seen.key}",
            title="The feed that is there, for the new use",
            station_id=FEED,
            verdict=verdict.value,
            figures=tuple(figures),
            reasons=tuple(reasons),
            sources=cited((wire.source, RECOMMENDED_SOURCE)),
            confirm=CONFIRM_WIRING,
            facts=facts,
            observation=seen.key,
        )


def _listed(size: str | None) -> str | None:
    """The size when the tables list it in copper."""
    if size is None:
        return None
    try:
        return conductor(size, "copper").size
    except ValueError:
        return None


def _worst(verdicts: list[Verdict]) -> Verdict:
    for verdict in (Verdict.DOES_NOT_PASS, Verdict.ASK):
        if verdict in verdicts:
            return verdict
    return Verdict.PASSES


def way_name(way: Feeder | NoFeeder) -> str:
    """What the way is called, such as ``Copper in PVC conduit``."""
    name = way.way.name
    return name[:1].upper() + name[1:]
