"""A fuse or breaker against the wire that it feeds."""

from __future__ import annotations

import argparse
from typing import Literal, cast

from leanto.cli.by_hand.typed import number, one_of, words
from leanto.reckon.model import CONFIRM_WIRING, Figure, Reckoning, cited
from leanto.trade.wiring.conductor import ampacity_table, conductor, conductors
from leanto.trade.wiring.confirm import EDITION_NOTE, LOOK_ONLY
from leanto.trade.wiring.overcurrent import check_rating

HELP = "a fuse or breaker against the wire that it feeds"


def add_arguments(parser: argparse.ArgumentParser) -> None:
    parser.add_argument("--amps", required=True, metavar="30", help="printed on fuse or breaker")
    parser.add_argument("--size", required=True, metavar="12", help="wire: 14 to 1, 1/0 to 4/0")
    parser.add_argument("--metal", default="copper", metavar="METAL", help="copper, aluminum")
    parser.add_argument(
        "--feeder", action="store_true", help="it feeds a panel, not several receptacles"
    )


def reckoned(arguments: argparse.Namespace) -> Reckoning:
    metal = cast(
        Literal["copper", "aluminum"],
        one_of(arguments.metal, "Metal", words(("copper", "aluminum"))),
    )
    sizes = words(one.size for one in conductors(metal))
    size = one_of(arguments.size.upper().removesuffix("AWG"), "Size", sizes)
    amps = number(arguments.amps, "Amps", 1, 600, "A")
    check = check_rating(amps, size, metal, several_receptacles=not arguments.feeder)
    wire = conductor(size, metal)
    return Reckoning(
        id="breaker",
        title=f"{amps:g} A on {wire.label}",
        station_id="",
        verdict=check.verdict.value,
        figures=(
            Figure("Carries", f"{wire.ampacity_60c_a} A at 60 C, {wire.ampacity_75c_a} A at 75 C"),
        ),
        reasons=(check.reason, "Motor and welder circuits have other rules.", EDITION_NOTE),
        sources=cited((check.source, ampacity_table().source)),
        confirm=CONFIRM_WIRING,
        cautions=(LOOK_ONLY,),
    )
