"""Weight, room and loads of stripped material."""

from __future__ import annotations

import argparse

from leanto.cli.by_hand.typed import number, one_of
from leanto.reckon.debris import loads_figure, pile_figures
from leanto.reckon.model import CONFIRM_HAUL, COUNTED, Reckoning, cited
from leanto.trade.debris import debris_pile, haul
from leanto.trade.debris_table import debris_table

HELP = "weight, loose volume and loads of stripped material"


def add_arguments(parser: argparse.ArgumentParser) -> None:
    parser.add_argument(
        "--material", required=True, metavar="KIND", help="such as gypsum-board or asphalt-shingles"
    )
    parser.add_argument("--amount", required=True, metavar="480", help="in the unit of the kind")
    parser.add_argument(
        "--container", default="trailer", metavar="KIND", help="trailer, or such as roll-off-20"
    )


def reckoned(arguments: argparse.Namespace) -> Reckoning:
    table = debris_table()
    material = one_of(arguments.material, "Material", {name: name for name in table.materials})
    row = table.materials[material]
    amount = number(arguments.amount, "Amount", 0, 1_000_000, row.unit)
    container = one_of(arguments.container, "Container", {name: name for name in table.containers})
    pile = debris_pile({material: amount})
    loads = haul(pile, container)
    return Reckoning(
        id="debris",
        title=f"Debris, {amount:g} {row.unit} of {row.label}",
        station_id="",
        verdict=COUNTED.replace("the building", "the amount"),
        figures=(*pile_figures(pile), loads_figure(loads)),
        reasons=loads.reasons,
        sources=cited(pile.sources, loads.sources),
        confirm=CONFIRM_HAUL,
    )
