"""What is left of a member where an awl sank in, and what follows."""

from __future__ import annotations

import argparse

from leanto.cli.by_hand.lumber_arguments import add_size, size_in
from leanto.cli.by_hand.typed import length_in, one_of
from leanto.reckon.citations import without_citations
from leanto.reckon.model import CONFIRM_FRAME, Figure, Reckoning, cited
from leanto.trade.section_loss import SOURCE, ProbeDepths, face_loss
from leanto.trade.section_remedy import MemberRole, RemedyKind, remedy, sister_length
from leanto.trade.span import feet_inches

HELP = "strength left where an awl sinks in, and whether to keep, mend or replace"
ROLES = {
    "joist": MemberRole.REPEATED,
    "rafter": MemberRole.REPEATED,
    "stud": MemberRole.REPEATED,
    "beam": MemberRole.MAIN,
    "header": MemberRole.MAIN,
    "post": MemberRole.POST,
    "sill": MemberRole.PLATE,
    "plate": MemberRole.PLATE,
}
FACES = ("top", "bottom", "left", "right")
ALL = "all"


def add_arguments(parser: argparse.ArgumentParser) -> None:
    add_size(parser)
    parser.add_argument("--probe", required=True, metavar="0.75", help="depth of the awl, inches")
    parser.add_argument(
        "--face", default="top", metavar="FACES", help=f"{', '.join(FACES)}, several, or {ALL}"
    )
    parser.add_argument("--role", default="joist", metavar="ROLE", help=", ".join(ROLES))
    parser.add_argument("--soft", metavar="14", help="length of the soft run, inches")
    parser.add_argument("--span", metavar="12", help="between bearings, feet")
    parser.add_argument("--brash", action="store_true", help="splinters snap short")


def reckoned(arguments: argparse.Namespace) -> Reckoning:
    breadth_in, depth_in = size_in(arguments)
    faces = _faces(arguments.face)
    role = one_of(arguments.role, "Role", ROLES)
    deepest = (
        depth_in / sum(name in faces for name in FACES[:2]) if {*faces} & {*FACES[:2]} else None,
        breadth_in / sum(name in faces for name in FACES[2:]) if {*faces} & {*FACES[2:]} else None,
    )
    limit_in = min(limit for limit in deepest if limit is not None)
    probe_in = length_in(arguments.probe, "Probe", 0, limit_in)
    loss = face_loss(
        breadth_in, depth_in, ProbeDepths(**{f"{name}_in": probe_in for name in faces})
    )
    answer = remedy(loss, role, brash=arguments.brash)
    figures = [
        Figure("Member", f"{breadth_in:g} x {depth_in:g} in., {role}"),
        Figure("Gone", f"{probe_in:g} in. from {_in_words(faces)}"),
        Figure(
            "Area",
            f"{loss.original.area_sqin:.2f} sq in., then {loss.remaining.area_sqin:.2f}, "
            f"{loss.area_share:.0%}",
        ),
        Figure(
            "Section modulus",
            f"{loss.original.section_modulus_in3:.2f} cu in., then "
            f"{loss.remaining.section_modulus_in3:.2f}",
        ),
        Figure(
            "Moment of inertia",
            f"{loss.original.inertia_in4:.2f} in. to the fourth, then "
            f"{loss.remaining.inertia_in4:.2f}",
        ),
        Figure("Bending strength left", f"{loss.section_modulus_share:.0%}"),
        Figure("Stiffness left", f"{loss.inertia_share:.0%}"),
        Figure("Strength lost", f"{answer.lost_share:.0%}"),
    ]
    reasons = list(answer.reasons)
    if answer.kind is RemedyKind.SISTER and role is MemberRole.REPEATED:
        soft_in = length_in(arguments.soft, "Soft run", 0, 600) if arguments.soft else 0.0
        span_in = length_in(arguments.span, "Span", 12, 480, bare="ft") if arguments.span else None
        beside = sister_length(soft_in, span_in, lost=answer.lost_share)
        figures.append(Figure("Piece beside it", feet_inches(beside.length_in)))
        reasons.append(beside.reason)
        if beside.engineer_to_approve:
            reasons.append("A piece shorter than the span is disputed: an engineer approves it.")
    bare, said = without_citations(reasons)
    return Reckoning(
        id="section",
        title="Section left where it is soft",
        station_id="",
        verdict=answer.kind.value,
        figures=tuple(figures),
        reasons=bare,
        sources=cited((SOURCE,), said),
        confirm=CONFIRM_FRAME,
        cautions=("Shore before a member that carries load is cut.",),
    )


def _faces(text: str) -> tuple[str, ...]:
    """The faces of a list such as ``top, left``."""
    known = {name: name for name in (*FACES, ALL)}
    named = [one_of(part, "Face", known) for part in text.replace(",", " ").split()]
    return FACES if ALL in named or not named else tuple(dict.fromkeys(named))


def _in_words(faces: tuple[str, ...]) -> str:
    return "every face" if faces == FACES else f"the {' and the '.join(faces)}"
