"""How high a wet lining is cut."""

from __future__ import annotations

import argparse

from leanto.cli.by_hand.typed import length_in
from leanto.reckon.model import CONFIRM_WATER, Figure, Reckoning, cited
from leanto.trade.water import cut_height

HELP = "how high a wet lining is cut above the floor"


def add_arguments(parser: argparse.ArgumentParser) -> None:
    parser.add_argument("--wet", required=True, metavar="8", help="highest wet reading, inches")
    parser.add_argument("--wall", default="8", metavar="8", help="height of the wall, feet")


def reckoned(arguments: argparse.Namespace) -> Reckoning:
    wall_in = length_in(arguments.wall, "Wall", 12, 600, bare="ft")
    cut = cut_height(length_in(arguments.wet, "Wet up to", 0, wall_in), wall_in)
    return Reckoning(
        id="cut",
        title="Height to cut a wet lining",
        station_id="",
        verdict="the whole wall" if cut.is_full_height else f"cut at {cut.height_in:g} in.",
        figures=(Figure("Cut at", f"{cut.height_in:g} in. above the floor"),),
        reasons=(cut.reason, "Boards may be dried in place."),
        sources=cited(cut.sources),
        confirm=CONFIRM_WATER,
    )
