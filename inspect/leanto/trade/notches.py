"""Notches and holes in joists, beams and rafters against the residential code (IRC)."""

from __future__ import annotations

from enum import StrEnum
from typing import Final

from leanto.source import Source
from leanto.trade.cut_verdict import (
    CutKind,
    CutVerdict,
    at_least,
    at_most,
    cut_verdict,
    need_none_negative,
    need_positive,
    never,
)

JOIST_SOURCE = Source("International Residential Code", "2018", "R502.8.1")
ENGINEERED_SOURCE = Source("International Residential Code", "2018", "R502.8.2")
RAFTER_SOURCE = Source("International Residential Code", "2018", "R802.7.1")
TAIL_SOURCE = Source("International Residential Code", "2021", "R802.7.1.1")

NOTCH_DEPTH_SHARE: Final = 1 / 6
NOTCH_LENGTH_SHARE: Final = 1 / 3
END_NOTCH_SHARE: Final = 1 / 4
HOLE_SHARE: Final = 1 / 3
HOLE_CLEAR_IN: Final = 2.0
THICK_NOMINAL_IN: Final = 4.0
TAIL_LEFT_IN: Final = 3.5
TAIL_LENGTH_IN: Final = 24.0


class Spanning(StrEnum):
    """A member that spans; the code writes its limits in two places."""

    JOIST = "joist or beam"
    RAFTER = "rafter or ceiling joist"


SOURCE_OF: Final = {Spanning.JOIST: JOIST_SOURCE, Spanning.RAFTER: RAFTER_SOURCE}


class Place(StrEnum):
    """Where along the span a cut lies."""

    END = "at the bearing"
    OUTER_THIRD = "in an outer third of the span"
    MIDDLE_THIRD = "in the middle third of the span"


class Edge(StrEnum):
    """Which edge is notched; the bottom of a simple span is in tension."""

    TOP = "top"
    BOTTOM = "bottom"


def spanning_notch(
    member: Spanning,
    depth_in: float,
    notch_depth_in: float,
    notch_length_in: float,
    place: Place,
    edge: Edge,
    *,
    nominal_thickness_in: float = 2.0,
    cracked: bool = False,
) -> CutVerdict:
    """A notch against R502.8.1 (joist, beam) or R802.7.1 (rafter; a bird's mouth bears).

    ``depth_in`` is the member's measured depth; on a rafter all is measured square to its edge. At
    the bearing a quarter of the depth, of any length; elsewhere a sixth of the depth and a third of
    it long, never in the middle third. Cracked or cut through: ask an engineer.
    """
    need_positive(depth_in=depth_in, nominal_thickness_in=nominal_thickness_in)
    need_none_negative(notch_depth_in=notch_depth_in, notch_length_in=notch_length_in)
    source = SOURCE_OF[member]
    depth_words = f"notch {notch_depth_in:g} in. deep {place}"
    if place is Place.END:
        checks = [at_most(depth_words, notch_depth_in, END_NOTCH_SHARE * depth_in, source)]
    else:
        length_words = f"notch {notch_length_in:g} in. long"
        length_limit = NOTCH_LENGTH_SHARE * depth_in
        checks = [
            at_most(depth_words, notch_depth_in, NOTCH_DEPTH_SHARE * depth_in, source),
            at_most(length_words, notch_length_in, length_limit, source),
        ]
        if notch_depth_in > 0 and place is Place.MIDDLE_THIRD:
            rule = "No notch is allowed in the middle third of the span"
            checks.append(never(rule, source, notch_depth_in))
        if notch_depth_in > 0 and edge is Edge.BOTTOM and nominal_thickness_in >= THICK_NOMINAL_IN:
            rule = "Four inches thick or more is not notched on the tension side"
            checks.append(never(rule, source, notch_depth_in))
    cut_through = notch_depth_in >= depth_in
    if cracked or cut_through:
        rule = "Cut through" if cut_through else "Cracked at the notch"
        return CutVerdict(CutKind.ENGINEER, (*checks, never(rule, source, notch_depth_in)))
    return cut_verdict(checks)


def spanning_hole(
    member: Spanning,
    depth_in: float,
    diameter_in: float,
    top_clear_in: float,
    bottom_clear_in: float,
    next_cut_clear_in: float | None = None,
) -> CutVerdict:
    """A hole against R502.8.1 (joist, beam) or R802.7.1 (rafter), anywhere along the length.

    Clearances run from the rim of the hole to the edges and to the next hole or notch, in inches;
    None where there is no other cut.
    """
    need_positive(depth_in=depth_in)
    need_none_negative(
        diameter_in=diameter_in, top_clear_in=top_clear_in, bottom_clear_in=bottom_clear_in
    )
    source = SOURCE_OF[member]
    clear = [("top", top_clear_in), ("bottom", bottom_clear_in)]
    if next_cut_clear_in is not None:
        clear.append(("next hole or notch", next_cut_clear_in))
    checks = [at_most(f"hole {diameter_in:g} in.", diameter_in, HOLE_SHARE * depth_in, source)]
    checks += [
        at_least(f"{inches:g} in. to the {what}", inches, HOLE_CLEAR_IN, source)
        for what, inches in clear
    ]
    return cut_verdict(checks)


def rafter_tail_notch(left_in: float, overhang_in: float) -> CutVerdict:
    """A rafter tail cut thinner past the wall, by what is left and the overhang: R802.7.1.1."""
    need_none_negative(left_in=left_in, overhang_in=overhang_in)
    return cut_verdict(
        (
            at_least(f"{left_in:g} in. of tail left", left_in, TAIL_LEFT_IN, TAIL_SOURCE),
            at_most(f"overhang {overhang_in:g} in.", overhang_in, TAIL_LENGTH_IN, TAIL_SOURCE),
        )
    )


def engineered_cut() -> CutVerdict:
    """A cut in a truss, laminated or I-shaped member: only its maker or an engineer allows one."""
    check = never("Trusses and engineered lumber are cut only by design", ENGINEERED_SOURCE)
    return CutVerdict(CutKind.ENGINEER, (check,))
