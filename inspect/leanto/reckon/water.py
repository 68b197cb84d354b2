"""Mold by room, wet lining, and how high a wet wall is cut."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Final

from leanto.building.kinds import Insulation, Lining, PlaceKind
from leanto.building.model import Block
from leanto.building.surface import Surface
from leanto.building.zones import union_area_sqft
from leanto.checklist.condition import Condition
from leanto.quantities import FEET
from leanto.reckon import asked
from leanto.reckon.basis import Basis, is_bad, is_yes, number, word
from leanto.reckon.model import CONFIRM_WATER, UNDECIDED, Figure, Reckoning, cited
from leanto.record.observation import Observation
from leanto.trade.mold import mold_band
from leanto.trade.water import Fate, WetMaterial, cut_height, water_category, wet_material
from leanto.trade.wetting import Category

MATERIAL_OF: Final = {
    Lining.BEADED_BOARD: "wood-boards",
    Lining.BOARD: "wood-boards",
    Lining.FIBERBOARD: "fiberboard",
    Lining.GYPSUM_BOARD: "gypsum-board",
    Lining.PLASTER_ON_LATH: "plaster",
    Lining.PLYWOOD: "plywood",
}
"""Row of the table of wet materials."""
FILL_OF: Final = {Insulation.BATTS: "fiberglass", Insulation.LOOSE_FILL: "cellulose"}
ORIGIN_OF: Final = {
    "rain from above": "rain",
    "rain through dirt": "rain-through-dirt",
    "flood or stream": "stream",
    "manure or sewage": "sewage",
    "pipe": "supply-pipe",
}
"""Row of the table of waters; an answer that is not here leaves the kind of water open."""
LOOSE_PIECES: Final = "What is rotten, loose or falling comes out all the same."
BAND_WORDS: Final = ("none", "small", "medium", "large")


def water(basis: Basis) -> Iterator[Reckoning]:
    """A reckoning for the mold of each room, each wet lining and each tide line on a lined wall."""
    for block in basis.building.blocks:
        yield from _mold(basis, block)
    for observation in basis.seen(asked.WET_LINING):
        surface = basis.surface_at(observation.key.station)
        if surface is not None and is_bad(observation):
            yield from _wet_lining(basis, observation, surface)
    for observation in basis.seen(asked.WALL_BASE):
        surface = basis.surface_at(observation.key.station)
        tide_in = number(observation, "tide_height_in")
        if surface is not None and surface.is_lined and tide_in is not None:
            yield _cut(observation, surface, tide_in)


def _mold(basis: Basis, block: Block) -> Iterator[Reckoning]:
    """The mold of one room: what the walker added up, or all zones, whichever is more."""
    bad = [one for one in basis.seen(asked.MOLD, block_id=block.id) if is_bad(one)]
    if not bad:
        return
    zones_sqft = _zones_sqft(basis, bad)
    added = [total for one in bad if (total := number(one, "mold_total_sqft")) is not None]
    area = max([zones_sqft, *added])
    in_fill = any(word(one, "mold_on") == "fill" for one in bad)
    first = max(bad, key=lambda one: one.zone.area_sqft if one.zone else 0.0)
    if area == 0:
        yield Reckoning(
            id=f"mold@{block.id}",
            title=f"{block.name}, mold",
            station_id=first.key.station,
            verdict=UNDECIDED,
            reasons=("Mold was seen, but no patch was measured.",),
            confirm=CONFIRM_WATER,
        )
        return
    band = mold_band((area,), may_spread=in_fill)
    lines = (*band.reasons, band.method, band.who, band.protection)
    yield Reckoning(
        id=f"mold@{block.id}",
        title=f"{block.name}, mold",
        station_id=first.key.station,
        verdict=f"{band.size} area of mold",
        figures=(
            Figure("All patches in this room", f"{area:.3g} sq ft"),
            Figure("As added up on the walk", f"{max(added):.3g} sq ft" if added else "not added"),
            Figure("By the zones entered", f"{zones_sqft:.3g} sq ft"),
        ),
        reasons=tuple(line for line in lines if line),
        sources=cited(band.sources),
        confirm=CONFIRM_WATER,
        facts={"mold_band": band.size, "mold_area_sqft": area},
        cautions=("Do not wipe, sweep or blow on it.",),
    )


def _zones_sqft(basis: Basis, bad: list[Observation]) -> float:
    """All zones, those that overlap on one surface once."""
    by_surface: dict[str, list[Observation]] = {}
    for one in bad:
        by_surface.setdefault(one.key.station, []).append(one)
    return sum(
        union_area_sqft([one.zone for one in group if one.zone], basis.surface_at(station))
        for station, group in by_surface.items()
    )


def _wet_lining(basis: Basis, observation: Observation, surface: Surface) -> Iterator[Reckoning]:
    material = MATERIAL_OF.get(surface.lining) if surface.lining else None
    if material is None:
        return
    days = number(observation, "wet_days")
    hours = None if days is None else days * 24
    origin = ORIGIN_OF.get(word(observation, "water_kind") or "")
    place = basis.stations[observation.key.station].name
    figures = [
        Figure("Lining", str(surface.lining)),
        Figure("Wet for", "not known" if days is None else f"{days:g} days"),
    ]
    if origin is None:
        yield Reckoning(
            id=f"wet-lining@{observation.key}",
            title=f"Wet lining, {place}",
            station_id=observation.key.station,
            verdict=UNDECIDED,
            figures=tuple(figures),
            reasons=("Where the water came from is not known; foul water takes all lining out.",),
            confirm=CONFIRM_WATER,
            facts={"lining_fate": Fate.UNDECIDED.value},
            observation=observation.key,
        )
        return
    kind = water_category(origin, hours)
    swollen = observation.condition is Condition.FAILED
    answer = wet_material(material, kind.category, hours, is_swollen=swollen)
    figures.append(Figure("Water", f"category {kind.category}"))
    fill = _fill(surface, observation, kind.category, hours)
    if fill is not None:
        figures.append(Figure("Wet fill behind it", fill.fate.value))
    yield Reckoning(
        id=f"wet-lining@{observation.key}",
        title=f"Wet lining, {place}",
        station_id=observation.key.station,
        verdict=answer.fate.value,
        figures=tuple(figures),
        reasons=(
            *kind.reasons,
            *answer.reasons,
            *((LOOSE_PIECES,) if swollen and answer.fate is Fate.DRY else ()),
            *(fill.reasons if fill else ()),
        ),
        sources=cited(kind.sources, answer.sources, fill.sources if fill else ()),
        confirm=CONFIRM_WATER,
        facts={"lining_fate": answer.fate.value},
        observation=observation.key,
    )


def _fill(
    surface: Surface, observation: Observation, category: Category, hours: float | None
) -> WetMaterial | None:
    """What happens to the fill behind it, when it was seen to be wet."""
    fill = FILL_OF.get(surface.insulation) if surface.insulation else None
    if fill is None or not is_yes(observation, "fill_wet"):
        return None
    return wet_material(fill, category, hours, is_swollen=None)


def _cut(observation: Observation, surface: Surface, tide_in: float) -> Reckoning:
    wall_in = surface.height_ft * 12
    cut = cut_height(min(tide_in, wall_in), wall_in)
    assert surface.kind is PlaceKind.WALL_INSIDE
    return Reckoning(
        id=f"cut@{observation.key}",
        title=f"Height to cut the lining, {surface.name}",
        station_id=observation.key.station,
        verdict="the whole wall" if cut.is_full_height else f"cut at {cut.height_in:g} in.",
        figures=(
            Figure("Wet or stained up to", f"{tide_in:g} in."),
            Figure("Cut at", FEET.length(cut.height_in / 12)),
        ),
        reasons=(cut.reason, "Only where the lining comes out; boards may be dried in place."),
        sources=cited(cut.sources),
        confirm=CONFIRM_WATER,
        facts={"cut_height_in": cut.height_in},
        observation=observation.key,
    )
