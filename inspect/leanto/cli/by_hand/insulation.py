"""The fill that fits a depth, against what is wanted or what the code asks in a climate zone."""

from __future__ import annotations

import argparse

from leanto.cli.by_hand.typed import length_in, number, one_of, words
from leanto.errors import LeantoError
from leanto.reckon.model import CONFIRM_HEAT, Figure, Reckoning, cited
from leanto.source import Source
from leanto.trade.heat_loss import METHOD_SOURCE, fill_r, fitting_batt, framed_r, wall_framing_share
from leanto.trade.outcome import Outcome
from leanto.trade.r_values import cited as cited_row
from leanto.trade.r_values import r_table

HELP = "the fill that fits between members, against the target you set or the code's by zone"
PARTS = ("walls", "ceiling", "floor")


def add_arguments(parser: argparse.ArgumentParser) -> None:
    parser.add_argument("--depth", required=True, metavar="3.5", help="of the cavity, inches")
    parser.add_argument("--spacing", default="16", metavar="16", help="of the members, inches")
    parser.add_argument("--part", default="walls", metavar="PART", help=", ".join(PARTS))
    parser.add_argument("--target", metavar="20", help="R of the fill that you want")
    parser.add_argument("--zone", metavar="5", help="climate zone, 1 to 8, for the code's target")


def reckoned(arguments: argparse.Namespace) -> Reckoning:
    table = r_table()
    depth_in = length_in(arguments.depth, "Depth", 0.5, 24)
    spacing_in = length_in(arguments.spacing, "Spacing", 4, 240)
    part = one_of(arguments.part, "Part", words(PARTS))
    batt = fitting_batt(depth_in)
    fits_r = batt.r if batt else 0.0
    wanted, whose, sources = _wanted(arguments, part)
    share = wall_framing_share(spacing_in)
    films = (table.layer("film", "outside").r, table.layer("film", "inside wall").r)
    whole = framed_r(films, fits_r, table.wood.r_per_in * depth_in, share) if fits_r else 0.0
    figures = [
        Figure("Batts that fit", f"R {fits_r:g}"),
        *(
            Figure(
                fill.id.capitalize(), f"R {fill_r(fill, depth_in):.1f} at {fill.r_per_in:g} an inch"
            )
            for fill in table.fills
        ),
        Figure("With members and air films", f"R {whole:.1f}, wood {share:.0%} of the area"),
        Figure("Wanted", "not known" if wanted is None else f"R {wanted:g}, {whose}"),
    ]
    outcome = Outcome.UNDECIDED
    if wanted is not None:
        outcome = Outcome.PASSES if fits_r >= wanted else Outcome.FAILS
    rows = (*table.batts, *table.fills)
    return Reckoning(
        id="insulation",
        title=f"Insulation that fits {depth_in:g} in., {part}",
        station_id="",
        verdict=outcome.value,
        figures=tuple(figures),
        reasons=(
            "Codes count the fill alone; the members beside it let more through.",
            "Where it does not fit: deeper framing, or sheets of foam across it.",
        ),
        sources=cited((cited_row(row) for row in rows), (METHOD_SOURCE,), sources),
        confirm=CONFIRM_HEAT,
    )


def _wanted(arguments: argparse.Namespace, part: str) -> tuple[float | None, str, list[Source]]:
    """(R wanted, whose figure it is, its source): the own one goes before the code's."""
    if arguments.target:
        return number(arguments.target, "Target", 1, 100), "your own target", []
    if arguments.zone is None:
        return None, "", []
    zone = number(arguments.zone, "Zone", 1, 8)
    if zone != round(zone):
        raise LeantoError(f"Zone: climate zones are whole numbers, not {zone:g}.")
    row = r_table().target(round(zone))
    by_part = {"walls": row.walls, "ceiling": row.ceiling, "floor": row.floor}
    return by_part[part], f"by the code in zone {row.zone}", [cited_row(r_table().targets)]
