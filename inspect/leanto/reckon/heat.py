"""Heat that each room loses as it is, kept and filled, and gutted; fill against the target."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from typing import Final

from leanto.building.kinds import FloorKind, OpeningKind
from leanto.building.model import Block
from leanto.reckon.basis import Basis
from leanto.reckon.envelope import Kind, Part, parts, target, volume_cuft
from leanto.reckon.model import CONFIRM_HEAT, COUNTED, UNDECIDED, Fact, Figure, Reckoning, cited
from leanto.source import Source
from leanto.trade.heat_loss import (
    AIR_SOURCE,
    METHOD_SOURCE,
    WATT_SOURCE,
    air_loss_btuh,
    edge_loss_btuh,
    loss_btuh,
    watts,
)
from leanto.trade.outcome import Outcome
from leanto.trade.r_values import cited as cited_row
from leanto.trade.r_values import r_table

KINDS: Final[tuple[Kind, ...]] = ("walls", "ceiling", "floor")
USUAL_INDOOR_F: Final = 68.0
_OPENINGS: Final = {
    OpeningKind.WINDOW: "window",
    OpeningKind.SKYLIGHT: "skylight",
    OpeningKind.DOOR: "door",
    OpeningKind.BIG_DOOR: "big door",
}


def heat(basis: Basis) -> Iterator[Reckoning]:
    """Two reckonings for every block that is to be heated: insulation, and watts."""
    if not basis.building.to_be_heated:
        return
    for block in basis.building.blocks:
        found = tuple(parts(basis, block))
        yield _insulation(basis, block, found)
        yield _watts(basis, block, found)


def _insulation(basis: Basis, block: Block, found: tuple[Part, ...]) -> Reckoning:
    figures, reasons, outcomes = [], [], []
    facts: dict[str, Fact] = {}
    for kind in KINDS:
        of_kind = [part for part in found if part.kind == kind]
        if not of_kind:
            continue
        worst = min(of_kind, key=lambda part: part.fits_r)
        wanted = target(basis, kind)
        figures.append(
            Figure(
                kind.capitalize(),
                f"R {_mean(of_kind, _as_it_is):.1f} as it is; fill that fits R "
                f"{worst.fits_r:.0f} opened, R {worst.kept_fill_r:.0f} kept; "
                + ("target not known" if wanted is None else f"target R {wanted:g}"),
            )
        )
        outcome = _against(worst.fits_r, wanted)
        outcomes.append(outcome)
        facts[f"{kind}_insulation_check"] = outcome.value
        if outcome is Outcome.FAILS and wanted is not None:
            reasons.append(
                f"{kind.capitalize()}: R {worst.fits_r:.0f} fits between the members; R {wanted:g} "
                "needs deeper framing or sheets of foam across it."
            )
    zone = basis.building.climate_zone
    if UNDECIDED in facts.values():
        reasons.append("Enter the climate zone, or the insulation that is wanted.")
    elif zone is not None:
        plus = r_table().target(zone).walls_plus
        extra = f" The code also asks for R {plus:g} outside the studs." if plus else ""
        reasons.append(f"Targets without one of your own are those of climate zone {zone}.{extra}")
    reasons.append("Fill that nobody has seen counts for nothing.")
    return Reckoning(
        id=f"insulation@{block.id}",
        title=f"{block.name}, insulation that fits",
        station_id=f"{block.id}.ceiling",
        verdict=_worst(outcomes).value,
        figures=tuple(figures),
        reasons=tuple(reasons),
        sources=cited(_row_sources(), (METHOD_SOURCE,)),
        confirm=CONFIRM_HEAT,
        facts=facts,
    )


def _watts(basis: Basis, block: Block, found: tuple[Part, ...]) -> Reckoning:
    building, table = basis.building, r_table()
    indoor_f = USUAL_INDOOR_F if building.indoor_f is None else building.indoor_f
    low_f = building.winter_low_f
    shell = {
        ("As it is", "heat_now_w"): (
            _ua(found, _as_it_is),
            table.air_change.as_it_is,
            table.slab_edge.bare,
        ),
        ("Keep and fill", "heat_keep_w"): (
            _ua(found, _kept),
            table.air_change.as_it_is,
            table.slab_edge.bare,
        ),
        ("Gut and fill", "heat_gut_w"): (
            _ua(found, _gutted),
            table.air_change.sealed,
            table.slab_edge.insulated,
        ),
    }
    edge_ft = _edge_ft(block)
    openings = _openings_ua(basis, block)
    figures = []
    facts: dict[str, Fact] = {}
    for (name, fact), (ua, changes, per_ft) in shell.items():
        total = (
            ua
            + openings
            + edge_loss_btuh(edge_ft, per_ft, 1.0)
            + air_loss_btuh(volume_cuft(block), changes, 1.0)
        )
        words = f"{total:.0f} Btu/h for each deg F"
        if low_f is not None and low_f < indoor_f:
            need = watts(total * (indoor_f - low_f))
            words = f"{need:,.0f} W, {words}"
            facts[fact] = need
        figures.append(Figure(name, words))
    known = low_f is not None and low_f < indoor_f
    reasons = (
        f"Windows and doors {openings:.0f} Btu/h for each deg F, single glass, in every case.",
        f"Air changed {table.air_change.as_it_is:g} times an hour as it is, "
        f"{table.air_change.sealed:g} once opened and sealed.",
        *((f"Slab or dirt edge of {edge_ft:.0f} ft.",) if edge_ft else ()),
        f"Indoors {indoor_f:g} F"
        + (f", outdoors {low_f:g} F." if known else "; enter the winter low for watts."),
        "Walls toward a lower or unheated room are counted as if they faced outdoors.",
    )
    return Reckoning(
        id=f"heat@{block.id}",
        title=f"{block.name}, heat on the coldest night",
        station_id=f"{block.id}.ceiling",
        verdict=COUNTED if known else UNDECIDED,
        figures=tuple(figures),
        reasons=reasons,
        sources=cited(
            (METHOD_SOURCE, AIR_SOURCE, WATT_SOURCE),
            (cited_row(table.air_change), cited_row(table.slab_edge)),
        ),
        confirm=CONFIRM_HEAT,
        facts=facts,
    )


def _as_it_is(part: Part) -> float:
    return part.as_it_is


def _kept(part: Part) -> float:
    return part.kept


def _gutted(part: Part) -> float:
    return part.gutted


def _ua(found: tuple[Part, ...], r_of: Callable[[Part], float]) -> float:
    """Btu an hour for each deg F through all parts."""
    return sum(loss_btuh(part.area_sqft, r_of(part), 1.0) for part in found)


def _mean(found: list[Part], r_of: Callable[[Part], float]) -> float:
    """The R of parts side by side."""
    area = sum(part.area_sqft for part in found)
    return area / sum(part.area_sqft / r_of(part) for part in found)


def _openings_ua(basis: Basis, block: Block) -> float:
    table, total = r_table(), 0.0
    for opening in basis.building.openings:
        if opening.on.split(".")[0] == block.id and opening.kind in _OPENINGS:
            r = table.layer("opening", _OPENINGS[opening.kind]).r
            total += loss_btuh(opening.width * opening.height, r, 1.0)
    return total


def _edge_ft(block: Block) -> float:
    if block.floor.kind is FloorKind.JOISTS:
        return 0.0
    return 2 * (block.length + block.width)


def _against(fits_r: float, wanted: float | None) -> Outcome:
    if wanted is None:
        return Outcome.UNDECIDED
    return Outcome.PASSES if fits_r >= wanted else Outcome.FAILS


def _worst(outcomes: list[Outcome]) -> Outcome:
    for outcome in (Outcome.FAILS, Outcome.UNDECIDED):
        if outcome in outcomes:
            return outcome
    return Outcome.PASSES if outcomes else Outcome.UNDECIDED


def _row_sources() -> tuple[Source, ...]:
    table = r_table()
    rows = (*table.batts, *table.fills, table.targets)
    return tuple(dict.fromkeys(cited_row(row) for row in rows))
