"""The working of a feed, line by line, for a report."""

from __future__ import annotations

from leanto.source import COMMON_PRACTICE
from leanto.trade.wiring import burial, conduit
from leanto.trade.wiring.conductor import ampacity_table, resistance_table, size_label
from leanto.trade.wiring.confirm import Step
from leanto.trade.wiring.equipment_ground import INCREASE_SOURCE, grounding_table
from leanto.trade.wiring.feed_need import (
    CONTINUOUS_FACTOR,
    CONTINUOUS_SOURCE,
    TERMINAL_SOURCE,
    WAYS_SOURCE,
)
from leanto.trade.wiring.feeder import Feeder
from leanto.trade.wiring.overcurrent import overcurrent_table
from leanto.trade.wiring.voltage_drop import RECOMMENDED_SOURCE, effective_ohm_per_kft


def feeder_working(feeder: Feeder) -> tuple[Step, ...]:
    """Each step of the sizing in its order, with the source it rests on."""
    return (
        _load(feeder),
        _breaker(feeder),
        _column(feeder),
        _by_ampacity(feeder),
        *_drop(feeder),
        *_ground(feeder),
        *_conduit(feeder),
        *_trench(feeder),
    )


def _load(feeder: Feeder) -> Step:
    need = feeder.need
    working = f"{need.load_a:g} A + {CONTINUOUS_FACTOR} x {need.continuous_a:g} A continuous"
    return Step("Load to size for", working, f"{need.design_a:g} A", CONTINUOUS_SOURCE)


def _breaker(feeder: Feeder) -> Step:
    asked = feeder.need.rating_a is not None
    working = "as asked for" if asked else f"next standard rating from {feeder.need.design_a:g} A"
    return Step(
        "Breaker at the supply end", working, f"{feeder.rating_a} A", overcurrent_table().source
    )


def _column(feeder: Feeder) -> Step:
    is_held_by_type = feeder.way.insulation_column_c == feeder.column_c
    marked = "marked for 75 C" if feeder.need.terminals_75c else "not known to be marked for 75 C"
    return Step(
        "Temperature column",
        f"{feeder.way.wire}; ends {marked}; {feeder.rating_a} A",
        f"{feeder.column_c} C",
        WAYS_SOURCE if is_held_by_type else TERMINAL_SOURCE,
    )


def _by_ampacity(feeder: Feeder) -> Step:
    amps = feeder.by_ampacity.ampacity_a(feeder.column_c)
    return Step(
        "Size by load and breaker",
        f"{amps} A in the {feeder.column_c} C column carries {feeder.need.design_a:g} A "
        f"and takes a {feeder.rating_a} A breaker",
        feeder.by_ampacity.label,
        ampacity_table().source,
    )


def _drop(feeder: Feeder) -> tuple[Step, Step]:
    need, wire = feeder.need, feeder.conductor
    ohm = effective_ohm_per_kft(wire.ohm_per_kft, wire.reactance_ohm_per_kft, need.power_factor)
    working = f"2 x {need.running_a:g} A x {need.one_way_ft:g} ft x {ohm:.4g} ohm/kft / 1000"
    lost = Step(
        "Voltage drop",
        working,
        f"{feeder.lost_v:.2f} V, {feeder.lost_pct:.2f} % of {need.supply.volts:g} V",
        resistance_table().source,
    )
    chosen = Step(
        "Size to run",
        f"smallest that keeps the drop to {need.drop_limit_pct:g} %; {feeder.governs} sets it",
        wire.label,
        RECOMMENDED_SOURCE,
    )
    return lost, chosen


def _ground(feeder: Feeder) -> tuple[Step, ...]:
    ground = feeder.ground
    by_table = Step(
        "Grounding conductor by breaker",
        f"{feeder.rating_a} A",
        f"{size_label(ground.table_size)} {ground.metal}",
        grounding_table().source,
    )
    if ground.ratio == 1.0:
        return (by_table,)
    capped = "; no larger than the circuit conductors" if ground.is_capped else ""
    increased = Step(
        "Grounding conductor, increased",
        f"{feeder.conductor.area_cmil} / {feeder.by_ampacity.area_cmil} = {ground.ratio:.3f}; "
        f"{ground.wanted_cmil:.0f} cmil wanted{capped}",
        f"{size_label(ground.size)} {ground.metal}",
        INCREASE_SOURCE,
    )
    return by_table, increased


def _conduit(feeder: Feeder) -> tuple[Step, ...]:
    way = feeder.way
    if way.insulation is None or feeder.conduit_size is None:
        return ()
    count = feeder.need.supply.wires
    each = conduit.conductor_area_sqin(feeder.conductor.size, way.insulation)
    grounding = conduit.conductor_area_sqin(feeder.ground.size, way.insulation)
    total = count * each + grounding
    share = conduit.fill_share(count + 1)
    return (
        Step(
            "Conduit",
            f"{count} x {each:g} + {grounding:g} = {total:.4f} sq in, at most {share:.0%} full",
            f"{feeder.conduit_size} in PVC Schedule 40 in the trench; "
            f"{feeder.riser_size} in Schedule 80 where exposed",
            conduit.conduit_table().source,
        ),
    )


def _trench(feeder: Feeder) -> tuple[Step, Step]:
    place, method = feeder.need.place, feeder.cover_method
    cover = Step(
        "Cover",
        f"{place.value}; {method.value}",
        f"{feeder.cover_in} in",
        burial.cover_table().source,
    )
    depth = Step(
        "Trench depth",
        f"{feeder.cover_in} in cover + {feeder.outside_in:g} in run + "
        f"{burial.BEDDING_IN:g} in bedding",
        f"{feeder.trench_in} in",
        COMMON_PRACTICE,
    )
    return cover, depth
