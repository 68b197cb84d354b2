"""The span a joist, ceiling joist or rafter may have, or whether one span passes."""

from __future__ import annotations

import argparse
from dataclasses import replace

from leanto.cli.by_hand.lumber_arguments import add_size, add_wood, member
from leanto.cli.by_hand.typed import length_in, number, one_of, words
from leanto.quantities import parse_pitch
from leanto.reckon.citations import without_citations
from leanto.reckon.framing_verdict import TABLE_SOURCE, span_figures
from leanto.reckon.model import CONFIRM_FRAME, Figure, Reckoning, cited
from leanto.trade.ceiling_check import check_ceiling
from leanto.trade.floor_check import check_floor
from leanto.trade.framing_check import FramingCheck, Verdict
from leanto.trade.framing_member import Member
from leanto.trade.loads import load_table
from leanto.trade.rafter_check import check_rafters
from leanto.trade.section_loss import ProbeDepths, face_loss
from leanto.trade.span import SPAN_SOURCE, feet_inches

HELP = "span that a joist, ceiling joist or rafter may have, or whether yours passes"
KINDS = ("joist", "ceiling", "rafter")
_SHORTEST_IN = 12.0
"""Any lumber spans a foot: the span to ask with when none is given."""


def add_arguments(parser: argparse.ArgumentParser) -> None:
    parser.add_argument("kind", metavar="KIND", help=", ".join(KINDS))
    add_size(parser)
    add_wood(parser)
    parser.add_argument("--span", metavar="12", help="clear span, feet; rafters: level run")
    parser.add_argument(
        "--use", default="living space", metavar="USE", help="of a floor, such as workshop"
    )
    parser.add_argument("--probe", metavar="0.75", help="soft wood at its top, inches: not counted")
    parser.add_argument("--dead", metavar="PSF", help="own weight; else the tables' own")
    parser.add_argument("--storage", action="store_true", help="ceiling: things stored above")
    parser.add_argument("--pitch", default="6:12", metavar="6:12", help="rafter: rise in 12")
    parser.add_argument("--snow", metavar="PSF", help="rafter: ground snow load")
    parser.add_argument("--untied", action="store_true", help="rafter: nothing ties the feet")
    parser.add_argument("--ridge-held", action="store_true", help="rafter: a wall holds the ridge")


def reckoned(arguments: argparse.Namespace) -> Reckoning:
    kind = one_of(arguments.kind, "Kind", words(KINDS))
    piece = member(arguments)
    if arguments.probe:
        piece = _softened(piece, arguments.probe)
    given = arguments.span is not None
    span_in = length_in(arguments.span, "Span", 12, 600, bare="ft") if given else _SHORTEST_IN
    check = _checked(kind, piece, span_in, arguments)
    figures = [
        Figure("Member", f"{piece.size} at {piece.spacing_in:g} in."),
        *(span_figures(check) if given else _allowed(check)),
    ]
    start = 1 if check.span_in is not None else 0
    bare, said = without_citations((*check.reasons[start:-1], *check.questions))
    count = len(check.reasons[start:-1])
    return Reckoning(
        id="span",
        title=f"Span of a {kind}" if kind != "ceiling" else "Span of a ceiling joist",
        station_id="",
        verdict=check.verdict.value if given else _without_span(check),
        figures=tuple(figures),
        reasons=bare[:count],
        sources=cited((TABLE_SOURCE, SPAN_SOURCE), said),
        confirm=CONFIRM_FRAME,
        asks=bare[count:],
        cautions=check.cautions,
    )


def _softened(piece: Member, probe: str) -> Member:
    """The member with the wood that an awl sank into taken off its top."""
    probe_in = length_in(probe, "Probe", 0, piece.depth_in * 0.99)
    loss = face_loss(piece.breadth_in, piece.depth_in, ProbeDepths(top_in=probe_in))
    return replace(piece, remaining=loss.remaining)


def _checked(
    kind: str, piece: Member, span_in: float, arguments: argparse.Namespace
) -> FramingCheck:
    dead = number(arguments.dead, "Own weight", 0, 200, "psf") if arguments.dead else None
    if kind == "joist":
        uses = words(row.id for row in load_table().floor_uses)
        return check_floor(piece, span_in, one_of(arguments.use, "Use", uses), dead_psf=dead)
    if kind == "ceiling":
        return check_ceiling(piece, span_in, storage=arguments.storage, dead_psf=dead)
    snow = number(arguments.snow, "Ground snow", 0, 400, "psf") if arguments.snow else None
    return check_rafters(
        piece,
        span_in,
        parse_pitch(arguments.pitch),
        existing_psf=load_table().dead_defaults.roof_psf if dead is None else dead,
        ground_snow_psf=snow,
        ceiling_attached=False,
        ridge_held=arguments.ridge_held,
        tied=not arguments.untied,
    )


def _allowed(check: FramingCheck) -> tuple[Figure, ...]:
    assert check.allowed_in is not None
    return (
        Figure("Allowed span", feet_inches(check.allowed_in)),
        Figure("Governed by", check.governs),
    )


def _without_span(check: FramingCheck) -> str:
    """A doubt sends even the shortest span to an engineer; else the allowed span is the answer."""
    passes = check.verdict is Verdict.PASSES
    return f"{check.verdict.value} up to the allowed span" if passes else check.verdict.value
