"""Arguments that name a piece of lumber."""

from __future__ import annotations

import argparse
import re

from leanto.building.kinds import Grade, Species
from leanto.cli.by_hand.typed import length_in, one_of
from leanto.errors import LeantoError
from leanto.trade.framing_member import Member
from leanto.trade.sawn_size import Surfacing, sawn_sizes

_MEASURED = re.compile(r"([0-9.]+(?:[ -][0-9]+/[0-9]+)?) ?x ?([0-9.]+(?:[ -][0-9]+/[0-9]+)?)")
SPECIES = {kind.value: kind.name.lower() for kind in Species}
GRADES = {grade.value: grade.name.lower() for grade in Grade}


def add_size(parser: argparse.ArgumentParser) -> None:
    parser.add_argument(
        "--size", required=True, metavar="2x8", help="nominal size, or as measured: 1.75x7.5"
    )
    sawn = parser.add_mutually_exclusive_group()
    sawn.add_argument("--full", action="store_true", help="sawn to the full nominal size")
    sawn.add_argument("--old", action="store_true", help="dressed before 1964")


def add_wood(parser: argparse.ArgumentParser) -> None:
    parser.add_argument("--species", metavar="NAME", help=", ".join(SPECIES))
    parser.add_argument("--grade", metavar="GRADE", help=", ".join(GRADES))
    parser.add_argument(
        "--unstamped", action="store_true", help="nobody read a grade stamp; counts as no. 2"
    )
    parser.add_argument("--spacing", required=True, metavar="16", help="center to center, inches")


def size_in(arguments: argparse.Namespace) -> tuple[float, float]:
    """Breadth and depth in inches, from the table or as measured."""
    text = arguments.size.strip().lower()
    names = [row.name for row in sawn_sizes().rows]
    surfacing = (
        Surfacing.FULL
        if arguments.full
        else Surfacing.OLD_DRESSED
        if arguments.old
        else Surfacing.DRESSED
    )
    if text in names:
        try:
            return sawn_sizes().size(text).actual_in(surfacing)
        except ValueError as error:
            raise LeantoError(f"Size: {error}.", "Give it as measured, like 1.75x7.5.") from None
    match = _MEASURED.fullmatch(text)
    if match is None or not ("." in text or "/" in text or " " in text):
        one_of(text, "Size", dict.fromkeys(names))
    assert match is not None
    return (
        length_in(match[1], "Breadth", 0.5, 16),
        length_in(match[2], "Depth", 1, 24),
    )


def member(arguments: argparse.Namespace) -> Member:
    """The member that the arguments describe."""
    breadth_in, depth_in = size_in(arguments)
    species = one_of(arguments.species, "Species", SPECIES) if arguments.species else None
    grade = one_of(arguments.grade, "Grade", GRADES) if arguments.grade else None
    return Member(
        breadth_in=breadth_in,
        depth_in=depth_in,
        spacing_in=length_in(arguments.spacing, "Spacing", 4, 240),
        species=species,
        grade=grade,
        graded=grade is not None and not arguments.unstamped,
    )
