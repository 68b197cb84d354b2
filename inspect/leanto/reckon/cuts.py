"""Notches and holes in framing members against the limits of the code."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Final

from leanto.building.kinds import PlaceKind
from leanto.reckon import asked
from leanto.reckon.basis import Basis, number, word
from leanto.reckon.model import CONFIRM_FRAME, Figure, Reckoning, cited
from leanto.reckon.section import framing_member
from leanto.record.observation import Observation
from leanto.trade.cut_verdict import CutKind, CutVerdict
from leanto.trade.notches import HOLE_CLEAR_IN, Edge, Place, Spanning, spanning_hole, spanning_notch
from leanto.trade.stud_cuts import STUD_EDGE_IN, stud_hole, stud_notch

DEPTH: Final = "cut_depth_in"
KIND: Final = "cut_kind"
NOTCH: Final = "notch"
THROUGH: Final = "cut through"
PLACE_ASKED: Final = (
    "Where along the span is the cut? In the middle third no notch is allowed at all; at the "
    "bearing a quarter of the depth is.",
    f"How far is a hole from the edges? {HOLE_CLEAR_IN:g} in. is the least.",
)
EDGE_ASKED: Final = (
    f"How far is a hole from the edge of the stud? {STUD_EDGE_IN:g} in. is the least.",
)


def cuts(basis: Basis) -> Iterator[Reckoning]:
    """A reckoning for every cut whose kind and depth were taken, where the size is known."""
    for observation in basis.seen(asked.CUT_MEMBERS):
        depth_in, kind = number(observation, DEPTH), word(observation, KIND)
        surface = basis.surface_at(observation.key.station)
        if surface is None or kind is None or (depth_in is None and kind != THROUGH):
            continue
        block = basis.block(surface.block)
        member = framing_member(asked.FACING[0], surface, block, basis.building)
        if member is None:
            continue
        cut_in = member.depth_in if depth_in is None or kind == THROUGH else depth_in
        is_stud = surface.kind is PlaceKind.WALL_INSIDE
        verdict = cut_against_code(kind, cut_in, member.depth_in, is_stud=is_stud)
        place = basis.stations[observation.key.station].name
        yield _reckoned(observation, member.name, member.depth_in, cut_in, verdict, place)


def cut_against_code(
    kind: str, cut_in: float, depth_in: float, *, is_stud: bool, bearing: bool = True
) -> CutVerdict:
    """How deep a cut may be, its place left open: an outer third, and clear of the edges.

    ``kind`` is ``notch``, ``bored hole`` or ``cut through``; inches as measured.
    """
    if is_stud:
        if kind in (NOTCH, THROUGH):
            return stud_notch(depth_in, cut_in, bearing=bearing)
        return stud_hole(depth_in, cut_in, STUD_EDGE_IN, bearing=bearing)
    if kind in (NOTCH, THROUGH):
        return spanning_notch(Spanning.RAFTER, depth_in, cut_in, 0.0, Place.OUTER_THIRD, Edge.TOP)
    return spanning_hole(Spanning.RAFTER, depth_in, cut_in, HOLE_CLEAR_IN, HOLE_CLEAR_IN)


def _reckoned(
    observation: Observation,
    member: str,
    depth_in: float,
    cut_in: float,
    verdict: CutVerdict,
    place: str,
) -> Reckoning:
    is_stud = member == "stud"
    kind = word(observation, KIND) or ""
    return Reckoning(
        id=f"cut-member@{observation.key}",
        title=f"Cut {member}, {place}",
        station_id=observation.key.station,
        verdict=verdict.kind.value,
        figures=(
            Figure("Member", f"{member}, {depth_in:g} in. deep"),
            Figure("Cut", f"{kind}, {cut_in:g} in."),
            Figure("Over the limit", f"{verdict.over_in:.3g} in." if verdict.over_in else "no"),
        ),
        reasons=(
            *(f"{check.rule}." for check in verdict.checks),
            *(("An outside wall counts as bearing.",) if is_stud else ()),
        ),
        sources=cited(check.source for check in verdict.checks),
        confirm=CONFIRM_FRAME,
        facts={"cut_check": verdict.kind.value},
        observation=observation.key,
        asks=EDGE_ASKED if is_stud else PLACE_ASKED,
        cautions=("Shore before a member that carries load is cut or mended.",)
        if verdict.kind is not CutKind.WITHIN
        else (),
    )
