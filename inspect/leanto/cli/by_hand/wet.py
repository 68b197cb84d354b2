"""What happens to a wet material: dried, cleaned, or taken out."""

from __future__ import annotations

import argparse

from leanto.cli.by_hand.typed import number, one_of, words
from leanto.reckon.model import CONFIRM_WATER, Figure, Reckoning, cited
from leanto.trade.water import water_category, wet_material
from leanto.trade.wetting import water_table

HELP = "whether a wet material is dried in place or comes out, by its water and hours"
MOST_HOURS = 24 * 365


def add_arguments(parser: argparse.ArgumentParser) -> None:
    parser.add_argument(
        "--material", required=True, metavar="KIND", help="such as gypsum-board or wood-boards"
    )
    parser.add_argument(
        "--water", required=True, metavar="KIND", help="such as rain, supply-pipe or sewage"
    )
    parser.add_argument("--hours", metavar="36", help="it was wet; left out where nobody knows")
    parser.add_argument("--swollen", action="store_true", help="swollen, soft or coming apart")
    parser.add_argument("--open-seams", action="store_true", help="its seams have opened")
    parser.add_argument("--flooded", action="store_true", help="it stood under water")


def reckoned(arguments: argparse.Namespace) -> Reckoning:
    table = water_table()
    material = one_of(arguments.material, "Material", words(table.materials))
    origin = one_of(arguments.water, "Water", words(table.origins))
    hours = number(arguments.hours, "Hours", 0, MOST_HOURS) if arguments.hours else None
    water = water_category(origin, hours)
    answer = wet_material(
        material,
        water.category,
        hours,
        arguments.swollen,
        arguments.open_seams,
        arguments.flooded,
    )
    return Reckoning(
        id="wet",
        title=f"Wet {table.materials[material].label}",
        station_id="",
        verdict=answer.fate.value,
        figures=(
            Figure("Water", f"category {water.category} of 3, {table.origins[origin].label}"),
            Figure("Wet for", "not known" if hours is None else f"{hours:g} hours"),
        ),
        reasons=(*water.reasons, *answer.reasons),
        sources=cited(water.sources, answer.sources),
        confirm=CONFIRM_WATER,
        cautions=("Foul water: gloves, boots, eye cover, and a mask for dust once it is dry.",)
        if water.category == 3
        else (),
    )
