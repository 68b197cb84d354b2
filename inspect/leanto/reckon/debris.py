"""Weight, room and loads of what comes out if everything lined and covered were stripped."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping
from typing import Final

from leanto.building.kinds import (
    Container,
    Covering,
    FloorKind,
    Foundation,
    Insulation,
    Lining,
    PlaceKind,
)
from leanto.reckon import asked
from leanto.reckon.basis import Basis, is_bad
from leanto.reckon.hazards import asbestos_suspects, paint_is_cleared
from leanto.reckon.model import CONFIRM_HAUL, COUNTED, Figure, Reckoning, cited
from leanto.trade.debris import DebrisPile, Haul, Spread, debris_pile, haul, tons
from leanto.trade.debris_apart import Apart, expected_in, kept_apart
from leanto.trade.debris_table import find_container, find_debris
from leanto.trade.roofing import SQUARE_SQFT

USUAL: Final = Container.ROLL_OFF_10
"""Set beside the trailer where the owner named nothing."""
PLYWOOD_THICK_IN: Final = 0.375
LINING_OF: Final[Mapping[Lining, tuple[str, float]]] = {
    Lining.BEADED_BOARD: ("boards", 1.0),
    Lining.BOARD: ("boards", 1.0),
    Lining.FIBERBOARD: ("fiberboard", 1.0),
    Lining.GYPSUM_BOARD: ("gypsum-board", 1.0),
    Lining.PLASTER_ON_LATH: ("plaster", 1.0),
    Lining.PLYWOOD: ("lumber", PLYWOOD_THICK_IN),
}
"""Row of the table of debris, and how many of its units a sq ft makes."""
COVERING_OF: Final[Mapping[Covering, str]] = {
    Covering.ASPHALT_SHINGLE: "asphalt-shingles",
    Covering.CORRUGATED_STEEL: "corrugated-metal",
    Covering.STANDING_SEAM: "corrugated-metal",
    Covering.WOOD_SHINGLE: "wood-shingles",
    Covering.SLATE: "slate",
}
"""Row of the table of debris, by the square and layer; sheets and rolls have none."""


TREATED: Final = (Foundation.POSTS_IN_GROUND, Foundation.STONE_AND_SKIDS)
"""Foundations whose wood in the soil was as a rule treated. Common practice."""
SORT_FIRST: Final = "sort before loading"


def debris(basis: Basis) -> Iterator[Reckoning]:
    """All linings, all roof coverings, and what may not go in with either."""
    inside: dict[str, float] = {}
    labels: dict[str, float] = {}
    for surface in basis.surfaces.values():
        if surface.kind not in (PlaceKind.WALL_INSIDE, PlaceKind.CEILING) or not surface.is_lined:
            continue
        assert surface.lining is not None
        material, units = LINING_OF[surface.lining]
        inside[material] = inside.get(material, 0.0) + surface.net_area_sqft * units
        name = str(surface.lining)
        labels[name] = labels.get(name, 0.0) + surface.net_area_sqft
        if surface.insulation in (Insulation.BATTS, Insulation.LOOSE_FILL):
            inside["insulation"] = inside.get("insulation", 0.0) + surface.net_area_sqft
            labels["fill"] = labels.get("fill", 0.0) + surface.net_area_sqft
    if inside:
        figures = [Figure(name.capitalize(), f"{area:.0f} sq ft") for name, area in labels.items()]
        yield _piled(basis, "linings", "Debris if every lining were stripped", inside, figures, ())
    yield from _coverings(basis)
    yield _apart(basis, inside)


def _coverings(basis: Basis) -> Iterator[Reckoning]:
    piled: dict[str, float] = {}
    figures, left_out = [], []
    for surface in basis.surfaces.values():
        if surface.kind is not PlaceKind.ROOF:
            continue
        roof = basis.block(surface.block).roof
        squares = surface.net_area_sqft / SQUARE_SQFT * roof.layers
        material = COVERING_OF.get(roof.covering)
        if material is None:
            left_out.append(f"{surface.name}: no published weight for {roof.covering}; ask.")
            continue
        piled[material] = piled.get(material, 0.0) + squares
        figures.append(
            Figure(surface.name, f"{squares:.1f} squares of {roof.covering}, all layers")
        )
    if piled:
        yield _piled(
            basis,
            "coverings",
            "Debris if every roof covering were stripped",
            piled,
            figures,
            tuple(left_out),
        )


def _apart(basis: Basis, linings: Mapping[str, float]) -> Reckoning:
    building = basis.building
    blocks = building.blocks
    materials = {*linings, *(COVERING_OF.get(block.roof.covering, "") for block in blocks)}
    is_treated = building.foundation in TREATED or any(
        block.floor.kind is FloorKind.SLEEPERS for block in blocks
    )
    expected = expected_in(
        materials,
        building.year_built,
        asbestos_suspect=bool(asbestos_suspects(basis)),
        paint_cleared=paint_is_cleared(basis),
        treated_wood=is_treated,
        fouled=any(is_bad(one) for one in basis.seen((*asked.RODENTS, *asked.FILL_NESTS))),
    )
    found = kept_apart(expected)
    return Reckoning(
        id="debris-apart@site",
        title="What may not go with the debris",
        station_id="site",
        verdict=SORT_FIRST,
        figures=apart_figures(found),
        reasons=apart_reasons(found),
        sources=cited(one.source for one in found),
        confirm=CONFIRM_HAUL,
    )


def apart_figures(found: Iterable[Apart]) -> tuple[Figure, ...]:
    """What this building makes one expect, and where it goes instead."""
    return tuple(
        Figure(one.row.what[:1].upper() + one.row.what[1:], f"{one.row.instead} ({one.row.who})")
        for one in found
        if one.is_expected
    )


def apart_reasons(found: Iterable[Apart]) -> tuple[str, ...]:
    """What to look for besides, though nothing said so far speaks of it."""
    return (
        *(f"If there: {one.row.what}. {one.row.instead}" for one in found if not one.is_expected),
        "Landfills and haulers differ: ask for their list before anything is loaded.",
    )


def _piled(
    basis: Basis,
    id_: str,
    title: str,
    quantities: Mapping[str, float],
    figures: list[Figure],
    left_out: tuple[str, ...],
) -> Reckoning:
    pile = debris_pile(quantities)
    chosen = basis.building.haul.container or USUAL
    containers = dict.fromkeys((Container.TRAILER, chosen))
    hauls = [haul(pile, container.value) for container in containers]
    return Reckoning(
        id=f"debris-{id_}@site",
        title=title,
        station_id="site",
        verdict=COUNTED,
        figures=(*figures, *pile_figures(pile), *(loads_figure(one) for one in hauls)),
        reasons=(
            *(
                f"{find_debris(name).label.capitalize()}: {amount:,.0f} {find_debris(name).unit}."
                for name, amount in quantities.items()
            ),
            *(f"{_label(one)}: {reason}" for one in hauls for reason in one.reasons),
            *left_out,
        ),
        sources=cited(pile.sources, *(one.sources for one in hauls)),
        confirm=CONFIRM_HAUL,
        facts={f"debris_{id_}_high_lb": pile.weight_lb.high},
    )


def pile_figures(pile: DebrisPile) -> tuple[Figure, ...]:
    """Weight and loose room of a pile."""
    weight, room = pile.weight_lb, pile.volume_cy
    return (
        Figure(
            "Weight",
            f"{_spread(weight, ',.0f')} lb, up to {tons(weight.high):.2f} tons",
        ),
        Figure("Loose", f"{_spread(room, '.1f')} cu yd"),
    )


def loads_figure(one: Haul) -> Figure:
    """Loads of one container, and whether room or weight fills it."""
    loads = _spread(Spread(one.low_loads, one.high_loads), ".0f")
    return Figure(f"Loads, {_label(one)}", f"{loads}; {one.governed_by} fills it first")


def _spread(amount: Spread, form: str) -> str:
    low, high = f"{amount.low:{form}}", f"{amount.high:{form}}"
    return low if low == high else f"{low} to {high}"


def _label(one: Haul) -> str:
    return find_container(one.container).label
