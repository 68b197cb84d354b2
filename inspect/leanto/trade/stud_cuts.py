"""Notches and holes in studs and top plates against the residential code (IRC R602.6)."""

from __future__ import annotations

from typing import Final

from leanto.source import Source
from leanto.trade.cut_verdict import (
    CutVerdict,
    at_least,
    at_most,
    cut_verdict,
    need_none_negative,
    need_positive,
    never,
)

STUD_SOURCE = Source("International Residential Code", "2018", "R602.6")
PLATE_SOURCE = Source("International Residential Code", "2018", "R602.6.1")
STUD_NOTCH_SHARE: Final = {True: 0.25, False: 0.40}
"""By bearing wall or not; an exterior wall counts as bearing."""
STUD_HOLE_SHARE: Final = {True: 0.40, False: 0.60}
DOUBLED_STUD_HOLE_SHARE: Final = 0.60
MOST_DOUBLED_IN_A_ROW: Final = 2
STUD_EDGE_IN: Final = 5 / 8
PLATE_CUT_SHARE: Final = 0.50


def stud_notch(width_in: float, notch_depth_in: float, *, bearing: bool) -> CutVerdict:
    """A notch in a stud against R602.6: a quarter of the width, or 40 percent in a partition.

    ``bearing`` also for every exterior wall; ``width_in`` as measured across the wall.
    """
    need_positive(width_in=width_in)
    need_none_negative(notch_depth_in=notch_depth_in)
    limit = STUD_NOTCH_SHARE[bearing] * width_in
    return cut_verdict(
        (at_most(f"notch {notch_depth_in:g} in. deep", notch_depth_in, limit, STUD_SOURCE),)
    )


def stud_hole(
    width_in: float,
    diameter_in: float,
    edge_clear_in: float,
    *,
    bearing: bool,
    doubled: bool = False,
    doubled_in_a_row: int = 1,
    beside_notch: bool = False,
) -> CutVerdict:
    """A hole in a stud against R602.6: 40 percent of the width, or 60 percent in a partition.

    A bearing stud may be bored to 60 percent when it is doubled and no more than two doubled studs
    in a row are bored so. ``beside_notch``: hole and notch lie in the same section.
    """
    need_positive(width_in=width_in)
    need_none_negative(diameter_in=diameter_in, edge_clear_in=edge_clear_in)
    share = STUD_HOLE_SHARE[bearing]
    if bearing and doubled and doubled_in_a_row <= MOST_DOUBLED_IN_A_ROW:
        share = DOUBLED_STUD_HOLE_SHARE
    checks = [
        at_most(f"hole {diameter_in:g} in.", diameter_in, share * width_in, STUD_SOURCE),
        at_least(f"{edge_clear_in:g} in. to the edge", edge_clear_in, STUD_EDGE_IN, STUD_SOURCE),
    ]
    if beside_notch:
        checks.append(never("Hole and notch lie in the same section", STUD_SOURCE, diameter_in))
    return cut_verdict(checks)


def top_plate_cut(width_in: float, cut_in: float, *, tied: bool) -> CutVerdict:
    """A cut in the top plate of a bearing or exterior wall against R602.6.1.

    Over half the width it needs a galvanized steel tie, 0.054 in. thick and 1-1/2 in. wide, over
    the cut; ``tied`` says whether it is there.
    """
    need_positive(width_in=width_in)
    need_none_negative(cut_in=cut_in)
    limit = width_in if tied else PLATE_CUT_SHARE * width_in
    rule = f"cut {cut_in:g} in. wide {'with' if tied else 'without'} a steel tie"
    return cut_verdict((at_most(rule, cut_in, limit, PLATE_SOURCE),))
