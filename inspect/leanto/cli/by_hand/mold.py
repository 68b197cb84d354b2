"""The band that an area of mold falls in."""

from __future__ import annotations

import argparse

from leanto.cli.by_hand.typed import number
from leanto.reckon.model import CONFIRM_WATER, Figure, Reckoning, cited
from leanto.trade.mold import mold_band

HELP = "the band that all mold of a room falls in, and how such work is done"


def add_arguments(parser: argparse.ArgumentParser) -> None:
    parser.add_argument(
        "--area", required=True, nargs="+", metavar="12", help="sq ft of every patch in the room"
    )
    parser.add_argument("--in-fill", action="store_true", help="it grows in the insulation")


def reckoned(arguments: argparse.Namespace) -> Reckoning:
    patches = [number(text, "Area", 0, 10_000, "sq ft") for text in arguments.area]
    band = mold_band(patches, may_spread=arguments.in_fill)
    lines = (*band.reasons, band.method, band.who, band.protection)
    return Reckoning(
        id="mold",
        title="Mold in one room",
        station_id="",
        verdict=f"{band.size} area of mold" if band.size != "none" else "no area given",
        figures=(Figure("All patches", f"{band.area_sqft:g} sq ft"),),
        reasons=tuple(line for line in lines if line),
        sources=cited(band.sources),
        confirm=CONFIRM_WATER,
    )
