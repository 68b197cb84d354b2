"""Weight, room and loads of stripped material."""

from __future__ import annotations

import argparse

from leanto.cli.by_hand.typed import number, one_of
from leanto.reckon.debris import apart_figures, apart_reasons, loads_figure, pile_figures
from leanto.reckon.model import CONFIRM_HAUL, COUNTED, Figure, Reckoning, cited
from leanto.trade.debris import debris_pile, haul
from leanto.trade.debris_apart import Apart, expected_in, kept_apart
from leanto.trade.debris_table import debris_table

HELP = "weight, loose volume and loads of stripped material, and what may not go with it"


def add_arguments(parser: argparse.ArgumentParser) -> None:
    parser.add_argument(
        "--material", required=True, metavar="KIND", help="such as gypsum-board or asphalt-shingles"
    )
    parser.add_argument("--amount", required=True, metavar="480", help="in the unit of the kind")
    parser.add_argument(
        "--container", default="trailer", metavar="KIND", help="trailer, or such as roll-off-20"
    )
    parser.add_argument("--year", metavar="1938", help="the building's; else its paint is old")
    parser.add_argument(
        "--suspect", action="store_true", help="it may hold asbestos by its look or year"
    )
    parser.add_argument("--treated", action="store_true", help="some of it is treated wood")


def reckoned(arguments: argparse.Namespace) -> Reckoning:
    table = debris_table()
    material = one_of(arguments.material, "Material", {name: name for name in table.materials})
    row = table.materials[material]
    amount = number(arguments.amount, "Amount", 0, 1_000_000, row.unit)
    container = one_of(arguments.container, "Container", {name: name for name in table.containers})
    pile = debris_pile({material: amount})
    loads = haul(pile, container)
    year = round(number(arguments.year, "Year", 1600, 2100)) if arguments.year else None
    expected = expected_in(
        (material,),
        year,
        asbestos_suspect=arguments.suspect,
        treated_wood=arguments.treated,
    )
    apart = kept_apart(expected)
    return Reckoning(
        id="debris",
        title=f"Debris, {amount:g} {row.unit} of {row.label}",
        station_id="",
        verdict=COUNTED.replace("the building", "the amount"),
        figures=(*pile_figures(pile), loads_figure(loads), *_apart(apart)),
        reasons=(*loads.reasons, *apart_reasons(apart)),
        sources=cited(pile.sources, loads.sources, (one.source for one in apart)),
        confirm=CONFIRM_HAUL,
    )


def _apart(apart: tuple[Apart, ...]) -> tuple[Figure, ...]:
    return tuple(Figure(f"Not with it: {one.label}", one.text) for one in apart_figures(apart))
