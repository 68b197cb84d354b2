"""Each roof slope: what a new covering takes, least slope, layers, and years left."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Final

from leanto.building.kinds import Covering, PlaceKind
from leanto.building.model import Block
from leanto.building.surface import Surface
from leanto.checklist.condition import Condition
from leanto.reckon import asked
from leanto.reckon.basis import Basis, is_yes, number
from leanto.reckon.model import CONFIRM_ROOF, Fact, Figure, Reckoning, cited
from leanto.reckon.take_off import take_off
from leanto.trade.outcome import Check, Outcome
from leanto.trade.roof_life import LifeLeft, SeenCondition, life_left
from leanto.trade.roof_rules import check_recover, check_slope

KIND_OF: Final = {
    Covering.ASPHALT_SHINGLE: "asphalt-strip",
    Covering.CORRUGATED_STEEL: "metal-lapped",
    Covering.STANDING_SEAM: "metal-standing-seam",
    Covering.ROLL_ROOFING: "mineral-roll",
    Covering.WOOD_SHINGLE: "wood-shingle",
    Covering.SLATE: "slate",
    Covering.FIBER_CEMENT: "fiber-cement",
    Covering.MEMBRANE: "single-ply",
}
"""Row of the table of coverings; of several kinds the one that asks for most."""
SEALED_LAPS: Final = "metal-lapped-sealed"


def roofs(basis: Basis) -> Iterator[Reckoning]:
    """Four reckonings for every slope: take-off, least slope, layers, years left."""
    for surface in basis.surfaces.values():
        if surface.kind is PlaceKind.ROOF:
            block = basis.block(surface.block)
            yield take_off(basis, block, surface)
            yield _least_slope(block, surface)
            yield _layers(basis, block, surface)
            yield _years(basis, block, surface)


def _least_slope(block: Block, surface: Surface) -> Reckoning:
    kind, rise = KIND_OF[block.roof.covering], surface.pitch_in_12 or 0.0
    check = check_slope(kind, rise)
    reasons, sources = list(check.reasons), list(check.sources)
    if block.roof.covering is Covering.CORRUGATED_STEEL and check.outcome is Outcome.FAILS:
        sealed = check_slope(SEALED_LAPS, rise)
        reasons.append(f"With sealed laps: {sealed.outcome.value}. {sealed.reasons[0]}")
        sources += sealed.sources
        if sealed.outcome is Outcome.PASSES:
            check = Check(Outcome.UNDECIDED, (), ())
    return _compared(
        f"roof-slope@{surface.id}",
        f"{surface.name}, pitch against the covering",
        surface,
        Check(check.outcome, tuple(reasons), tuple(sources)),
        (Figure("Pitch", f"{rise:g} in 12"), Figure("Covering", block.roof.covering.value)),
        {"slope_check": check.outcome.value},
    )


def _layers(basis: Basis, block: Block, surface: Surface) -> Reckoning:
    counted = [
        layers
        for seen in basis.seen(asked.ROOF_LAYERS, station_id=surface.id)
        if (layers := number(seen, "layers_seen_count")) is not None
    ]
    layers = round(max(counted)) if counted else block.roof.layers
    is_decayed, is_soaked = _deck(basis, block, surface)
    check = check_recover(KIND_OF[block.roof.covering], layers, is_soaked, is_decayed)
    return _compared(
        f"roof-layers@{surface.id}",
        f"{surface.name}, a new covering over what is there",
        surface,
        check,
        (
            Figure("Layers", f"{layers}, {'counted at the edge' if counted else 'as described'}"),
            Figure("Deck", "not seen" if is_decayed is None else "soft" if is_decayed else "hard"),
        ),
        {"recover_check": check.outcome.value},
    )


def _deck(basis: Basis, block: Block, surface: Surface) -> tuple[bool | None, bool | None]:
    """(decayed, soaked) as seen from below and at the edge; None when nobody has seen it."""
    seen = [
        *basis.seen(asked.DECK_BELOW, block_id=block.id),
        *basis.seen(asked.DECK_EDGE, station_id=surface.id),
    ]
    if not seen:
        return None, None
    is_decayed = any(one.condition is Condition.FAILED for one in seen)
    wet = [is_yes(one, "is_active") for one in seen]
    if any(wet):
        return is_decayed, True
    is_dry = all(one.condition is Condition.SOUND for one in seen) or False in wet
    return is_decayed, False if is_dry else None


def _years(basis: Basis, block: Block, surface: Surface) -> Reckoning:
    age = block.roof.covering_age_years
    left = life_left(
        KIND_OF[block.roof.covering],
        None if age is None else (float(age), float(age)),
        _seen_condition(basis, surface),
    )
    facts: dict[str, Fact] = {"life_check": left.wanted.value}
    if left.years is not None:
        facts["life_left_low_years"] = left.years.low
        if left.years.high is not None:
            facts["life_left_high_years"] = left.years.high
    return Reckoning(
        id=f"roof-life@{surface.id}",
        title=f"{surface.name}, years left in the covering",
        station_id=surface.id,
        verdict=left.wanted.value,
        figures=(
            Figure("Covering", block.roof.covering.value),
            Figure("Age", "not known" if age is None else f"{age} years"),
            Figure("Years left", _years_in_words(left)),
        ),
        reasons=("Two years left are wanted before a room is finished below.", *left.reasons),
        sources=cited(left.sources),
        confirm=CONFIRM_ROOF,
        facts=facts,
    )


def _seen_condition(basis: Basis, surface: Surface) -> SeenCondition | None:
    seen = {one.condition for one in basis.seen(asked.COVERING, station_id=surface.id)}
    if Condition.FAILED in seen:
        return "failed"
    if Condition.WORN in seen:
        return "worn"
    return "sound" if Condition.SOUND in seen else None


def _years_in_words(left: LifeLeft) -> str:
    years = left.years
    if years is None:
        return "no published life"
    if years.high is None:
        return f"{years.low:.0f} and more"
    return "none" if years.high <= 0 else f"{years.low:.0f} to {years.high:.0f}"


def _compared(
    id_: str,
    title: str,
    surface: Surface,
    check: Check,
    figures: tuple[Figure, ...],
    facts: dict[str, Fact],
) -> Reckoning:
    return Reckoning(
        id=id_,
        title=title,
        station_id=surface.id,
        verdict=check.outcome.value,
        figures=figures,
        reasons=check.reasons,
        sources=cited(check.sources),
        confirm=CONFIRM_ROOF,
        facts=facts,
    )
