"""Which tests come before anything is disturbed, by year, material and use."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Final

from leanto.building.kinds import Covering, Insulation, Lining, PlaceKind
from leanto.building.zones import union_area_sqft
from leanto.checklist.condition import Condition
from leanto.reckon import asked
from leanto.reckon.basis import Basis, is_bad, is_yes, number
from leanto.reckon.model import (
    CLEARED,
    CONFIRM_HAZARD,
    NOT_SUSPECT,
    TEST_FIRST,
    Figure,
    Reckoning,
    cited,
)
from leanto.source import Source
from leanto.trade.lead_paint import (
    INSIDE_LIMIT_SQFT,
    OUTSIDE_LIMIT_SQFT,
    disturbed_paint,
)

ASBESTOS_BEFORE_YEAR: Final = 1981
ASBESTOS_SOURCE = Source(
    "CPSC publication 453, Asbestos in the Home",
    place="kinds of suspect material; year from memory",
)
VERMICULITE_SOURCE = Source(
    "EPA, Protect Your Family from Asbestos-Contaminated Vermiculite Insulation"
)
SUSPECT_LININGS: Final = (Lining.FIBERBOARD, Lining.GYPSUM_BOARD, Lining.PLASTER_ON_LATH)
WALKER: Final = "The walker's own answer"
LOT_NOTE: Final = "For the federal rule a building on the lot of a home counts with the home."


def hazards(basis: Basis) -> Iterator[Reckoning]:
    """A reckoning for lead and one for asbestos, both at the site."""
    yield _lead(basis)
    yield _asbestos(basis)


def asbestos_suspects(basis: Basis) -> tuple[str, ...]:
    """What is described that may hold asbestos by year and kind, each once."""
    return tuple(dict.fromkeys(_suspects(basis)))


def paint_is_cleared(basis: Basis) -> bool:
    """True when the walk says that nothing was painted, or a test says no lead."""
    return _is_cleared(basis, asked.LEAD_PAINT)


def _lead(basis: Basis) -> Reckoning:
    inside, outside = _inside_sqft(basis), _outside_sqft(basis)
    if paint_is_cleared(basis):
        return Reckoning(
            id="lead@site",
            title="Old paint that the work disturbs",
            station_id="site",
            verdict=CLEARED,
            reasons=("On the walk: never painted, or a test on paper says no lead.",),
            sources=(WALKER,),
            confirm=CONFIRM_HAZARD,
            facts={"lead_area_over_limit": False},
        )
    windows = any(one.condition is Condition.FAILED for one in basis.seen(asked.WINDOWS))
    cut = any(is_yes(one, "will_be_cut") for one in basis.seen(asked.LEAD_PAINT))
    answer = disturbed_paint(
        basis.building.year_built,
        inside,
        outside,
        replaces_windows=windows,
        demolishes=cut,
    )
    most = max(inside.values(), default=0.0)
    verdict = NOT_SUSPECT
    if answer.is_suspect:
        verdict = TEST_FIRST
    return Reckoning(
        id="lead@site",
        title="Old paint that the work disturbs",
        station_id="site",
        verdict=verdict,
        figures=(
            Figure("Built", str(basis.building.year_built)),
            Figure("Most in one room", f"{most:.3g} sq ft; limit {INSIDE_LIMIT_SQFT:g} sq ft"),
            Figure("Outside", f"{outside:.3g} sq ft; limit {OUTSIDE_LIMIT_SQFT:g} sq ft"),
            Figure(
                "Federal rule",
                "over its limits" if answer.is_over else "no limit reached by what was entered",
            ),
        ),
        reasons=(*answer.reasons, *((LOT_NOTE,) if answer.is_suspect else ())),
        sources=cited(answer.sources),
        confirm=CONFIRM_HAZARD,
        facts={
            "lead_area_over_limit": answer.is_over,
            "lead_inside_sqft": most,
            "lead_outside_sqft": outside,
        },
        cautions=("No sanding, dry scraping, torch or heat gun on paint that was not tested.",)
        if answer.is_suspect
        else (),
    )


def _is_cleared(basis: Basis, items: tuple[str, ...], station_id: str | None = None) -> bool:
    """True when every answer to these items says that a test or the eye clears it."""
    seen = list(basis.seen(items, station_id=station_id))
    return bool(seen) and all(one.condition is Condition.SOUND for one in seen)


def _inside_sqft(basis: Basis) -> dict[str, float]:
    """By room: lined faces with zones that come out or are patched, overlaps once."""
    areas: dict[str, float] = {}
    for surface in basis.surfaces.values():
        if surface.kind not in (PlaceKind.WALL_INSIDE, PlaceKind.CEILING) or not surface.is_lined:
            continue
        zones = [
            one.zone
            for one in basis.seen(asked.LINING, station_id=surface.id)
            if one.zone is not None and is_bad(one)
        ]
        room = basis.block(surface.block).name
        areas[room] = areas.get(room, 0.0) + union_area_sqft(zones, surface)
    return areas


def _outside_sqft(basis: Basis) -> float:
    """All outside faces together: zones of bad siding and paint, or loose paint as measured."""
    zones_sqft = 0.0
    for surface in basis.surfaces.values():
        if surface.kind is PlaceKind.WALL_OUTSIDE:
            zones = [
                one.zone
                for one in basis.seen(asked.OUTSIDE_FACE, station_id=surface.id)
                if one.zone is not None and is_bad(one)
            ]
            zones_sqft += union_area_sqft(zones, surface)
    loose = [
        area
        for one in basis.seen(asked.LEAD_PAINT)
        if (area := number(one, "paint_loose_sqft")) is not None
    ]
    return max([zones_sqft, *loose])


def _asbestos(basis: Basis) -> Reckoning:
    suspect = asbestos_suspects(basis)
    year = basis.building.year_built
    sources = [ASBESTOS_SOURCE]
    if any("fill" in line for line in suspect):
        sources.append(VERMICULITE_SOURCE)
    return Reckoning(
        id="asbestos@site",
        title="Material that may hold asbestos",
        station_id="site",
        verdict=TEST_FIRST if suspect else NOT_SUSPECT,
        figures=(
            Figure("Built", str(year)),
            Figure("Suspect", "; ".join(suspect) if suspect else "nothing that was described"),
        ),
        reasons=(
            f"Fiberboard, board joints, plaster coats and cement sheets from before "
            f"{ASBESTOS_BEFORE_YEAR} may hold asbestos; no look tells.",
            "Leave it alone while it is whole. Test before anything is cut, drilled or torn out.",
        )
        if suspect
        else ("Tile, glue, wrap and joint compound are not in the description: look for them.",),
        sources=cited(sources),
        confirm=CONFIRM_HAZARD,
        facts={"asbestos_suspect": bool(suspect)},
    )


def _suspects(basis: Basis) -> Iterator[str]:
    for surface in basis.surfaces.values():
        if basis.building.year_built < ASBESTOS_BEFORE_YEAR:
            cleared = _is_cleared(basis, asked.SUSPECT_LINING, surface.id)
            if surface.lining in SUSPECT_LININGS and not cleared:
                yield f"{surface.lining} in the {basis.block(surface.block).name}"
            if surface.covering is Covering.FIBER_CEMENT:
                yield "cement roofing"
        if _is_cleared(basis, asked.SUSPECT_FILL, surface.id):
            continue
        if surface.insulation is Insulation.LOOSE_FILL:
            yield "loose fill of a kind not known"
        if surface.insulation is Insulation.UNKNOWN and surface.is_lined:
            yield "fill behind the lining, not seen"
