"""The feed to a detached building: conductor, grounding conductor, conduit and trench."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from leanto.trade.wiring import burial, conduit
from leanto.trade.wiring.burial import Method, Place
from leanto.trade.wiring.conductor import Column, Conductor, conductor, conductors, smallest
from leanto.trade.wiring.conduit import Conduit
from leanto.trade.wiring.confirm import CONFIRM, EDITION_NOTE
from leanto.trade.wiring.equipment_ground import EquipmentGround, equipment_ground
from leanto.trade.wiring.feed_need import TERMINAL_LIMIT_A, WAYS, FeedNeed, Supply, Way
from leanto.trade.wiring.overcurrent import largest_rating_a, rating_at_least_a
from leanto.trade.wiring.voltage_drop import drop_pct, drop_v, effective_ohm_per_kft

CABLE_OUTSIDE_IN = 1.5
"""Thickness allowed for a buried cable or bundle when the trench is dug. Common practice."""
GFCI_BRANCH_LIMIT_A = 20
BALANCE_NOTE = (
    "The drop is that of a load spread evenly over both hot wires; an uneven load drops more."
)


@dataclass(frozen=True, slots=True)
class Feeder:
    """One way of feeding the building, sized."""

    need: FeedNeed
    way: Way
    rating_a: int
    column_c: Column
    by_ampacity: Conductor
    """Smallest conductor for the load and the breaker alone."""
    conductor: Conductor
    """What is run: large enough for the load and for the drop."""
    lost_v: float
    lost_pct: float
    ground: EquipmentGround
    conduit_size: str | None
    """Trade size in PVC Schedule 40 for the trench; None for direct burial."""
    riser_size: str | None
    """Trade size in PVC Schedule 80 where the conduit is exposed to damage."""
    cover_method: Method
    """Column of the cover table the run falls under."""
    cover_in: int
    outside_in: float
    """Thickness of the conduit or cable in the trench."""
    trench_in: int
    confirm: str = CONFIRM

    @property
    def governs(self) -> str:
        """What set the size: ``ampacity``, ``voltage drop`` or ``smallest size used``."""
        if self.conductor == self.by_ampacity:
            return "ampacity"
        is_short = _lost_pct(self.by_ampacity, self.need) > self.need.drop_limit_pct
        return "voltage drop" if is_short else "smallest size used"

    @property
    def wire_ft(self) -> float:
        """Feet of circuit conductor, all wires, without the grounding conductor or the ends."""
        return self.need.supply.wires * self.need.one_way_ft

    @property
    def notes(self) -> tuple[str, ...]:
        """What stands under the figures in a report."""
        lines = [self.way.note]
        if self.need.supply is Supply.V120_240:
            lines.append(BALANCE_NOTE)
        return (*lines, burial.DIG_CAUTION, EDITION_NOTE)


@dataclass(frozen=True, slots=True)
class NoFeeder:
    """A way that the tables cannot size, and why."""

    need: FeedNeed
    way: Way
    why: str
    confirm: str = CONFIRM


def size_feeder(need: FeedNeed, way: Way) -> Feeder | NoFeeder:
    """The feed sized for load, breaker and drop; NoFeeder past the tables.

    The drop is that of a balanced load at the running amps, conductor at 75 C. Sources: 215.2,
    110.14(C), 240.4, 240.6, Tables 310.16, 250.122, 300.5 and Chapter 9 Tables 1, 4, 5, 8, 9.
    """
    rating_a = need.rating_a or rating_at_least_a(need.design_a)
    if rating_a is None:
        return NoFeeder(need, way, f"{need.design_a:g} A is past the ratings listed here.")
    column_c = _column(need, way, rating_a)
    if need.place is Place.UNDER_BUILDING and not way.in_conduit:
        return NoFeeder(need, way, "Under a building the run must lie in raceway.")
    by_ampacity = smallest(way.metal, lambda one: _carries(one, need, rating_a, column_c))
    if by_ampacity is None:
        return NoFeeder(need, way, f"No listed size carries {need.design_a:g} A this way.")
    chosen = smallest(
        way.metal,
        lambda one: (
            _is_made(one, way)
            and one.area_cmil >= by_ampacity.area_cmil
            and _lost_pct(one, need) <= need.drop_limit_pct
        ),
    )
    if chosen is None:
        largest = _largest_made(way)
        return NoFeeder(
            need,
            way,
            f"Even {largest.label} loses {_lost_pct(largest, need):.1f} % over "
            f"{need.one_way_ft:g} ft. Ask about a higher voltage, less load or a shorter run.",
        )
    ground = equipment_ground(rating_a, way.metal, by_ampacity.area_cmil, chosen.area_cmil)
    trench_size = riser_size = None
    if way.in_conduit:
        trench_size = _conduit_size(need, way, chosen, ground, Conduit.SCHEDULE_40)
        riser_size = _conduit_size(need, way, chosen, ground, Conduit.SCHEDULE_80)
        if trench_size is None or riser_size is None:
            return NoFeeder(need, way, "The conductors need conduit larger than 3 in.")
    outside_in = conduit.outside_in(trench_size) if trench_size else CABLE_OUTSIDE_IN
    method = _cover_method(need, way, rating_a)
    cover_in = burial.least_cover_in(need.place, method)
    lost_v = _lost_v(chosen, need)
    return Feeder(
        need,
        way,
        rating_a,
        column_c,
        by_ampacity,
        chosen,
        lost_v,
        drop_pct(lost_v, need.supply.volts),
        ground,
        trench_size,
        riser_size,
        method,
        cover_in,
        outside_in,
        burial.trench_depth_in(cover_in, outside_in),
    )


def feeder_alternatives(
    need: FeedNeed, ways: Sequence[Way] = WAYS
) -> tuple[Feeder | NoFeeder, ...]:
    """The feed sized each way: direct burial and PVC conduit, copper and aluminum."""
    return tuple(size_feeder(need, way) for way in ways)


def _cover_method(need: FeedNeed, way: Way, rating_a: int) -> Method:
    is_small_gfci_branch = (
        need.is_branch_circuit
        and need.gfci_at_source
        and need.supply is Supply.V120
        and rating_a <= GFCI_BRANCH_LIMIT_A
    )
    if not is_small_gfci_branch:
        return way.method
    return Method.GFCI_RACEWAY if way.in_conduit else Method.GFCI_DIRECT


def _column(need: FeedNeed, way: Way, rating_a: int) -> Column:
    at_terminals: Column = 75 if need.terminals_75c or rating_a > TERMINAL_LIMIT_A else 60
    return min(at_terminals, way.insulation_column_c)


def _is_made(one: Conductor, way: Way) -> bool:
    least = conductor(way.smallest_size, way.metal).area_cmil
    return least <= one.area_cmil <= conductor(way.largest_size, way.metal).area_cmil


def _largest_made(way: Way) -> Conductor:
    return [one for one in conductors(way.metal) if _is_made(one, way)][-1]


def _carries(one: Conductor, need: FeedNeed, rating_a: int, column_c: Column) -> bool:
    limit_a = largest_rating_a(
        one.size, one.metal, column_c, several_receptacles=need.is_branch_circuit
    )
    is_protected = limit_a is not None and rating_a <= limit_a
    return is_protected and one.ampacity_a(column_c) >= need.design_a


def _lost_v(one: Conductor, need: FeedNeed) -> float:
    ohm_per_kft = effective_ohm_per_kft(
        one.ohm_per_kft, one.reactance_ohm_per_kft, need.power_factor
    )
    return drop_v(need.running_a, need.one_way_ft, ohm_per_kft)


def _lost_pct(one: Conductor, need: FeedNeed) -> float:
    return drop_pct(_lost_v(one, need), need.supply.volts)


def _conduit_size(
    need: FeedNeed, way: Way, chosen: Conductor, ground: EquipmentGround, kind: Conduit
) -> str | None:
    assert way.insulation is not None
    each = conduit.conductor_area_sqin(chosen.size, way.insulation)
    grounding = conduit.conductor_area_sqin(ground.size, way.insulation)
    return conduit.smallest_trade_size([each] * need.supply.wires + [grounding], kind)
