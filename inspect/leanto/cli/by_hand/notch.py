"""A notch or a hole in a joist, rafter or stud against the limits of the code."""

from __future__ import annotations

import argparse

from leanto.cli.by_hand.lumber_arguments import add_size, size_in
from leanto.cli.by_hand.typed import length_in, one_of, words
from leanto.errors import LeantoError
from leanto.reckon.model import CONFIRM_FRAME, Figure, Reckoning, cited
from leanto.trade.cut_verdict import CutVerdict
from leanto.trade.notches import HOLE_CLEAR_IN, Edge, Place, Spanning, spanning_hole, spanning_notch
from leanto.trade.stud_cuts import STUD_EDGE_IN, stud_hole, stud_notch

HELP = "a notch or hole in a joist, rafter or stud against the limits of the code"
SPANNING = {
    "joist": Spanning.JOIST,
    "beam": Spanning.JOIST,
    "rafter": Spanning.RAFTER,
    "ceiling joist": Spanning.RAFTER,
}
STUD, PARTITION = "stud", "partition stud"
PLACES = {"end": Place.END, "outer": Place.OUTER_THIRD, "middle": Place.MIDDLE_THIRD}
EDGES = {edge.value: edge for edge in Edge}
_NOMINAL_MORE_IN = 0.5
"""What dressing takes off a nominal thickness of two inches and more."""


def add_arguments(parser: argparse.ArgumentParser) -> None:
    names = ", ".join((*SPANNING, STUD, PARTITION))
    parser.add_argument("member", metavar="MEMBER", help=names)
    add_size(parser)
    cut = parser.add_mutually_exclusive_group(required=True)
    cut.add_argument("--notch", metavar="1", help="its depth, inches")
    cut.add_argument("--hole", metavar="2", help="its diameter, inches")
    parser.add_argument("--long", default="0", metavar="2", help="length of the notch, inches")
    parser.add_argument("--place", default="outer", metavar="THIRD", help=", ".join(PLACES))
    parser.add_argument("--edge", default="top", metavar="EDGE", help="top, bottom")
    parser.add_argument("--clear", metavar="2", help="from the hole to the nearer edge, inches")
    parser.add_argument("--cracked", action="store_true", help="a crack runs from it")


def reckoned(arguments: argparse.Namespace) -> Reckoning:
    names = words((*SPANNING, STUD, PARTITION))
    member = one_of(arguments.member, "Member", names)
    breadth_in, depth_in = size_in(arguments)
    verdict = (
        _stud(arguments, member, depth_in)
        if member in (STUD, PARTITION)
        else _spanning(arguments, SPANNING[member], breadth_in, depth_in)
    )
    cut = f"notch {arguments.notch} in. deep" if arguments.notch else f"hole {arguments.hole} in."
    return Reckoning(
        id="notch",
        title=f"{cut[0].upper()}{cut[1:]} in a {member}",
        station_id="",
        verdict=verdict.kind.value,
        figures=(
            Figure("Member", f"{breadth_in:g} x {depth_in:g} in., {member}"),
            Figure("Over the limit", f"{verdict.over_in:.3g} in." if verdict.over_in else "no"),
        ),
        reasons=(
            *(f"{check.rule}." for check in verdict.checks),
            "An outside wall counts as bearing. Trusses and engineered lumber are never cut.",
        ),
        sources=cited(check.source for check in verdict.checks),
        confirm=CONFIRM_FRAME,
        cautions=("Shore before a member that carries load is cut or mended.",),
    )


def _stud(arguments: argparse.Namespace, member: str, width_in: float) -> CutVerdict:
    bearing = member == STUD
    if arguments.notch:
        depth_in = length_in(arguments.notch, "Notch", 0, width_in)
        return stud_notch(width_in, depth_in, bearing=bearing)
    diameter_in = length_in(arguments.hole, "Hole", 0, width_in)
    clear_in = _clear_in(arguments, width_in, diameter_in, STUD_EDGE_IN)
    return stud_hole(width_in, diameter_in, clear_in, bearing=bearing)


def _spanning(
    arguments: argparse.Namespace, member: Spanning, breadth_in: float, depth_in: float
) -> CutVerdict:
    if arguments.notch:
        return spanning_notch(
            member,
            depth_in,
            length_in(arguments.notch, "Notch", 0, depth_in),
            length_in(arguments.long, "Long", 0, 240),
            one_of(arguments.place, "Place", PLACES),
            one_of(arguments.edge, "Edge", EDGES),
            nominal_thickness_in=breadth_in + _NOMINAL_MORE_IN,
            cracked=arguments.cracked,
        )
    diameter_in = length_in(arguments.hole, "Hole", 0, depth_in)
    clear_in = _clear_in(arguments, depth_in, diameter_in, HOLE_CLEAR_IN)
    return spanning_hole(member, depth_in, diameter_in, clear_in, clear_in)


def _clear_in(
    arguments: argparse.Namespace, depth_in: float, diameter_in: float, least_in: float
) -> float:
    """From the rim of the hole to the nearer edge: as measured, else a hole in the middle."""
    middle_in = (depth_in - diameter_in) / 2
    if arguments.clear is None:
        return middle_in
    clear_in = length_in(arguments.clear, "Clear", 0, depth_in)
    if clear_in > middle_in + 1e-9:
        raise LeantoError(
            f"Clear: 0 to {middle_in:.3g} in. is possible, not {clear_in:g}.",
            f"Measure to the nearer edge; {least_in:g} in. is the least that is allowed.",
        )
    return clear_in
