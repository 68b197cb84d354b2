"""Lengths and areas on a slope, from the rise in inches per foot of level run.

Plane geometry: a unit run and its rise are the legs of a right triangle, and a hip lies over the
diagonal of a unit square. Factors are computed and never typed in, because printed tables round.
"""

from __future__ import annotations

import math


def slope_factor(rise_in_12: float) -> float:
    """Length along the slope for each foot of level run, sqrt(1 + (rise/12)^2).

    The same factor turns plan area into roof area.
    """
    return math.hypot(1.0, _rise_per_foot(rise_in_12))


def hip_valley_factor(rise_in_12: float) -> float:
    """Length of a hip or valley for each foot of common run, sqrt(2 + (rise/12)^2).

    Holds where both planes have the same slope and meet at a right angle in plan.
    """
    return math.hypot(1.0, 1.0, _rise_per_foot(rise_in_12))


def rafter_in_per_ft_of_run(rise_in_12: float) -> float:
    """Inches of rafter for each foot of level run, as on a framing square."""
    return 12.0 * slope_factor(rise_in_12)


def rafter_length_ft(run_ft: float, rise_in_12: float, overhang_ft: float = 0.0) -> float:
    """Length along the slope of a common rafter in feet; run and overhang are level."""
    _need_positive("run_ft", run_ft)
    _need_positive("overhang_ft", overhang_ft)
    return (run_ft + overhang_ft) * slope_factor(rise_in_12)


def plumb_cut_ft(depth_in: float, rise_in_12: float) -> float:
    """Extra stock in feet that the plumb cut of a member of this depth uses up."""
    _need_positive("depth_in", depth_in)
    return depth_in * _rise_per_foot(rise_in_12) / 12.0


def rafter_stock_ft(
    run_ft: float, rise_in_12: float, depth_in: float, overhang_ft: float = 0.0
) -> float:
    """Length of stock a common rafter is cut from, in feet, before rounding to a sold length."""
    return rafter_length_ft(run_ft, rise_in_12, overhang_ft) + plumb_cut_ft(depth_in, rise_in_12)


def hip_length_ft(common_run_ft: float, rise_in_12: float) -> float:
    """Length of a hip or valley in feet over this common run."""
    _need_positive("common_run_ft", common_run_ft)
    return common_run_ft * hip_valley_factor(rise_in_12)


def roof_area_sqft(plan_sqft: float, rise_in_12: float) -> float:
    """Area on the slope over a plan area with its overhangs, in square feet.

    Holds for shed, gable and hip alike when every plane has this slope. A gambrel is two calls,
    one for each pitch over its own plan width.
    """
    _need_positive("plan_sqft", plan_sqft)
    return plan_sqft * slope_factor(rise_in_12)


def gable_end_sqft(span_ft: float, rise_in_12: float) -> float:
    """Area of one gable triangle over this span, in square feet: span^2 x (rise/12) / 4."""
    _need_positive("span_ft", span_ft)
    return span_ft**2 * _rise_per_foot(rise_in_12) / 4.0


def _rise_per_foot(rise_in_12: float) -> float:
    _need_positive("rise_in_12", rise_in_12)
    return rise_in_12 / 12.0


def _need_positive(name: str, value: float) -> None:
    if not math.isfinite(value) or value < 0:
        raise ValueError(f"{name} must be zero or more: {value}")
