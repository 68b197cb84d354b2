"""Years left in a roof covering, as a range."""

from __future__ import annotations

import argparse

from leanto.cli.by_hand.typed import number, one_of
from leanto.reckon.model import CONFIRM_ROOF, Figure, Reckoning, cited
from leanto.trade.coverings import coverings_table
from leanto.trade.roof_life import SeenCondition, life_left

HELP = "years left in a roof covering by kind, age and look"
SEEN: dict[str, SeenCondition] = {"sound": "sound", "worn": "worn", "failed": "failed"}


def add_arguments(parser: argparse.ArgumentParser) -> None:
    parser.add_argument(
        "--covering", required=True, metavar="KIND", help="such as asphalt-strip or metal-lapped"
    )
    parser.add_argument("--age", metavar="20", help="years; leave out when nobody knows")
    parser.add_argument("--seen", metavar="worn", help=", ".join(SEEN))


def reckoned(arguments: argparse.Namespace) -> Reckoning:
    kinds = {name: name for name in coverings_table().coverings}
    covering = one_of(arguments.covering, "Covering", kinds)
    age = number(arguments.age, "Age", 0, 200, "years") if arguments.age else None
    seen = one_of(arguments.seen, "Seen", SEEN) if arguments.seen else None
    left = life_left(covering, None if age is None else (age, age), seen)
    years = left.years
    if years is None:
        said = "no published life"
    elif years.high is None:
        said = f"{years.low:.0f} and more"
    else:
        said = f"{years.low:.0f} to {years.high:.0f}"
    return Reckoning(
        id="life",
        title=f"Years left, {coverings_table().coverings[covering].label}",
        station_id="",
        verdict=left.wanted.value,
        figures=(Figure("Years left", said),),
        reasons=("Two years are wanted before a room is finished below.", *left.reasons),
        sources=cited(left.sources),
        confirm=CONFIRM_ROOF,
    )
