"""Heat through walls, ceilings and floors: layers in series, framing beside fill in parallel.

R is in hour x sq ft x deg F / Btu. Steady state, no sun, no stored heat: what the heater must make
up on the coldest night it is planned for.
"""

from __future__ import annotations

import math
from collections.abc import Sequence
from typing import Final

from leanto.source import Source
from leanto.trade.r_values import BattR, FillR, r_table

BTUH_PER_WATT: Final = 3.412
WATT_SOURCE = Source("Unit conversion", place="1 W = 3.412 Btu/h")
AIR_HEAT: Final = 0.018
"""Btu for a cubic foot of air and a deg F."""
AIR_SOURCE = Source(
    "ASHRAE Handbook, Fundamentals", place="0.018 Btu per cu ft and deg F", mark="from memory"
)
METHOD_SOURCE = Source(
    "ASHRAE Handbook, Fundamentals",
    place="series layers add up; framing and cavity as parallel paths",
    mark="from memory",
)
ROOF_AIR_PATH_IN: Final = 1.0
"""Left free under a roof deck, so that its underside can dry."""
ROOF_AIR_PATH_SOURCE = Source("International Residential Code", "2018", "R806.3", "from memory")


def series_r(layers: Sequence[float]) -> float:
    """R of layers one behind the other: their sum. ValueError for one below zero or none at all."""
    if not layers or any(not math.isfinite(r) or r < 0 for r in layers):
        raise ValueError(f"layers have an R of zero or more: {layers}")
    return math.fsum(layers)


def parallel_r(paths: Sequence[tuple[float, float]]) -> float:
    """R of paths side by side, each as (share of the area, R): 1 / sum(share / R).

    The shares must make up the whole.
    """
    if any(share < 0 or r <= 0 for share, r in paths):
        raise ValueError(f"a path has a share of zero or more and an R above zero: {paths}")
    if not math.isclose(sum(share for share, _ in paths), 1.0, abs_tol=1e-9):
        raise ValueError(f"the shares must make up the whole: {paths}")
    return 1.0 / math.fsum(share / r for share, r in paths)


def framed_r(faces: Sequence[float], fill_r: float, wood_r: float, framing_share: float) -> float:
    """R of a framed wall, ceiling or floor.

    ``faces`` are films and faces that cover all of it, ``fill_r`` what lies between the members,
    ``wood_r`` the members themselves, ``framing_share`` the share of the area that is wood.
    """
    if not 0 <= framing_share < 1:
        raise ValueError(f"a share of framing is 0 up to 1: {framing_share}")
    through = series_r(faces)
    return parallel_r(((1.0 - framing_share, through + fill_r), (framing_share, through + wood_r)))


def wall_framing_share(spacing_in: float) -> float:
    """Share of a framed wall that is wood, plates and headers with it, by the stud spacing."""
    if not spacing_in > 0:
        raise ValueError(f"a spacing is more than zero: {spacing_in}")
    rows = sorted(r_table().framing, key=lambda row: row.spacing_in)
    fitting = [row for row in rows if row.spacing_in <= spacing_in + 1e-9]
    return (fitting[-1] if fitting else rows[0]).share


def joist_framing_share(breadth_in: float, spacing_in: float) -> float:
    """Share of a ceiling, floor or roof that is wood: the members alone."""
    if not 0 < breadth_in < spacing_in:
        raise ValueError(f"members are thinner than their spacing: {breadth_in}, {spacing_in}")
    return breadth_in / spacing_in


def fitting_batt(cavity_in: float) -> BattR | None:
    """The thickest batt that a cavity of this depth takes; None below the thinnest."""
    rows = [row for row in r_table().batts if row.cavity_in <= cavity_in + 1e-6]
    return max(rows, key=lambda row: row.r, default=None)


def fill_r(fill: FillR, depth_in: float) -> float:
    """R of a depth of fill."""
    if not math.isfinite(depth_in) or depth_in < 0:
        raise ValueError(f"a depth is zero or more: {depth_in}")
    return fill.r_per_in * depth_in


def loss_btuh(area_sqft: float, r: float, delta_f: float) -> float:
    """Heat through an area, Btu an hour: area x temperature difference / R."""
    if area_sqft < 0 or r <= 0:
        raise ValueError(f"an area is zero or more, an R above zero: {area_sqft}, {r}")
    return area_sqft * delta_f / r


def edge_loss_btuh(length_ft: float, per_ft: float, delta_f: float) -> float:
    """Heat through the edge of a slab, Btu an hour."""
    if length_ft < 0 or per_ft < 0:
        raise ValueError(f"an edge is zero or more: {length_ft}, {per_ft}")
    return length_ft * per_ft * delta_f


def air_loss_btuh(volume_cuft: float, changes_per_hour: float, delta_f: float) -> float:
    """Heat that goes with changed air, Btu an hour: 0.018 x volume x changes x difference."""
    if volume_cuft < 0 or changes_per_hour < 0:
        raise ValueError(f"volume and changes are zero or more: {volume_cuft}, {changes_per_hour}")
    return AIR_HEAT * volume_cuft * changes_per_hour * delta_f


def watts(btuh: float) -> float:
    """Watts of a heat flow in Btu an hour."""
    return btuh / BTUH_PER_WATT
